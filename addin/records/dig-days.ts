import { choiceColumn, dateColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

export const DIG_DAY_ENTRIES = ["sign-in", "quantity", "incident"] as const;

/** One row an entry of a dig or planting day: a person's hours, a quantity moved, an incident. */
export const digDaysSheet = {
  name: "Dig days",
  preface: [
    "Dig days: one row an entry. A sign-in counts one person's hours once; a quantity is what was really dug, hauled or placed",
    "Write every incident down, however small, and see to the person first. Hours feed the volunteer value on Report.",
  ],
  columns: {
    siteId: textColumn("Site ID", { widthPixels: 76 }),
    date: dateColumn("Date", "Date", { widthPixels: 92 }),
    entry: choiceColumn("Entry", "Entry", DIG_DAY_ENTRIES, { widthPixels: 90 }),
    who: textColumn("Who", { widthPixels: 150, note: "The person who signed in, or who wrote the entry." }),
    hours: numberColumn("Hours", { label: "Hours", atLeast: 0, atMost: 24 }, { widthPixels: 70, note: "Of one person, on one day." }),
    item: textColumn("Item", { widthPixels: 190, note: "What was moved or placed, such as compost." }),
    quantity: numberColumn("Quantity", { label: "Quantity", atLeast: 0 }, { widthPixels: 84 }),
    unit: textColumn("Unit", { widthPixels: 70 }),
    note: textColumn("Note", { widthPixels: 320, note: "For an incident: what happened, to whom, and what was done." }),
  },
  rows: 400,
  frozenColumns: 2,
} as const satisfies Sheet;

export type DigDayEntry = RecordOf<typeof digDaysSheet>;
export type DigDayRow = SheetRow<typeof digDaysSheet>;
