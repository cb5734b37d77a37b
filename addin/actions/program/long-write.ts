/**
 * A write of thousands of cells is whole or not at all, over a reload too. Before its first cell the whole change stands on
 * the Change log and a mark in the workbook; where the page goes meanwhile, the next start puts back what it had written.
 */
import { UNFINISHED_SETTING } from "../../records/unfinished-mark.ts";
import type { ValueWrite, Workbook } from "../../workbook/port.ts";
import { historiesOfValues } from "./cell-history.ts";
import type { CellHistory } from "./held.ts";
import { nextChange, rowsOfChange } from "./read-log.ts";
import type { Progress } from "./progress.ts";
import { putBack, takeBack } from "./take-back.ts";
import { marked, type Unfinished } from "./unfinished.ts";
import { behindLog, unlogged } from "./unlogged.ts";

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
      await putBack(target, await rowsOfChange(target, change), progress);
      log.nothingWritten();
      await target.writeSetting(UNFINISHED_SETTING, "");
      throw error;
    }
  });
}

/** Puts back what an earlier visit had written of a change, or had not yet undone of it; afterwards nothing is unfinished. */
export async function settleUnfinished(workbook: Workbook, unfinished: Unfinished, progress: Progress): Promise<void> {
  await takeBack(workbook, await rowsOfChange(workbook, unfinished.change), progress);
  await unlogged(workbook).writeSetting(UNFINISHED_SETTING, "");
}
