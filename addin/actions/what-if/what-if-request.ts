import { metricPerUs } from "../../../functions/quantities.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { isOfOneYard, sourceOf, type Source } from "../../records/what-if-sources.ts";
import type { CellValue } from "../../workbook/port.ts";
import { MOST_ACROSS, MOST_DOWN, tooMany } from "./what-if-values.ts";

/** Whose numbers a table starts from: typed ones, those of one yard, or of every yard with a row each. */
export type Scope =
  | { readonly kind: "typed"; readonly units: UnitSystem }
  | { readonly kind: "yard"; readonly siteId: string; readonly units: UnitSystem }
  | { readonly kind: "all" };

export interface Varied {
  readonly key: string;
  readonly values: readonly CellValue[];
}

/** A what-if table as a person asks for it. */
export interface WhatIfRequest {
  readonly worksheetFunction: WorksheetFunction;
  /** Which value of a row result; "all" puts every one in a column of its own. */
  readonly result: number | "all";
  readonly scope: Scope;
  /** Down the left side; with every yard the yards stand there, and nothing is varied down. */
  readonly down: Varied | null;
  readonly across: Varied | null;
  /** Inputs typed by hand, by argument key, in the units of the scope (US for every yard). The rest follow the workbook or their defaults. */
  readonly fixed: ReadonlyMap<string, CellValue>;
}

/** How an argument that is not varied gets its value. */
export type Feed =
  | { readonly kind: "typed"; readonly value: CellValue }
  | { readonly kind: "workbook"; readonly source: Source }
  | { readonly kind: "default" };

export function feedOf({ worksheetFunction, scope, fixed, down, across }: WhatIfRequest, parameter: Parameter): Feed {
  const typed = fixed.get(parameter.key);
  if (typed !== undefined && typed !== null) return { kind: "typed", value: typed };
  // The runoff that Design shows is of its own storm and area: where one of them is varied, it follows from them.
  if (parameter.key === "runoff" && [down?.key, across?.key].some((key) => key === "storm" || key === "contributingArea"))
    return { kind: "default" };
  const source = sourceIn(scope, worksheetFunction.name, parameter);
  return source === undefined ? { kind: "default" } : { kind: "workbook", source };
}

/** Where the workbook keeps an argument, for a table of this scope. */
export function sourceIn(scope: Scope, functionName: string, parameter: Parameter): Source | undefined {
  const source = sourceOf(functionName, parameter.key);
  if (source === undefined) return undefined;
  if (scope.kind === "all") return isOfOneYard(source) ? undefined : source;
  // Without a yard only what belongs to the whole program is there to follow.
  const isOfProgram =
    source.kind === "setting" || (source.kind === "series" && !["covers", "areas", "shares", "infiltrationRates"].includes(source.series));
  return scope.kind === "yard" || isOfProgram ? source : undefined;
}

/** The worksheet functions that a table of this scope can hold: one answer or one row of answers, and no series that is nowhere. */
export function functionsFor(scope: Scope): readonly WorksheetFunction[] {
  return catalogue.filter((each) => {
    // What works on the lists of the whole program has its place on Design.
    const isOfLists = each.parameters.some(({ key }) => key === "siteId");
    if (each.result.shape === "table" || variable(each).length === 0 || isOfLists) return false;
    return each.parameters.every(
      (parameter) => !parameter.isRange || parameter.optional || sourceIn(scope, each.name, parameter) !== undefined,
    );
  });
}

/** The arguments that a table can vary. */
export function variable({ parameters }: WorksheetFunction): readonly Parameter[] {
  return parameters.filter(({ isRange, key }) => !isRange && key !== "units");
}

export function takesUnits({ parameters }: WorksheetFunction): boolean {
  return parameters.some(({ key }) => key === "units");
}

/** Metric units in one US unit of the argument; 1 where both systems write the same number. */
export function factorOf({ kind }: { readonly kind: Parameter["kind"] }): number {
  return isNumberKind(kind) ? metricPerUs(kind) : 1;
}

/** Why no table can be laid out from the request; nothing when one can. */
export function faultsOf(request: WhatIfRequest): readonly string[] {
  const { worksheetFunction, scope, down, across } = request;
  const labelOf = (key: string) => worksheetFunction.parameters.find((parameter) => parameter.key === key)?.label ?? key;
  const faults: string[] = [];
  if (scope.kind === "all" && across === null) faults.push("Choose the input that is varied across the columns.");
  if (scope.kind !== "all" && down === null) faults.push("Choose the input that is varied down the rows.");
  if (down !== null && down.key === across?.key)
    faults.push(`${labelOf(down.key)} cannot be varied both down and across. Choose two different inputs.`);
  for (const [varied, most] of [
    [down, MOST_DOWN],
    [across, MOST_ACROSS],
  ] as const) {
    if (varied === null) continue;
    if (varied.values.length === 0) faults.push(`${labelOf(varied.key)} has no values yet.`);
    if (varied.values.length > most) faults.push(tooMany(labelOf(varied.key), varied.values.length, most));
  }
  if (request.result === "all" && across !== null)
    faults.push("All values of a result fill the columns already. Vary one input down the rows, or choose one value.");
  for (const parameter of worksheetFunction.parameters) {
    if (parameter.optional || parameter.isRange || parameter.key === down?.key || parameter.key === across?.key) continue;
    if (feedOf(request, parameter).kind === "default" && parameter.default === undefined) faults.push(`${parameter.label} is missing.`);
  }
  return faults;
}
