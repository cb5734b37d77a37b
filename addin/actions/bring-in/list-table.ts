/** A list that somebody kept in their own way, as headings and rows. */
import { csvRows } from "../rain-record/csv-rows.ts";
import { isBlank } from "../../records/sheet.ts";
import type { CellValue } from "../../workbook/port.ts";

export interface ListTable {
  /** "Column 3" where the list has no heading. */
  readonly headings: readonly string[];
  readonly rows: readonly ListRow[];
}

export interface ListRow {
  /** As people count it in the list, from 1. */
  readonly line: number;
  readonly cells: readonly CellValue[];
}

type Cells = readonly (readonly CellValue[])[];

const ROWS_LOOKED_AT = 40;
/** Wider than any list of people's, and narrow enough to be looked through at once. */
const MOST_COLUMNS = 200;
const MOST_ROWS = 20_000;

/** `isKnown` says whether a heading is one that the list may be expected to have. */
export function listTable(cells: Cells, isKnown: (heading: string) => boolean): ListTable | { readonly sentence: string } {
  const rows = cells.map((row, at): ListRow => ({ line: at + 1, cells: row })).filter((row) => row.cells.some((cell) => !isBlank(cell)));
  if (rows.length === 0) return { sentence: "There is nothing in it." };
  if (rows.length > MOST_ROWS) return { sentence: `It has ${rows.length} rows, and ${MOST_ROWS} can be brought in at once.` };
  const heading = headingRow(rows, isKnown);
  const below = heading === null ? rows : rows.slice(rows.indexOf(heading) + 1);
  if (below.length === 0) return { sentence: "There are headings and no rows under them." };
  const width = Math.min(MOST_COLUMNS, widthOf(heading === null ? below : [heading, ...below]));
  const headings = Array.from({ length: width }, (_, column) => headingAt(heading, column));
  return { headings, rows: below };
}

/** The row of which most cells are known headings; without any, the first of nothing but words that has others below it. */
function headingRow(rows: readonly ListRow[], isKnown: (heading: string) => boolean): ListRow | null {
  let [found, most]: [ListRow | null, number] = [null, 0];
  for (const row of rows.slice(0, ROWS_LOOKED_AT)) {
    const known = row.cells.filter((cell) => typeof cell === "string" && isKnown(cell)).length;
    if (known > most) [found, most] = [row, known];
  }
  if (most >= 2) return found;
  const width = widthOf(rows.slice(0, ROWS_LOOKED_AT));
  const wordsAlone = rows.find(({ cells }) => {
    const written = cells.filter((cell) => !isBlank(cell));
    return written.length * 2 > width && written.every((cell) => typeof cell === "string" && !/^[\s\d.,/:%$€£-]+$/.test(cell));
  });
  return wordsAlone === rows[0] ? (wordsAlone ?? found) : found;
}

function widthOf(rows: readonly ListRow[]): number {
  return rows.reduce((most, { cells }) => Math.max(most, cells.findLastIndex((cell) => !isBlank(cell)) + 1), 0);
}

function headingAt(heading: ListRow | null, column: number): string {
  const written = String(heading?.cells[column] ?? "")
    .replace(/\s+/g, " ")
    .trim();
  return written === "" ? `Column ${column + 1}` : written;
}

/** The cells of a text with columns, from a file or the clipboard. A list of one column has no separator. */
export function cellsOfText(text: string): Cells | { readonly sentence: string } {
  const read = csvRows(text);
  if (!("sentence" in read)) {
    const cells: CellValue[][] = [];
    for (const row of read.rows) cells[row.line - 1] = row.cells.map((cell) => (cell === "" ? null : cell));
    return Array.from(cells, (row) => row ?? []);
  }
  if (text.trim() === "" || text.includes('"')) return read;
  return text.split(/\r\n|\r|\n/).map((line) => [line.trim() === "" ? null : line.trim()]);
}
