import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import type {} from "./commands-entry.ts";
import { PageHost, type OpenPage } from "./page.ts";
import { pane } from "./pane.ts";

describe("A button of Excel's ribbon, or of the menu of a cell,", () => {
  let host: PageHost;
  let opened: OpenPage;
  let page: Page;
  beforeAll(async () => {
    host = await PageHost.start();
    opened = await host.newPage();
    page = opened.page;
    await page.goto(`${opened.address}commands.html`);
    await page.waitForFunction(() => window.runCommand !== undefined);
  });
  afterAll(() => host.close());

  const run = (id: string) => page.evaluate((command) => window.runCommand?.(command), id);
  const select = <S extends Sheet>(sheet: S, place: number, key: keyof S["columns"] & string) =>
    page.evaluate((range) => window.selectCell?.(range), cellOf(sheet, firstRow(sheet) + place, key));
  const tabInFront = () => pane(page).locator("[role=tab][aria-selected=true]").innerText();

  it("New visit opens the visits of the yard whose row is selected", async () => {
    await select(sitesSheet, 3, "yard");
    await pane(page).locator("h1", { hasText: "Y-004" }).waitFor();
    await run("newVisit");
    await expect.poll(tabInFront).toBe("Visits");
    expect(await pane(page).locator("h1").first().innerText()).toContain("Y-004");
  });

  it("Check workbook leaves the yard and opens the list of findings", async () => {
    const { shown } = (await run("checkWorkbook"))!;
    expect(shown).toBe(2);
    await expect.poll(tabInFront).toBe("Workbook");
  });

  it("Show the working explains the cell that is selected, and New visit takes its place again", async () => {
    await select(designSheet, 0, "designRate");
    await run("showWorking");
    await expect.poll(() => pane(page).locator(".working h1").innerText()).toMatch(/^Working of Design!/);
    await select(sitesSheet, 1, "yard");
    await run("newVisit");
    await expect.poll(tabInFront).toBe("Visits");
    expect(await pane(page).locator(".working").count()).toBe(0);
  });

  it("Set up workbook, where all is set up, says so and opens Check workbook", async () => {
    const { told } = (await run("setUpWorkbook"))!;
    expect(told.at(-1)).toBe("This workbook is set up already. Check workbook looks whether all is in its place.");
    await expect.poll(tabInFront).toBe("Workbook");
  });

  it("Repair formulas and Turn into values do it at once and say what came of it", async () => {
    expect((await run("repairFormulas"))!.told.at(-1)).toBe("No formula of Soakbook that could be written shows #NAME?.");
    await select(designSheet, 0, "yard");
    expect((await run("turnIntoValues"))!.told.at(-1)).toBe('Sheet "Design as values" holds what the cells show now, without formulas.');
    expect(await page.evaluate(() => window.sheetNames?.())).toContain("Design as values");
    expect(opened.faults).toEqual([]);
  });
});
