import { changeLogSheet } from "../../records/change-log.ts";
import { mostRowsOf } from "../../records/prepared-rows.ts";
import type { Sheet } from "../../records/sheet.ts";

/** With a fifth of its rows left, a year's yards can still be finished before a sheet is full. */
const NEARLY = 0.8;

/** What is said of a sheet that nears the most rows it may have; null before that. */
export function nearlyFull(sheet: Sheet, rows: number): string | null {
  const most = mostRowsOf(sheet);
  if (rows < NEARLY * most) return null;
  const written = sheet.name === changeLogSheet.name ? "what was changed stays on record" : "nothing that stands here is lost";
  return `Sheet ${sheet.name} holds ${rows} rows, and ${most} are the most: ${written}. Finish the yards that are begun, and keep further yards in a second workbook.`;
}
