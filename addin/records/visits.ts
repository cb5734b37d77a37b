import "./validation.ts";
import * as z from "zod";
import { choiceColumn, type Column, dateColumn, nameColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";
import type { CellValue } from "../workbook/port.ts";

/** Pass, refer and stop judge a place before it is dug; watch and fail judge a garden that is looked at again. */
export const VERDICTS = ["pass", "refer", "stop", "watch", "fail", "not measured"] as const;
export type Verdict = (typeof VERDICTS)[number];

const answer: Column<CellValue> = { heading: "Answer", cell: z.custom<CellValue>(), role: "input", widthPixels: 110 };

/** One row an answer: of two to the same step the one of the later day stands, of one day the lower row; the earlier one stays on record. */
export const visitsSheet = {
  name: "Visits",
  preface: [
    "Visits: one row an answer. The newest answer to a step counts; older ones stay on record",
    "The verdict is computed from the Rules sheet for measured answers. A blank answer is not measured, never a pass.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    date: dateColumn("Date", "Date", { widthPixels: 92 }),
    stage: nameColumn("Stage", { widthPixels: 130 }),
    step: nameColumn("Step", { widthPixels: 190 }),
    answer,
    unit: textColumn("Unit", { widthPixels: 60 }),
    note: textColumn("Note", { widthPixels: 260 }),
    by: textColumn("By", { widthPixels: 90 }),
    rule: nameColumn("Rule", { widthPixels: 200, note: "The rule on the Rules sheet that a measured answer is held against." }),
    verdict: choiceColumn("Verdict", "Verdict", VERDICTS, {
      widthPixels: 110,
      tones: { good: ["pass"], caution: ["refer", "watch"], stop: ["stop", "fail"] },
    }),
    link: textColumn("Photo or file", { widthPixels: 220, note: "A link, or the name of the picture on the camera." }),
  },
  rows: 600,
  // A thousand yards: 83 answers each from the first call to the first year's look, and half as many in the years after.
  mostRows: 125_000,
  frozenColumns: 1,
} as const satisfies Sheet;

export type VisitAnswer = RecordOf<typeof visitsSheet>;
export type VisitAnswerRow = SheetRow<typeof visitsSheet>;

/** What an unanswered or unreadable verdict cell means. */
export function verdictOf(row: VisitAnswerRow): Verdict {
  return row.record.verdict ?? "not measured";
}
