import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import type { Citation } from "../../../functions/published/source.ts";
import { isCellError, type Cell } from "../../../functions/worksheet/calling/cell.ts";
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";
import { isBlank, isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { writtenUnit, type ShownStep } from "../../../functions/worksheet/calling/working.ts";
import { addressOf, isErrorCode, type CellRange, type CellValue, type Workbook } from "../../workbook/port.ts";
import { formulasReaching, rangesIn, type FormulaFound } from "./find-formula.ts";
import { asInput, CELL_BY_CELL, cellAt, FormulaFollower, functionCalled, passedOn, spreadsheetName, type Rows } from "./follow-formula.ts";
import type { CallExpression, Expression } from "./read-formula.ts";

/** How a cell came to its value, for somebody who wants to follow it by hand. */
export interface Working {
  readonly where: CellRange;
  /** "Design!R5" */
  readonly address: string;
  readonly formula: string;
  /** Where the formula stands, when the cell belongs to its spill. */
  readonly spilledFrom: string | null;
  /** What the cell shows. */
  readonly shown: CellValue;
  /** Whether following the formula gives what the cell shows; null where it cannot be followed to its end. */
  readonly agrees: boolean | null;
  /** Each call of ours in the formula, the outermost first. */
  readonly calls: readonly WorkedCall[];
}

export interface WorkedCall {
  readonly name: string;
  readonly written: string;
  readonly summary: string;
  readonly equation: readonly string[];
  readonly inputs: readonly WorkedInput[];
  readonly steps: readonly ShownStep[];
  /** A row of named values, or several; none where an input is worked out inside the formula. */
  readonly results: readonly (readonly WorkedResult[])[];
  readonly cautions: readonly string[];
  readonly sources: readonly Citation[];
}

export interface WorkedInput {
  readonly label: string;
  readonly unit: string;
  /** As it stands in the formula; "" when it was left out. */
  readonly written: string;
  /** What the call took, a range cell by cell; null when it is worked out inside the formula. */
  readonly cells: readonly Cell[] | null;
  /** What stands in for a blank optional argument: its default in the units of the call, or what it means. */
  readonly leftOut: { readonly value: Cell } | { readonly meaning: string } | null;
}

export interface WorkedResult {
  readonly label: string;
  readonly unit: string;
  readonly value: Cell;
}

/** The working of the cell, or null when none of our functions gave it its value. */
export async function showWorking(workbook: Workbook, selected: CellRange): Promise<Working | null> {
  const where = { ...selected, rows: 1, columns: 1 };
  for (const found of await formulasReaching(workbook, where)) {
    const [shown, follower] = await readCells(workbook, where, found.expression);
    const whole = follower.follow(found.expression);
    const isOwn = found.down === 0 && found.across === 0;
    if (!isOwn && (whole?.[found.down]?.length ?? 0) <= found.across) continue;
    const result = whole?.[found.down]?.[found.across];
    const agrees = result === undefined ? null : isShown(result, shown);
    return {
      where,
      address: addressOf(where),
      formula: found.formula,
      spilledFrom: isOwn ? null : addressOf(found.where),
      shown,
      agrees,
      calls: callsAt(found).map(({ call, place }) => workedCall(call, place, follower, agrees !== false && !isBlank(shown))),
    };
  }
  return null;
}

/** What the cell shows, and a follower that knows every cell the formula reads. */
async function readCells(workbook: Workbook, where: CellRange, expression: Expression): Promise<readonly [CellValue, FormulaFollower]> {
  const present = new Set(await workbook.sheetNames());
  const ranges = rangesIn(expression).filter(({ sheet, rows, columns }) => present.has(sheet) && rows * columns <= MOST_CELLS);
  const [[[shown = null] = []] = [], ...contents] = await workbook.read([where, ...ranges]);
  const byAddress = new Map(ranges.map((range, place) => [addressOf(range), (contents[place] ?? []).map((row) => row.map(asCell))]));
  return [shown, new FormulaFollower((range) => byAddress.get(addressOf(range)))];
}

/** Rain of a lifetime, day by day, and no more: a larger range is not read, and what needs it is not followed. */
const MOST_CELLS = 50_000;

function asCell(value: CellValue): Cell {
  return isErrorCode(value) ? passedOn(value) : value;
}

function isShown(result: Cell, shown: CellValue): boolean {
  if (isCellError(result)) return shown === result.code;
  if (isBlank(result)) return isBlank(shown);
  if (typeof result === "number" && typeof shown === "number") return Math.abs(result - shown) <= 1e-9 * Math.max(1, Math.abs(result));
  // Some spreadsheets keep TRUE as 1.
  return typeof result === "boolean" ? shown === result || shown === Number(result) : result === shown;
}

/** Where in the result of a call the selected cell stands; null when the call does not spill along with the cell. */
type Place = { readonly row: number; readonly column: number } | null;

interface PlacedCall {
  readonly call: CallExpression;
  readonly place: Place;
}

function callsAt({ expression, down, across }: FormulaFound): readonly PlacedCall[] {
  return placedCalls(expression, { row: down, column: across });
}

function placedCalls(expression: Expression, place: Place): readonly PlacedCall[] {
  if (expression.kind === "operation") return expression.operands.flatMap((operand) => placedCalls(operand, place));
  if (expression.kind !== "call") return [];
  const own = functionCalled(expression);
  if (own === undefined) {
    const name = spreadsheetName(expression);
    // What LET names may have another shape; its answer is the cell's.
    const isAnswer = (at: number) => CELL_BY_CELL.has(name) || (name === "LET" && at === expression.inputs.length - 1);
    return expression.inputs.flatMap((input, at) => placedCalls(input, isAnswer(at) ? place : null));
  }
  const ofInputs = placeOfInputs(own, place);
  return [
    { call: expression, place },
    ...expression.inputs.flatMap((input, at) => placedCalls(input, own.parameters[at]?.isRange === true ? null : ofInputs)),
  ];
}

/** Only a function with one value lifts across columns; a table is one answer to single cells. */
function placeOfInputs({ result }: WorksheetFunction, place: Place): Place {
  if (place === null || result.shape === "value") return place;
  return { row: result.shape === "row" ? place.row : 0, column: 0 };
}

function workedCall(call: CallExpression, place: Place, follower: FormulaFollower, withNumbers: boolean): WorkedCall {
  const declared = functionCalled(call) as WorksheetFunction;
  const { name, summary, equation, sources } = declared;
  const all = follower.follow(call);
  const at = all === undefined ? place : placeIn(all, place, declared);
  const inputPlace = placeOfInputs(declared, at);
  const given = follower.inputsOf(call);
  const taken = declared.parameters.map(({ isRange }, parameter) => {
    if (parameter >= given.length) return EMPTY;
    const rows = given[parameter];
    return rows === undefined || isRange || inputPlace === null ? rows : alone(cellAt(rows, inputPlace.row, inputPlace.column));
  });
  const unitsCell = declared.parameters.at(-1)?.key === "units" ? taken.at(-1)?.[0]?.[0] : undefined;
  const system: UnitSystem = typeof unitsCell === "string" && plainKey(unitsCell) === "metric" ? "metric" : "us";
  const oneRow = withNumbers && at !== null && taken.every((rows) => rows !== undefined) ? taken.map(asInput) : null;
  return {
    name,
    written: call.written,
    summary,
    equation,
    inputs: declared.parameters.map((parameter, index) => workedInput(parameter, call.inputs[index]?.written ?? "", taken[index], system)),
    steps: oneRow === null ? [] : declared.workingFor(oneRow),
    results: withNumbers && all !== undefined ? resultsOf(declared, all, at, system) : [],
    cautions: oneRow === null ? [] : declared.cautionsFor(oneRow),
    sources,
  };
}

const EMPTY: Rows = [[null]];

function alone(cell: Cell | undefined): Rows | undefined {
  return cell === undefined ? undefined : [[cell]];
}

/** A result with one row or column meets every place; a call that stands alone in its formula has one place at most. */
function placeIn(all: Rows, place: Place, { result }: WorksheetFunction): Place {
  const columns = all[0]?.length ?? 0;
  if (place === null) return all.length === 1 && (columns === 1 || result.shape === "row") ? { row: 0, column: 0 } : null;
  const inside = { row: all.length === 1 ? 0 : place.row, column: columns === 1 ? 0 : place.column };
  return inside.row < all.length && inside.column < columns ? inside : null;
}

function resultsOf({ result }: WorksheetFunction, all: Rows, at: Place, system: UnitSystem): readonly (readonly WorkedResult[])[] {
  const rows = at === null ? all : [all[at.row] ?? []];
  return rows.map((row) => {
    const cells = result.shape === "value" && at !== null ? [row[at.column] ?? null] : row;
    return cells.map((value, column) => {
      const { label = "", kind = "text" } = result.values[result.shape === "value" ? 0 : column] ?? {};
      return { label, value, unit: writtenUnit(kind, system) };
    });
  });
}

function workedInput(parameter: Parameter, written: string, rows: Rows | undefined, system: UnitSystem): WorkedInput {
  const cells = rows === undefined ? null : rows.flat();
  const isLeftOut = cells !== null && cells.every(isBlank);
  return {
    label: parameter.label,
    unit: writtenUnit(parameter.kind, system),
    written,
    cells,
    leftOut: isLeftOut ? standIn(parameter, system) : null,
  };
}

function standIn({ kind, default: fallback, leftOutMeans }: Parameter, system: UnitSystem): WorkedInput["leftOut"] {
  if (leftOutMeans !== undefined) return { meaning: leftOutMeans };
  if (fallback === undefined) return null;
  const isNumber = typeof fallback === "number" && isNumberKind(kind);
  // To 12 digits, so that 6 in is exactly 152.4 mm.
  return { value: isNumber ? Number(fromUs(kind, fallback, system).toPrecision(12)) : fallback };
}
