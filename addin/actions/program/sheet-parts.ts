/**
 * Sheets that grow with every answer reach a hundred thousand rows. What is written below the last of them, or looked up
 * by its row, takes a few: the headings, the end, and the rows themselves.
 */
import type { CellRange, CellValue, Workbook } from "../../workbook/port.ts";

/** The cells of a sheet at their own places. */
export interface SheetPart {
  readonly cells: readonly (readonly CellValue[])[];
  /** Otherwise only the top, the end and the rows asked for were read, and the others look blank. */
  readonly isWhole: boolean;
}

/** Up to so many rows a sheet is read whole. */
export const SHORT_SHEET_ROWS = 2000;

/** Where headings stand however many rows people insert above them, and where the last row stands that somebody typed into. */
const TOP_ROWS = 50;
const LAST_ROWS = 200;

/** Two round trips, as for whole sheets. Of a long sheet the rows of the ranges are read too. */
export async function readParts(workbook: Workbook, sheets: readonly string[], ranges: readonly CellRange[] = []): Promise<SheetPart[]> {
  const extents = await workbook.extents(sheets);
  const parts = sheets.flatMap((sheet, index): CellRange[] => {
    const { rows = 0, columns = 0 } = extents[index] ?? {};
    const own = ranges.filter((range) => range.sheet === sheet);
    return runsOf(rows, own).map(({ from, until }) => ({ sheet, row: from, column: 0, rows: until - from, columns }));
  });
  const read = await workbook.read(parts);
  return sheets.map((sheet, index) => {
    const { rows = 0 } = extents[index] ?? {};
    const cells = Array.from({ length: rows }, (): readonly CellValue[] => []);
    parts.forEach((part, place) => {
      if (part.sheet === sheet) read[place]?.forEach((row, down) => (cells[part.row + down] = row));
    });
    return { cells, isWhole: rows <= SHORT_SHEET_ROWS };
  });
}

interface Run {
  readonly from: number;
  readonly until: number;
}

function runsOf(rows: number, ranges: readonly CellRange[]): readonly Run[] {
  if (rows <= SHORT_SHEET_ROWS) return rows === 0 ? [] : [{ from: 0, until: rows }];
  const wanted = [
    { from: 0, until: TOP_ROWS },
    { from: rows - LAST_ROWS, until: rows },
    ...ranges.map((range) => ({ from: range.row, until: Math.min(range.row + range.rows, rows) })),
  ];
  return joined(wanted.filter(({ from, until }) => from < until));
}

/** Runs that touch, or nearly do, as one. */
export function joined(runs: readonly Run[]): readonly Run[] {
  const apart: Run[] = [];
  for (const run of runs.toSorted((one, other) => one.from - other.from)) {
    const last = apart.at(-1);
    if (last === undefined || run.from > last.until + TOP_ROWS) apart.push(run);
    else apart[apart.length - 1] = { from: last.from, until: Math.max(last.until, run.until) };
  }
  return apart;
}
