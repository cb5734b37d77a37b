import { choiceColumn, dateColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

export const COMPARISONS = ["at least", "at most"] as const;
export const CONSEQUENCES = ["refer", "stop"] as const;

/** The program's limits, a row each, with where each comes from. The columns are those SOAK.SITECHECK reads. */
export const rulesSheet = {
  name: "Rules",
  preface: [
    "Rules: the limits a yard is held against. Edit them to your local code; the source says where each began",
    "Two rows with one rule name make two steps, such as refer above 10 % and stop above 12 %. The worse answer counts.",
  ],
  columns: {
    rule: nameColumn("Rule", { widthPixels: 250 }),
    comparison: choiceColumn("Comparison", "Comparison", COMPARISONS, { widthPixels: 96 }),
    limit: numberColumn("Limit", { label: "Limit", atLeast: 0 }, { widthPixels: 70 }),
    unit: textColumn("Unit", { widthPixels: 60 }),
    ifNotMet: choiceColumn("If not met", "If not met", CONSEQUENCES, { widthPixels: 84 }),
    source: textColumn("Source", { widthPixels: 430 }),
    checked: dateColumn("Checked", "Checked", { widthPixels: 92 }),
  },
  rows: 60,
  frozenColumns: 1,
  together: [["rule", "checked"]],
} as const satisfies Sheet;

export type Rule = RecordOf<typeof rulesSheet>;
export type RuleRow = SheetRow<typeof rulesSheet>;

interface StartingRule {
  readonly rule: string;
  readonly comparison: (typeof COMPARISONS)[number];
  readonly limit: number;
  readonly unit: string;
  readonly ifNotMet: (typeof CONSEQUENCES)[number];
  readonly source: string;
}

const WESTERN_WASHINGTON = "Rain Garden Handbook for Western Washington, WSU Extension, 2013, p. 13";
const MINNESOTA_SETBACKS = "Minnesota Stormwater Manual, minimum setback requirements";

/** Limits a new workbook starts with: presets to check against local code, not law. */
export const startingRules: readonly StartingRule[] = [
  { rule: "Distance to foundation", comparison: "at least", limit: 10, unit: "ft", ifNotMet: "stop", source: WESTERN_WASHINGTON },
  {
    rule: "Distance to septic field, basin uphill",
    comparison: "at least",
    limit: 50,
    unit: "ft",
    ifNotMet: "stop",
    source: WESTERN_WASHINGTON,
  },
  {
    rule: "Distance to septic field, basin downhill",
    comparison: "at least",
    limit: 10,
    unit: "ft",
    ifNotMet: "stop",
    source: WESTERN_WASHINGTON,
  },
  { rule: "Distance to well", comparison: "at least", limit: 50, unit: "ft", ifNotMet: "stop", source: MINNESOTA_SETBACKS },
  { rule: "Distance to property line", comparison: "at least", limit: 10, unit: "ft", ifNotMet: "refer", source: MINNESOTA_SETBACKS },
  { rule: "Ground slope", comparison: "at most", limit: 10, unit: "%", ifNotMet: "refer", source: WESTERN_WASHINGTON },
  {
    rule: "Ground slope",
    comparison: "at most",
    limit: 12,
    unit: "%",
    ifNotMet: "stop",
    source: "Wisconsin homeowner manual GWQ037, as adapted by URI: another place above 12 %",
  },
  {
    rule: "Water table or rock below the dig",
    comparison: "at least",
    limit: 3,
    unit: "ft",
    ifNotMet: "refer",
    source: "Minnesota Stormwater Manual, construction specifications for bioretention",
  },
  {
    rule: "Water table or rock below the dig",
    comparison: "at least",
    limit: 1,
    unit: "ft",
    ifNotMet: "stop",
    source: "Common practice, from memory: check before use",
  },
  {
    rule: "Tested infiltration rate",
    comparison: "at least",
    limit: 0.25,
    unit: "in/h",
    ifNotMet: "refer",
    source: "Wisconsin homeowner manual GWQ037: a 6 in hole empties in 24 h",
  },
  {
    rule: "Tested infiltration rate",
    comparison: "at most",
    limit: 12,
    unit: "in/h",
    ifNotMet: "refer",
    source: "Oregon Sea Grant ORESU-G-11-008: upper bound for treatment",
  },
  {
    rule: "Ponding depth",
    comparison: "at most",
    limit: 8,
    unit: "in",
    ifNotMet: "refer",
    source: "Wisconsin homeowner manual GWQ037: deeper ponds too long and is a trip hazard",
  },
  {
    rule: "Ponding depth",
    comparison: "at most",
    limit: 12,
    unit: "in",
    ifNotMet: "stop",
    source: "Common practice near children's play, no source",
  },
  {
    rule: "Drawdown",
    comparison: "at most",
    limit: 48,
    unit: "h",
    ifNotMet: "stop",
    source: "Common practice; mosquitoes need 7 to 12 days, some manuals allow 72 h",
  },
];
