import { resultColumn } from "./column.ts";
import type { Sheet } from "./sheet.ts";
import { sitesSheet } from "./sites.ts";

const number = (heading: string, note?: string) =>
  resultColumn(heading, { numberFormat: "#,##0.0#", widthPixels: 96, ...(note === undefined ? {} : { note }) });

/** What Report adds up, row for row beside Sites: every number of a metric yard is converted here, and nowhere else. */
export const reportYardsSheet = {
  name: "Report yards",
  preface: [
    "Report yards: what each yard brings to Report, in US units. Nothing is typed here",
    "A yard with a row on As-built is built; one whose Status on Design fits is designed; the others are not counted yet. A Site ID that stands twice counts once.",
  ],
  columns: {
    siteId: resultColumn("Site ID", { widthPixels: 76 }),
    yard: resultColumn("Yard", { widthPixels: 215 }),
    countsAs: resultColumn("Counts as", { widthPixels: 90 }),
    date: resultColumn("Date", {
      widthPixels: 92,
      numberFormat: "yyyy-mm-dd",
      note: "Of As-built; of the first dig day where it is not built yet.",
    }),
    yards: number("Yards (1 each)"),
    contributingArea: number("Contributing area (sq ft)"),
    imperviousArea: number("Roof and paving (sq ft)", "Surfaces whose curve number is 98 on every soil, TR-55 table 2-2a."),
    gardenArea: number("Floor area (sq ft)"),
    storage: number("Water held (cu ft)"),
    stormCapture: number(
      "Captured in the design storm (cu ft)",
      "The smaller of the storm's runoff and the water held; soaking during the storm is not counted.",
    ),
    yearRunoff: number("Runoff in a year (cu ft)", "Simple method, from the rain in a year on Program."),
    yearCaptured: number("Captured in a year (cu ft)", "Times the share captured in a year on Program."),
    phosphorus: number("TP in a year (lb)"),
    nitrogen: number("TN in a year (lb)"),
    solids: number("TSS in a year (lb)"),
    plants: number("Plants", "Planted where built, planned where designed. Blank: no planting plan."),
    looksDone: number("Follow-ups done"),
    looksOpen: number("Follow-ups open"),
    hours: number("Volunteer hours"),
    hoursValue: number("Value of the hours"),
    cash: number("Cash"),
    inKind: number("In-kind"),
    unpriced: number("Lines without an amount"),
  },
  rows: sitesSheet.rows,
  frozenColumns: 2,
  typedInstead:
    "Report yards is computed. Type on the sheets of the yard: Sites, Surfaces, Hole tests, As-built, Dig days, Estimate lines.",
  together: [
    ["siteId", "yard"],
    ["yards", "unpriced"],
  ],
} as const satisfies Sheet;

type Key = keyof typeof reportYardsSheet.columns;

/** The columns that Report adds up. */
export type AddedKey = Exclude<Key, "siteId" | "yard" | "countsAs" | "date">;

/** Those that the pane works out yard by yard; the others follow from them. */
export type YardFigureKey = Exclude<AddedKey, "yards" | "yearCaptured" | "hoursValue" | "unpriced">;
