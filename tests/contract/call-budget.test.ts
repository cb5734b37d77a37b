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

/** A program with three surfaces and a hole a yard: what a whole calculation takes, then one edited surface, then one edited reading. */
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
  const row = firstRow(surfacesSheet) + 7;
  return {
    whole: await spentOn(() => Promise.resolve()),
    surface: await spentOn(() => workbook.writeValues([{ range: cellOf(surfacesSheet, row, "area"), values: [[555]] }])),
    reading: await spentOn(() =>
      workbook.writeValues([{ range: cellOf(holeTestsSheet, firstRow(holeTestsSheet) + 7, "water2"), values: [[9]] }]),
    ),
  };

  async function spentOn(change: () => Promise<void>) {
    callsOfOurs.length = 0;
    await change();
    excel.book.calculate();
    return { calls: callsOfOurs.length, cells: callsOfOurs.reduce((sum, call) => sum + call.cells, 0) };
  }
}

/**
 * The most that each may take. Rows are prepared by doubling: two hundred yards stand in 200 rows, a thousand in 1,600, with
 * three times as many surfaces. Each hole is one call in its own row.
 */
const BUDGETS = [
  { yards: 200, whole: { calls: 210, cells: 26_000 }, surface: { calls: 5, cells: 10_000 }, reading: { calls: 4, cells: 12_000 } },
  { yards: 1000, whole: { calls: 1010, cells: 195_000 }, surface: { calls: 5, cells: 80_000 }, reading: { calls: 4, cells: 92_000 } },
];

test.each(BUDGETS)(
  "at $yards yards a whole calculation, one edited surface and one edited reading stay within their calls and cells",
  async ({ yards, ...budget }) => {
    const spent = await callsAt(yards);
    for (const change of ["whole", "surface", "reading"] as const) {
      expect(spent[change].calls, change).toBeLessThanOrEqual(budget[change].calls);
      expect(spent[change].calls, change).toBeGreaterThan(0);
      expect(spent[change].cells, change).toBeLessThanOrEqual(budget[change].cells);
    }
  },
);
