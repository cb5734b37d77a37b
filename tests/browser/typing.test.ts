/** Every letter typed into the grid is kept, however fast it comes and whatever happens elsewhere meanwhile. */
import type { Page } from "playwright-core";
import { describe, it } from "vitest";
import type { ValueWrite } from "../../addin/workbook/port.ts";
import { at, calculated, expectCell, goTo, typeInto } from "./grid.ts";
import { onProgramPage } from "./pane.ts";

describe("What is typed into a cell of the page without Excel", { timeout: 60_000 }, () => {
  let page: Page;

  onProgramPage((opened) => {
    page = opened.page;
  });

  const write = (text: string, ...addresses: readonly string[]) =>
    page.evaluate(
      (writes) => window.soakbook?.workbook.writeValues(writes),
      addresses.map((address): ValueWrite => ({ range: at(address), values: [[text]] })),
    );

  it.each(["Program!K25", "Sites!AB30", "Sites!B400"])(
    "is kept whole though %s stood out of sight, beside columns wider than the frozen one",
    async (cell) => {
      await typeInto(page, cell, "Ask at the bakery first");
      await expectCell(page, cell, "Ask at the bakery first");
    },
  );

  it("is kept whole when an answer comes into the same row and column of another sheet meanwhile", async () => {
    await goTo(page, "Program!H27");
    await page.keyboard.type("Ask at ");
    await write("elsewhere", "Sites!H27");
    await page.keyboard.type("the bakery");
    await page.keyboard.press("Enter");
    await calculated(page);
    await expectCell(page, "Program!H27", "Ask at the bakery");
    await expectCell(page, "Sites!H27", "elsewhere");
  });

  it("is kept whole when somebody writes into that very cell meanwhile: what is confirmed last stands", async () => {
    await goTo(page, "Program!H28");
    await page.keyboard.type("Ask at ");
    await write("theirs", "Program!H28");
    await page.keyboard.type("the bakery");
    await page.keyboard.press("Enter");
    await calculated(page);
    await expectCell(page, "Program!H28", "Ask at the bakery");
  });

  it("is shown in the editor of a cell that is opened after somebody wrote into it, not what stood there before", async () => {
    await goTo(page, "Program!H29");
    await write("theirs", "Program!H29");
    await page.keyboard.press("F2");
    await page.keyboard.type(" and mine");
    await page.keyboard.press("Enter");
    await calculated(page);
    await expectCell(page, "Program!H29", "theirs and mine");
  });
});
