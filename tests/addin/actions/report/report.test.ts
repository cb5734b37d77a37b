import { beforeAll, describe, expect, test } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { readProgram, type Program } from "../../../../addin/actions/program/read-program.ts";
import { reportOf, type Report, type ReportQuestion, type ReportTotal } from "../../../../addin/actions/report/report.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { appendRow } from "../../../../addin/actions/program/write-records.ts";
import { asBuiltSheet } from "../../../../addin/records/as-built.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { digDaysSheet } from "../../../../addin/records/dig-days.ts";
import { estimateLinesSheet } from "../../../../addin/records/estimate-lines.ts";
import { followUpsSheet } from "../../../../addin/records/follow-ups.ts";
import { placeAsSetUp } from "../../../../addin/records/place.ts";
import { plantingSheet } from "../../../../addin/records/planting.ts";
import { pricesSheet } from "../../../../addin/records/prices.ts";
import { settingCell } from "../../../../addin/records/program.ts";
import type { ReportFigureKey } from "../../../../addin/records/report.ts";
import type { Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

/**
 * An invented program of four yards in Tamsin Ferry, small enough to be added up by hand.
 * Y-001 built 2026-07-01, US.      1,000 sq ft of roof; floor 98 sq ft, holds 66.25 cu ft.
 * Y-002 built 2027-03-01, metric.  100 m² of roof and 50 m² of lawn; floor 10 m², holds 2 m³.
 * Y-003 fits, not built.           800 sq ft of roof; floor 60 sq ft, holds 70 cu ft.
 * Y-004 neither.                   Hours only.
 */
const WHOLE: ReportQuestion = { from: null, to: null, funder: null };
const TODAY = dayNumber(2027, 6, 1);
const BUILT_2026 = dayNumber(2026, 7, 1);
const BUILT_2027 = dayNumber(2027, 3, 1);

let workbook: WorkbookInMemory;
let program: Program;

/** Adds a row and puts values where the formulas of its computed columns would answer. */
async function add<S extends Sheet>(sheet: S, values: Record<string, CellValue>, answers: Record<string, CellValue> = {}): Promise<void> {
  const row = await appendRow(workbook, sheet, values as never);
  for (const [key, value] of Object.entries(answers)) workbook.answer(placeAsSetUp(sheet as Sheet).cell(row, key), value);
}

async function addYard(place: number, site: Record<string, CellValue>, design: Record<string, CellValue>): Promise<void> {
  await add(sitesSheet, site);
  for (const [key, value] of Object.entries({ siteId: site["siteId"] ?? null, ...design }))
    workbook.answer(placeAsSetUp(designSheet as Sheet).cell(placeAsSetUp(designSheet).firstRow + place, key), value);
}

beforeAll(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await workbook.writeValues([
    { range: settingCell("yearlyRainInches"), values: [[40]] },
    { range: settingCell("yearlyCaptureShare"), values: [[0.8]] },
  ]);
  await addYard(
    0,
    { siteId: "Y-001", units: "us" },
    { contributingArea: 1000, stormDepth: 1, runoff: 0.95 * (1000 / 12), floorArea: 90, waterHeld: 60, status: "fits" },
  );
  await addYard(
    1,
    { siteId: "Y-002", units: "metric" },
    { contributingArea: 150, stormDepth: 25.4, runoff: 0.95 * 150 * 0.0254, floorArea: 9, waterHeld: 1.9, status: "fits" },
  );
  await addYard(
    2,
    { siteId: "Y-003", units: "us" },
    { contributingArea: 800, stormDepth: 1, runoff: 0.95 * (800 / 12), floorArea: 60, waterHeld: 70, status: "fits" },
  );
  await addYard(3, { siteId: "Y-004", units: "us" }, { contributingArea: 500, stormDepth: 1, status: "#N/A" });
  await add(surfacesSheet, { siteId: "Y-001", cover: "roof", area: 1000 });
  await add(surfacesSheet, { siteId: "Y-002", cover: "roof", area: 100 });
  await add(surfacesSheet, { siteId: "Y-002", cover: "good lawn", area: 50 });
  await add(surfacesSheet, { siteId: "Y-003", cover: "roof", area: 800 });
  await add(asBuiltSheet, { siteId: "Y-001", date: BUILT_2026 }, { floorArea: 98, waterHeld: 66.25 });
  await add(asBuiltSheet, { siteId: "Y-001", date: BUILT_2026 - 30 }, { floorArea: 50, waterHeld: 20 });
  await add(asBuiltSheet, { siteId: "Y-002", date: BUILT_2027 }, { floorArea: 10, waterHeld: 2 });
  await add(plantingSheet, { siteId: "Y-001", plant: "Carex vulpinoidea", planned: 10, planted: 8 });
  await add(plantingSheet, { siteId: "Y-001", plant: "carex Vulpinoidea ", planned: 10, planted: 2 });
  await add(plantingSheet, { siteId: "Y-001", plant: "Iris versicolor", planned: 4, planted: 0 });
  await add(plantingSheet, { siteId: "Y-003", plant: "Iris versicolor", planned: 5 });
  await add(digDaysSheet, { siteId: "Y-001", date: BUILT_2026 - 2, entry: "sign-in", who: "Person one", hours: 4 });
  await add(digDaysSheet, { siteId: "Y-001", date: BUILT_2026 - 1, entry: "sign-in", who: "person One", hours: 2 });
  await add(digDaysSheet, { siteId: "Y-002", date: BUILT_2026, entry: "sign-in", who: "Person two", hours: 3 });
  await add(digDaysSheet, { siteId: "Y-001", date: BUILT_2026, entry: "quantity", item: "compost", hours: 9 });
  await add(digDaysSheet, { siteId: "Y-004", date: BUILT_2026, entry: "sign-in", who: "Person two", hours: 5 });
  const [prices = []] = await workbook.readSheets([pricesSheet.name]);
  const hourRow = prices.findIndex((cells) => cells[0] === "volunteer hour");
  await workbook.writeValues([{ range: placeAsSetUp(pricesSheet).cell(hourRow, "unitPrice"), values: [[30]] }]);
  await add(estimateLinesSheet, { siteId: "Y-001", item: "compost", quantity: 3, funder: "Water fund" }, { amount: 120 });
  await add(estimateLinesSheet, { siteId: "Y-001", item: "labor", quantity: 1, kind: "in-kind", funder: "Owner" }, { amount: 40 });
  await add(estimateLinesSheet, { siteId: "Y-001", item: "gravel", quantity: 1 }, { amount: "#VALUE!" });
  await add(estimateLinesSheet, { siteId: "Y-002", item: "compost", quantity: 2, funder: "water fund" }, { amount: 80 });
  await add(estimateLinesSheet, { siteId: "Y-003", item: "compost", quantity: 1 }, { amount: 50 });
  await add(followUpsSheet, { siteId: "Y-001", kind: "1 week", due: BUILT_2026 + 7, done: BUILT_2026 + 8 });
  await add(followUpsSheet, { siteId: "Y-001", kind: "1 month", due: BUILT_2026 + 30 });
  program = await readProgram(workbook);
});

