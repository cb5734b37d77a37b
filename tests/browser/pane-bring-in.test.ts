/** Somebody brings the records of an office into the workbook: from a file, from the clipboard, and yard by yard by address. */
import { writeXlsx } from "hucre/xlsx";
import { beforeAll, describe, expect, it } from "vitest";
import { readRecords } from "../../addin/records/read-records.ts";
import { headingText } from "../../addin/records/place.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { bringInText } from "../../taskpane/views/bring-in/text.ts";
import { text } from "../../taskpane/text.ts";
import { ALDERTON, BEECHWOOD, CEDAR_SURFACES } from "../addin/actions/bring-in/lists.ts";
import type { OpenPage } from "./page.ts";
import { button, onExcelPage, openTab, pane, status } from "./pane.ts";
import { expectUsable } from "./usable.ts";

describe("Bringing in lists", () => {
  let opened: OpenPage;
  let yardsBefore: number;

  onExcelPage((page) => {
    opened = page;
  });

  const cellsOf = async (sheet: Sheet) =>
    (await opened.page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name))[0] ?? [];
  const rowsOf = async <S extends Sheet>(sheet: S) => readRecords(sheet, await cellsOf(sheet)).rows;
  const chooseSource = (kind: keyof typeof bringInText.sources) =>
    pane(opened.page).getByRole("group", { name: bringInText.source }).locator(".segment", { hasText: bringInText.sources[kind] }).click();
  const bringIn = async (count: number, sheet: Sheet) => {
    await button(opened.page, bringInText.write(count)).click();
    await status(opened.page)
      .filter({ hasText: bringInText.done(count, sheet.name) })
      .waitFor();
  };

  beforeAll(async () => {
    const { page } = opened;
    yardsBefore = (await rowsOf(sitesSheet)).length;
    const leave = button(page, /All yards/);
    if (await leave.isVisible()) await leave.click();
    await openTab(page, text.programTabs.workbook);
    await button(page, bringInText.start).click();
  });

  it("takes yards from a CSV file, shows them as they would stand, and says what it leaves out", async () => {
    const { page } = opened;
    await page
      .locator("#pane input[type=file]")
      .setInputFiles({ name: "alderton.csv", mimeType: "text/csv", buffer: Buffer.from(ALDERTON) });
    const preview = pane(page).getByRole("region", { name: bringInText.preview });
    await preview.getByText("14 Alder Row").waitFor();
    expect(await preview.innerText()).toContain('Soil group "loam" is not in the list');
    expect(await pane(page).getByLabel(bringInText.goesTo("Household")).inputValue()).toBe("ours yard");
    await expectUsable(page);
    await bringIn(3, sitesSheet);
    const yards = (await rowsOf(sitesSheet)).slice(yardsBefore);
    expect(yards.map(({ record: { siteId, address } }) => [siteId, address])).toEqual([
      ["RG-1", "14 Alder Row"],
      ["RG-2", "3 Quay Lane"],
      ["RG-3", null],
    ]);
    const headings = (await cellsOf(sitesSheet)).find((row) => row.includes("Site ID")) ?? [];
    expect(headings.map(headingText)).toContain("Paint color of the door");
  });

  it("offers nothing to write when the same list stands there already", async () => {
    await pane(opened.page).getByText(bringInText.there(3)).first().waitFor();
    expect(await button(opened.page, bringInText.write(0)).isDisabled()).toBe(true);
  });

  it("takes yards from the clipboard in metric, under the next Site IDs, and undoes them whole", async () => {
    const { page } = opened;
    const before = await cellsOf(sitesSheet);
    await chooseSource("paste");
    await pane(page).getByLabel(bringInText.paste).fill(BEECHWOOD);
    await bringIn(2, sitesSheet);
    const added = (await rowsOf(sitesSheet)).slice(yardsBefore + 3);
    expect(added.map(({ record: { units, pondingDepth } }) => [units, pondingDepth])).toEqual([
      ["metric", 150],
      ["metric", 200],
    ]);
    await pane(page).locator(".status-line").getByRole("button", { name: text.status.undo }).click();
    await expect.poll(() => cellsOf(sitesSheet)).toEqual(before);
  });

  it("takes surfaces from a sheet of an .xlsx file by the address of their yard", async () => {
    const { page } = opened;
    await pane(page).getByLabel(bringInText.sheet).selectOption(surfacesSheet.name);
    await chooseSource("file");
    const rows = CEDAR_SURFACES.split("\n").map((line) => line.replace(/"([^"]*),([^"]*)"/, "$1$2").split(","));
    const bytes = await writeXlsx({
      sheets: [
        { name: "Cover", rows: [["For the office"]] },
        { name: "Roofs", rows },
      ],
    });
    await page.locator("#pane input[type=file]").setInputFiles({ name: "cedar.xlsx", mimeType: "", buffer: Buffer.from(bytes) });
    await pane(page).getByLabel(bringInText.fileSheet).selectOption("Roofs");
    await bringIn(4, surfacesSheet);
    const surfaces = (await rowsOf(surfacesSheet)).filter(({ record: { siteId } }) => siteId?.startsWith("RG-") === true);
    expect(surfaces.map(({ record: { siteId, surface, cover } }) => [siteId, surface, cover])).toEqual([
      ["RG-1", "House", "roof"],
      ["RG-1", "Drive", "paving"],
      ["RG-2", "Shed", "roof"],
      ["RG-2", "Yard", null],
    ]);
    expect(surfaces[2]?.record.area).toBe(1180);
  });

  it("says in words what is no list, and caused no error on the page", async () => {
    const { page } = opened;
    await page.locator("#pane input[type=file]").setInputFiles({ name: "cut.xlsx", mimeType: "", buffer: Buffer.from("PK no file") });
    await pane(page).getByText('"cut.xlsx" cannot be read as an .xlsx workbook').waitFor();
    expect(opened.faults).toEqual([]);
  });
});
