/** What cells held before a change and hold since. */
import { largestOf, smallestOf } from "../../../functions/extremes.ts";
import type { ChangeRow } from "../../records/change-log.ts";
import type { CellRange, CellValue, ValueWrite, Workbook } from "../../workbook/port.ts";
import { blocksOf, fitsInBlocks, isLarge } from "./change-blocks.ts";
import type { CellHistory, Held } from "./held.ts";
import { sameCell } from "./write-records.ts";

/** What ranges held before they are written. */
export interface Contents {
  held(range: number, row: number, column: number): Held;
  values(range: number): readonly (readonly CellValue[])[];
  /** Whether the range is kept as blocks: large, and without a formula that would have to come back. */
  isBlock(range: number): boolean;
}

export async function contentsOf(workbook: Workbook, ranges: readonly CellRange[]): Promise<Contents> {
  const around = [...new Set(ranges.map(({ sheet }) => sheet))].map((sheet) => rangeAround(sheet, ranges));
  const [values, ...formulas] = await Promise.all([workbook.read(ranges), ...around.map((range) => workbook.readFormulas(range))]);
  const formulaAt = (range: CellRange, row: number, column: number) => {
    const of = around.findIndex(({ sheet }) => sheet === range.sheet);
    const { row: top = 0, column: left = 0 } = around[of] ?? {};
    return formulas[of]?.[range.row - top + row]?.[range.column - left + column] ?? "";
  };
  return {
    held: (index, row, column) => {
      const range = ranges[index];
      const formula = range === undefined ? "" : formulaAt(range, row, column);
      return formula === "" ? { holds: "value", content: values[index]?.[row]?.[column] ?? null } : { holds: "formula", content: formula };
    },
    values: (index) => values[index] ?? [],
    isBlock: (index) => {
      const range = ranges[index];
      if (range === undefined || !isLarge(range) || !fitsInBlocks(values[index] ?? [])) return false;
      return !(values[index] ?? []).some((cells, row) => cells.some((_, column) => formulaAt(range, row, column) !== ""));
    },
  };
}

/** What the cells of the ranges hold now and are about to hold, leaving out those that nothing changes in. */
export async function historiesOf(
  workbook: Workbook,
  ranges: readonly CellRange[],
  after: (range: number, row: number, column: number) => Held,
): Promise<readonly CellHistory[]> {
  const before = await contentsOf(workbook, ranges);
  const histories: CellHistory[] = [];
  ranges.forEach((range, index) => {
    if (before.isBlock(index) && after(index, 0, 0).holds === "value") {
      const block = historiesOfBlock(range, before.values(index), (row, column) => after(index, row, column).content);
      for (const history of block) histories.push(history);
      return;
    }
    eachCell(range, (where, row, column) => {
      const held = before.held(index, row, column);
      const now = after(index, row, column);
      if (!sameHeld(held, now)) histories.push({ where, before: held, after: now });
    });
  });
  return histories;
}

/** What the writes are about to put in place of what stands there. */
export function historiesOfValues(workbook: Workbook, writes: readonly ValueWrite[]): Promise<readonly CellHistory[]> {
  return historiesOf(
    workbook,
    writes.map(({ range }) => range),
    (range, row, column) => ({ holds: "value", content: writes[range]?.values[row]?.[column] ?? null }),
  );
}

function historiesOfBlock(
  range: CellRange,
  before: readonly (readonly CellValue[])[],
  after: (row: number, column: number) => CellValue,
): readonly CellHistory[] {
  const now = before.map((cells, row) => cells.map((_, column) => after(row, column)));
  return blocksOf(range, before, now).map((block) => ({
    where: block.where,
    before: { holds: "values", content: block.before },
    after: { holds: "values", content: block.after },
  }));
}

/** The smallest range that covers all of those on one sheet: one question to the spreadsheet, however many cells are written. */
function rangeAround(sheet: string, ranges: readonly CellRange[]): CellRange {
  const own = ranges.filter((range) => range.sheet === sheet);
  const row = smallestOf(own.map((range) => range.row));
  const column = smallestOf(own.map((range) => range.column));
  return {
    sheet,
    row,
    column,
    rows: largestOf(own.map((range) => range.row + range.rows)) - row,
    columns: largestOf(own.map((range) => range.column + range.columns)) - column,
  };
}

export function sameHeld(one: Held, other: Held): boolean {
  return one.holds === other.holds && sameCell(one.content, other.content);
}

function eachCell(range: CellRange, visit: (where: CellRange, row: number, column: number) => void): void {
  for (let row = 0; row < range.rows; row++) {
    for (let column = 0; column < range.columns; column++) {
      visit({ sheet: range.sheet, row: range.row + row, column: range.column + column, rows: 1, columns: 1 }, row, column);
    }
  }
}

/** About as many as the spreadsheet takes within seconds. */
const CELLS_AT_A_TIME = 50_000;

/** Places one after the other, so many cells at a time. */
export function inPieces<Placed extends { readonly where: CellRange }>(places: readonly Placed[]): readonly (readonly Placed[])[] {
  const pieces: Placed[][] = [];
  let room = 0;
  for (const place of places) {
    if (room <= 0) {
      pieces.push([]);
      room = CELLS_AT_A_TIME;
    }
    pieces.at(-1)?.push(place);
    room -= areaOf(place.where);
  }
  return pieces;
}

export function hasFormula(held: Contents, index: number, { rows, columns }: CellRange): boolean {
  return Array.from({ length: rows }).some((_, row) =>
    Array.from({ length: columns }).some((__, column) => held.held(index, row, column).holds === "formula"),
  );
}

export function areaOf({ rows, columns }: CellRange): number {
  return rows * columns;
}

/** Of "B4", or of a block such as "B4:C903". */
export function rangeOf({ record }: ChangeRow): CellRange {
  const [first, last = first] = (record.cell ?? "").split(":").map(cellAt);
  const { row = 0, column = 0 } = first ?? {};
  return { sheet: record.sheet ?? "", row, column, rows: (last?.row ?? row) - row + 1, columns: (last?.column ?? column) - column + 1 };
}

function cellAt(address: string): { readonly row: number; readonly column: number } {
  const [, letters = "A", row = "1"] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
  return { row: Number(row) - 1, column: [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1 };
}
