import { medianConcentrations, type Pollutant } from "../../functions/published/new-york-stormwater-manual.ts";
import { USUAL_RUNOFF_STORM_SHARE } from "../../functions/runoff/pollutant-load.ts";
import { ROOF_RUNOFF_SHARE } from "../../functions/runoff/runoff-volume.ts";
import { resultColumn } from "./column.ts";
import { DRAFTED_ITEMS } from "./prices.ts";
import type { YardFigureKey } from "./report-yards.ts";
import type { Sheet } from "./sheet.ts";

const total = (heading: string) => resultColumn(heading, { numberFormat: "#,##0.0#", widthPixels: 104 });

/** The program's totals: built and designed side by side, never added up. */
export const reportSheet = {
  name: "Report",
  preface: [
    "Report: the program's totals. Built and designed stand apart and are never added up; every total is a formula over the sheet named beside it",
    "Yards behind a total: how many had the number. One that has none is left out of the total, never counted as 0. For a period or one funder, open Report in the pane.",
  ],
  columns: {
    figure: resultColumn("Figure", { widthPixels: 370 }),
    built: total("Built"),
    builtYards: resultColumn("Yards built", { numberFormat: "0", widthPixels: 66 }),
    designed: total("Designed, not built"),
    designedYards: resultColumn("Yards designed", { numberFormat: "0", widthPixels: 72 }),
    other: resultColumn("Neither yet, or no yard", {
      numberFormat: "#,##0.0#",
      widthPixels: 104,
      note: "What was worked or spent for yards that are neither built nor designed, and on rows without a yard.",
    }),
    unit: resultColumn("Unit", { widthPixels: 84 }),
    builtMetric: total("Built, metric"),
    designedMetric: total("Designed, metric"),
    metricUnit: resultColumn("Metric unit", { widthPixels: 84 }),
    source: resultColumn("Where it comes from", { widthPixels: 960 }),
  },
  rows: 90,
  frozenColumns: 1,
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
  /** The column of Report yards that is added up; without one the line has a formula of its own. */
  readonly column?: YardFigureKey;
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
    label: "Yards",
    unit: "yards",
    source: "Report yards, Counts as. Built: a row on As-built. Designed: Status on Design fits, and not built.",
  },
  {
    key: "contributingArea",
    label: "Contributing area treated",
    unit: "area",
    column: "contributingArea",
    source: "Design, Contributing area, from Surfaces.",
  },
  {
    key: "imperviousArea",
    label: "Roof and paving treated",
    unit: "area",
    column: "imperviousArea",
    source: "Surfaces whose cover is roof or paving.",
  },
  {
    key: "gardenArea",
    label: "Floor area",
    unit: "area",
    column: "gardenArea",
    source: "As-built, Floor area of the newest row; Design, floor area, where not built.",
  },
  {
    key: "storage",
    label: "Water held",
    unit: "volume",
    column: "storage",
    source: "As-built, Water held of the newest row; Design, Water held, where not built.",
  },
  {
    key: "storageGallons",
    label: "Water held, in gallons",
    unit: "gallons",
    column: "storage",
    source: "The same; a US gallon is 231 cu in.",
  },
  {
    key: "stormGallons",
    label: "Captured in the design storm",
    unit: "gallons",
    column: "stormCapture",
    source: `Yard by yard the smaller of the storm's runoff (SOAK.RUNOFFVOLUME, share ${ROOF_RUNOFF_SHARE}) and the water held. Soaking during the storm is not counted.`,
  },
  {
    key: "yearGallons",
    label: "Runoff reaching the gardens in a year",
    unit: "gallons",
    column: "yearRunoff",
    source: `${METHOD}. Rain in a year: Program.`,
  },
  {
    key: "capturedGallons",
    label: "Runoff captured in a year",
    unit: "gallons",
    column: "yearRunoff",
    source: "Times the share captured in a year on Program, the program's own, such as from SOAK.LONGTERM.",
  },
  {
    key: "phosphorus",
    label: "Total phosphorus (TP) reaching the gardens in a year",
    unit: "load",
    column: "phosphorus",
    source: loadSource("TP"),
  },
  {
    key: "nitrogen",
    label: "Total nitrogen (TN) reaching the gardens in a year",
    unit: "load",
    column: "nitrogen",
    source: loadSource("TN"),
  },
  {
    key: "solids",
    label: "Suspended solids (TSS) reaching the gardens in a year",
    unit: "load",
    column: "solids",
    source: loadSource("TSS"),
  },
  { key: "plants", label: "Plants", unit: "count", column: "plants", source: "Planting: Planted where built, Planned where designed." },
  { key: "species", label: "Species", unit: "count", source: "Different plants on Planting with any planted, or planned where designed." },
  {
    key: "volunteers",
    label: "Volunteers",
    unit: "count",
    source: "Different names among the sign-ins on Dig days. Somebody who worked at both stands in both.",
  },
  { key: "hours", label: "Volunteer hours", unit: "hours", column: "hours", source: "Dig days, Hours of the sign-ins." },
  {
    key: "volunteerValue",
    label: "Value of the volunteer hours",
    unit: "money",
    column: "hours",
    source: `SOAK.VOLUNTEERVALUE at the unit price of ${DRAFTED_ITEMS.volunteerHour} on Prices. Do not add it to in-kind lines that estimate the same hours.`,
  },
  { key: "cash", label: "Cash", unit: "money", column: "cash", source: "Estimate lines that are not in-kind, without contingency." },
  { key: "inKind", label: "In-kind", unit: "money", column: "inKind", source: "Estimate lines that are in-kind." },
  {
    key: "unpriced",
    label: "Estimate lines without an amount",
    unit: "count",
    source: "Estimate lines with an item and no amount: the money above is short by them.",
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
  { key: "looksDone", label: "Follow-ups done", unit: "count", column: "looksDone", source: "Follow-ups with a day in Done." },
  {
    key: "looksOpen",
    label: "Follow-ups open",
    unit: "count",
    column: "looksOpen",
    source: "Follow-ups of a kind, without a day in Done. The pane tells which are overdue.",
  },
] as const satisfies readonly ReportFigure[];

export type ReportFigureKey = (typeof reportFigures)[number]["key"];

/** Lines of money by the year of the yard's date: the latest years. */
export const REPORT_YEARS = 10;
export const NO_FUNDER = "no funder named";
