/** A coordinator brings years of rain into the workbook, and sees what a garden captures of them. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { ROWS_AT_A_TIME } from "../../addin/actions/rain-record/write-rain-record.ts";
import { rainRecordSheet } from "../../addin/records/rain-record.ts";
import { captureText } from "../../taskpane/parts/capture/text.ts";
import { rainText } from "../../taskpane/views/rain/text.ts";
import { workbookText } from "../../taskpane/views/workbook/text.ts";
import { text } from "../../taskpane/text.ts";
import { value } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, onExcelPage, openTab, openYard, pane, status, unfoldAll } from "./pane.ts";
import { expectUsable } from "./usable.ts";

/** Three invented years of days in mm, with a trace, a day that nobody measured, a formula for a depth and a day that is not there. */
const days = Array.from({ length: 1096 }, (_, day) => new Date(Date.UTC(2022, 0, 1) + day * 86_400_000).toISOString().slice(0, 10));
const depthOf = (day: number) => ({ 3: "T", 9: "-9999", 12: "=HYPERLINK(1)" })[day] ?? String(day % 4 === 0 ? (day % 17) + 0.5 : 0);
const CSV = ["Date;Rain", ...days.map((day, index) => `${day};${depthOf(index)}`).filter((_, index) => index !== 20)].join("\n");

const choose = (page: Page, question: string, answer: string) =>
  pane(page).getByRole("group", { name: question }).locator(".segment", { hasText: answer }).click();
const depthAt = (page: Page, place: number) => value(page, address(rainRecordSheet, place, "depth"));

declare global {
  interface Window {
    wordsSeen?: Set<string>;
  }
}

/** Notes from now on what the pane's live regions hold whenever a frame is drawn: what no frame held, nobody saw. */
function watchWords(page: Page): Promise<void> {
  return page.evaluate(() => {
    const seen = (window.wordsSeen = new Set<string>());
    const look = (): void => {
      document.querySelectorAll("#pane [role=status]").forEach(({ textContent }) => seen.add(textContent));
      if (window.wordsSeen === seen) requestAnimationFrame(look);
    };
    look();
  });
}

function wordsSeen(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => [...(window.wordsSeen ?? [])]);
}

