import { addressOf, type CellRange, type CellValue, type Highlight, type SheetLayout, type Tone } from "../workbook/port.ts";
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
  /** Of its results: what to type, and where, to change them. */
  readonly typedInstead?: string;
  /** Nobody sorts its rows: they are found by their place, or read one after the other. */
  readonly isKeptInOrder?: boolean;
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
  /** Check workbook has a repair for it. */
  readonly isRepaired?: boolean;
}

export function layoutOf(sheet: Sheet): SheetLayout {
  const columns = Object.values(sheet.columns);
  return {
    name: sheet.name,
    headingRow: sheet.preface.length,
    columns: columns.map(({ heading, widthPixels, role, numberFormat, note, choices, typedInstead = sheet.typedInstead }) => ({
      heading,
      widthPixels,
      role,
      ...(numberFormat === undefined ? {} : { numberFormat }),
      ...(note === undefined ? {} : { note }),
      ...(choices === undefined ? {} : { choices }),
      ...(role === "input" || typedInstead === undefined ? {} : { typedInstead }),
    })),
    rows: sheet.rows,
    frozenColumns: sheet.frozenColumns,
    preface: sheet.preface,
    // A filter's menu sorts as well.
    ...(sheet.isKeptInOrder !== true && columns.some(({ role }) => role === "input") ? { isFiltered: true } : {}),
    highlights: columns.flatMap((column, place) => highlightsOf(sheet, column, place)),
  };
}

/** By its heading, what is said to people who would type over a result of the sheet. */
export function wordsOverResults(sheet: Sheet): ReadonlyMap<string, string> {
  return new Map(
    layoutOf(sheet).columns.flatMap(({ heading, typedInstead }) => (typedInstead === undefined ? [] : [[heading, typedInstead]])),
  );
}

function highlightsOf(sheet: Sheet, { tones = {} }: Column, column: number): readonly Highlight[] {
  const cells = { sheet: sheet.name, row: sheet.preface.length + 1, column, rows: sheet.rows, columns: 1 };
  const first = addressOf({ ...cells, rows: 1 }).replace(/^.*!/, "$");
  const named = Object.values(tones).flatMap((words) => (words === "other" ? [] : words));
  const each = (sign: string, words: readonly string[]) => words.map((word) => `TRIM(${first})${sign}"${word}"`).join(",");
  return Object.entries(tones).map(([tone, words]) => ({
    cells,
    tone: tone as Tone,
    // An error in the cell is an error of the formula, which then does not hold.
    formula: words === "other" ? `=AND(${each("<>", ["", ...named])})` : `=OR(${each("=", words)})`,
  }));
}

/** A record's cell is blank where a function would take it for blank. */
export { isBlank } from "../../functions/worksheet/calling/reading.ts";
