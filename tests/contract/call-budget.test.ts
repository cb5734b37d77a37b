/** How often the workbook calls our functions, and with how many cells: Excel answers each call on its own, and later. */
import { expect, test } from "vitest";
import { appendRows } from "../../addin/actions/program/write-records.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { settingCell } from "../../addin/records/program.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { callsOfOurs } from "./formula-functions.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

/** A program with three surfaces and a hole a yard, calculated whole; then one surface is edited. */
async function callsAt(yards: number) {
  const excel = new InMemoryExcel();
  excel.book.calculationMode = "Manual";
  const workbook = excelWorkbook((error) => expect.fail(String(error)));
  await setUpWorkbook(workbook);
  const siteIds = Array.from({ length: yards }, (_, place) => `Y-${String(place + 1).padStart(4, "0")}`);
  await appendRows(
    workbook,
    sitesSheet,
    siteIds.map((siteId) => ({ siteId, yard: `Yard ${siteId}`, units: "us", soilGroup: "B", mixRecipe: "fast soil", mediaDepth: 12 })),
  );
  await appendRows(
    workbook,
    surfacesSheet,
    siteIds.flatMap((siteId) => ["roof", "paving", "good lawn"].map((cover) => ({ siteId, surface: cover, cover, area: 400 }))),
  );
  await appendRows(
    workbook,
    holeTestsSheet,
    siteIds.map((siteId) => ({ siteId, hole: "A", holeDiameter: 8, minutes1: 0, water1: 12, minutes2: 60, water2: 10 })),
  );
  await workbook.writeValues([{ range: settingCell("yearlyRainInches"), values: [[40]] }]);
  callsOfOurs.length = 0;
  excel.book.calculate();
  const whole = callsOfOurs.length;
  callsOfOurs.length = 0;
  await workbook.writeValues([{ range: cellOf(surfacesSheet, firstRow(surfacesSheet) + 7, "area"), values: [[555]] }]);
  excel.book.calculate();
  const cells = callsOfOurs.reduce((sum, call) => sum + call.cells, 0);
  return { whole, edit: callsOfOurs.length, cells };
}

test("one edited surface at 200 yards takes six calls and 10,000 cells at most, and at 1,000 yards as many calls and cells in proportion", async () => {
  const small = await callsAt(200);
  expect(small.edit).toBeLessThanOrEqual(6);
  expect(small.cells).toBeLessThanOrEqual(10_000);
  const large = await callsAt(1000);
  expect(large.edit).toBe(small.edit);
  // Prepared rows double: a thousand yards stand in 1,600 of them, three thousand surfaces in 4,800.
  expect(large.cells).toBeLessThanOrEqual(8 * small.cells);
  // One call a hole, in its own row.
  expect(large.whole).toBeLessThanOrEqual(40 + 1000);
}, 240_000);
