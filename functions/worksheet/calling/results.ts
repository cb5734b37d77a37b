import { conversionFromUs, hasDimension, unitOf, type NumberKind, type UnitSystem } from "../../quantities.ts";
import type { ResultValue, ValueKind } from "./arguments.ts";
import { isCellError, type Cell, type CellError } from "./cell.ts";
import { isNumberKind } from "./reading.ts";
import { isTooLarge } from "./sentences.ts";

/** A row of named values for each row of inputs. */
export interface RowResult<Row> {
  readonly shape: "row";
  readonly values: readonly ResultValue<unknown>[];
  /** Exists for the type checker only. */
  readonly output?: Row;
}

/** As many rows as the calculation finds, under these headings. The headings are not part of the result. */
export interface TableResult<Rows> {
  readonly shape: "table";
  readonly values: readonly ResultValue<unknown>[];
  /** Exists for the type checker only. */
  readonly output?: Rows;
}

/** What a calculation returns is `Output`; any cell of a row may be an error of its own. */
export type ResultSpec<Output> = ResultValue<Output> | RowResult<Output> | TableResult<Output>;

type RowFrom<Values extends readonly ResultValue<unknown>[]> = {
  readonly [Place in keyof Values]: Values[Place] extends ResultValue<infer Value> ? Value | CellError : never;
};

export function rowOf<const Values extends readonly ResultValue<unknown>[]>(values: Values): RowResult<RowFrom<Values>> {
  return { shape: "row", values };
}

export function tableOf<const Values extends readonly ResultValue<unknown>[]>(values: Values): TableResult<readonly RowFrom<Values>[]> {
  return { shape: "table", values };
}

/** A result as readers of the catalogue see it, whatever its shape. */
export interface Result {
  readonly shape: "value" | "row" | "table";
  readonly values: readonly NamedResult[];
}

export interface NamedResult {
  readonly label: string;
  readonly kind: ValueKind;
  readonly units: UnitNames | undefined;
}

export interface UnitNames {
  readonly us: string;
  readonly metric: string;
}

export function unitNames(kind: ValueKind): UnitNames | undefined {
  return isNumberKind(kind) && hasDimension(kind) ? { us: unitOf(kind, "us"), metric: unitOf(kind, "metric") } : undefined;
}

export function resultFrom(spec: ResultSpec<unknown>): Result {
  const values = "shape" in spec ? spec.values : [spec];
  return {
    shape: "shape" in spec ? spec.shape : "value",
    values: values.map(({ label, kind }) => ({ label, kind, units: unitNames(kind) })),
  };
}

/** What one row of inputs is answered with: a cell, a row of cells or a whole table, by the shape of the result. */
export type Answer = Cell | readonly Cell[] | readonly (readonly Cell[])[];

/** Puts what a calculation returned into cells; undefined where it is nothing that a cell can show. */
export type Presenter = (output: unknown) => Answer | undefined;

export function presenterOf(result: Result, system: UnitSystem): Presenter {
  const presenters = result.values.map(({ kind, label }) => cellPresenter(isNumberKind(kind) ? kind : "number", label, system));
  const row = (output: unknown): readonly Cell[] | undefined => {
    if (!Array.isArray(output)) return undefined;
    // Most rows are in US units and can be shown as they were calculated: a call over many rows does not copy them.
    if (system === "us" && output.length === presenters.length && output.every(isShownAsItIs)) return output as readonly Cell[];
    const cells: Cell[] = new Array(presenters.length);
    let place = 0;
    for (const present of presenters) {
      const cell = present(output[place]);
      if (cell === undefined) return undefined;
      cells[place] = cell;
      place += 1;
    }
    return cells;
  };
  const table = (output: unknown): readonly (readonly Cell[])[] | undefined => {
    if (!Array.isArray(output) || output.length === 0) return undefined;
    const rows = output.map(row);
    return rows.every((cells) => cells !== undefined) ? rows : undefined;
  };
  if (result.shape === "value") return (output) => presenters[0]?.(output);
  const rowOrTable = result.shape === "row" ? row : table;
  return (output) => rowOrTable(output) ?? (isCellError(output) ? filledWith(output, result) : undefined);
}

/** A value in the caller's units as a cell shows it; undefined where it is nothing that a cell can show. */
function cellPresenter(kind: NumberKind, label: string, system: UnitSystem): (output: unknown) => Cell | undefined {
  const fromUs = conversionFromUs(kind, system);
  return (output) => {
    if (typeof output === "number") {
      const inCallersUnits = fromUs(output);
      if (Number.isFinite(inCallersUnits)) return inCallersUnits;
      return Number.isNaN(inCallersUnits) ? undefined : isTooLarge(label);
    }
    return isShownAsItIs(output) ? output : undefined;
  };
}

function isShownAsItIs(output: unknown): output is Cell {
  if (typeof output === "number") return Number.isFinite(output);
  return typeof output === "string" || typeof output === "boolean" || isCellError(output);
}

/** The answer that shows one cell in every place: an error, or the blank of a row where nothing is typed yet. */
export function filledWith(cell: Cell, result: Result): Answer {
  if (result.shape === "value") return cell;
  return result.shape === "row" ? result.values.map(() => cell) : [[cell]];
}
