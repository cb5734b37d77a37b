/**
 * A write of thousands of cells is whole or not at all, over a reload too. Before its first cell the whole change stands on
 * the Change log and a mark in the workbook; where the page goes meanwhile, the next start puts back what it had written.
 */
import { UNFINISHED_SETTING } from "../../records/unfinished-mark.ts";
import type { CellValue, ValueWrite, Workbook } from "../../workbook/port.ts";
import { historiesOfValues, inPieces, rangeOf } from "./cell-history.ts";
import { unpacked } from "./change-blocks.ts";
import type { CellHistory } from "./held.ts";
import { nextChange, readLog } from "./change-log.ts";
import type { Progress } from "./progress.ts";
import { marked, type Unfinished } from "./unfinished.ts";
import { behindLog, unlogged } from "./unlogged.ts";
import { sameCell } from "./write-records.ts";

/** Writes that follow each other, made when they are asked for: all of them at once would be too much to hold. */
export interface Pieces {
  readonly count: number;
  readonly piece: (index: number) => readonly ValueWrite[];
}

export async function writeWhole(workbook: Workbook, { count, piece }: Pieces, progress: Progress): Promise<void> {
  const log = behindLog(workbook);
  const target = log?.inner ?? workbook;
  const writeAll = async (): Promise<void> => {
    for (let index = 0; index < count; index += 1) {
      await progress(index / count);
      await target.writeValues(piece(index));
    }
  };
  if (log === null || count < 2) return log === null ? writeAll() : workbook.writeValues(count === 0 ? [] : piece(0));
  const cells: CellHistory[] = [];
  for (let index = 0; index < count; index += 1) for (const cell of await historiesOfValues(target, piece(index))) cells.push(cell);
  const change = await nextChange(target);
  await marked(workbook, { change, doing: "write" }, async () => {
    await log.logAhead(cells);
    try {
      await writeAll();
    } catch (error) {
      await putBack(target, { change, doing: "write" }, progress);
      log.nothingWritten();
      await target.writeSetting(UNFINISHED_SETTING, "");
      throw error;
    }
  });
}

/** Puts back what an earlier visit had written of a change, or had not yet undone of it; afterwards nothing is unfinished. */
export async function settleUnfinished(workbook: Workbook, unfinished: Unfinished, progress: Progress): Promise<void> {
  await putBack(workbook, unfinished, progress);
  await unlogged(workbook).writeSetting(UNFINISHED_SETTING, "");
}

/** Every cell that holds what the change left there holds again what it held before; what anybody wrote since stays. */
async function putBack(workbook: Workbook, { change }: Unfinished, progress: Progress): Promise<void> {
  const rows = (await readLog(workbook)).filter(({ record }) => record.change === change);
  const pieces = inPieces(rows.map((row) => ({ row, where: rangeOf(row) })));
  for (const [done, placed] of pieces.entries()) {
    await progress(done / pieces.length);
    const held = await workbook.read(placed.map(({ where }) => where));
    const values = placed.filter(({ row }) => row.record.beforeHolds !== "formula");
    await workbook.writeValues(
      values.map(({ row: { record }, where }) => {
        const [before, after] = [record.before, record.after].map((content) =>
          record.afterHolds === "values" ? unpacked(content, where) : [[content]],
        );
        const now = held[placed.findIndex((one) => one.where === where)] ?? [];
        return {
          range: where,
          values: now.map((cells, row) => cells.map((cell, at) => putBackCell(cell, before?.[row]?.[at], after?.[row]?.[at]))),
        };
      }),
    );
    const formulas = placed.filter((one, index) => !values.includes(one) && sameCell(held[index]?.[0]?.[0] ?? null, one.row.record.after));
    await workbook.writeFormulas(formulas.map(({ row, where }) => ({ range: where, formulas: [[String(row.record.before)]] })));
  }
}

function putBackCell(now: CellValue, before: CellValue = null, after: CellValue = null): CellValue {
  return sameCell(now, after) ? before : now;
}
