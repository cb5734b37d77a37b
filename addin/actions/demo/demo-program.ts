import { groundSlopePercent } from "../../../functions/siting/ground-slope.ts";
import { addressOf, type CellValue, type WorkbookWriting } from "../../workbook/port.ts";
import { screeningVisit } from "../../checklist/screening-visit.ts";
import { stages } from "../../checklist/stages.ts";
import { asBuiltSheet } from "../../records/as-built.ts";
import { digDaysSheet } from "../../records/dig-days.ts";
import { estimateLinesSheet } from "../../records/estimate-lines.ts";
import { followUpsSheet } from "../../records/follow-ups.ts";
import { DEMO_SETTING, IS_DEMO } from "../../records/demo-mark.ts";
import { verdictFormula } from "../../records/formulas.ts";
import { holeTestsSheet, minutesKey, waterKey } from "../../records/hole-tests.ts";
import { cellOf, columnOf, firstRow } from "../../records/place.ts";
import { plantingSheet } from "../../records/planting.ts";
import { pricesSheet } from "../../records/prices.ts";
import { settingCell, type ProgramKey } from "../../records/program.ts";
import { rainRecordSheet } from "../../records/rain-record.ts";
import type { Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import { surfacesSheet } from "../../records/surfaces.ts";
import { visitsSheet, type Verdict } from "../../records/visits.ts";
import { today } from "../dates.ts";
import { demoJobs, type DemoRow, type DemoSite } from "./demo-jobs.ts";
import { demoRain } from "./demo-rain.ts";

/**
 * An invented program in an invented town, Tamsin Ferry: yards that differ in earnest, so that every answer the
 * workbook can give is there to be seen. None of it is a measurement of a real place.
 */
interface DemoYard {
  readonly yard: string;
  readonly address: string;
  readonly units?: "us" | "metric";
  readonly soilGroup?: "A" | "B" | "C" | "D";
  readonly slope?: readonly [drop: number, run: number];
  readonly pondingDepth?: number;
  readonly mediaDepth?: number;
  readonly mixRecipe?: string;
  readonly notes: string;
  readonly surfaces: readonly (readonly [surface: string, cover: string, area: number, share: number, howMeasured?: string])[];
  readonly holes?: readonly DemoHole[];
  readonly screening?: readonly DemoAnswer[];
}

interface DemoHole {
  readonly diameter: CellValue;
  readonly depth: number;
  readonly soaked: "yes" | "no";
  readonly minutes: readonly number[];
  readonly water: readonly number[];
}

type DemoAnswer =
  | { readonly step: string; readonly measured: number; readonly unit: "ft" | "m" | "%"; readonly rule: string }
  | { readonly step: string; readonly says: string; readonly verdict: Verdict };

const passed = (step: string, says: string): DemoAnswer => ({ step, says, verdict: "pass" });
const foundation = (measured: number, unit: "ft" | "m" = "ft"): DemoAnswer => ({
  step: "foundation",
  measured,
  unit,
  rule: "Distance to foundation",
});
const slopePercent = (measured: number): DemoAnswer => ({ step: "slope", measured, unit: "%", rule: "Ground slope" });

export const demoYards: readonly DemoYard[] = [
  {
    yard: "Corner house, Fennel Row",
    address: "4 Fennel Row",
    soilGroup: "B",
    slope: [7, 180],
    notes: "Wants butterflies. Downspout on the garden side already runs over the lawn.",
    surfaces: [
      ["Front roof, half", "roof", 1180, 0.5],
      ["Drive", "paving", 240, 0.5, "rectangle: length 20 ft, width 12 ft"],
    ],
    holes: [
      { diameter: 8, depth: 18, soaked: "yes", minutes: [0, 10, 20, 30, 40, 50, 60], water: [9, 8.0625, 7.3125, 6.625, 6, 5.4375, 4.875] },
    ],
    screening: [
      foundation(14),
      slopePercent(3.9),
      passed("wet-spot", "No, it drains"),
      passed("trees", "Yes, outside"),
      passed("overflow", "Yes, there is a way"),
      passed("ticket", "All answered, ticket in force"),
      passed("private-lines", "Shown, or none"),
    ],
  },
  {
    yard: "Old sand pit, Fennel Row",
    address: "11 Fennel Row",
    soilGroup: "A",
    slope: [4, 180],
    notes: "Sandy to the bottom of the hole. Compost only.",
    mixRecipe: "fast soil",
    mediaDepth: 6,
    surfaces: [["Whole roof", "roof", 1450, 1]],
    holes: [{ diameter: 10, depth: 18, soaked: "yes", minutes: [0, 2, 4, 6, 8, 10], water: [10, 8.9375, 8.125, 7.375, 6.6875, 6.0625] }],
    screening: [foundation(18), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Blue door, Osier Bank",
    address: "2 Osier Bank",
    soilGroup: "D",
    slope: [5, 180],
    pondingDepth: 6,
    notes: "Owner asked for 6 in of ponding; the hole is too slow for it.",
    surfaces: [["Back roof", "roof", 720, 1]],
    holes: [{ diameter: 8, depth: 18, soaked: "yes", minutes: [0, 60, 120, 180, 240], water: [8, 7.4375, 7, 6.5625, 6.125] }],
    screening: [foundation(12), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Willow fence, Osier Bank",
    address: "19 Osier Bank",
    soilGroup: "C",
    slope: [6, 180],
    mediaDepth: 12,
    mixRecipe: "tight soil",
    notes: "Tight soil: sand and compost go into what is dug out.",
    surfaces: [
      ["Garage and kitchen roof", "roof", 640, 1],
      ["Patio", "paving", 160, 1],
    ],
    holes: [{ diameter: 8, depth: 18, soaked: "yes", minutes: [0, 20, 40, 60, 80, 100], water: [8.5, 7.8125, 7.25, 6.75, 6.25, 5.8125] }],
    screening: [foundation(16), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Top of Quarry Stair",
    address: "7 Quarry Stair",
    soilGroup: "B",
    slope: [26, 180],
    notes: "Steep: over 12 %. Look for another place in the yard.",
    surfaces: [["Uphill roof", "roof", 880, 1]],
    holes: [{ diameter: 8, depth: 18, soaked: "no", minutes: [0, 10, 20, 30, 40], water: [9, 7.8125, 6.9375, 6.1875, 5.4375] }],
    screening: [foundation(22), slopePercent(14.4), { step: "steep-ground", says: "Yes", verdict: "refer" }],
  },
  {
    yard: "Narrow side yard, Millrace Way",
    address: "30 Millrace Way",
    soilGroup: "B",
    slope: [6, 180],
    notes: "Only 6 ft between house and fence.",
    surfaces: [["Side roof", "roof", 410, 1]],
    holes: [{ diameter: 10, depth: 18, soaked: "yes", minutes: [0, 5, 10, 15, 20, 25], water: [10, 9, 8.25, 7.5625, 6.9375, 6.3125] }],
    screening: [foundation(6), slopePercent(3.3), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Mill cottage, Millrace Way",
    address: "8 Millrace Way",
    soilGroup: "C",
    notes: "Not tested yet: waiting for the utility marks.",
    surfaces: [
      ["Roof to the lane", "roof", 530, 1],
      ["Gravel drive", "gravel drive", 300, 0.5],
    ],
    screening: [foundation(15), { step: "ticket", says: "Asked for, still waiting", verdict: "stop" }],
  },
  {
    yard: "Candlewick Close, end house",
    address: "15 Candlewick Close",
    soilGroup: "B",
    slope: [5, 180],
    notes: "A typing slip to find: the hole diameter was typed with its unit.",
    surfaces: [["Front roof", "roof", 690, 1]],
    holes: [{ diameter: "8 in", depth: 18, soaked: "yes", minutes: [0, 15, 30, 45, 60], water: [8, 6.875, 6, 5.25, 4.5] }],
    screening: [foundation(11)],
  },
  {
    yard: "Larkspur Court, number 5",
    address: "5 Larkspur Court",
    units: "metric",
    soilGroup: "B",
    slope: [0.15, 4.5],
    notes: "Measured in metric by the owner: mm, m and m².",
    surfaces: [
      ["Roof above the garden", "roof", 78, 1],
      ["Path", "paving", 12, 1, "rectangle: length 8 m, width 1.5 m"],
    ],
    holes: [{ diameter: 200, depth: 450, soaked: "yes", minutes: [0, 10, 20, 30, 40, 50], water: [200, 181, 166, 152, 139, 127] }],
    screening: [foundation(4.2, "m"), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Larkspur Court, number 21",
    address: "21 Larkspur Court",
    soilGroup: "B",
    slope: [4, 180],
    notes: "Two holes that differ by a factor of two: fill at one end.",
    surfaces: [["Whole roof", "roof", 960, 1]],
    holes: [
      { diameter: 8, depth: 18, soaked: "yes", minutes: [0, 15, 30, 45, 60], water: [8, 7.0625, 6.3125, 5.625, 4.9375] },
      { diameter: 8, depth: 18, soaked: "yes", minutes: [0, 10, 20, 30, 40], water: [8, 6.625, 5.625, 4.6875, 3.9375] },
    ],
    screening: [foundation(13), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Twin house, Tannery Yard",
    address: "3 Tannery Yard",
    soilGroup: "C",
    slope: [3, 180],
    mediaDepth: 8,
    mixRecipe: "sand with topsoil and compost",
    notes: "One downspout serves two houses; half of it is ours.",
    surfaces: [["Shared roof", "roof", 1600, 0.5]],
    holes: [{ diameter: 8, depth: 18, soaked: "yes", minutes: [0, 20, 40, 60, 80], water: [8, 7.0625, 6.3125, 5.6875, 5.0625] }],
    screening: [foundation(12), { step: "property-line", measured: 8, unit: "ft", rule: "Distance to property line" }],
  },
  {
    yard: "Ferry Stairs boathouse",
    address: "12 Ferry Stairs",
    soilGroup: "A",
    slope: [8, 180],
    pondingDepth: 4,
    notes: "Big roof, fast soil, little room: shallow and wide.",
    surfaces: [["Boathouse roof", "roof", 2100, 1, "roof footprint: length 68 ft, width 28 ft, overhang 1 ft"]],
    holes: [{ diameter: 10, depth: 18, soaked: "yes", minutes: [0, 4, 8, 12, 16], water: [10, 8.75, 7.8125, 7, 6.1875] }],
    screening: [foundation(25), { step: "property-line", measured: 7, unit: "ft", rule: "Distance to property line" }],
  },
  {
    yard: "Heron Walk, the long lawn",
    address: "9 Heron Walk",
    soilGroup: "C",
    slope: [9, 180],
    notes: "Half of what drains here is lawn: compare the runoff by curve numbers.",
    surfaces: [
      ["Roof", "roof", 520, 1],
      ["Uphill lawn", "good lawn", 900, 1],
    ],
    holes: [{ diameter: 10, depth: 18, soaked: "yes", minutes: [0, 15, 30, 45, 60], water: [9, 8.25, 7.625, 7, 6.4375] }],
    screening: [foundation(30), slopePercent(5)],
  },
  {
    yard: "Heron Walk, gravel bar",
    address: "27 Heron Walk",
    soilGroup: "A",
    slope: [2, 180],
    notes: "Drains faster than the rule's upper bound: refer before treating street water.",
    surfaces: [["Roof", "roof", 700, 1]],
    holes: [{ diameter: 12, depth: 18, soaked: "yes", minutes: [0, 1, 2, 3, 4], water: [10, 8.875, 7.9375, 7.125, 6.375] }],
    screening: [foundation(20)],
  },
  {
    yard: "Hollow Tree School, north wing",
    address: "1 Bellrope Street",
    soilGroup: "B",
    slope: [4, 180],
    pondingDepth: 6,
    notes: "School garden: shallow ponding, pupils plant it.",
    surfaces: [
      ["North wing roof", "roof", 3400, 1],
      ["Court", "paving", 800, 0.5, "widths: step 10 ft, widths 20 20 22 20 16 ft"],
    ],
    holes: [
      { diameter: 10, depth: 18, soaked: "yes", minutes: [0, 5, 10, 15, 20], water: [9, 7.9375, 7.125, 6.375, 5.6875] },
      { diameter: 10, depth: 18, soaked: "yes", minutes: [0, 5, 10, 15, 20], water: [9, 8.1875, 7.5, 6.875, 6.3125] },
    ],
    screening: [foundation(40), passed("ticket", "All answered, ticket in force")],
  },
  {
    yard: "Saltgrass Lane farmhouse",
    address: "6 Saltgrass Lane",
    soilGroup: "B",
    slope: [5, 180],
    notes: "Septic field below the place: the health department decides. Hole not soaked first and not steady: test again.",
    surfaces: [["Barn roof, east", "roof", 1250, 1]],
    holes: [{ diameter: 8, depth: 18, soaked: "no", minutes: [0, 10, 20, 30, 40], water: [8, 6.75, 5.75, 5, 4.25] }],
    screening: [
      foundation(28),
      { step: "septic-uphill", measured: 38, unit: "ft", rule: "Distance to septic field, basin uphill" },
      { step: "well", measured: 65, unit: "ft", rule: "Distance to well" },
    ],
  },
];

/** Days before today: the first visits and tests of all yards, a day apart. */
const FIRST_VISIT = 500;
const FIRST_TEST = 480;

/** Fills an otherwise empty program with the invented yards, and with how far some of them have come. */
export async function fillDemoProgram(workbook: WorkbookWriting, day: number = today()): Promise<void> {
  const sites = demoYards.map((yard, index) => ({
    siteId: siteIdAt(index),
    yard: yard.yard,
    address: yard.address,
    units: yard.units ?? "us",
    soilGroup: yard.soilGroup ?? null,
    slopeDrop: yard.slope?.[0] ?? null,
    slopeRun: yard.slope?.[1] ?? null,
    pondingDepth: yard.pondingDepth ?? null,
    mediaDepth: yard.mediaDepth ?? null,
    mixRecipe: yard.mixRecipe ?? null,
    notes: yard.notes,
  }));
  const surfaces = demoYards.flatMap((yard, index) =>
    yard.surfaces.map(([surface, cover, area, share, howMeasured = null]) => ({
      siteId: siteIdAt(index),
      surface,
      cover,
      area,
      share,
      howMeasured,
    })),
  );
  const holes = demoYards.flatMap((yard, index) =>
    (yard.holes ?? []).map((hole, number) => ({
      siteId: siteIdAt(index),
      hole: String.fromCharCode(65 + number),
      date: day - FIRST_TEST + index,
      tester: number === 0 ? "Crew one" : "Crew two",
      soaked: hole.soaked,
      holeDepth: hole.depth,
      holeDiameter: hole.diameter,
      ...Object.fromEntries(hole.minutes.map((minutes, reading) => [minutesKey(reading + 1), minutes])),
      ...Object.fromEntries(hole.water.map((depth, reading) => [waterKey(reading + 1), depth])),
    })),
  );
  const jobs = demoJobs(demoYards.map(demoSite), day);
  const visits = [
    ...demoYards.flatMap((yard, index) =>
      (yard.screening ?? []).map((answer) => screeningRow(siteIdAt(index), day - FIRST_VISIT + index, answer)),
    ),
    ...jobs.visits,
  ];
  await workbook.writeValues([
    ...columnWrites(sitesSheet, sites),
    ...columnWrites(surfacesSheet, surfaces),
    ...columnWrites(holeTestsSheet, holes),
    ...columnWrites(visitsSheet, visits),
    ...columnWrites(plantingSheet, jobs.planting),
    ...columnWrites(estimateLinesSheet, jobs.estimateLines),
    ...columnWrites(digDaysSheet, jobs.digDays),
    ...columnWrites(asBuiltSheet, jobs.asBuilt),
    ...columnWrites(followUpsSheet, jobs.followUps),
    ...columnWrites(pricesSheet, jobs.prices),
    ...columnWrites(rainRecordSheet, demoRain(day)),
    ...demoSettings.map(([key, value]) => ({ range: settingCell(key), values: [[value]] })),
  ]);
  await workbook.writeSetting(DEMO_SETTING, IS_DEMO);
  await workbook.writeFormulas(
    visits.flatMap(({ siteId, rule = null }, index) => {
      if (rule === null) return [];
      const row = firstRow(visitsSheet) + index;
      const answerAddress = addressOf(cellOf(visitsSheet, row, "answer")).replace(/^.*!/, "");
      const units = sites.find((site) => site.siteId === siteId)?.units ?? "us";
      return [{ range: cellOf(visitsSheet, row, "verdict"), formulas: [[verdictFormula(String(rule), answerAddress, units)]] }];
    }),
  );
}

/** What the invented program pays and measures, so that no total of its report stands empty. */
const demoSettings: readonly (readonly [key: ProgramKey, value: number])[] = [
  ["costSharePercent", 50],
  ["costShareCap", 1500],
  ["yearlyRainInches", 38],
  ["yearlyCaptureShare", 0.8],
];

function demoSite(yard: DemoYard, index: number): DemoSite {
  const [drop, run] = yard.slope ?? [];
  return {
    siteId: siteIdAt(index),
    units: yard.units ?? "us",
    slopePercent: drop === undefined || run === undefined ? null : groundSlopePercent(drop, run),
    answered: new Set((yard.screening ?? []).map(({ step }) => step)),
  };
}

function screeningRow(siteId: string, date: number, answer: DemoAnswer): DemoRow {
  const common = { siteId, date, stage: stageOf(answer.step), step: answer.step, by: "Crew one" };
  if (!("measured" in answer)) return { ...common, answer: answer.says, verdict: answer.verdict };
  return { ...common, answer: answer.measured, unit: answer.unit, rule: answer.rule };
}

function stageOf(step: string): string {
  return stages.find(({ steps }) => steps.some(({ id }) => id === step))?.id ?? screeningVisit.id;
}

function siteIdAt(index: number): string {
  return `Y-${String(index + 1).padStart(3, "0")}`;
}

/** A write per filled column, so that the computed columns between them stay untouched. */
function columnWrites(sheet: Sheet, records: readonly Readonly<Record<string, CellValue>>[]) {
  const keys = Object.keys(sheet.columns).filter((key) => records.some((record) => (record[key] ?? null) !== null));
  return keys.map((key) => ({
    range: { sheet: sheet.name, row: firstRow(sheet), column: columnOf(sheet, key), rows: records.length, columns: 1 },
    values: records.map((record) => [record[key] ?? null]),
  }));
}