const lineOf = (report: Report, key: ReportFigureKey) => {
  const line = report.lines.find(({ figure }) => figure.key === key);
  if (line === undefined) throw new Error(key);
  return line;
};
const built = (key: ReportFigureKey, question = WHOLE): ReportTotal => lineOf(reportOf(program, question, TODAY), key).built;
const designed = (key: ReportFigureKey, question = WHOLE): ReportTotal => lineOf(reportOf(program, question, TODAY), key).designed;

describe("The whole program, added up by hand", () => {
  test("a measured yard is built, one that fits is designed, and one that is neither is in no total", () => {
    const report = reportOf(program, WHOLE, TODAY);
    expect(report.built.map(({ yard }) => yard.siteId)).toEqual(["Y-001", "Y-002"]);
    expect(report.designed.map(({ yard }) => yard.siteId)).toEqual(["Y-003"]);
    expect(report.notYet.map(({ yard }) => yard.siteId)).toEqual(["Y-004"]);
    expect([built("yards").value, designed("yards").value]).toEqual([2, 1]);
  });

  test("a metric yard's areas and volumes are converted once: 150 m² are 1,614.59 sq ft, 2 m³ are 70.629 cu ft", () => {
    // NIST SP 811, appendix B: 1 sq ft is 0.09290304 m², 1 cu ft is 0.028316846592 m³.
    expect(built("contributingArea").value).toBeCloseTo(1000 + 150 / 0.09290304, 9);
    expect(built("imperviousArea").value).toBeCloseTo(1000 + 100 / 0.09290304, 9);
    expect(built("gardenArea").value).toBeCloseTo(98 + 10 / 0.09290304, 9);
    expect(built("storage").value).toBeCloseTo(66.25 + 2 / 0.028316846592, 9);
    // A US gallon is 231 cu in, a cubic foot 1,728.
    expect(built("storageGallons").value).toBeCloseTo(((66.25 + 2 / 0.028316846592) * 1728) / 231, 9);
  });

  test("a yard captures of the design storm what runs off, and no more than it holds", () => {
    // Y-001: 1,000 sq ft x 1 in / 12 x 0.95 = 79.1667 cu ft run off and 66.25 are held. Y-002: 150 m² x 25.4 mm x 0.95 = 3.6195 m³ run off, 2 are held.
    expect(built("stormGallons").value).toBeCloseTo(((66.25 + 2 / 0.028316846592) * 1728) / 231, 9);
    // Y-003: 800 sq ft x 1 in / 12 x 0.95 = 63.3333 cu ft run off, less than the 70 it holds.
    expect(designed("stormGallons").value).toBeCloseTo(((800 / 12) * 0.95 * 1728) / 231, 9);
  });

  test("a year's runoff and loads follow the simple method as the New York manual prints it", () => {
    // Y-003: Rv = 0.05 + 0.009 x 100 = 0.95; R = 40 x 0.9 x 0.95 = 34.2 in on 800 sq ft = 2,280 cu ft.
    expect(designed("yearGallons").value).toBeCloseTo((2280 * 1728) / 231, 6);
    expect(designed("capturedGallons").value).toBeCloseTo((2280 * 0.8 * 1728) / 231, 6);
    // L = 0.2266 lb per acre-inch and mg/L, exactly 0.226613: 34.2 in x 0.26 mg/L x 800 / 43,560 acres.
    expect(designed("phosphorus").value).toBeCloseTo(0.226613 * 34.2 * 0.26 * (800 / 43560), 6);
    expect(designed("solids").value).toBeCloseTo(0.226613 * 34.2 * 54.5 * (800 / 43560), 4);
    // Y-002 is two thirds roof: Rv = 0.05 + 0.009 x 66.667 = 0.65; 36 in x 0.65 = 23.4 in on 1,614.59 sq ft.
    const lawnAndRoof = ((23.4 / 12) * 150) / 0.09290304;
    expect(built("yearGallons").value).toBeCloseTo(((2850 + lawnAndRoof) * 1728) / 231, 6);
  });

  test("plants are those planted where built and planned where designed, and a species counts once however it is typed", () => {
    expect([built("plants").value, designed("plants").value]).toEqual([10, 5]);
    expect([built("species").value, designed("species").value]).toEqual([1, 1]);
    expect(built("plants").behind.map(({ value }) => value)).toEqual([10, null]);
  });

  test("hours are those of sign-ins, a person counts once, and their value is the hours at the rate on Prices", () => {
    expect(built("hours").value).toBe(4 + 2 + 3);
    expect(built("volunteers").value).toBe(2);
    expect(built("volunteerValue").value).toBe(9 * 30);
  });

  test("cash and in-kind stand apart, and a line without an amount is counted as one", () => {
    expect([built("cash").value, built("inKind").value, built("unpriced").value]).toEqual([200, 40, 1]);
    expect([designed("cash").value, designed("inKind").value]).toEqual([50, 0]);
    expect(built("costPerArea").value).toBeCloseTo(200 / (1000 + 150 / 0.09290304), 9);
    expect(designed("costPerGallon").value).toBeCloseTo(50 / ((70 * 1728) / 231), 9);
  });

  test("money is split by funder, and a funder written in two ways is one", () => {
    expect(reportOf(program, WHOLE, TODAY).cashByFunder).toEqual([
      { name: "no funder named", built: 0, designed: 50 },
      { name: "Water fund", built: 200, designed: 0 },
    ]);
  });

  test("follow-ups are done or open, and the pane tells which are overdue", () => {
    expect([built("looksDone").value, built("looksOpen").value]).toEqual([1, 1]);
    expect(reportOf(program, WHOLE, TODAY).overdue).toHaveLength(1);
  });

  test("without the rain in a year nothing is computed from it, and the report says so", () => {
    const dry: Program = { ...program, settings: { ...program.settings, yearlyRainInches: null } };
    expect(lineOf(reportOf(dry, WHOLE, TODAY), "phosphorus").built).toMatchObject({
      value: null,
      why: "Rain in a year is blank on Program.",
    });
    expect(lineOf(reportOf(dry, WHOLE, TODAY), "stormGallons").built.value).not.toBeNull();
  });
});

