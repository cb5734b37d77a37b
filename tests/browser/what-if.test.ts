/** What-if tables in the real grid: every cell of a laid-out table is what one single call of the function answers. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { layOutWhatIf } from "../../addin/actions/lay-out-what-if.ts";
import type { WhatIfTable } from "../../addin/actions/lay-out-what-if.ts";
import type { WhatIfRequest } from "../../addin/actions/what-if-request.ts";
import { designSheet } from "../../addin/records/design.ts";
import { placesAsSetUp } from "../../addin/records/program.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import type { CellRange, CellValue } from "../../addin/workbook/workbook.ts";
import { basinArea, drawdown, siteDesign } from "../../functions/worksheet/basin.ts";
import type { CellInput } from "../../functions/worksheet/cell.ts";
import { isCellError } from "../../functions/worksheet/cell.ts";
import type { WorksheetFunction } from "../../functions/worksheet/worksheet-function.ts";
import { typeInto, value } from "./grid.ts";
import { PageHost } from "./page.ts";
import { address, PATIENCE, START_MILLISECONDS } from "./pane.ts";

/** Far below the table that set-up lays out. */
const TOPS = { shallow: 100, chosen: 140, wide: 180, yard: 220, every: 260 } as const;
/** The demo's metric yard, and its place below the headings of Sites. */
const METRIC = { place: 8, siteId: "Y-009" };

const typed = { kind: "typed", units: "us" } as const;
const tables: Readonly<Record<keyof typeof TOPS, WhatIfRequest>> = {
  shallow: { worksheetFunction: basinArea, result: 0, scope: typed, down: { key: "ponding", values: [3, 6, 9] }, across: { key: "designRate", values: [0.25, 0.5] }, fixed: new Map([["contributingArea", 1000]]) },
  chosen: { worksheetFunction: siteDesign, result: 2, scope: typed, down: { key: "ponding", values: [4, 6] }, across: { key: "testedRate", values: [0.5, 1, 2] }, fixed: new Map([["contributingArea", 1000]]) },
  wide: { worksheetFunction: siteDesign, result: "all", scope: typed, down: { key: "contributingArea", values: [500, 1000] }, across: null, fixed: new Map([["testedRate", 1]]) },
  yard: { worksheetFunction: drawdown, result: 0, scope: { kind: "yard", siteId: METRIC.siteId, units: "metric" }, down: { key: "ponding", values: [100, 150] }, across: null, fixed: new Map() },
  every: { worksheetFunction: drawdown, result: 0, scope: { kind: "all" }, down: null, across: { key: "ponding", values: [4, 6] }, fixed: new Map() },
};

let host: PageHost;
let page: Page;
let laidOut: Readonly<Record<keyof typeof TOPS, WhatIfTable>>;

beforeAll(async () => {
  host = await PageHost.start();
  ({ page } = await host.openProgram());
  page.setDefaultTimeout(PATIENCE.timeout);
  const entries = (Object.keys(tables) as (keyof typeof TOPS)[]).map((name) => [name, layOutWhatIf(tables[name], placesAsSetUp, TOPS[name])] as const);
  laidOut = Object.fromEntries(entries) as typeof laidOut;
  for (const [, { values, formulas }] of entries) {
    await page.evaluate(async (writes) => {
      await window.soakbook?.workbook.writeValues(writes.values);
      await window.soakbook?.workbook.writeFormulas(writes.formulas);
    }, { values, formulas });
  }
  await page.evaluate(() => window.soakbook?.workbook.calculated());
}, START_MILLISECONDS);

afterAll(() => host.close());

const read = (range: CellRange): Promise<readonly (readonly CellValue[])[]> =>
  page.evaluate(async (asked) => (await window.soakbook?.workbook.read([asked]))?.[0] ?? [], range);

/** What one call answers in one place: a number, words, or the code of an error. */
function single(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[], place = 0): CellValue {
  const cell = worksheetFunction.evaluate(inputs)[0]?.[place] ?? null;
  return isCellError(cell) ? cell.code : cell;
}