describe("Years of rain", () => {
  let opened: OpenPage;
  let page: Page;
  let before: unknown;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  it("of a gauge's file are looked through and asked about before anything is written", async () => {
    const leave = button(page, /All yards/);
    if (await leave.isVisible()) await leave.click();
    await openTab(page, text.programTabs.rain);
    before = await depthAt(page, 0);
    await pane(page)
      .locator('input[type="file"]')
      .setInputFiles({ name: "gauge.csv", mimeType: "text/csv", buffer: Buffer.from(`\uFEFF${CSV}`) });
    const found = pane(page).getByRole("region", { name: rainText.found.title });
    await expect.poll(() => found.innerText()).toContain(rainText.found.traces(1));
    const said = await found.innerText();
    for (const sentence of [
      rainText.found.codes(1, "-9999"),
      rainText.found.badDepths(1, 'line 14 "=HYPERLINK(1)"'),
      rainText.found.noReading(1, "day"),
    ])
      expect(said).toContain(sentence);
    await expectUsable(page);
    expect(await button(page, /^Write [\d,]+ rows$/).count()).toBe(0);
    await choose(page, rainText.ask.unit.label, "mm");
    await choose(page, rainText.ask.notMeasured.label, rainText.ask.notMeasured.dry);
    await choose(page, rainText.ask.noReading.label, rainText.ask.noReading.dry);
    await button(page, "Write 1,096 rows").click();
    await expect.poll(() => pane(page).innerText()).toContain(rainText.write.choose);
    expect(await depthAt(page, 0)).toBe(before);
  });

  it("take the place of the demo's as one change, below the rows prepared too", async () => {
    await choose(page, rainText.write.way, rainText.write.replace);
    await button(page, "Write 1,096 rows").click();
    await expect.poll(() => status(page).innerText()).toBe(rainText.write.done(1096));
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe(rainText.source.title);
    expect([await depthAt(page, 0), await depthAt(page, 3), await depthAt(page, 20), await depthAt(page, 1092)]).toEqual([
      0.5,
      0,
      0,
      (1092 % 17) + 0.5,
    ]);
    expect(await value(page, address(rainRecordSheet, 3, "note"))).toBe("trace");
    await expect.poll(() => pane(page).innerText()).toContain("$B$4:$B$1099");
  });

  it("draw the capture curve of a yard, and the arrow keys try other areas in words", async () => {
    await openYard(page, 0, text.tabs.basin);
    await unfoldAll(page);
    const curve = pane(page).getByRole("region", { name: captureText.title });
    await expect.poll(() => curve.locator("canvas").count()).toBe(1);
    expect(await curve.innerText()).toMatch(/Rain record\s+3 years, [\d.]+ inches of rain a year, in steps of 24 h/);
    expect(await curve.innerText()).toMatch(/Knee\s+[\d.]+ sq ft captures [\d.]+ %/);
    const slider = curve.getByRole("slider", { name: captureText.tryArea });
    const first = await slider.getAttribute("aria-valuetext");
    await slider.press("Home");
    await expect.poll(() => slider.getAttribute("aria-valuetext")).not.toBe(first);
    expect(await slider.getAttribute("aria-valuetext")).toMatch(
      /^[\d.]+ sq ft captures [\d.]+ %; it overflows [\d.]+ times a year and ponds [\d.,]+ h at the longest\.$/,
    );
    await expectUsable(page);
  });

  it("are taken back by one undo, and the demo's invented rain stands there again", async () => {
    await button(page, /All yards/).click();
    await openTab(page, text.programTabs.workbook);
    expect(await pane(page).getByRole("link", { name: workbookText.support }).getAttribute("href")).toBe("support.html");
    await button(page, `Undo: ${rainText.write.done(1096)}`)
      .first()
      .click();
    await expect.poll(() => depthAt(page, 0)).toBe(before);
    expect(await depthAt(page, 1000)).toBeNull();
    expect(String(await value(page, address(rainRecordSheet, 5, "gauge")))).toContain("invented");
  });

  it("of many hours say on the screen that the file is read, and how far the write and the undo are", async () => {
    const hours = Array.from(
      { length: 2 * ROWS_AT_A_TIME },
      (_, hour) => `${new Date(Date.UTC(2022, 0, 1, hour)).toISOString().slice(0, 16)},${hour % 40 === 0 ? 0.25 : 0}`,
    );
    const rows = `${hours.length.toLocaleString("en-US")} rows`;
    await openTab(page, text.programTabs.rain);
    await watchWords(page);
    await pane(page)
      .locator('input[type="file"]')
      .setInputFiles({ name: "hours.csv", mimeType: "text/csv", buffer: Buffer.from(["Time,Rain (in)", ...hours].join("\n")) });
    await choose(page, rainText.write.way, rainText.write.replace);
    expect(await wordsSeen(page)).toContain(rainText.source.opening("hours.csv"));

    await watchWords(page);
    await button(page, `Write ${rows}`).click();
    await expect.poll(() => status(page).innerText()).toBe(rainText.write.done(hours.length));
    expect(await wordsSeen(page)).toEqual(
      expect.arrayContaining([text.status.writing, text.status.writingShare(0), text.status.writingShare(50)]),
    );

    await watchWords(page);
    await button(page, `Undo: ${rainText.write.done(hours.length)}`).click();
    await expect.poll(() => depthAt(page, 0)).toBe(before);
    await expect.poll(() => status(page).innerText()).toContain("Undone");
    expect((await wordsSeen(page)).filter((words) => /^Writing to the workbook: [1-9]\d? % done$/.test(words))).not.toEqual([]);
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});
