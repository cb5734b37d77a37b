import { medianConcentrations, type Pollutant } from "../../functions/published/new-york-stormwater-manual.ts";
import { USUAL_RUNOFF_STORM_SHARE } from "../../functions/runoff/pollutant-load.ts";
import { ROOF_RUNOFF_SHARE } from "../../functions/runoff/runoff-volume.ts";
import { GALLONS_PER_CUBIC_FOOT } from "../../functions/planting/water-need.ts";
import { resultColumn } from "./column.ts";
import { DRAFTED_ITEMS } from "./prices.ts";
import type { AddedKey, YardFigureKey } from "./report-yards.ts";
import type { Sheet } from "./sheet.ts";

const total = (heading: string) => resultColumn(heading, { numberFormat: "#,##0.0#", widthPixels: 104 });

/** The program's totals: built and designed side by side, never added up. */
export const reportSheet = {
  name: "Report",
  preface: [
    "Report: the program's totals. Built and designed stand apart and are never added up; every total is a formula over the sheet named beside it",
    "Yards behind a total: how many had the number. One that has none is left out of the total, never counted as 0; none at all says none. For a period or one funder, open Report in the pane.",
  ],
  columns: {
    figure: resultColumn("Figure", { widthPixels: 370 }),
    built: total("Built"),
    designed: total("Designed, not built"),
    other: resultColumn("Neither yet, or no yard", {
      numberFormat: "#,##0.0#",
      widthPixels: 104,
      note: "What was worked or spent for yards that are neither built nor designed, and on rows without a yard.",
    }),
    builtYards: resultColumn("Yards built", { numberFormat: "0", widthPixels: 66 }),
    designedYards: resultColumn("Yards designed", { numberFormat: "0", widthPixels: 72 }),
    unit: resultColumn("Unit", { widthPixels: 84 }),
    builtMetric: total("Built, metric"),
    designedMetric: total("Designed, metric"),
    metricUnit: resultColumn("Metric unit", { widthPixels: 84 }),
    source: resultColumn("Where it comes from", { widthPixels: 960 }),
    adds: resultColumn("Adds up", { widthPixels: 200, note: "The column of Report yards that is added up." }),
    times: resultColumn("Times", { numberFormat: "0.0###", widthPixels: 66 }),
    metricFactor: resultColumn("Metric units in one", { numberFormat: "0.0#####", widthPixels: 84 }),
  },
  rows: 90,
  frozenColumns: 1,
  typedInstead: "Report is computed. Type on the sheets of the yards, or change the program's settings on Program.",
  together: [
    ["built", "other"],
    ["builtYards", "designedYards"],
    ["builtMetric", "designedMetric"],
  ],
} as const satisfies Sheet;

/** The units a total is shown in; the metric one from the US one by an exact factor. */
export type ReportUnit =
  | "yards"
  | "area"
  | "volume"
  | "gallons"
  | "load"
  | "count"
  | "hours"
  | "money"
  | "money per area"
  | "money per gallon";

/** One line of the report. */
export interface ReportFigure {
  readonly key: string;
  readonly label: string;
  readonly unit: ReportUnit;
  /** The figure of a yard that is added up. */
  readonly column?: YardFigureKey;
  /** The column of Report yards that the sheet adds up, and what it is taken times; without one the line has a formula of its own. */
  readonly adds?: AddedKey;
  readonly times?: number;
  readonly source: string;
}

const METHOD = `Simple method (Schueler 1987; New York State Stormwater Management Design Manual, appendix A), ${USUAL_RUNOFF_STORM_SHARE} of the storms run off`;

function loadSource(pollutant: Pollutant): string {
  return `SOAK.POLLUTANTLOAD, simple method, median concentration ${medianConcentrations.values[pollutant]} mg/L (same manual, table A.1).`;
}

