/** Waiting for answers on the page without Excel: they are there when the wait is over, whatever the engine did meanwhile. */
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { at, calculated, goTo } from "./grid.ts";
import { address, onProgramPage } from "./pane.ts";

describe("The answers of the page without Excel", { timeout: 90_000 }, () => {
  let page: Page;

  onProgramPage((opened) => {
    page = opened.page;
  });
  beforeEach(() => calculated(page));

  it.each([10, 40, 80, 150, 300])("are there when the wait is over, though the change stopped a calculation that had begun %i ms before", async (sinceStart) => {
    const given = { long: at(address(surfacesSheet, 0, "area")), number: at("Program!J31"), formula: at("Program!K31") };
    const answer = await page.evaluate(async ({ given, pause, number }) => {
      const workbook = window.soakbook!.workbook;
      await workbook.writeValues([{ range: given.long, values: [[number]] }]);
      await new Promise((resolve) => setTimeout(resolve, pause));
      await workbook.writeValues([{ range: given.number, values: [[number]] }]);
      await workbook.writeFormulas([{ range: given.formula, formulas: [["=J31*2"]] }]);
      await workbook.calculated();
      return (await workbook.read([given.formula]))[0]?.[0]?.[0];
    }, { given, pause: sinceStart, number: 700 + sinceStart });
    expect(answer).toBe(2 * (700 + sinceStart));
  });

  it("are waited for no longer when only a look was changed", async () => {
    await goTo(page, "Program!J31");
    await page.keyboard.press("Control+b");
    const start = Date.now();
    await calculated(page);
    expect(Date.now() - start).toBeLessThan(30_000);
  });
});
