import type { WorksheetFunction } from "../functions/worksheet/calling/worksheet-function.ts";
import type { ListedFunction } from "./json-manifest.ts";

/** functions.json: what Excel reads to list the worksheet functions before any of our code runs. */
export interface FunctionsMetadata {
  /** Errors in arguments reach the function, which passes each through to its own cell alone. */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly ListedFunction[];
}

export function functionsMetadata(catalogue: readonly WorksheetFunction[], helpUrl?: (name: string) => string): FunctionsMetadata {
  return { allowErrorForDataTypeAny: true, functions: catalogue.map((declared) => listedFunction(declared, helpUrl)) };
}

/** Every argument and result is a matrix of anything: one call answers a whole range. */
function listedFunction({ name, summary, parameters }: WorksheetFunction, helpUrl?: (name: string) => string): ListedFunction {
  return {
    id: name,
    name,
    description: summary,
    ...(helpUrl === undefined ? {} : { helpUrl: helpUrl(name) }),
    parameters: parameters.map(({ key, description, optional }) => ({
      name: key,
      description,
      type: "any",
      dimensionality: "matrix",
      ...(optional ? { optional } : {}),
    })),
    result: { dimensionality: "matrix" },
  };
}
