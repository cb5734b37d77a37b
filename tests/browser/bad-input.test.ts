import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { readRecords } from "../../addin/records/read-records.ts";
import { recordSheets } from "../../addin/records/program-sheets.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import type { CellValue, ValueWrite } from "../../addin/workbook/port.ts";
import { text } from "../../taskpane/text.ts";
import { PROGRAM_TAB_IDS, TAB_IDS } from "../../taskpane/tab-ids.ts";
import { value } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, onExcelPage, openTab, openYard, pane } from "./pane.ts";

/** A yard of the demo whose own row is left readable, so that the pane can be led to it. */
const CORNER_HOUSE = 0;

const MARKUP = `<img src="x" onerror="window.wasExecuted=true"><script>window.wasExecuted=true</script>`;
const PASTED: readonly CellValue[] = [
  "12 in",
  "5 %",
  "next week",
  "#N/A",
  1e308,
  -3,
  "__proto__",
  '=HYPERLINK("http://example.invalid","click")',
  MARKUP,
  "\u202eright to left",
  "x".repeat(10_000),
];
const UNREADABLE = /NaN|Infinity|undefined|\[object|∞/;

let opened: OpenPage;
let page: Page;

onExcelPage((ready) => {
  opened = ready;
  page = ready.page;
});

/** Another pasted thing in each cell of the sheet, a column to the right and a row down at a time. */
async function badCells(): Promise<readonly ValueWrite[]> {
  const names = recordSheets.map(({ name }) => name);
  const cells = await page.evaluate(async (asked) => (await window.soakbook?.workbook.readSheets(asked)) ?? [], names);
  return recordSheets.flatMap((sheet, index) => {
    const keys = Object.keys(sheet.columns).filter((key) => sheet.columns[key]?.role === "input" && key !== "siteId" && key !== "setting");
    return readRecords(sheet, cells[index] ?? [])
      .rows.slice(0, 12)
      .flatMap((row, place) => {
        const isLed = sheet.name === sitesSheet.name && place === CORNER_HOUSE;
        return keys
          .filter((key) => !(isLed && key === "yard"))
          .map((key, column): ValueWrite => ({ range: row.at(key), values: [[PASTED[(place * 3 + column) % PASTED.length] ?? null]] }));
      });
  });
}

/** What the pane says now, after looking that it is readable and made of text alone. */
async function readableWords(): Promise<string> {
  await expect.poll(() => pane(page).locator("h1").count()).toBe(1);
  const words = await pane(page).innerText();
  expect(words.match(new RegExp(`.{0,60}(${UNREADABLE.source}).{0,60}`))?.[0] ?? "").toBe("");
  expect(await pane(page).locator("img, script, iframe, a[href*='example.invalid']").count()).toBe(0);
  expect(await page.evaluate(() => "wasExecuted" in window)).toBe(false);
  expect(opened.faults).toEqual([]);
  return words;
}

describe("With bad cells on every sheet", () => {
  it("every tab of a yard and of the program is readable, runs nothing that was typed, and says what to put right", async () => {
    const writes = await badCells();
    await page.evaluate(async (bad) => {
      await window.soakbook?.workbook.writeValues(bad);
      await window.soakbook?.workbook.calculated();
    }, writes);
    await openYard(page, CORNER_HOUSE, text.tabs.yard);
    await expect.poll(() => pane(page).locator(".slips").count()).toBe(1);
    expect(await readableWords()).toMatch(/must be a number; it is the text|is not in the list|shows the error/);
    for (const tab of TAB_IDS) {
      await openTab(page, text.tabs[tab]);
      await readableWords();
    }
    await button(page, text.picker.change).click();
    for (const tab of PROGRAM_TAB_IDS) {
      await openTab(page, text.programTabs[tab]);
      const words = await readableWords();
      if (tab === "yards") expect(words).toContain(text.sheetSlips);
    }
    expect(await value(page, address(sitesSheet, CORNER_HOUSE, "siteId"))).toBe("Y-001");
  });
});
