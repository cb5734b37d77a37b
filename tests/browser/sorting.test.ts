/** People sort and filter rows in the page without Excel: a record stays whole, and the answers go with the yard's Site ID. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { firstRow, headingRow } from "../../addin/records/place.ts";
import { readRecords } from "../../addin/records/read-records.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { readXlsxFile } from "../../addin/workbook/embedded/xlsx/read-xlsx.ts";
import { calculated, goTo, value, values } from "./grid.ts";
import { expectSaved, openFile, savedFile } from "./keeping.ts";
import { address, onProgramPage } from "./pane.ts";

type Rows = readonly (readonly CellValue[])[];

describe("Sorting and filtering in the page without Excel", () => {
  let page: Page;

  onProgramPage((opened) => {
    page = opened.page;
  });

  const tool = (name: string) => page.locator(`[data-u-command='${name}']`).first();
  const line = () => page.locator("#cell-sentence");
  const cells = async (sheet: Sheet): Promise<Rows> =>
    (await page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name))[0] ?? [];
  const body = async (sheet: Sheet): Promise<Rows> => (await cells(sheet)).slice(firstRow(sheet));
  /** The rows as texts, in an order of their own: equal where each row is what it was, wherever it stands now. */
  const bySite = async (sheet: Sheet) =>
    (await body(sheet)).map((row) => JSON.stringify(row.map((cell) => cell ?? ""))).toSorted((one, other) => one.localeCompare(other));

  it("moves whole rows of Sites below the headings, and Design goes with them", async () => {
    const [sites, surfaces, design] = [await bySite(sitesSheet), await bySite(surfacesSheet), await bySite(designSheet)];
    const yards = readRecords(sitesSheet, await cells(sitesSheet)).rows.map(({ record }) => String(record.yard));
    await goTo(page, address(sitesSheet, 4, "yard"));
    await tool("soakbook.sort-rows-down").click();
    await calculated(page);
    const sorted = readRecords(sitesSheet, await cells(sitesSheet)).rows.map(({ record }) => String(record.yard));
    expect(sorted).toEqual(yards.toSorted((one, other) => other.localeCompare(one, "en", { numeric: true })));
    expect(sorted).not.toEqual(yards);
    expect(await bySite(sitesSheet)).toEqual(sites);
    expect(await bySite(surfacesSheet)).toEqual(surfaces);
    expect(await bySite(designSheet)).toEqual(design);
    expect(await value(page, address(designSheet, 0, "siteId"))).toBe(await value(page, address(sitesSheet, 0, "siteId")));
  });

  it("keeps the formulas of a row with the row, by the menu of a column", async () => {
    await goTo(page, address(holeTestsSheet, 2, "hole"));
    const [design, holes] = [await bySite(designSheet), await bySite(holeTestsSheet)];
    await page.locator("[id^=univer-sheet-main-canvas]").click({ button: "right", position: { x: 90, y: 10 } });
    await page.getByText("Sort rows Z to A").last().click();
    await calculated(page);
    const records = readRecords(holeTestsSheet, await cells(holeTestsSheet)).rows.map(({ record }) => record);
    const ids = records.map(({ siteId }) => String(siteId));
    expect(ids).toEqual(ids.toSorted((one, other) => other.localeCompare(one)));
    expect(records.filter(({ infiltrationRate }) => infiltrationRate !== null).length).toBeGreaterThan(10);
    expect(await bySite(holeTestsSheet)).toEqual(holes);
    expect(await bySite(designSheet)).toEqual(design);
  });

  it.each([
    ["Design!D8", "Design is computed, and its rows follow the sheets that it is computed from: sort those."],
    ["Program!B9", "The rows of Program stay in their order: they are found by their place."],
  ])("is refused in words where rows follow something else: %s", async (cell, sentence) => {
    const sheet = cell.replace(/!.*/, "!A4:F30");
    const before = await values(page, sheet);
    await goTo(page, cell);
    await tool("soakbook.sort-rows-up").click();
    await expect.poll(() => line().innerText()).toBe(sentence);
    await calculated(page);
    expect(await values(page, sheet)).toEqual(before);
  });

  it("hides rows of Surfaces that the filter leaves out, changes no answer, and is kept in the file", async () => {
    const [design, surfaces] = [await bySite(designSheet), await bySite(surfacesSheet)];
    await goTo(page, address(surfacesSheet, 3, "area"));
    await tool("sheet.command.smart-toggle-filter").click();
    await openFilterOf(2);
    await page.getByText("By Values").click();
    await page.getByText("By Values").locator("xpath=ancestor::*[.//input[@type='checkbox']][1]//label[.//input]").last().click();
    await page.getByRole("button", { name: "Confirm", exact: true }).click();
    await calculated(page);
    expect(await bySite(surfacesSheet)).toEqual(surfaces);
    expect(await bySite(designSheet)).toEqual(design);
    const covers = (await body(surfacesSheet)).map((row) => row[2]);
    const roofs = covers.flatMap((cover, place) => (cover === "roof" ? [firstRow(surfacesSheet) + place] : []));
    expect(roofs.length).toBeGreaterThan(5);

    const file = await savedFile(page);
    const filters = JSON.parse(
      (await readXlsxFile("kept.xlsx", file, "settings")).workbook.resources?.find(({ name }) => name === "SHEET_FILTER_PLUGIN")?.data ??
        "{}",
    ) as Record<string, { ref: { startRow: number; endRow: number }; cachedFilteredOut: number[] }>;
    expect(
      Object.values(filters).map(({ ref, cachedFilteredOut }) => [
        ref.startRow,
        ref.endRow,
        cachedFilteredOut.toSorted((one, other) => one - other),
      ]),
    ).toEqual([[headingRow(surfacesSheet), headingRow(surfacesSheet) + covers.length, roofs]]);

    await openFile(page, file);
    await page.getByRole("dialog").getByRole("button", { name: "Open it without saving" }).click();
    await expectSaved(page);
    // The arrow keys step over the rows that are out of sight.
    await goTo(
      page,
      address(
        surfacesSheet,
        covers.findIndex((cover) => cover !== "roof"),
        "surface",
      ),
    );
    const seen: (number | undefined)[] = [];
    for (let step = 0; step < 4; step += 1) {
      seen.push((await page.evaluate(() => window.soakbook?.workbook.selection()))?.row);
      await page.keyboard.press("ArrowDown");
    }
    const inSight = covers.flatMap((cover, place) => (cover === "roof" ? [] : [firstRow(surfacesSheet) + place]));
    expect(seen).toEqual(inSight.slice(0, 4));
    expect(await bySite(designSheet)).toEqual(design);
  });

  /** Clicks the mark at the lower right of a heading. */
  async function openFilterOf(column: number): Promise<void> {
    const panel = page.getByText("By Values");
    const grid = await page.locator("[id^=univer-sheet-main-canvas]").boundingBox();
    const right =
      46 +
      surfacesSheetWidths()
        .slice(0, column + 1)
        .reduce((sum, width) => sum + width, 0);
    for (let down = 60; down < 140; down += 8) {
      await page.mouse.click((grid?.x ?? 0) + right - 10, (grid?.y ?? 0) + down);
      if (
        await panel.waitFor({ timeout: 500 }).then(
          () => true,
          () => false,
        )
      )
        return;
    }
    throw new Error("No mark of the filter was found beside the heading.");
  }
});

const surfacesSheetWidths = (): readonly number[] => Object.values(surfacesSheet.columns).map(({ widthPixels }) => widthPixels + 25);