function expectSame(found: readonly (readonly CellValue[])[], wanted: readonly (readonly CellValue[])[]): void {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((row, down) => row.forEach((cell, across) => {
    const shown = found[down]?.[across];
    if (typeof cell === "number") expect(shown).toBeCloseTo(cell, 9);
    else expect(shown).toBe(cell);
  }));
}

it("each cell of two varied inputs is one call of its own, an impossible one included", async () => {
  const wanted = [3, 6, 9].map((ponding) => [0.25, 0.5].map((designRate) => single(basinArea, [1000, designRate, ponding])));
  expect(wanted.flat().map((cell) => typeof cell)).toEqual(expect.arrayContaining(["number"]));
  expectSame(await read(laidOut.shallow.answers), wanted);
});

it("one value of a row result stands in its grid, and all of them beside one varied input", async () => {
  expectSame(await read(laidOut.chosen.answers), [4, 6].map((ponding) => [0.5, 1, 2].map((rate) => single(siteDesign, [1000, rate, null, null, ponding], 2))));
  expectSame(await read(laidOut.wide.answers), [500, 1000].map((area) => siteDesign.result.values.map((_, place) => single(siteDesign, [area, 1], place))));
});

it("a metric yard's table drains by the yard's own design rate in mm/h, and says so in its headings", async () => {
  const rate = Number(await value(page, address(designSheet, METRIC.place, "designRate")));
  expectSame(await read(laidOut.yard.answers), [100, 150].map((ponding) => [single(drawdown, [ponding, rate, null, null, "metric"])]));
  const { row } = laidOut.yard.answers;
  expect((await read({ sheet: "What-if", row: row - 1, column: 0, rows: 1, columns: 2 }))[0]).toEqual(["Ponding depth (mm)", "Drawdown (h)"]);
});

it("every yard has a row, and 4 in of ponding drains from a metric yard as 101.6 mm does", async () => {
  const { row, rows } = laidOut.every.answers;
  const ids = (await read({ sheet: "What-if", row, column: 0, rows, columns: 1 })).map(([id]) => id);
  const designs = await read({ sheet: designSheet.name, row: 3, column: 0, rows, columns: Object.keys(designSheet.columns).length });
  const rateColumn = Object.keys(designSheet.columns).indexOf("designRate");
  const rates = designs.map((cells) => cells[rateColumn] ?? null);
  const media = (await read({ sheet: sitesSheet.name, row: 3, column: Object.keys(sitesSheet.columns).indexOf("mediaDepth"), rows, columns: 1 })).map(([cell]) => cell ?? null);
  const answers = await read(laidOut.every.answers);
  expect(ids.filter((id) => id !== null && id !== "")).toHaveLength(16);
  const computed = ids.flatMap((id, place) => (typeof rates[place] === "number" ? [{ id, place }] : []));
  expect(computed.length).toBeGreaterThan(10);
  computed.forEach(({ id, place }) => {
    const isMetric = id === METRIC.siteId;
    const wanted = [4, 6].map((inches) => single(drawdown, [isMetric ? inches * 25.4 : inches, rates[place], media[place], null, isMetric ? "metric" : "us"]));
    expectSame([answers[place] ?? []], [wanted]);
  });
});

it("a shared input, a varied value and the yard's own cell each change the answers at once", async () => {
  const { row } = laidOut.shallow.answers;
  const area = `What-if!B${TOPS.shallow + 5}`;
  expect(await value(page, area)).toBe(1000);
  await typeInto(page, area, "2000");
  await typeInto(page, `What-if!A${row + 1}`, "4");
  await expect.poll(() => value(page, `What-if!B${row + 1}`), PATIENCE).toBeCloseTo(Number(single(basinArea, [2000, 0.25, 4])), 9);
  await typeInto(page, address(sitesSheet, METRIC.place, "mediaDepth"), "300");
  const rate = Number(await value(page, address(designSheet, METRIC.place, "designRate")));
  await expect.poll(() => value(page, `What-if!B${laidOut.yard.answers.row + 1}`), PATIENCE).toBeCloseTo(Number(single(drawdown, [100, rate, 300, null, "metric"])), 9);
});
