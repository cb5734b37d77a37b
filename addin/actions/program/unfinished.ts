/** The mark that a long write leaves in the workbook until it is whole. */
import { UNFINISHED_SETTING } from "../../records/unfinished-mark.ts";
import type { Workbook } from "../../workbook/port.ts";
import { unlogged } from "./unlogged.ts";

export interface Unfinished {
  /** Its number on the Change log. */
  readonly change: number;
  /** What was under way: writing the change, or undoing it. */
  readonly doing: "write" | "undo";
}

/** Carries out the work with the mark set; the mark stays where the work fails or the page goes. */
export async function marked(workbook: Workbook, unfinished: Unfinished | null, work: () => Promise<void>): Promise<void> {
  if (unfinished === null) return work();
  const inner = unlogged(workbook);
  await inner.writeSetting(UNFINISHED_SETTING, JSON.stringify(unfinished));
  await work();
  await inner.writeSetting(UNFINISHED_SETTING, "");
}

/** What an earlier visit left unfinished, or null. */
export async function unfinishedIn(workbook: Workbook): Promise<Unfinished | null> {
  const [, change, doing] =
    /^\{"change":(\d+),"doing":"(write|undo)"\}$/.exec((await workbook.readSetting(UNFINISHED_SETTING)) ?? "") ?? [];
  return change === undefined ? null : { change: Number(change), doing: doing === "undo" ? "undo" : "write" };
}
