import ExcelJS from "exceljs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { estimateLinesSheet } from "../../addin/records/estimate-lines.ts";
import { DRAFTED_ITEMS, pricesSheet, startingPrices } from "../../addin/records/prices.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { addressOf, type CellValue, type ValueWrite } from "../../addin/workbook/port.ts";
import { values } from "./grid.ts";
import { savedBytes, type OpenPage } from "./page.ts";
import { button, onExcelPage, openYard, pane } from "./pane.ts";
import { seriousFaults } from "./usable.ts";

/** The fourth yard of the demo: tight soil, a mix and a measured slope. */
const YARD = 3;

const LINES = 30;
const INPUTS = Object.values(estimateLinesSheet.columns).filter(({ role }) => role === "input").length;

/** No lines yet, and ten for everything on the list that a new workbook starts with: sums are then easy to follow. */
const everythingCostsTen: readonly ValueWrite[] = [
  {
    range: { ...cellOf(pricesSheet, firstRow(pricesSheet), "unitPrice"), rows: startingPrices.length },
    values: startingPrices.map(() => [10]),
  },
  {
    range: { ...cellOf(pricesSheet, firstRow(pricesSheet), "packageSize"), rows: startingPrices.length, columns: 3 },
    values: startingPrices.map(() => [null, null, null]),
  },
  {
    range: { ...cellOf(estimateLinesSheet, firstRow(estimateLinesSheet), "siteId"), rows: LINES, columns: INPUTS },
    values: Array.from({ length: LINES }, () => Array<CellValue>(INPUTS).fill(null)),
  },
];

/** What the sheet computes beside the lines. */
async function amounts(page: Page): Promise<readonly CellValue[]> {
  const first = cellOf(estimateLinesSheet, firstRow(estimateLinesSheet), "amount");
  return (await values(page, addressOf({ ...first, rows: LINES }).replaceAll("'", ""))).flat();
}

describe("The estimate of a yard", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  it("is drafted in the pane, priced by the sheet, and saved as a spreadsheet with the sum that the pane shows", async () => {
    await page.evaluate((writes) => window.soakbook?.workbook.writeValues(writes), everythingCostsTen);
    await openYard(page, YARD, "Estimate");
    const requested: string[] = [];
    page.on("request", (request) => requested.push(request.url()));
    await button(page, /^Add (these \d+ lines|this line)$/).click();
    await pane(page).getByText("were added to the estimate of").waitFor();

    await expect.poll(async () => (await amounts(page)).filter((amount) => typeof amount === "number").length).toBeGreaterThanOrEqual(6);
    const cost = Number((await pane(page).locator(".result-headline .result-number").innerText()).replaceAll(",", ""));
    expect(await seriousFaults(page)).toEqual([]);

    const downloading = page.waitForEvent("download");
    await button(page, "Estimate, spreadsheet").click();
    const download = await downloading;
    expect(download.suggestedFilename()).toMatch(/^estimate-Y-004-\d{4}-\d{2}-\d{2}\.xlsx$/);
    expect(requested.filter((url) => url.includes("export-files"))).not.toEqual([]);
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load((await savedBytes(download)).buffer as ArrayBuffer);
    const sheet = workbook.getWorksheet("Y-004");
    let inFile = Number.NaN;
    sheet?.eachRow((row) => {
      if (row.getCell(1).text === "Cost") inFile = row.getCell(8).result as number;
    });
    expect(inFile.toFixed(2)).toBe(cost.toFixed(2));
    expect(sheet?.getColumn(2).values).toContain(DRAFTED_ITEMS.stone);
    expect(opened.faults).toEqual([]);
  });
});
