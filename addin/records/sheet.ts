import { absolute, addressOf } from "../workbook/workbook.ts";
import type { CellRange, CellValue, SheetLayout } from "../workbook/workbook.ts";
import type { Column } from "./column.ts";
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
}

export type RecordOf<S extends Sheet> = { readonly [Key in keyof S["columns"]]: z.output<S["columns"][Key]["cell"]> };

/** One row as a record, with the raw cells it was read from. */
export interface SheetRow<S extends Sheet> {
  readonly row: number;
  readonly record: RecordOf<S>;
  readonly cells: { readonly [Key in keyof S["columns"]]: CellValue };
}

/** A cell that does not hold what its column asks for. The record has null there; the cell is left as it is. */
export interface Slip {
  readonly where: CellRange;
  readonly sentence: string;
}

export interface SheetRecords<S extends Sheet> {
  readonly rows: readonly SheetRow<S>[];
  readonly slips: readonly Slip[];
}

export function headingRow(sheet: Sheet): number {
  return sheet.preface.length;
}

export function firstRow(sheet: Sheet): number {
  return headingRow(sheet) + 1;
}

/** Headings and prepared rows together: what to read to know everything on the sheet. */
export function wholeRange(sheet: Sheet): CellRange {
  const columns = Object.keys(sheet.columns).length;
  return { sheet: sheet.name, row: headingRow(sheet), column: 0, rows: sheet.rows + 1, columns };
}

export function columnOf<S extends Sheet>(sheet: S, key: keyof S["columns"] & string): number {
  return Object.keys(sheet.columns).indexOf(key);
}

export function cellOf<S extends Sheet>(sheet: S, row: number, key: keyof S["columns"] & string): CellRange {
  return { sheet: sheet.name, row, column: columnOf(sheet, key), rows: 1, columns: 1 };
}

/** All prepared cells of one column, as a formula writes them: Sites!$D$4:$D$203. */
export function columnReference<S extends Sheet>(sheet: S, key: keyof S["columns"] & string): string {
  const address = addressOf({ ...cellOf(sheet, firstRow(sheet), key), rows: sheet.rows });
  return absolute(address);
}

/** One cell as a formula writes it, its row free to move: Sites!$D4. */
export function cellReference<S extends Sheet>(sheet: S, row: number, key: keyof S["columns"] & string): string {
  return addressOf(cellOf(sheet, row, key)).replace(/!([A-Z]+)/, "!$$$1");
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
 * Reads the values of `wholeRange(sheet)` into records. Rows whose input cells are all blank are no records.
 * A heading that is not where set-up put it is a slip, so that a moved column is never read as another.
 */
export function readRecords<S extends Sheet>(sheet: S, values: readonly (readonly CellValue[])[]): SheetRecords<S> {
  const keys = Object.keys(sheet.columns) as (keyof S["columns"] & string)[];
  const slips: Slip[] = headingSlips(sheet, values[0] ?? []);
  if (slips.length > 0) return { rows: [], slips };
  const rows: SheetRow<S>[] = [];
  values.slice(1).forEach((cells, index) => {
    const row = firstRow(sheet) + index;
    const inputs = keys.filter((key, column) => sheet.columns[key]?.role === "input" && !isBlank(cells[column] ?? null));
    if (inputs.length === 0) return;
    const record: Record<string, unknown> = {};
    keys.forEach((key, column) => {
      const checked = (sheet.columns[key] as Column).cell.safeParse(cells[column] ?? null);
      record[key] = checked.success ? checked.data : null;
      if (!checked.success) {
        const sentence = checked.error.issues[0]?.message ?? "This cell does not hold what its column asks for.";
        slips.push({ where: cellOf(sheet, row, key), sentence });
      }
    });
    const raw = Object.fromEntries(keys.map((key, column) => [key, cells[column] ?? null]));
    rows.push({ row, record: record as RecordOf<S>, cells: raw as SheetRow<S>["cells"] });
  });
  return { rows, slips };
}

function headingSlips(sheet: Sheet, headings: readonly CellValue[]): Slip[] {
  const found = (heading: string, column: number) => String(headings[column] ?? "").trim() === heading;
  return Object.entries(sheet.columns).flatMap(([key, { heading }], column) =>
    found(heading, column)
      ? []
      : [{ where: cellOf(sheet, headingRow(sheet), key), sentence: `The heading "${heading}" is expected here. Put the column back, or start the sheet anew.` }],
  );
}

export function isBlank(value: CellValue): boolean {
  return value === null || (typeof value === "string" && value.trim() === "");
}
