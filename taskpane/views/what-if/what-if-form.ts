import { keyAmong, plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import type { Program } from "../../../addin/actions/program/read-program.ts";
import {
  factorOf,
  faultsOf,
  functionsFor,
  sourceIn,
  variable,
  type Scope,
  type Varied,
  type WhatIfRequest,
} from "../../../addin/actions/what-if/what-if-request.ts";
import { MOST_ACROSS, MOST_DOWN, spread } from "../../../addin/actions/what-if/what-if-values.ts";
import { placeWords, valueNow, type InputSource } from "../../../addin/actions/what-if/what-if-preview.ts";
import type { CellValue } from "../../../addin/workbook/port.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { writtenUnit } from "../../../functions/worksheet/calling/working.ts";
import { shown } from "../../parts/numbers.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { whatIfText as words } from "./text.ts";

/** The values of one varied input as typed. */
export interface TypedValues {
  readonly key: string | null;
  readonly how: "steps" | "list";
  readonly from: string;
  readonly to: string;
  readonly step: string;
  readonly list: string;
}

/** Everything typed that is in the units of the table. */
export interface TypedInputs {
  readonly down: TypedValues;
  readonly across: TypedValues;
  /** By argument key, of whichever function: what was typed for one is offered to the next. */
  readonly fixed: readonly (readonly [key: string, typed: string])[];
}

/** The form as typed; plain data, because it is kept as a draft. Inches are never taken for millimetres when the yard changes. */
export interface TypedWhatIf extends Readonly<Record<UnitSystem, TypedInputs>> {
  readonly scope: Scope["kind"];
  readonly siteId: string | null;
  readonly units: UnitSystem;
  readonly functionName: string;
  /** The place of the value in a row result, or "all". */
  readonly result: string;
}

const NO_VALUES: TypedValues = { key: null, how: "steps", from: "", to: "", step: "", list: "" };
const NO_INPUTS: TypedInputs = { down: { ...NO_VALUES, key: "ponding" }, across: NO_VALUES, fixed: [] };

/** The question a coordinator asks most: how large a basin, for this ponding or that one. */
export function startingForm(program: Program): TypedWhatIf {
  const [first] = program.yards;
  return {
    scope: first === undefined ? "typed" : "yard",
    siteId: first?.siteId ?? null,
    units: first?.units ?? "us",
    functionName: "SITEDESIGN",
    result: "2",
    us: NO_INPUTS,
    metric: NO_INPUTS,
  };
}

export interface WhatIfAsRead {
  readonly scope: Scope;
  /** The units in which everything is typed: every yard's table takes US numbers. */
  readonly units: UnitSystem;
  readonly offered: readonly WorksheetFunction[];
  readonly worksheetFunction: WorksheetFunction;
  readonly down: ValuesAsRead;
  readonly across: ValuesAsRead;
  readonly inputs: readonly InputAsRead[];
  /** The table asked for, once nothing stands in its way. */
  readonly request: WhatIfRequest | null;
  readonly faults: readonly string[];
}

export interface ValuesAsRead {
  readonly parameter: Parameter | null;
  readonly values: readonly CellValue[];
  readonly fault: string | null;
}

/** An input that is not varied. */
export interface InputAsRead {
  readonly parameter: Parameter;
  readonly source: InputSource | undefined;
  readonly typed: string;
  readonly fault: string | null;
  readonly unit: string;
  readonly hint: string;
}

export function readWhatIf(form: TypedWhatIf, program: Program): WhatIfAsRead {
  const scope = scopeOf(form, program);
  const units = scope.kind === "all" ? "us" : scope.units;
  const typed = form[units];
  const offered = functionsFor(scope);
  const worksheetFunction = offered.find(({ name }) => name === form.functionName) ?? offered[0];
  if (worksheetFunction === undefined) throw new Error("The catalogue offers no function to vary.");
  const result = resultOf(form.result, worksheetFunction, scope);
  const fillsColumns = result === "all";
  const down = scope.kind === "all" ? NOTHING : readValues(typed.down, worksheetFunction, MOST_DOWN);
  const across = fillsColumns ? NOTHING : readValues(typed.across, worksheetFunction, MOST_ACROSS);
  const inputs = worksheetFunction.parameters
    .filter(({ key }) => key !== "units" && key !== down.parameter?.key && key !== across.parameter?.key)
    .map((parameter) => readInput(parameter, typed, { scope, units, worksheetFunction, program }));
  const asked: WhatIfRequest = {
    worksheetFunction,
    result,
    scope,
    down: variedOf(down),
    across: variedOf(across),
    fixed: new Map(
      inputs.flatMap((input) =>
        input.typed.trim() === "" || input.parameter.isRange ? [] : [[input.parameter.key, cellOf(input.parameter, input.typed)]],
      ),
    ),
  };
  const typedFaults = [down.fault, across.fault, ...inputs.map(({ fault }) => fault)].filter((fault) => fault !== null);
  const faults = [...new Set([...typedFaults, ...faultsOf(asked)])];
  return { scope, units, offered, worksheetFunction, down, across, inputs, request: faults.length === 0 ? asked : null, faults };
}

const NOTHING: ValuesAsRead = { parameter: null, values: [], fault: null };

function scopeOf(form: TypedWhatIf, program: Program): Scope {
  if (form.scope === "all") return { kind: "all" };
  const yard = program.yards.find(({ siteId }) => siteId === form.siteId) ?? program.yards[0];
  return form.scope === "typed" || yard === undefined
    ? { kind: "typed", units: form.units }
    : { kind: "yard", siteId: yard.siteId, units: yard.units };
}

function resultOf(typed: string, { result }: WorksheetFunction, scope: Scope): number | "all" {
  if (result.shape === "value") return 0;
  if (typed === "all" && scope.kind !== "all") return "all";
  const place = Number(typed);
  return Number.isInteger(place) && place < result.values.length ? place : 0;
}

function variedOf({ parameter, values }: ValuesAsRead): Varied | null {
  return parameter === null ? null : { key: parameter.key, values };
}

function readValues(typed: TypedValues, worksheetFunction: WorksheetFunction, most: number): ValuesAsRead {
  const parameter = variable(worksheetFunction).find(({ key }) => key === typed.key) ?? null;
  if (parameter === null) return NOTHING;
  const found = isNumberKind(parameter.kind) && typed.how === "steps" ? stepsOf(typed, parameter, most) : listOf(typed.list, parameter);
  return { parameter, values: "values" in found ? found.values : [], fault: "sentence" in found ? found.sentence : null };
}

type Found = { readonly values: readonly CellValue[] } | { readonly sentence: string };

function stepsOf({ from, to, step }: TypedValues, { label }: Parameter, most: number): Found {
  if ([from, to, step].every((typed) => typed.trim() === "")) return { sentence: words.missingValues(label) };
  const numbers: number[] = [];
  for (const [typed, name] of [
    [from, words.from],
    [to, words.to],
    [step, words.step],
  ] as const) {
    const read = readTypedNumber(typed, { label: `${label}: ${name}`, required: true });
    if (isRefused(read)) return read;
    numbers.push(read.value ?? 0);
  }
  const [first = 0, last = 0, by = 0] = numbers;
  return spread(label, first, last, by, most);
}

function listOf(typed: string, parameter: Parameter): Found {
  const isNumber = isNumberKind(parameter.kind);
  const parts = typed
    .split(isNumber ? /[;\s]+|,\s+/ : /\s*[;\n]\s*/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (parts.length === 0) return { sentence: words.missingValues(parameter.label) };
  const values: CellValue[] = [];
  for (const part of parts) {
    const fault = faultOfTyped(parameter, part);
    if (fault !== null) return { sentence: fault };
    values.push(cellOf(parameter, part));
  }
  return { values };
}

interface Setting {
  readonly scope: Scope;
  readonly units: UnitSystem;
  readonly worksheetFunction: WorksheetFunction;
  readonly program: Program;
}

function readInput(parameter: Parameter, { fixed }: TypedInputs, setting: Setting): InputAsRead {
  const typed = fixed.find(([key]) => key === parameter.key)?.[1] ?? "";
  const source = sourceIn(setting.scope, setting.worksheetFunction.name, parameter);
  return {
    parameter,
    source,
    typed,
    fault: parameter.isRange || typed.trim() === "" ? null : faultOfTyped(parameter, typed.trim()),
    unit: isNumberKind(parameter.kind) ? writtenUnit(parameter.kind, setting.units) : "",
    hint: hintOf(parameter, source, setting),
  };
}

function hintOf(parameter: Parameter, source: InputSource | undefined, { scope, units, program }: Setting): string {
  if (source !== undefined) {
    const yard = scope.kind === "yard" ? program.yards.find(({ siteId }) => siteId === scope.siteId) : undefined;
    const now = scope.kind === "all" ? undefined : valueNow(program, yard, source, parameter);
    if (now !== null && now !== "") return words.follows(placeOf(source), now === undefined ? "" : spoken(now, parameter, units));
    if (parameter.default === undefined && parameter.leftOutMeans === undefined) return words.follows(placeOf(source), words.blank);
  }
  if (parameter.leftOutMeans !== undefined) return words.leftOut(parameter.leftOutMeans);
  const { default: usual, kind } = parameter;
  if (usual === undefined) return words.required;
  return words.usual(
    spoken(typeof usual === "number" && isNumberKind(kind) ? fromUs(kind, usual, units) : (usual as CellValue), parameter, units),
  );
}

function spoken(value: CellValue, { kind }: Parameter, units: UnitSystem): string {
  if (typeof value === "boolean") return value ? words.yes : words.no;
  if (typeof value !== "number") return String(value);
  return `${shown(value, 3)} ${isNumberKind(kind) ? writtenUnit(kind, units) : ""}`.trim();
}

function placeOf(source: InputSource): string {
  return source.kind === "series" ? words.seriesNames[source.series] : placeWords(source);
}

function faultOfTyped(parameter: Parameter, typed: string): string | null {
  const { kind, label, choices } = parameter;
  if (isNumberKind(kind)) {
    const read = readTypedNumber(typed, { label });
    return isRefused(read) ? read.sentence : null;
  }
  const listed = kind === "flag" ? [words.yes, words.no] : choices;
  return listed === undefined || keyAmong(listed, typed) !== undefined ? null : words.isText(label, typed.slice(0, 40), listed.join("; "));
}

/** What a cell holds for something typed that has no fault. */
function cellOf({ kind, choices }: Parameter, typed: string): CellValue {
  const text = typed.trim();
  if (isNumberKind(kind)) return Number(text);
  if (kind === "flag") return plainKey(text) === plainKey(words.yes);
  return keyAmong(choices ?? [], text) ?? text;
}

/** Whether the values of an input are converted for a metric yard. */
export function isConverted({ parameter }: ValuesAsRead): boolean {
  return parameter !== null && factorOf(parameter) !== 1;
}
