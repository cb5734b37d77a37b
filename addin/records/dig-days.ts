import { choiceColumn, dateColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { designSheet } from "./design.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

export const DIG_DAY_ENTRIES = ["sign-in", "quantity", "incident"] as const;

/** What is dug, hauled or placed on a dig day, and the column of Design that says how much was meant. */
export interface DigItem {
  readonly item: string;
  readonly measure: "earthVolume" | "plants";
  readonly designed: keyof typeof designSheet.columns | null;
}

/** The words stand in the workbook: never renamed once released. */
export const digItems: readonly DigItem[] = [
  { item: "soil dug, in place", measure: "earthVolume", designed: "digVolume" },
  { item: "soil hauled away, loose", measure: "earthVolume", designed: null },
  { item: "soil mix placed, in place", measure: "earthVolume", designed: "mixVolume" },
  { item: "sand brought, loose", measure: "earthVolume", designed: "mixSand" },
  { item: "topsoil brought, loose", measure: "earthVolume", designed: "mixTopsoil" },
  { item: "compost brought, loose", measure: "earthVolume", designed: "mixCompost" },
  { item: "mulch placed", measure: "earthVolume", designed: "mulchVolume" },
  { item: "stone placed", measure: "earthVolume", designed: null },
  { item: "plants planted", measure: "plants", designed: "plants" },
];

const timeColumn = (heading: string) =>
  numberColumn(heading, { label: heading, atLeast: 0, atMost: 1 }, { widthPixels: 66, numberFormat: "hh:mm" });

/** One row an entry of a dig or planting day: a person's hours, a quantity moved, an incident. */
export const digDaysSheet = {
  name: "Dig days",
  preface: [
    "Dig days: one row an entry. A sign-in counts one person's hours once; a quantity is what was really dug, hauled or placed",
    "Write every incident down, however small, and see to the person first. Hours feed the volunteer value on Report.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    date: dateColumn("Date", "Date", { widthPixels: 92 }),
    entry: choiceColumn("Entry", "Entry", DIG_DAY_ENTRIES, { widthPixels: 90 }),
    who: textColumn("Who", { widthPixels: 150, note: "The person who signed in, or to whom an incident happened." }),
    arrived: timeColumn("In"),
    left: timeColumn("Out"),
    hours: numberColumn(
      "Hours",
      { label: "Hours", atLeast: 0, atMost: 24 },
      { widthPixels: 70, numberFormat: "0.0#", note: "Of one person, on one day. Blank: not signed out yet." },
    ),
    item: nameColumn("Item", { widthPixels: 190, note: "What was moved or placed, such as compost." }),
    quantity: numberColumn("Quantity", { label: "Quantity", atLeast: 0 }, { widthPixels: 84 }),
    unit: textColumn("Unit", { widthPixels: 70 }),
    note: textColumn("Note", { widthPixels: 320, note: "For an incident: what happened." }),
    done: textColumn("What was done", { widthPixels: 260, note: "For an incident: what was done for the person, and about the cause." }),
    by: textColumn("By", { widthPixels: 110, note: "Who wrote the entry." }),
  },
  rows: 400,
  frozenColumns: 2,
} as const satisfies Sheet;

export type DigDayEntry = RecordOf<typeof digDaysSheet>;
export type DigDayRow = SheetRow<typeof digDaysSheet>;
