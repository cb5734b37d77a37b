/** Every letter typed into the grid is kept, however fast it comes and whatever happens elsewhere meanwhile. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { digDaysSheet } from "../../addin/records/dig-days.ts";
import { estimateLinesSheet } from "../../addin/records/estimate-lines.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { readRecords } from "../../addin/records/read-records.ts";
import { rulesSheet } from "../../addin/records/rules.ts";
import { layoutOf, type Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import { columnLetters, type ValueWrite } from "../../addin/workbook/port.ts";
import { at, calculated, expectCell, formula, goTo, pressWithoutWaiting, typeInto, value, values } from "./grid.ts";
import { onProgramPage } from "./pane.ts";
import { inputsOf, typeRecord } from "./typed-record.ts";

describe("What is typed into a cell of the page without Excel", () => {
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

  it("is kept whole, and what the pane would write into the same row is refused in words until it is confirmed", async () => {
    await goTo(page, "Program!H28");
    await page.keyboard.type("Ask at ");
    await expect(write("theirs", "Program!J28")).rejects.toThrow("Finish the cell Program!H28 first: somebody is typing into it.");
    await page.keyboard.type("the bakery");
    await page.keyboard.press("Enter");
    await calculated(page);
    await expectCell(page, "Program!H28", "Ask at the bakery");
    await write("theirs", "Program!J28");
    await expectCell(page, "Program!J28", "theirs");
  });

  it.each(["Design!D8", "Report!B6"])("is refused in words on a sheet that formulas fill, and changes nothing: %s", async (cell) => {
    const before = await values(page, cell);
    await goTo(page, cell);
    await pressWithoutWaiting(page, ["12", "Enter"]);
    const sheet = cell.replace(/!.*/, "");
    const line = page.locator("#cell-sentence");
    await expect.poll(() => line.innerText()).toBe(`${sheet} is computed, and nothing is typed there: change what it is computed from.`);
    await goTo(page, cell);
    await page.keyboard.press("Delete");
    await calculated(page);
    expect(await values(page, cell)).toEqual(before);
  });

  it("is refused in words in a column of results on a sheet that people type in, and nowhere else on it", async () => {
    const before = await values(page, "Hole tests!I4");
    await goTo(page, "Hole tests!I4");
    await pressWithoutWaiting(page, ["12", "Enter"]);
    await expect
      .poll(() => page.locator("#cell-sentence").innerText(), { timeout: 10_000 })
      .toBe("The rate is computed from this row: type its minutes, its water depths and the hole diameter.");
    await calculated(page);
    expect(await values(page, "Hole tests!I4")).toEqual(before);
    await typeInto(page, "Hole tests!D90", "R. Vance");
    await expectCell(page, "Hole tests!D90", "R. Vance");
  });

  it("is refused in words where a person's own formula has spilled, and follows that formula when its row is deleted", async () => {
    await typeInto(page, "Program!K50", "=SEQUENCE(4)");
    expect(await values(page, "Program!K50:K53")).toEqual([[1], [2], [3], [4]]);
    await goTo(page, "Program!K52");
    await pressWithoutWaiting(page, ["7", "Enter"]);
    await expect
      .poll(() => page.locator("#cell-sentence").innerText())
      .toBe("K52 is filled by the formula in K50: change that one, or what it is computed from.");
    await calculated(page);
    expect(await values(page, "Program!K50:K53")).toEqual([[1], [2], [3], [4]]);
    await typeInto(page, "Program!K50", "=SEQUENCE(2)");
    expect(await values(page, "Program!K50:K53")).toEqual([[1], [2], [null], [null]]);
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

  // The sheet of most columns, one of few, and one whose first column is the widest. The page scrolls sideways within these columns.
  const COLUMNS = 16;
  const typed = [sitesSheet, visitsSheet, rulesSheet] as const satisfies readonly Sheet[];

  it.each(typed)(
    "is kept whole in every cell of a row of $name after a click in its frozen column, six times slowed, while the workbook computes",
    async (sheet: Sheet) => {
      const { name } = sheet;
      const BLANK_ROW = 150;
      const columns = layoutOf(sheet).columns.slice(0, COLUMNS);
      const words = columns.map(({ role, choices }, index) => (role === "input" && choices === undefined ? `w${index} abc` : ""));
      await goTo(page, `${name}!A${BLANK_ROW}`);
      const slow = await page.context().newCDPSession(page);
      await slow.send("Emulation.setCPUThrottlingRate", { rate: 6 });
      const computing = await page.evaluateHandle((range) => {
        let area = 1000;
        return setInterval(() => void window.soakbook?.workbook.writeValues([{ range, values: [[(area += 1)]] }]), 400);
      }, at("Surfaces!D5"));
      await clickSelectedCell(page);
      await pressWithoutWaiting(
        page,
        words.flatMap((word) => [word, "Tab"]),
      );
      await page.evaluate((timer) => clearInterval(timer), computing);
      await slow.send("Emulation.setCPUThrottlingRate", { rate: 1 });
      await calculated(page);
      const row = `${name}!A${BLANK_ROW}:${columnLetters(columns.length - 1)}${BLANK_ROW}`;
      const shown = async () => (await values(page, row))[0]?.map((value, index) => (words[index] === "" ? "" : value));
      await expect.poll(shown).toEqual(words);
      await slow.detach();
    },
  );

  it("is what Enter and Tab take, though a list of functions stands beside it; a click takes the function", async () => {
    await goTo(page, "Program!K40");
    await page.keyboard.type("=TRU", { delay: 40 });
    const list = page.getByText("TRUNC", { exact: true });
    await list.waitFor();
    await page.keyboard.type("E");
    await pressWithoutWaiting(page, ["Enter"]);
    await calculated(page);
    expect(await formula(page, "Program!K40")).toBe("=TRUE");
    await list.waitFor({ state: "hidden" });
    await goTo(page, "Program!K41");
    await page.keyboard.type("=TRU", { delay: 40 });
    await list.waitFor();
    await page.keyboard.type("E");
    await pressWithoutWaiting(page, ["Tab", "7", "Enter"]);
    await calculated(page);
    expect([await formula(page, "Program!K41"), await value(page, "Program!L41")]).toEqual(["=TRUE", 7]);
    await goTo(page, "Program!K42");
    await page.keyboard.type("=MEDI", { delay: 40 });
    await page.getByText("MEDIAN", { exact: true }).click();
    await pressWithoutWaiting(page, ["2,4)", "Enter"]);
    await calculated(page);
    expect(await formula(page, "Program!K42")).toBe("=MEDIAN(2,4)");
  });

  it.each([sitesSheet, visitsSheet, holeTestsSheet, digDaysSheet, estimateLinesSheet])(
    "makes a row of $name the same record as the pane and the demo write there",
    async (sheet: Sheet) => {
      const rows = async () => {
        const [cells = []] = await page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name);
        return readRecords(sheet, cells).rows;
      };
      const present = await rows();
      const [written, last] = [present[0]!, present.at(-1)!];
      await typeRecord(page, written, last.row + 1);
      expect(inputsOf((await rows()).at(-1)!)).toEqual(inputsOf(written));
      expect(Object.values(inputsOf(written)).filter((each) => each !== null).length).toBeGreaterThan(3);
    },
  );
});

/** Clicks the selected cell where it stands on the screen: a cell of the first column, in sight. */
async function clickSelectedCell(page: Page): Promise<void> {
  const place = await page.evaluate(() => {
    const grid = document.querySelector("[id^=univer-sheet-main-canvas]")?.getBoundingClientRect();
    return grid ? { x: grid.x + 80, bottom: grid.bottom, top: grid.y } : null;
  });
  expect(place).not.toBeNull();
  const row = async () => (await page.evaluate(() => window.soakbook?.workbook.selection()))?.row ?? -1;
  const wanted = await row();
  // The frozen headings differ in height from sheet to sheet: rows are 24 pixels high, so some click comes upon it.
  for (let y = (place?.bottom ?? 0) - 30; y > (place?.top ?? 0) + 60; y -= 20) {
    await page.mouse.click(place?.x ?? 0, y);
    if ((await row()) === wanted) return;
  }
  throw new Error(`Row ${wanted + 1} is not in sight.`);
}
