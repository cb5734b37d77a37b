import { numberColumn, textColumn } from "./column.ts";
import type { Sheet } from "./sheet.ts";
import { cellOf, firstRow } from "./sheet.ts";
import type { CellRange } from "../workbook/workbook.ts";

/** The program's own settings, a row each. Sites that leave a design input blank use the value here. */
export const programSheet = {
  name: "Program",
  preface: [
    "Program settings: what every yard uses unless its own row on Sites says otherwise",
    "Local codes and licensed practice decide. Confirm setbacks, drain time and the ticket rules with building, health and stormwater staff.",
  ],
  columns: {
    setting: textColumn("Setting", { widthPixels: 210 }),
    value: numberColumn("Value", { label: "Value", atLeast: 0 }, { widthPixels: 90 }),
    unit: textColumn("Unit", { widthPixels: 110 }),
    meaning: textColumn("What it does and where it comes from", { widthPixels: 560 }),
  },
  rows: 20,
  frozenColumns: 1,
} as const satisfies Sheet;

export interface ProgramSetting {
  readonly setting: string;
  readonly value: number;
  readonly unit: string;
  readonly meaning: string;
}

/** The order is fixed: formulas refer to a setting by its cell. */
export const programSettings = {
  stormDepthInches: { setting: "Design storm", value: 1, unit: "in", meaning: "Rain the basin should hold. One inch is common practice; a local manual may ask for another depth." },
  reductionFactor: { setting: "Reduction of tested rates", value: 2, unit: "times", meaning: "A tested rate is divided by this once. Half the field rate: Minnesota Stormwater Manual, determining soil infiltration rates." },
  drainHours: { setting: "Ponding drains within", value: 48, unit: "h", meaning: "Longest time for standing water. 48 hours is common practice; some places ask for 24." },
  sideSlope: { setting: "Side slope", value: 3, unit: "run to 1", meaning: "Run of the basin's sides for each foot of depth. 3 to 1 or flatter is common practice." },
  mulchDepthInches: { setting: "Mulch depth", value: 3, unit: "in", meaning: "Shredded wood over floor and sides. 2 to 4 in is common practice." },
  plantSpacingFeet: { setting: "Plant spacing", value: 1.5, unit: "ft", meaning: "Average spacing for a first count of plants. 1 to 2 ft suits most plugs and quarts (common practice)." },
  settlingShare: { setting: "Mix settles by", value: 0.15, unit: "share", meaning: "Loose soil mix settles; this share more is ordered. 15 to 20 % is common practice." },
} as const satisfies Record<string, ProgramSetting>;

export type ProgramKey = keyof typeof programSettings;

export function settingCell(key: ProgramKey): CellRange {
  return cellOf(programSheet, firstRow(programSheet) + Object.keys(programSettings).indexOf(key), "value");
}
