import type { CellRange, CellValue, SheetLayout } from "../workbook/port.ts";
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
  /** Rows that the sheet may grow to, where it may hold more than others do. */
  readonly mostRows?: number;
  /** Runs of columns, first to last, that a formula fills or a function reads by place: they stay side by side in this order. */
  readonly together?: readonly (readonly [first: keyof Columns & string, last: keyof Columns & string])[];
}

export type KeyOf<S extends Sheet> = keyof S["columns"] & string;

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
  /** What was meant, where only the spelling is wrong. */
  readonly instead?: string;
}

export function layoutOf(sheet: Sheet): SheetLayout {
  return {
    name: sheet.name,
    headingRow: sheet.preface.length,
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

/** A record's cell is blank where a function would take it for blank. */
export { isBlank } from "../../functions/worksheet/calling/reading.ts";
