import { csvRows, type CsvRow } from "./csv-rows.ts";
import { readMoment } from "./moment-reading.ts";
import { decimalMarkOf, readDepth } from "./depth-reading.ts";

export type DepthUnit = "in" | "mm";

/** The cells of a file below its headings, and what its columns seem to hold. */
export interface RainTable {
  /** "Column 1" where the file has no headings. */
  readonly headings: readonly string[];
  readonly rows: readonly CsvRow[];
  readonly hasHeadings: boolean;
  readonly guess: RainColumns;
}

/** Which column holds what, counted from 0. */
export interface RainColumns {
  readonly date: number | null;
  /** Where the time of day has a column of its own. */
  readonly time: number | null;
  readonly depth: number | null;
}

export function readRainTable(text: string): RainTable | { readonly sentence: string } {
  const read = csvRows(text);
  if ("sentence" in read) return read;
  // Lines above the table that say where it is from have fewer columns than it.
  const width = usualWidth(read.rows);
  const start = Math.max(
    0,
    read.rows.findIndex(({ cells }) => cells.length >= Math.max(2, width - 1)),
  );
  const [first, ...others] = read.rows.slice(start);
  if (first === undefined || width < 2)
    return { sentence: "No line has two columns: put a comma, a semicolon or a tab between the date and the depth." };
  const hasHeadings = !first.cells.some((cell) => readMoment(cell) !== null);
  const rows = hasHeadings ? others : [first, ...others];
  if (rows.length === 0) return { sentence: "There are headings and no readings under them." };
  const headings = first.cells.map((cell, column) => (hasHeadings && cell !== "" ? cell : `Column ${column + 1}`));
  return { headings, rows, hasHeadings, guess: guessColumns(headings, rows.slice(0, ROWS_LOOKED_AT)) };
}

const ROWS_LOOKED_AT = 200;

function usualWidth(rows: readonly CsvRow[]): number {
  const widths = rows
    .slice(0, ROWS_LOOKED_AT)
    .map(({ cells }) => cells.length)
    .sort((one, other) => one - other);
  return widths[Math.floor(widths.length / 2)] ?? 0;
}

function guessColumns(headings: readonly string[], rows: readonly CsvRow[]): RainColumns {
  const columns = headings.map((_, column) => column);
  const cellsOf = (column: number) => rows.map(({ cells }) => cells[column] ?? "");
  const most = (column: number, holds: (cell: string) => boolean) => 2 * cellsOf(column).filter(holds).length > rows.length;
  const date = columns.find((column) => most(column, (cell) => readMoment(cell) !== null)) ?? null;
  const isTime = (cell: string) => /^\d{1,2}:\d{2}/.test(cell);
  const time = columns.find((column) => column !== date && most(column, isTime)) ?? null;
  const others = columns.filter((column) => column !== date && column !== time);
  const numeric = others.filter((column) => most(column, holdsDepth(cellsOf(column))));
  const named = [...numeric, ...others].find((column) => /rain|precip|prcp|depth|amount/i.test(headings[column] ?? ""));
  const only = [numeric, others].find(({ length }) => length === 1)?.[0];
  return { date, time, depth: named ?? only ?? null };
}

function holdsDepth(cells: readonly string[]): (cell: string) => boolean {
  const mark = decimalMarkOf(cells);
  return (cell) => cell !== "" && readDepth(cell, mark).kind !== "unreadable";
}

/** The unit that the heading of a column says; null where it says none, or both. */
export function unitInHeading(heading: string): DepthUnit | null {
  const millimetres = /(?:^|[^a-z])(?:mm|millimet(?:re|er)s?)(?:$|[^a-z])/i.test(heading);
  const inches = /(?:^|[^a-z])(?:inch|inches)(?:$|[^a-z])|[([]\s*in\.?\s*[)\]]|(?:^|[_\s,])in\.?$|["″]/i.test(heading);
  return millimetres === inches ? null : millimetres ? "mm" : "in";
}
