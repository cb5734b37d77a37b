import type { CellRange, CellValue, SheetLayout } from "../workbook/workbook.ts";
import type { Column } from "./column.ts";
import { findPlace, placeAsSetUp } from "./place.ts";
import type { KeyOf, MissingColumn, Place } from "./place.ts";
import type * as z from "zod";

/** A sheet of the program's workbook, as data: what set-up lays out, what records are read from and written to. */
export interface Sheet<Columns extends Record<string, Column> = Record<string, Column>> {
  readonly name: string;
  /** Lines above the headings: what the sheet is for. */
  readonly preface: readonly string[];
  readonly columns: Columns;
  /** Rows prepared below the headings; formulas over the sheet cover them all. */
  readonly rows: number;
  readonly frozenColumns: number;
  /** Runs of columns, first to last, that a formula fills or a function reads by place: they stay side by side in this order. */
  readonly together?: readonly (readonly [first: keyof Columns & string, last: keyof Columns & string])[];
}

export type RecordOf<S extends Sheet> = { readonly [Key in keyof S["columns"]]: z.output<S["columns"][Key]["cell"]> };

/** One row as a record, with the raw cells it was read from. */
export interface SheetRow<S extends Sheet> {
  readonly sheet: S;
  readonly row: number;
  readonly record: RecordOf<S>;
  readonly cells: { readonly [Key in keyof S["columns"]]: CellValue };
  /** Where the cell of a column stands. */
  at(key: KeyOf<S>): CellRange;
}

/** A cell that does not hold what its column asks for. The record has null there; the cell is left as it is. */
export interface Slip {
  readonly where: CellRange;
  readonly sentence: string;
}

export interface SheetRecords<S extends Sheet> {
  readonly rows: readonly SheetRow<S>[];
  /** Null where a column is missing. */
  readonly place: Place<S> | null;
  readonly slips: readonly Slip[];
}

/** Row of the headings as set-up laid them out. */
export function headingRow(sheet: Sheet): number {
  return placeAsSetUp(sheet).headingRow;
}

export function firstRow(sheet: Sheet): number {
  return placeAsSetUp(sheet).firstRow;
}

export function columnOf<S extends Sheet>(sheet: S, key: KeyOf<S>): number {
  return placeAsSetUp(sheet).columnIndex(key);
}

/** A cell where set-up put it. On a sheet that people have worked with, ask its place, or the row that was read. */
export function cellOf<S extends Sheet>(sheet: S, row: number, key: KeyOf<S>): CellRange {
  return placeAsSetUp(sheet).cell(row, key);
}

export function layoutOf(sheet: Sheet): SheetLayout {
  return {
    name: sheet.name,
    headingRow: headingRow(sheet),
    columns: Object.values(sheet.columns).map(({ heading, widthPixels, role, numberFormat, note, choices }) => ({
      heading,
      widthPixels,
      role,
      ...(numberFormat === undefined ? {} : { numberFormat }),
      ...(note === undefined ? {} : { note }),
      ...(choices === undefined ? {} : { choices }),
    })),
    rows: sheet.rows,
    frozenColumns: sheet.frozenColumns,
    preface: sheet.preface,
  };
}

/**
 * Reads the cells of a sheet, from A1, into records. Columns are found by their headings, wherever people have moved
 * them. Rows whose input cells are all blank are no records. A heading that is nowhere is a slip and nothing is read,
 * so that one column is never taken for another.
 */
export function readRecords<S extends Sheet>(sheet: S, values: readonly (readonly CellValue[])[]): SheetRecords<S> {
  const at = findPlace(sheet, values);
  if (!("place" in at)) return { rows: [], place: null, slips: at.missing.map((column) => missingColumnSlip(sheet, column)) };
  const { place } = at;
  const apart = columnsApart(place);
  if (apart.length > 0) return { rows: [], place: null, slips: apart };
  const keys = Object.keys(sheet.columns) as KeyOf<S>[];
  const slips: Slip[] = [];
  const rows = values.slice(place.firstRow).flatMap((cells, index): SheetRow<S>[] => {
    const row = place.firstRow + index;
    const held = (key: KeyOf<S>) => cells[place.columnIndex(key)] ?? null;
    if (!keys.some((key) => sheet.columns[key]?.role === "input" && !isBlank(held(key)))) return [];
    const record: Record<string, unknown> = {};
    for (const key of keys) {
      const checked = (sheet.columns[key] as Column).cell.safeParse(held(key));
      record[key] = checked.success ? checked.data : null;
      if (!checked.success) slips.push({ where: place.cell(row, key), sentence: checked.error.issues[0]?.message ?? "This cell does not hold what its column asks for." });
    }
    const raw = Object.fromEntries(keys.map((key) => [key, held(key)]));
    return [{ sheet, row, record: record as RecordOf<S>, cells: raw as SheetRow<S>["cells"], at: (key) => place.cell(row, key) }];
  });
  return { rows, place, slips };
}

function missingColumnSlip(sheet: Sheet, { heading, expectedAt }: MissingColumn): Slip {
  return {
    where: expectedAt,
    sentence: `Sheet ${sheet.name} has no column "${heading}", so nothing on it is read. Check the workbook to see a repair, or put the heading back.`,
  };
}

/** Columns that must stand side by side and do not. */
function columnsApart<S extends Sheet>(place: Place<S>): Slip[] {
  const { sheet } = place;
  return (sheet.together ?? []).flatMap(([first, last]): Slip[] => {
    if (place.isTable(first, last)) return [];
    const headings = [first, last].map((key) => `"${sheet.columns[key]?.heading ?? key}"`).join(" to ");
    return [{ where: place.cell(place.headingRow, first), sentence: `Columns ${headings} of sheet ${sheet.name} must stand side by side in their first order, because formulas read them by place. Nothing on the sheet is read until they do.` }];
  });
}

export function isBlank(value: CellValue): boolean {
  return value === null || (typeof value === "string" && value.trim() === "");
}
