import type { Parameter } from "../functions/worksheet/calling/parameters.ts";
import type { WorksheetFunction } from "../functions/worksheet/calling/worksheet-function.ts";

/** functions.json: what Excel reads to list the worksheet functions before any of our code runs. Both manifests lead to it. */
export interface FunctionsMetadata {
  /** Errors in arguments reach the function, which passes each through to its own cell alone. */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly ListedFunction[];
  readonly enums: readonly PickList[];
}

export interface ListedFunction {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl?: string;
  readonly parameters: readonly ListedParameter[];
  readonly result: { readonly dimensionality: "matrix" };
}

export interface ListedParameter {
  readonly name: string;
  readonly description: string;
  readonly type: "any";
  readonly dimensionality: "matrix";
  readonly optional?: true;
  readonly customEnumId?: string;
}

/** What Excel offers while an argument is being typed; older versions of Excel offer nothing and take the argument all the same. */
export interface PickList {
  readonly id: string;
  readonly type: "string";
  readonly values: readonly { readonly name: string; readonly stringValue: string }[];
}

export function functionsMetadata(catalogue: readonly WorksheetFunction[], helpUrl?: (name: string) => string): FunctionsMetadata {
  const lists = pickLists(catalogue);
  return {
    allowErrorForDataTypeAny: true,
    functions: catalogue.map((declared) => listedFunction(declared, lists, helpUrl)),
    enums: [...lists].map(([words, id]) => ({
      id,
      type: "string",
      values: choicesIn(words).map((choice) => ({ name: choice, stringValue: choice })),
    })),
  };
}

/**
 * Every argument and result is a matrix of anything: one call answers a whole range. An argument with a pick list is no
 * exception: of type "string" it would lose the errors of its cells (learn.microsoft.com, custom-functions-json, allowErrorForDataTypeAny).
 */
function listedFunction(
  { name, summary, parameters }: WorksheetFunction,
  lists: ReadonlyMap<string, string>,
  helpUrl?: (name: string) => string,
): ListedFunction {
  return {
    id: name,
    name,
    description: summary,
    ...(helpUrl === undefined ? {} : { helpUrl: helpUrl(name) }),
    parameters: parameters.map((parameter) => {
      const pickList = isPicked(parameter) ? lists.get(keyOf(parameter.choices)) : undefined;
      return {
        name: parameter.key,
        description: parameter.description,
        type: "any",
        dimensionality: "matrix",
        ...(parameter.optional ? { optional: true } : {}),
        ...(pickList === undefined ? {} : { customEnumId: pickList }),
      };
    }),
    result: { dimensionality: "matrix" },
  };
}

/** The id of each list of choices, by its choices: named for the first argument that takes it, and after that one's function where taken. */
function pickLists(catalogue: readonly WorksheetFunction[]): ReadonlyMap<string, string> {
  const ids = new Map<string, string>();
  for (const { name, parameters } of catalogue)
    for (const parameter of parameters.filter(isPicked)) {
      const words = keyOf(parameter.choices);
      if (ids.has(words)) continue;
      const id = parameter.key.charAt(0).toUpperCase() + parameter.key.slice(1);
      ids.set(words, [...ids.values()].includes(id) ? `${id}.${name}` : id);
    }
  return ids;
}

/** Nobody types one choice where a whole column of them is asked for. */
function isPicked(parameter: Parameter): parameter is Parameter & { readonly choices: readonly string[] } {
  return parameter.choices !== undefined && !parameter.isRange;
}

function keyOf(choices: readonly string[]): string {
  return choices.join("\n");
}

function choicesIn(key: string): readonly string[] {
  return key.split("\n");
}
