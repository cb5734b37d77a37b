/** What is typed in the pane and not written yet: it stays through other tabs, other yards and the page loaded anew. */
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { sitesSheet } from "../../addin/records/sites.ts";
import { visitsText } from "../../taskpane/views/visits/text.ts";
import { expectCell } from "./grid.ts";
import { started, type OpenPage } from "./page.ts";
import { address, button, onProgramPage, openTab, openYard, pane, pickStage } from "./pane.ts";

const CORNER_HOUSE = 0;
/** Waits for its utility marks: no hole of it is tested yet. */
const UNTESTED = 6;
const VISITED = 7;
const BOATHOUSE = 11;

describe("What is typed in the pane and not written", () => {
  let opened: OpenPage;
  let page: Page;

  onProgramPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  const field = (label: string) => pane(page).getByLabel(label, { exact: true });
  const reading = (number: number, what: "Minutes" | "Water depth") => field(`${what} of reading ${number}`);
  const waterNow = () => pane(page).getByLabel("Water depth now");

  it("stands where it was typed after other tabs and other yards, and nowhere else", async () => {
    await openYard(page, BOATHOUSE, "Yard");
    await button(page, "Add a surface").click();
    await field("Area").fill("about 40");
    await openTab(page, "Basin");
    await openYard(page, UNTESTED, "Yard");
    expect(await field("Area").count()).toBe(0);
    await openTab(page, "Hole test");
    await pane(page).getByLabel("Hole diameter").fill("8");
    await waterNow().fill("8");
    await button(page, "Start").click();
    expect(await reading(1, "Minutes").inputValue()).toBe("0");
    expect(await reading(1, "Water depth").inputValue()).toBe("8");
    expect(await pane(page).getByText("Next reading at 15:00").isVisible()).toBe(true);
    await waterNow().fill("7.");
    await openTab(page, "Basin");
    await openTab(page, "Hole test");
    expect(await waterNow().inputValue()).toBe("7.");
    expect(await pane(page).locator(".clock-face").innerText()).toMatch(/^0:\d\d$/);
    await openYard(page, VISITED, "Visits");
    await pickStage(page, "Owner's agreement");
    await field(visitsText.day).fill("2026-03-14");
    await openYard(page, CORNER_HOUSE, "Basin");
    await field("Ponding depth").fill("5");
    await pane(page).getByText("Ponding depth: blank becomes 5 in").waitFor();
  });

  it("stands there when the page is loaded anew a quarter of an hour later", async () => {
    await expect.poll(() => page.locator("#saving-state").innerText()).toMatch(/^(Saved in this browser|Demo, nothing changed yet)$/);
    await page.evaluate(() => {
      const key = Object.keys(sessionStorage).find((each) => each.startsWith("soakbook.drafts/")) ?? "";
      const kept = sessionStorage.getItem(key) ?? "";
      sessionStorage.setItem(
        key,
        kept.replace(/"startedAtMilliseconds":(\d+)/, (_, start) => `"startedAtMilliseconds":${Number(start) - 15.5 * 60_000}`),
      );
    });
    await page.reload();
    await started(page);
    await openYard(page, BOATHOUSE, "Yard");
    expect(await field("Area").inputValue()).toBe("about 40");
    await openYard(page, VISITED, "Visits");
    await pickStage(page, "Owner's agreement");
    expect(await field(visitsText.day).inputValue()).toBe("2026-03-14");
    await openYard(page, CORNER_HOUSE, "Basin");
    expect(await field("Ponding depth").inputValue()).toBe("5");
  });

  it("goes on with the clock of a hole, which says that a reading is due", async () => {
    await openYard(page, UNTESTED, "Hole test");
    await expect.poll(() => pane(page).locator(".reading-due").innerText()).toBe("Reading 2 is due: read the water now.");
    await waterNow().fill("7.75");
    await button(page, "Add reading").click();
    const stamped = Number(await reading(2, "Minutes").inputValue());
    expect(stamped).toBeGreaterThanOrEqual(15.5);
    expect(stamped).toBeLessThan(18);
    expect(await reading(2, "Water depth").inputValue()).toBe("7.75");
    expect(await pane(page).locator(".reading-due").innerText()).toBe("");
    await button(page, "Stop the clock").click();
    await button(page, "Discard").click();
  });

  it("is written, or discarded by a button alone", async () => {
    await openYard(page, CORNER_HOUSE, "Basin");
    await button(page, "Write to the sheet").click();
    await expectCell(page, address(sitesSheet, CORNER_HOUSE, "pondingDepth"), 5);
    await openYard(page, BOATHOUSE, "Yard");
    await button(page, "Discard").click();
    expect(await button(page, "Add a surface").isVisible()).toBe(true);
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});