/** In the order of the sheet, the pane and the table for a grant report. */
export const reportFigures = [
  {
    key: "yards",
    adds: "yards",
    label: "Yards",
    unit: "yards",
    source: "Report yards, Counts as. Built: a row on As-built. Designed: Status on Design fits, and not built.",
  },
  {
    key: "contributingArea",
    adds: "contributingArea",
    label: "Contributing area treated",
    unit: "area",
    column: "contributingArea",
    source: "Design, Contributing area, from Surfaces.",
  },
  {
    key: "imperviousArea",
    adds: "imperviousArea",
    label: "Roof and paving treated",
    unit: "area",
    column: "imperviousArea",
    source: "Surfaces whose cover is roof or paving.",
  },
  {
    key: "gardenArea",
    adds: "gardenArea",
    label: "Floor area",
    unit: "area",
    column: "gardenArea",
    source: "As-built, Floor area of the newest row; Design, floor area, where not built.",
  },
  {
    key: "storage",
    adds: "storage",
    label: "Water held",
    unit: "volume",
    column: "storage",
    source: "As-built, Water held of the newest row; Design, Water held, where not built.",
  },
  {
    key: "storageGallons",
    adds: "storage",
    times: GALLONS_PER_CUBIC_FOOT,
    label: "Water held, in gallons",
    unit: "gallons",
    column: "storage",
    source: "The same; a US gallon is 231 cu in.",
  },
  {
    key: "stormGallons",
    adds: "stormCapture",
    times: GALLONS_PER_CUBIC_FOOT,
    label: "Captured in the design storm",
    unit: "gallons",
    column: "stormCapture",
    source: `Yard by yard the smaller of the storm's runoff (Design, Runoff: SOAK.SITERUNOFF, roof and paving by a share of ${ROOF_RUNOFF_SHARE}, other ground by curve number) and the water held. Soaking during the storm is not counted.`,
  },
  {
    key: "yearGallons",
    adds: "yearRunoff",
    times: GALLONS_PER_CUBIC_FOOT,
    label: "Runoff reaching the gardens in a year",
    unit: "gallons",
    column: "yearRunoff",
    source: `${METHOD}. Rain in a year: Program.`,
  },
  {
    key: "capturedGallons",
    adds: "yearCaptured",
    times: GALLONS_PER_CUBIC_FOOT,
    label: "Runoff captured in a year",
    unit: "gallons",
    column: "yearRunoff",
    source: "Times the share captured in a year on Program, the program's own, such as from SOAK.LONGTERM.",
  },
  {
    key: "phosphorus",
    adds: "phosphorus",
    label: "Total phosphorus (TP) reaching the gardens in a year",
    unit: "load",
    column: "phosphorus",
    source: loadSource("TP"),
  },
  {
    key: "nitrogen",
    adds: "nitrogen",
    label: "Total nitrogen (TN) reaching the gardens in a year",
    unit: "load",
    column: "nitrogen",
    source: loadSource("TN"),
  },
  {
    key: "solids",
    adds: "solids",
    label: "Suspended solids (TSS) reaching the gardens in a year",
    unit: "load",
    column: "solids",
    source: loadSource("TSS"),
  },
  {
    key: "plants",
    adds: "plants",
    label: "Plants",
    unit: "count",
    column: "plants",
    source: "Planting: Planted where built, Planned where designed.",
  },
  {
    key: "looksDone",
    adds: "looksDone",
    label: "Follow-ups done",
    unit: "count",
    column: "looksDone",
    source: "Follow-ups with a day in Done.",
  },
  {
    key: "looksOpen",
    adds: "looksOpen",
    label: "Follow-ups open",
    unit: "count",
    column: "looksOpen",
    source: "Follow-ups of a kind, without a day in Done. The pane tells which are overdue.",
  },
  { key: "hours", adds: "hours", label: "Volunteer hours", unit: "hours", column: "hours", source: "Dig days, Hours of the sign-ins." },
  {
    key: "volunteerValue",
    adds: "hoursValue",
    label: "Value of the volunteer hours",
    unit: "money",
    column: "hours",
    source: `SOAK.VOLUNTEERVALUE at the unit price of ${DRAFTED_ITEMS.volunteerHour} on Prices. Do not add it to in-kind lines that estimate the same hours.`,
  },
  {
    key: "cash",
    adds: "cash",
    label: "Cash",
    unit: "money",
    column: "cash",
    source: "Estimate lines that are not in-kind, without contingency.",
  },
  { key: "inKind", adds: "inKind", label: "In-kind", unit: "money", column: "inKind", source: "Estimate lines that are in-kind." },
  {
    key: "unpriced",
    adds: "unpriced",
    label: "Estimate lines without an amount",
    unit: "count",
    source: "Estimate lines with an item and no amount: the money above is short by them.",
  },
  { key: "species", label: "Species", unit: "count", source: "Different plants on Planting with any planted, or planned where designed." },
  {
    key: "volunteers",
    label: "Volunteers",
    unit: "count",
    source: "Different names among the sign-ins on Dig days. Somebody who worked at both stands in both.",
  },
  {
    key: "costPerArea",
    label: "Cash a square foot treated",
    unit: "money per area",
    source: "Cash by contributing area, over the yards that have both.",
  },
  {
    key: "costPerGallon",
    label: "Cash a gallon held",
    unit: "money per gallon",
    source: "Cash by water held, over the yards that have both.",
  },
] as const satisfies readonly ReportFigure[];

export type ReportFigureKey = (typeof reportFigures)[number]["key"];

/** Lines of money by the year of the yard's date: the latest years. */
export const REPORT_YEARS = 10;
export const NO_FUNDER = "no funder named";
