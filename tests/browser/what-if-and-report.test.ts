/**
 * What-if tables in the real grid: every cell of a laid-out table is what one single call of the function answers.
 * The report: what the sheet's formulas add up is what the pane works out from the records, figure by figure.
 */
import type { Page } from "playwright-core";
import { beforeAll, expect, it } from "vitest";
import { dayNumber } from "../../addin/actions/dates.ts";
import { layOutWhatIf, type WhatIfTable } from "../../addin/actions/what-if/lay-out-what-if.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { reportOf } from "../../addin/actions/report/report.ts";
import type { WhatIfRequest } from "../../addin/actions/what-if/what-if-request.ts";
import { asBuiltSheet } from "../../addin/records/as-built.ts";
import { designSheet } from "../../addin/records/design.ts";
import { estimateLinesSheet } from "../../addin/records/estimate-lines.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { pricesSheet } from "../../addin/records/prices.ts";
import { placesAsSetUp, settingCell } from "../../addin/records/program.ts";
import { reportSheet } from "../../addin/records/report.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import type { CellRange, CellValue } from "../../addin/workbook/port.ts";
import { basinArea, drawdown } from "../../functions/worksheet/basin.ts";
import { siteDesign } from "../../functions/worksheet/site-design.ts";
import { isCellError, type CellInput } from "../../functions/worksheet/calling/cell.ts";
import type { WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";
import { WorkbookInMemory } from "../addin/workbook-in-memory.ts";
import { calculated, typeInto, value } from "./grid.ts";
import { address, button, onExcelPage, openTab, pane, status } from "./pane.ts";
import { seriousFaults } from "./usable.ts";

/** Far below the table that set-up lays out. */
const TOPS = { shallow: 100, chosen: 140, wide: 180, yard: 220, every: 260 } as const;
/** The demo's metric yard, and its place below the headings of Sites. */
const METRIC = { place: 8, siteId: "Y-009" };

const typed = { kind: "typed", units: "us" } as const;
const tables: Readonly<Record<keyof typeof TOPS, WhatIfRequest>> = {
  shallow: {
    worksheetFunction: basinArea,
    result: 0,
    scope: typed,
    down: { key: "ponding", values: [3, 6, 9] },
    across: { key: "designRate", values: [0.25, 0.5] },
    fixed: new Map([["contributingArea", 1000]]),
  },
  chosen: {
    worksheetFunction: siteDesign,
    result: 2,
    scope: typed,
    down: { key: "ponding", values: [4, 6] },
    across: { key: "testedRate", values: [0.5, 1, 2] },
    fixed: new Map([["contributingArea", 1000]]),
  },
  wide: {
    worksheetFunction: siteDesign,
    result: "all",
    scope: typed,
    down: { key: "contributingArea", values: [500, 1000] },
    across: null,
    fixed: new Map([["testedRate", 1]]),
  },
  yard: {
    worksheetFunction: drawdown,
    result: 0,
    scope: { kind: "yard", siteId: METRIC.siteId, units: "metric" },
    down: { key: "ponding", values: [100, 150] },
    across: null,
    fixed: new Map(),
  },
  every: {
    worksheetFunction: drawdown,
    result: 0,
    scope: { kind: "all" },
    down: null,
    across: { key: "ponding", values: [4, 6] },
    fixed: new Map(),
  },
};

let page: Page;
let laidOut: Readonly<Record<keyof typeof TOPS, WhatIfTable>>;

onExcelPage((opened) => {
  page = opened.page;
});

beforeAll(async () => {
  const entries = (Object.keys(tables) as (keyof typeof TOPS)[]).map(
    (name) => [name, layOutWhatIf(tables[name], placesAsSetUp, TOPS[name])] as const,
  );
  laidOut = Object.fromEntries(entries) as typeof laidOut;
  for (const [, { values, formulas }] of entries) {
    await page.evaluate(
      async (writes) => {
        await window.soakbook?.workbook.writeValues(writes.values);
        await window.soakbook?.workbook.writeFormulas(writes.formulas);
      },
      { values, formulas },
    );
  }
  await page.evaluate(() => window.soakbook?.workbook.calculated());
});

const read = (range: CellRange): Promise<readonly (readonly CellValue[])[]> =>
  page.evaluate(async (asked) => (await window.soakbook?.workbook.read([asked]))?.[0] ?? [], range);

/** What one call answers in one place: a number, words, or the code of an error. */
function single(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[], place = 0): CellValue {
  const cell = worksheetFunction.evaluate(inputs)[0]?.[place] ?? null;
  return isCellError(cell) ? cell.code : cell;
}

function expectSame(found: readonly (readonly CellValue[])[], wanted: readonly (readonly CellValue[])[]): void {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((row, down) =>
    row.forEach((cell, across) => {
      const shown = found[down]?.[across];
      if (typeof cell === "number") expect(shown).toBeCloseTo(cell, 9);
      else expect(shown).toBe(cell);
    }),
  );
}

it("each cell of two varied inputs is one call of its own, an impossible one included", async () => {
  const wanted = [3, 6, 9].map((ponding) => [0.25, 0.5].map((designRate) => single(basinArea, [1000, designRate, ponding])));
  expect(wanted.flat().map((cell) => typeof cell)).toEqual(expect.arrayContaining(["number"]));
  expectSame(await read(laidOut.shallow.answers), wanted);
});

it("one value of a row result stands in its grid, and all of them beside one varied input", async () => {
  expectSame(
    await read(laidOut.chosen.answers),
    [4, 6].map((ponding) => [0.5, 1, 2].map((rate) => single(siteDesign, [1000, rate, null, null, null, ponding], 2))),
  );
  expectSame(
    await read(laidOut.wide.answers),
    [500, 1000].map((area) => siteDesign.result.values.map((_, place) => single(siteDesign, [area, 1], place))),
  );
});

it("a metric yard's table drains by the yard's own design rate in mm/h, and says so in its headings", async () => {
  const rate = Number(await value(page, address(designSheet, METRIC.place, "designRate")));
  expectSame(
    await read(laidOut.yard.answers),
    [100, 150].map((ponding) => [single(drawdown, [ponding, rate, null, null, "metric"])]),
  );
  const { row } = laidOut.yard.answers;
  expect((await read({ sheet: "What-if", row: row - 1, column: 0, rows: 1, columns: 2 }))[0]).toEqual([
    "Ponding depth (mm)",
    "Drawdown (h)",
  ]);
});

it("every yard has a row, and 4 in of ponding drains from a metric yard as 101.6 mm does", async () => {
  const { row, rows } = laidOut.every.answers;
  const ids = (await read({ sheet: "What-if", row, column: 0, rows, columns: 1 })).map(([id]) => id);
  const designs = await read({ sheet: designSheet.name, row: 3, column: 0, rows, columns: Object.keys(designSheet.columns).length });
  const rateColumn = Object.keys(designSheet.columns).indexOf("designRate");
  const rates = designs.map((cells) => cells[rateColumn] ?? null);
  const media = (
    await read({ sheet: sitesSheet.name, row: 3, column: Object.keys(sitesSheet.columns).indexOf("mediaDepth"), rows, columns: 1 })
  ).map(([cell]) => cell ?? null);
  const answers = await read(laidOut.every.answers);
  expect(ids.filter((id) => id !== null && id !== "")).toHaveLength(16);
  const computed = ids.flatMap((id, place) => (typeof rates[place] === "number" ? [{ id, place }] : []));
  expect(computed.length).toBeGreaterThan(10);
  computed.forEach(({ id, place }) => {
    const isMetric = id === METRIC.siteId;
    const wanted = [4, 6].map((inches) =>
      single(drawdown, [isMetric ? inches * 25.4 : inches, rates[place], media[place], null, isMetric ? "metric" : "us"]),
    );
    expectSame([answers[place] ?? []], [wanted]);
  });
});

it("a shared input, a varied value and the yard's own cell each change the answers at once", async () => {
  const { row } = laidOut.shallow.answers;
  const area = `What-if!B${TOPS.shallow + 5}`;
  expect(await value(page, area)).toBe(1000);
  await typeInto(page, area, "2000");
  await typeInto(page, `What-if!A${row + 1}`, "4");
  await expect.poll(() => value(page, `What-if!B${row + 1}`)).toBeCloseTo(Number(single(basinArea, [2000, 0.25, 4])), 9);
  await typeInto(page, address(sitesSheet, METRIC.place, "mediaDepth"), "300");
  const rate = Number(await value(page, address(designSheet, METRIC.place, "designRate")));
  await expect
    .poll(() => value(page, `What-if!B${laidOut.yard.answers.row + 1}`))
    .toBeCloseTo(Number(single(drawdown, [100, rate, 300, null, "metric"])), 9);
});

it("asks for a table in the pane, says what its first cell will show, and lays it out below all others", async () => {
  const back = button(page, /All yards/);
  if ((await back.count()) > 0) await back.click();
  await openTab(page, "What if");
  const field = (label: string) => pane(page).getByLabel(label, { exact: true }).first();
  await field("Result").selectOption("DRAWDOWN");
  await field("Input").selectOption("ponding");
  await field("From").fill("9");
  await field("To").fill("3");
  await field("Step").fill("3");
  expect(await pane(page).locator(".what-if-values > .fault").first().innerText()).toBe(
    "Ponding depth: From (9) must not be above To (3). Write the smaller number first.",
  );
  await field("From").fill("3");
  await field("To").fill("9");
  const said = await pane(page).locator(".what-if-outcome").innerText();
  expect(said).toContain("3 rows by 1 column");
  await button(page, "Lay out the table").click();
  await expect.poll(() => status(page).innerText()).toBe("The table was laid out on sheet What-if.");
  const answer = await page.evaluate(async () => {
    const workbook = window.soakbook?.workbook;
    const selected = await workbook?.selection();
    return selected == null ? null : (await workbook?.read([selected]))?.[0]?.[0]?.[0];
  });
  expect(answer).toBeTypeOf("number");
  expect(said).toContain(`drawdown ${Number(answer).toLocaleString("en-US", { maximumFractionDigits: 2 })} h.`);
});

/** The sheets as they stand, for reading them outside the page. */
async function copyOfWorkbook(): Promise<WorkbookInMemory> {
  const copy = new WorkbookInMemory();
  const sheets = await page.evaluate(async () => {
    const workbook = window.soakbook?.workbook;
    if (workbook === undefined) return [];
    const names = await workbook.sheetNames();
    const cells = await workbook.readSheets(names);
    return names.map((name, place) => [name, cells[place] ?? []] as const);
  });
  sheets.forEach(([name, cells]) => copy.sheets.set(name, { values: cells.map((row) => [...row]), formulas: [] }));
  return copy;
}

it("the sheet's formulas and the pane report the same of every figure, a metric yard and a Site ID twice included", async () => {
  const [prices = []] = await page.evaluate(async () => (await window.soakbook?.workbook.readSheets(["Prices"])) ?? []);
  const priceRow = (item: string) => prices.findIndex((cells) => cells[0] === item);
  const row = async (sheet: typeof asBuiltSheet | typeof estimateLinesSheet) => {
    const [cells = []] = await page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name);
    return Math.max(firstRow(sheet), cells.findLastIndex((line) => line[0] !== null && line[0] !== "") + 1);
  };
  const measured = await row(asBuiltSheet);
  const line = await row(estimateLinesSheet);
  const put = (where: CellRange, cell: CellValue) => ({ range: where, values: [[cell]] });
  const writes = [
    put(settingCell("yearlyRainInches"), 38),
    put(settingCell("yearlyCaptureShare"), 0.85),
    put(cellOf(pricesSheet, priceRow("volunteer hour"), "unitPrice"), 30),
    ...Object.entries({
      siteId: METRIC.siteId,
      date: dayNumber(2027, 3, 1),
      shape: "rectangle",
      floorLength: 4,
      floorWidth: 2.5,
      pondingDepth: 150,
      sideSlope: 3,
    }).map(([key, cell]) => put(cellOf(asBuiltSheet, measured, key as "siteId"), cell)),
    ...[
      ["Y-001", "Water fund"],
      [METRIC.siteId, "water fund"],
      ["Y-010", "=HYPERLINK(1)"],
    ].flatMap(([siteId = "", funder = ""], place) =>
      Object.entries({ siteId, item: "volunteer hour", quantity: place + 2, funder }).map(([key, cell]) =>
        put(cellOf(estimateLinesSheet, line + place, key as "siteId"), cell),
      ),
    ),
    put(cellOf(sitesSheet, firstRow(sitesSheet) + 16, "siteId"), "Y-001"),
  ];
  await page.evaluate((all) => window.soakbook?.workbook.writeValues(all), writes);
  await calculated(page);
  const copy = await copyOfWorkbook();
  const report = reportOf(await readProgram(copy), { from: null, to: null, funder: null }, dayNumber(2027, 6, 1));
  const [, ...shown] = (copy.sheets.get(reportSheet.name)?.values ?? []).slice(reportSheet.preface.length);
  expect(report.built.length).toBeGreaterThan(0);
  expect(report.designed.length).toBeGreaterThan(0);
  report.lines.forEach(({ figure, built, designed }, place) => {
    const [label, builtCell, designedCell] = shown[place] ?? [];
    expect(label).toBe(figure.label);
    for (const [cell, total] of [
      [builtCell, built],
      [designedCell, designed],
    ] as const) {
      if (total.value === null) expect(cell).toBeTypeOf("string");
      else expect(Number(cell), figure.label).toBeCloseTo(total.value, 6);
    }
  });
  const twice = shown[report.lines.length] ?? [];
  expect(String(twice[Object.keys(reportSheet.columns).indexOf("source")])).toContain("Y-001");
  const funders = shown
    .slice(shown.findIndex(([label]) => label === "Cash by funder") + 1)
    .filter(([label]) => label !== null && label !== "");
  expect(funders.map(([label, built, designed]) => [label, built, designed])).toEqual(
    expect.arrayContaining(
      report.cashByFunder.map(({ name, built, designed }) => [name, expect.closeTo(built, 6), expect.closeTo(designed, 6)]),
    ),
  );
});

it("shows the yards behind a total in the pane, and a click goes to the yard's row; both views pass axe", async () => {
  const back = button(page, /All yards/);
  if ((await back.count()) > 0) await back.click();
  for (const tab of ["What if", "Report"]) {
    await openTab(page, tab);
    expect(await seriousFaults(page)).toEqual([]);
  }
  const area = pane(page).locator(".report-line", { hasText: "Contributing area treated" });
  await area.locator("summary").click();
  await area.getByRole("button", { name: new RegExp(`^${METRIC.siteId} `) }).click();
  await expect.poll(async () => (await page.evaluate(() => window.soakbook?.workbook.selection()))?.sheet).toBe(sitesSheet.name);
  await expect.poll(() => pane(page).locator("h1").innerText()).toContain(METRIC.siteId);
});
