import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { DraftedWorkbook } from "../../addin/workbook/embedded/draft.ts";
import { writeWorkbookFile } from "../../addin/workbook/embedded/workbook-file.ts";
import { expectCell, typeInto, formula, value, values } from "./grid.ts";
import { asksBeforeClosing, button, cellInFile, expectSaved, savedFile, openFile } from "./keeping.ts";
import { PageHost, savedBytes, started } from "./page.ts";
import { openYard } from "./pane.ts";

describe("A workbook in the page without Excel", () => {
  let host: PageHost;
  /** Opened once, for one test after the other: what each asks does not depend on where the one before it ended. */
  let page: Page;
  let faults: readonly string[];

  beforeAll(async () => {
    host = await PageHost.start();
    ({ page, faults } = await host.openProgram());
  });

  afterAll(async () => {
    await host.close();
  });

  it("of the untouched demo is still untouched after the page is loaded anew, so starting over asks nothing more", async () => {
    expect(await page.locator("#saving-state").innerText()).toBe("Demo, nothing changed yet");
    await page.reload();
    await started(page);
    await button(page, "Start over with the demo").click();
    const dialog = page.getByRole("dialog", { name: "Start over with the demo?" });
    expect(await dialog.locator("p").innerText()).toBe("The present workbook will be replaced.");
    expect(await dialog.getByRole("button", { name: "Save to file first" }).count()).toBe(0);
    await page.keyboard.press("Escape");
  });

  it("is there again after the page is loaded anew, a text that starts with = included, and what was typed by the last key", async () => {
    await typeInto(page, "Program!H21", "Ask at the bakery first");
    await typeInto(page, "Program!H22", "'=1+1");
    await typeInto(page, "Program!H23", "=SOAK.DRAWDOWN(6,2)");
    await page.evaluate(() => window.soakbook?.workbook.writeSetting("kept", "yes"));
    await expectSaved(page);
    await typeInto(page, "Program!H24", "typed last");
    await page.reload();
    await started(page);
    expect(await values(page, "Program!H21:H24")).toEqual([["Ask at the bakery first"], ["=1+1"], [3], ["typed last"]]);
    expect(await formula(page, "Program!H22")).toBe("");
    expect(await page.evaluate(() => window.soakbook?.workbook.readSetting("kept"))).toBe("yes");
  });

  it("comes back the same from a file after starting over with the demo", async () => {
    await typeInto(page, "Sites!B4", "A yard of my own");
    await typeInto(page, "Program!H21", "'=2+2");
    const before = await everything(page);
    const saved = await savedFile(page);

    await button(page, "Start over with the demo").click();
    await page.getByRole("dialog").getByRole("button", { name: "Start over" }).click();
    await expect.poll(() => value(page, "Program!H21")).toBeNull();
    expect(await value(page, "Sites!B4")).not.toBe("A yard of my own");

    await openFile(page, saved);
    await page.getByRole("dialog").getByRole("button", { name: "Open it without saving" }).click();
    await expect.poll(() => value(page, "Program!H21")).toBe("=2+2");
    await page.evaluate(() => window.soakbook?.workbook.calculated());
    expect(await everything(page)).toEqual(before);
  });

  it("is not replaced by the demo before a person says so", async () => {
    await typeInto(page, "Program!H21", "mine");
    await button(page, "Start over with the demo").press("Enter");
    const dialog = page.getByRole("dialog", { name: "Start over with the demo?" });
    expect(await dialog.innerText()).toContain("changes that are in no file");
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    await button(page, "Start over with the demo").press("Enter");
    // The first choice has the focus and loses nothing.
    await page.keyboard.press("Enter");
    await dialog.waitFor({ state: "detached" });
    expect(await value(page, "Program!H21")).toBe("mine");
  });

  it("takes what was typed in the pane with it when another takes its place, and says so before", async () => {
    const pane = page.locator("#pane");
    await openYard(page, 0, "Yard");
    await pane.getByRole("button", { name: "Add a surface" }).click();
    await pane.getByLabel("Surface", { exact: true }).fill("Shed roof");
    await button(page, "Start over with the demo").click();
    const dialog = page.getByRole("dialog", { name: "Start over with the demo?" });
    expect(await dialog.innerText()).toContain("What is typed in the pane and not written yet goes with it.");
    await dialog.getByRole("button", { name: "Start over" }).click();
    await pane.getByLabel("Surface", { exact: true }).waitFor({ state: "detached" });
    await openYard(page, 0, "Yard");
    await pane.getByRole("button", { name: "Add a surface" }).click();
    expect(await pane.getByLabel("Surface", { exact: true }).inputValue()).toBe("");
  });

  it("can be saved to a file on the way when another is opened, so that nothing typed is lost", async () => {
    const demo = await savedFile(page);
    await typeInto(page, "Program!H21", "not yet in a file");
    await openFile(page, demo);
    const downloading = page.waitForEvent("download");
    await page.getByRole("dialog").getByRole("button", { name: "Save to file first" }).click();
    expect(await cellInFile(await savedBytes(await downloading), "Program", "H21")).toBe("not yet in a file");
    await expectCell(page, "Program!H21", null);
  });

  it("stays as it is when a chosen file is damaged, and the sentence says what is wrong and where", async () => {
    await typeInto(page, "Program!H21", "still here");
    const whole = await fileOfBefore();
    const sites = /"([^"]+)":\{[^{}]*"name":"Sites"/.exec(whole)?.[1] ?? "";
    const wrongCell = JSON.parse(whole) as {
      workbook: { sheets: Record<string, { cellData: Record<string, Record<string, unknown>> }> };
    };
    (wrongCell.workbook.sheets[sites]?.cellData["6"] ?? {})["1"] = { v: { nested: true } };
    const attempts = [
      [(await savedFile(page)).subarray(0, 5000), /cannot be read as an \.xlsx workbook.*\. Your present workbook is unchanged\.$/],
      [whole.slice(0, whole.length / 2), /is damaged: it cannot be read .*\. Your present workbook is unchanged\.$/],
      ["", /is damaged: it cannot be read because it is empty\./],
      [JSON.stringify(wrongCell), /is damaged: sheet "Sites", cell B7 holds neither a text, a number nor a formula\./],
      [JSON.stringify({ some: "other file" }), /is not a Soakbook workbook file\./],
      [
        whole.replace('"format":1', '"format":2'),
        /was saved by a later version of Soakbook \(file format 2; this version reads format 1\)/,
      ],
    ] as const;
    for (const [content, sentence] of attempts) {
      await openFile(page, content);
      const dialog = page.getByRole("dialog", { name: "The file was not opened" });
      expect(await dialog.locator("p").innerText()).toMatch(sentence);
      await dialog.getByRole("button", { name: "Close" }).click();
      expect(await value(page, "Program!H21")).toBe("still here");
    }
    // The same file undamaged still opens.
    await openFile(page, whole);
    await page.getByRole("dialog").getByRole("button", { name: "Open it without saving" }).click();
    await expect.poll(() => value(page, "Program!H21")).toBe("from a file of before");
  });

  it("can be opened as it was at an earlier save, and what was there last stays among them", async () => {
    for (const text of ["one", "two", "three", "four"]) {
      await typeInto(page, "Program!H21", text);
      await expectSaved(page);
    }
    await button(page, "Open an earlier one").click();
    const dialog = page.getByRole("dialog", { name: "Open an earlier one" });
    const labels = await dialog.getByRole("button").allInnerTexts();
    // The last three saves, the latest of them being what is open, and the last of the sitting before the page was loaded anew.
    expect(labels).toHaveLength(4);
    expect(labels[1]).toMatch(/^Open the one saved .*\d:\d\d:\d\d.* \(demo\)$/);
    await dialog.getByRole("button").nth(2).click();
    await expectCell(page, "Program!H21", "two");
    await expectSaved(page);
    await button(page, "Open an earlier one").click();
    await dialog.getByRole("button").nth(1).click();
    await expectCell(page, "Program!H21", "four");
    await expectSaved(page);
  });

  it("goes on being saved when a second tab merely opens, and is not overwritten once that one changed it", async () => {
    await typeInto(page, "Program!H20", "before the other tab");
    await expectSaved(page);
    const other = await page.context().newPage();
    await other.goto(host.address);
    await started(other);
    await page.bringToFront();
    await typeInto(page, "Program!H21", "beside the other tab");
    await expectSaved(page);
    await other.reload();
    await started(other);
    await expectCell(other, "Program!H21", "beside the other tab");
    await typeInto(other, "Program!H21", "from the other tab");
    await expectSaved(other);
    await page.bringToFront();
    await typeInto(page, "Program!H21", "from this tab");
    await expect.poll(() => page.locator("#saving-state").innerText()).toContain("changed in another tab");
    expect(await value(page, "Program!H21")).toBe("from this tab");
    expect(await asksBeforeClosing(page)).toBe(true);
    expect(await asksBeforeClosing(other)).toBe(false);
    await other.close();
  });

  it("caused no error on the page", () => {
    expect(faults).toEqual([]);
  });
});

/** Every value and every formula of every sheet. */
async function everything(page: Page): Promise<unknown> {
  return page.evaluate(async () => {
    const workbook = window.soakbook?.workbook;
    if (!workbook) return null;
    await workbook.calculated();
    const sheets = await workbook.sheetNames();
    const ranges = sheets.map((sheet) => ({ sheet, row: 0, column: 0, rows: 60, columns: 40 }));
    const formulas = await Promise.all(ranges.map((range) => workbook.readFormulas(range)));
    return { sheets, values: await workbook.read(ranges), formulas };
  });
}

/** The page kept its workbook so before it had .xlsx; the name of the settings is the grid's. */
async function fileOfBefore(): Promise<string> {
  const draft = new DraftedWorkbook();
  await setUpWorkbook(draft);
  await fillDemoProgram(draft);
  const cell = { sheet: "Program", row: 20, column: 7, rows: 1, columns: 1 };
  await draft.writeValues([{ range: cell, values: [["from a file of before"]] }]);
  return writeWorkbookFile(draft.snapshot("Program", "soakbookSettings"), new Date());
}
