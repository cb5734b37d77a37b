import { resultColumn } from "./column.ts";
import type { Sheet } from "./sheet.ts";

/** What is to be done next, in the words that every view has for it. */
export const STANDING_WORDS = { todo: "To do", wait: "Waiting", ask: "Ask", stop: "Stop", done: "Done" } as const;

const typedInstead = "The pane writes these columns. Answer the visit, and write the sheet anew on Next.";

/**
 * Where every yard stands, a row a yard, to filter, sort and pivot on. Values that the pane writes when it is asked: stage and
 * next step follow from the whole checklist, which no formula of a workbook could answer in time. It is no sheet of records.
 */
export const standingSheet = {
  name: "Where yards stand",
  preface: [
    "Where yards stand: stage, next step and days waiting of each yard, to filter, sort and pivot on",
    "Written by the pane, on its Next tab, which also says when the records have moved on. Columns of your own beside these stay with their yard.",
  ],
  columns: {
    siteId: resultColumn("Site ID", { widthPixels: 76 }),
    yard: resultColumn("Yard", { widthPixels: 215 }),
    stage: resultColumn("Stage", { widthPixels: 150 }),
    state: resultColumn("State", {
      widthPixels: 90,
      tones: { good: [STANDING_WORDS.done], caution: [STANDING_WORDS.ask], stop: [STANDING_WORDS.stop] },
    }),
    nextStep: resultColumn("Next step", { widthPixels: 420 }),
    since: resultColumn("Since", { widthPixels: 92, numberFormat: "yyyy-mm-dd", note: "The newest day on record in this yard." }),
    daysWaiting: resultColumn("Days waiting", { widthPixels: 84, numberFormat: "0", note: "From that day to today." }),
    funder: resultColumn("Funder", { widthPixels: 130 }),
    watershed: resultColumn("Watershed", { widthPixels: 130 }),
  },
  rows: 200,
  frozenColumns: 2,
  typedInstead,
} as const satisfies Sheet;
