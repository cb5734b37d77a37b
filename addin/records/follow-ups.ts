import { choiceColumn, dateColumn, nameColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

export const FOLLOW_UP_KINDS = ["watering", "1 week", "1 month", "1 year", "yearly", "re-test", "repair"] as const;
export const FINDINGS = ["pass", "watch", "fail"] as const;

/** One row a look that is due or was done. What was seen, item by item, is on Visits. */
export const followUpsSheet = {
  name: "Follow-ups",
  preface: [
    "Follow-ups: one row a look, due first and done later. What was seen, item by item, is on Visits",
    "The finding is the worst of its items: pass, watch or fail. A fail names the repair and gives it a day.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    kind: choiceColumn("Kind", "Kind", FOLLOW_UP_KINDS, { widthPixels: 90 }),
    due: dateColumn("Due", "Due", { widthPixels: 92 }),
    done: dateColumn("Done", "Done", { widthPixels: 92 }),
    by: textColumn("By", { widthPixels: 110 }),
    finding: choiceColumn("Finding", "Finding", FINDINGS, { widthPixels: 80 }),
    action: textColumn("What to do", { widthPixels: 320 }),
    note: textColumn("Note", { widthPixels: 260 }),
  },
  rows: 600,
  frozenColumns: 2,
} as const satisfies Sheet;

export type Finding = (typeof FINDINGS)[number];
export type FollowUpKind = (typeof FOLLOW_UP_KINDS)[number];
export type FollowUp = RecordOf<typeof followUpsSheet>;
export type FollowUpRow = SheetRow<typeof followUpsSheet>;
