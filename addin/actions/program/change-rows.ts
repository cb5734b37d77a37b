/**
 * The cells of one row that a change filled or emptied together, such as those of an answer, stand on the Change log as one
 * row of it: what each held, by the letter of its column, as JSON. With a row a cell a thousand yards would take 700,000.
 */
import { largestOf, smallestOf } from "../../../functions/extremes.ts";
import type { ChangeRow } from "../../records/change-log.ts";
import { isBlank } from "../../records/sheet.ts";
import { columnLetters, type CellRange, type CellValue } from "../../workbook/port.ts";
import { rangeOf } from "./cell-history.ts";
import { MOST_CHARACTERS, parsed } from "./change-blocks.ts";
import { grouped } from "./grouped.ts";
import type { CellHistory, Held } from "./held.ts";

/** So few cells have a row of the log each, where people can read, sort and filter what they held. */
const MOST_CELLS_APART = 2;

/** The histories, those of one row of a sheet as one where they are many and fit into a cell. */
export function inRows(histories: readonly CellHistory[]): readonly CellHistory[] {
  const rows = grouped(histories, ({ where: { sheet, row, column }, after }) => [
    after.holds === "values" ? `${row} ${column} ${sheet}` : `${row} ${sheet}`,
  ]);
  return [...rows.values()].flatMap((cells) => {
    if (cells.length <= MOST_CELLS_APART) return cells;
    const row = asRow(cells);
    return [row.before, row.after].every(({ content }) => String(content ?? "").length <= MOST_CHARACTERS) ? [row] : cells;
  });
}

function asRow(cells: readonly CellHistory[]): CellHistory {
  const columns = cells.map(({ where }) => where.column);
  const column = smallestOf(columns);
  const [first] = cells;
  const where = { sheet: first?.where.sheet ?? "", row: first?.where.row ?? 0, column, rows: 1, columns: largestOf(columns) - column + 1 };
  return { where, before: together(cells, ({ before }) => before), after: together(cells, ({ after }) => after) };
}

/** Blank cells are left out; null for cells that are all blank. */
function together(cells: readonly CellHistory[], which: (history: CellHistory) => Held): Held {
  const held = cells.flatMap((history) => {
    const { holds, content } = which(history);
    return isBlank(content) ? [] : [[columnLetters(history.where.column), holds === "formula" ? { formula: content } : content] as const];
  });
  return { holds: "cells", content: held.length === 0 ? null : JSON.stringify(Object.fromEntries(held)) };
}

/** What a row of the log says of its cells, one by one; of a block of many, as the block. */
export function historiesIn(logged: ChangeRow): readonly CellHistory[] {
  const { beforeHolds, before, afterHolds, after } = logged.record;
  return cellsIn({ where: rangeOf(logged), before: held(beforeHolds, before), after: held(afterHolds, after) });
}

/** The cells of a row apart again. */
export function cellsIn(history: CellHistory): readonly CellHistory[] {
  const { where, before, after } = history;
  if (after.holds !== "cells") return [history];
  const [was, left] = [byColumn(before.content), byColumn(after.content)];
  const columns = Array.from({ length: where.columns }, (_, place) => where.column + place);
  return columns.flatMap((column): readonly CellHistory[] => {
    const letters = columnLetters(column);
    if (!was.has(letters) && !left.has(letters)) return [];
    const cell: CellRange = { ...where, column, columns: 1 };
    return [{ where: cell, before: was.get(letters) ?? BLANK, after: left.get(letters) ?? BLANK }];
  });
}

const BLANK: Held = { holds: "value", content: null };

function held(holds: Held["holds"] | null, content: CellValue): Held {
  return { holds: holds ?? "value", content };
}

function byColumn(content: CellValue): ReadonlyMap<string, Held> {
  const cells = Object.entries((parsed(content) ?? {}) as Record<string, CellValue | { readonly formula: string }>);
  return new Map(
    cells.map(([letters, cell]) => [
      letters,
      cell !== null && typeof cell === "object" ? held("formula", cell.formula) : held("value", cell),
    ]),
  );
}
