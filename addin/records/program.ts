import {
  LARGEST_FLOOR_SHARE,
  LEAST_DESIGN_INCHES_PER_HOUR,
  LEAST_FLOOR_SQUARE_FEET,
  LONGEST_EMPTY_HOURS,
} from "../../functions/basin/design-limits.ts";
import { DESIGN_STORM_INCHES } from "../../functions/rainfall/likely-rain.ts";
import { fromUs } from "../../functions/quantities.ts";
import { dateColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import { placeAsSetUp, cellOf, firstRow, type Place } from "./place.ts";
import { layoutOf, type Sheet } from "./sheet.ts";
import { PROGRAM_PLACES } from "./one-call-rules/rules.ts";
import type { UnitSystem } from "./site-terms.ts";
import type { CellRange, SheetLayout } from "../workbook/port.ts";

/** The program's own settings, a row each. Sites that leave a design input blank use the value here. */
export const programSheet = {
  name: "Program",
  preface: [
    "Program settings: what every yard uses unless its own row on Sites says otherwise",
    "Local codes and licensed practice decide. Confirm setbacks, drain time and the ticket rules with building, health and stormwater staff.",
  ],
  columns: {
    setting: nameColumn("Setting", { widthPixels: 210 }),
    value: numberColumn("Value", { label: "Value", atLeast: 0 }, { widthPixels: 130 }),
    unit: textColumn("Unit", { widthPixels: 110 }),
    meaning: textColumn("What it does and where it comes from", { widthPixels: 560 }),
    holiday: dateColumn("Holidays of the one-call center", "Holiday", {
      widthPixels: 120,
      note: "Each day on which your one-call center is closed, one a row. No list serves everywhere: ask the center. They move the count on that warns of a date too early.",
    }),
  },
  rows: 40,
  frozenColumns: 1,
  isKeptInOrder: true,
} as const satisfies Sheet;

export interface ProgramSetting {
  readonly setting: string;
  /** What a new workbook starts with; null where only the program can know it, and blank means that it is not counted. */
  readonly value: number | null;
  readonly unit: string;
  readonly meaning: string;
}

/** New settings are added at the end: a setting is found by its name in column A. */
export const programSettings = {
  stormDepthInches: {
    setting: "Design storm",
    value: 1,
    unit: "in",
    meaning: "Rain the basin should hold. One inch is common practice; a local manual may ask for another depth.",
  },
  reductionFactor: {
    setting: "Reduction of tested rates",
    value: 2,
    unit: "times",
    meaning:
      "A tested rate is divided by this once. Half the field rate: Minnesota Stormwater Manual, determining soil infiltration rates.",
  },
  drainHours: {
    setting: "Ponding drains within",
    value: 48,
    unit: "h",
    meaning: "Longest time for standing water. 48 hours is common practice; some places ask for 24.",
  },
  sideSlope: {
    setting: "Side slope",
    value: 3,
    unit: "run to 1",
    meaning: "Run of the basin's sides for each foot of depth. 3 to 1 or flatter is common practice.",
  },
  mulchDepthInches: {
    setting: "Mulch depth",
    value: 3,
    unit: "in",
    meaning: "Shredded wood over floor and sides. 2 to 4 in is common practice.",
  },
  plantSpacingFeet: {
    setting: "Plant spacing",
    value: 1.5,
    unit: "ft",
    meaning: "Average spacing for a first count of plants. 1 to 2 ft suits most plugs and quarts (common practice).",
  },
  settlingShare: {
    setting: "Mix settles by",
    value: 0.15,
    unit: "share",
    meaning: "Loose soil mix settles; this share more is ordered. 15 to 20 % is common practice.",
  },
  contingencyPercent: {
    setting: "Contingency",
    value: 15,
    unit: "% of cash",
    meaning: "Added to an estimate's cash lines. 10 to 20 % is common practice; more where rock or soil is not known.",
  },
  overflowStoneSquareFeet: {
    setting: "Overflow stone, area",
    value: 12,
    unit: "sq ft",
    meaning: "Ground that stone covers at the overflow, for a drafted estimate. 3 by 4 ft is common practice.",
  },
  overflowStoneInches: {
    setting: "Overflow stone, depth",
    value: 6,
    unit: "in",
    meaning: "Depth of that stone. Two layers of 2 to 4 in stone is common practice.",
  },
  costSharePerSquareFoot: {
    setting: "Cost share, each sq ft of garden",
    value: null,
    unit: "money",
    meaning: "Paid for each square foot of garden at the rim. Blank: not paid by area. The forms that are filled in add up.",
  },
  costSharePerGallon: {
    setting: "Cost share, each gallon held",
    value: null,
    unit: "money",
    meaning: "Paid for each gallon that the garden holds. Blank: not paid by volume.",
  },
  costSharePercent: {
    setting: "Cost share, percent of cost",
    value: null,
    unit: "%",
    meaning: "Part of the cash cost, contingency included. Blank: not paid by percent.",
  },
  costShareFlat: {
    setting: "Cost share, flat",
    value: null,
    unit: "money",
    meaning: "Paid once for a garden, whatever its size. Blank: none.",
  },
  costShareCap: { setting: "Cost share, cap", value: null, unit: "money", meaning: "The most that is paid for one garden. Blank: no cap." },
  costShareSmallestSquareFeet: {
    setting: "Cost share, smallest garden",
    value: null,
    unit: "sq ft",
    meaning: "A garden smaller than this at the rim is paid nothing. Blank: any size.",
  },
  yearlyRainInches: {
    setting: "Rain in a year",
    value: null,
    unit: "in",
    meaning: "Mean rain of a year at your gauge, for the yearly totals on Report. Blank: those totals are not computed.",
  },
  yearlyCaptureShare: {
    setting: "Runoff captured in a year",
    value: null,
    unit: "share",
    meaning: "Share of a year's runoff that your gardens keep, such as SOAK.LONGTERM works out from a rain record. Blank: not computed.",
  },
  largestFloorShare: {
    setting: "Largest floor",
    value: LARGEST_FLOOR_SHARE,
    unit: "share of what drains to it",
    meaning: "A larger floor does not fit. The largest printed size factor: Wisconsin's rain garden manual, clayey soil near the house.",
  },
  leastFloorSquareFeet: {
    setting: "Least floor",
    value: LEAST_FLOOR_SQUARE_FEET,
    unit: "sq ft",
    meaning: "No floor is smaller; the ponding shrinks instead. Rebate pages of programs ask for so much.",
  },
  leastDesignRateInchesPerHour: {
    setting: "Least design rate",
    value: LEAST_DESIGN_INCHES_PER_HOUR,
    unit: "in/h",
    meaning: "A slower yard does not fit without an underdrain. Half of the 0.25 in/h that Wisconsin's test hole asks for.",
  },
  longestEmptyHours: {
    setting: "Empty within, soil mix included",
    value: LONGEST_EMPTY_HOURS,
    unit: "h",
    meaning: "From full to empty. State manuals print 48 to 96 hours.",
  },
  leastStormInches: {
    setting: "Least likely storm",
    value: DESIGN_STORM_INCHES.least,
    unit: "in",
    meaning: "A yard's storm under this does not fit: it is more likely a slip of units (common practice).",
  },
  largestStormInches: {
    setting: "Largest likely storm",
    value: DESIGN_STORM_INCHES.most,
    unit: "in",
    meaning: "The same of a storm over this: few places have a day of so much rain (common practice).",
  },
} as const satisfies Record<string, ProgramSetting>;

/** The one setting that is a choice: below the numbers, with a drop-down in its own cell. Blank where nobody has chosen. */
export const placeSetting = {
  setting: "Country or state",
  unit: "choice",
  meaning:
    "Whose one-call rule a ticket's date is held against, and whether 811 is the number to call. Blank: nothing is counted. The date on the ticket decides.",
  choices: PROGRAM_PLACES,
} as const;

export type ProgramKey = keyof typeof programSettings;

/** The settings in force. Null only where blank is allowed. */
export type SettingValues = {
  readonly [Key in ProgramKey]: (typeof programSettings)[Key]["value"] extends number ? number : number | null;
};

/** The cell of a setting where set-up put it. */
export function settingCell(key: ProgramKey): CellRange {
  return cellOf(programSheet, firstRow(programSheet) + Object.keys(programSettings).indexOf(key), "value");
}

/** The cell of the place where set-up put it. */
export function placeSettingCell(): CellRange {
  return cellOf(programSheet, firstRow(programSheet) + Object.keys(programSettings).length, "value");
}

/** The sheet with the drop-down of its one choice, and a name for each setting: =SOAK_drainHours in anybody's formula. */
export function programLayout(): SheetLayout {
  const { setting, choices } = placeSetting;
  return {
    ...layoutOf(programSheet),
    choicesIn: [{ heading: setting, choices, cells: placeSettingCell() }],
    names: [
      ...(Object.keys(programSettings) as ProgramKey[]).map((key) => ({ name: `SOAK_${key}`, cell: settingCell(key) })),
      { name: "SOAK_place", cell: placeSettingCell() },
    ],
  };
}

/** Where the sheets and settings of a workbook stand: what its formulas refer to. */
export interface Places {
  of<S extends Sheet>(sheet: S): Place<S>;
  setting(key: ProgramKey): CellRange;
}

export const placesAsSetUp: Places = { of: placeAsSetUp, setting: settingCell };

/** What SITEDESIGN holds a basin against, in the yard's units and in the order of its arguments. */
export function designLimits(settings: SettingValues, units: UnitSystem): readonly number[] {
  return [
    settings.largestFloorShare,
    fromUs("area", settings.leastFloorSquareFeet, units),
    fromUs("rate", settings.leastDesignRateInchesPerHour, units),
    settings.longestEmptyHours,
    fromUs("depth", settings.leastStormInches, units),
    fromUs("depth", settings.largestStormInches, units),
  ];
}