describe("A part of the program", () => {
  const year2026: ReportQuestion = { from: dayNumber(2026, 1, 1), to: dayNumber(2026, 12, 31), funder: null };

  test("a period counts gardens by the day of As-built and hours by their own day; designs stand as they are today", () => {
    expect(built("yards", year2026).value).toBe(1);
    expect(built("contributingArea", year2026).value).toBe(1000);
    // Person two dug at Y-002 in 2026, though it was measured in 2027.
    expect(built("hours", year2026).value).toBe(9);
    expect(designed("yards", year2026).value).toBe(1);
  });

  test("the last day of a period is in it", () => {
    expect(built("yards", { from: BUILT_2026, to: BUILT_2026, funder: null }).value).toBe(1);
    expect(built("yards", { from: BUILT_2026 + 1, to: BUILT_2027 - 1, funder: null }).value).toBe(0);
  });

  test("one funder's report holds its yards and its lines alone", () => {
    const ofFund: ReportQuestion = { from: null, to: null, funder: "WATER FUND" };
    expect([built("yards", ofFund).value, designed("yards", ofFund).value]).toEqual([2, 0]);
    expect([built("cash", ofFund).value, built("inKind", ofFund).value]).toEqual([200, 0]);
    expect(built("yards", { ...ofFund, funder: "Owner" }).behind.map(({ yard }) => yard.siteId)).toEqual(["Y-001"]);
  });
});
