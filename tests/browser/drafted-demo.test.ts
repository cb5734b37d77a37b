import { afterAll, beforeAll, expect, it } from "vitest";
import { sheetNamesOfProgram } from "../../addin/actions/workbook/set-up-workbook.ts";
import type {} from "./draft-entry.ts";
import { PageHost } from "./page.ts";

let host: PageHost;
beforeAll(async () => {
  host = await PageHost.start();
});
afterAll(() => host.close());

it("the demo that the page opens with is cell for cell the one that set-up and its records make on the open grid", async () => {
  const { page, address, faults } = await host.newPage();
  await page.goto(`${address}draft.html`);
  await page.waitForFunction(() => window.demoBothWays !== undefined);
  const both = await page.evaluate(() => window.demoBothWays?.());
  if (both === undefined) throw new Error("The page compared nothing.");
  expect(both.drafted.map(({ name }) => name)).toEqual(sheetNamesOfProgram);
  expect(both.settings[1]).toEqual(both.settings[0]);
  expect(both.drafted.some(({ shown }) => shown.flat().includes("fits"))).toBe(true);
  expect(both.drafted.some(({ dropDowns }) => dropDowns.length > 5)).toBe(true);
  for (const [index, sheet] of both.drafted.entries()) expect(sheet, sheet.name).toEqual(both.onGrid[index]);
  expect(faults).toEqual([]);
});
