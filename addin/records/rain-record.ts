import { choiceColumn, momentColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** Thirty years of hours: a spreadsheet has a million rows, and this many it still opens and saves within seconds. */
export const MOST_READINGS = 263_000;

/** One row a reading of a rain gauge. */
export const rainRecordSheet = {
  name: "Rain record",
  preface: [
    "Rain record: one row a reading. A blank depth is not measured, never zero; a trace is written 0 with a note",
    "The time is when the reading's interval began. Each row says its own unit, so that no gauge is ever taken for another.",
  ],
  columns: {
    began: momentColumn("Began", "Began"),
    depth: numberColumn("Rain depth", { label: "Rain depth", atLeast: 0 }, { widthPixels: 90 }),
    unit: choiceColumn("Unit", "Unit", ["in", "mm"], { widthPixels: 60 }),
    gauge: textColumn("Gauge", { widthPixels: 170 }),
    note: textColumn("Note", { widthPixels: 260 }),
  },
  rows: 1000,
  mostRows: MOST_READINGS,
  frozenColumns: 1,
  isKeptInOrder: true,
} as const satisfies Sheet;

export type RainReading = RecordOf<typeof rainRecordSheet>;
export type RainReadingRow = SheetRow<typeof rainRecordSheet>;
