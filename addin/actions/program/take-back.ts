/** Puts back what the cells of a change held before it. */
import type { ChangeRow } from "../../records/change-log.ts";
import type { CellRange, CellValue, ValueWrite, Workbook } from "../../workbook/port.ts";
import { contentsOf, hasFormula, inPieces, sameHeld, type Contents } from "./cell-history.ts";
import { unpacked } from "./change-blocks.ts";
import { historiesIn } from "./change-rows.ts";
import type { CellHistory } from "./held.ts";
import type { Progress } from "./progress.ts";
import { behindLog, unlogged } from "./unlogged.ts";
import { sameCell } from "./write-records.ts";

/** Every cell that holds what the change left there holds again what it held before; what anybody wrote since stays. */
export async function putBack(workbook: Workbook, rows: readonly ChangeRow[], progress: Progress): Promise<void> {
  const pieces = inPieces(rows.flatMap(historiesIn));
  for (const [done, piece] of pieces.entries()) {
    await progress(done / pieces.length);
    const held = await contentsOf(
      workbook,
      piece.map(({ where }) => where),
    );
    const asLeft = piece.filter(({ after }, index) => after.holds !== "values" && sameHeld(held.held(index, 0, 0), after));
    const values = piece.flatMap((history, index): readonly ValueWrite[] => {
      if (history.after.holds === "values") return blockPutBack(history, held, index);
      return asLeft.includes(history) && history.before.holds === "value"
        ? [{ range: history.where, values: [[history.before.content]] }]
        : [];
    });
    const formulas = asLeft.filter(({ before }) => before.holds === "formula");
    if (values.length > 0) await workbook.writeValues(values);
    if (formulas.length > 0)
      await workbook.writeFormulas(formulas.map(({ where, before }) => ({ range: where, formulas: [[String(before.content)]] })));
  }
}

/** In one write, or cell by cell around a formula that somebody has typed into the block since. */
function blockPutBack({ where, before, after }: CellHistory, held: Contents, index: number): readonly ValueWrite[] {
  const [was, left] = [unpacked(before.content, where), unpacked(after.content, where)];
  const now = held.values(index);
  const isAsLeft = (row: number, column: number) => sameCell(now[row]?.[column] ?? null, left[row]?.[column] ?? null);
  const wasAt = (row: number, column: number): CellValue => was[row]?.[column] ?? null;
  // Nothing of it was written: most of a long write, where the page went early.
  if (!now.some((cells, row) => cells.some((_, column) => isAsLeft(row, column)))) return [];
  if (!hasFormula(held, index, where))
    return [
      { range: where, values: now.map((cells, row) => cells.map((cell, column) => (isAsLeft(row, column) ? wasAt(row, column) : cell))) },
    ];
  return now.flatMap((cells, row) =>
    cells.flatMap((_, column): readonly ValueWrite[] => {
      if (held.held(index, row, column).holds === "formula" || !isAsLeft(row, column)) return [];
      const range: CellRange = { ...where, row: where.row + row, column: where.column + column, rows: 1, columns: 1 };
      return [{ range, values: [[wasAt(row, column)]] }];
    }),
  );
}

/**
 * Puts a long change back, and then the whole of it on the log the other way round, whatever an earlier visit had put back
 * already: so that undoing this in turn brings back all of it, never a part.
 */
export async function takeBack(workbook: Workbook, rows: readonly ChangeRow[], progress: Progress): Promise<void> {
  await putBack(unlogged(workbook), rows, progress);
  await behindLog(workbook)?.logAhead(
    rows.flatMap(historiesIn).map(({ where, before, after }) => ({ where, before: after, after: before })),
  );
}
