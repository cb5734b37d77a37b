/** The walk through a yard's job, as one person makes it: where they look, what they read, and how a day passes. */
import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";
import { demoYards } from "../../addin/actions/demo/demo-program.ts";
import { designSheet } from "../../addin/records/design.ts";
import { openInExcelOn, turnCalendarTo } from "./calendar.ts";
import { value } from "./grid.ts";
import type { OpenPage, PageHost } from "./page.ts";
import { address, button, openTab, pane, pickStage, status, unfoldAnswered } from "./pane.ts";

/** Below the demo's yards, so that nothing is there yet. */
export const PLACE = demoYards.length;
export const SITE_ID = "Y-017";

export class YardWalk {
  private opened: OpenPage | null = null;

  async start(host: PageHost, day: string): Promise<void> {
    this.opened = await openInExcelOn(host, day);
  }

  get page(): Page {
    if (this.opened === null) throw new Error("The walk has not begun.");
    return this.opened.page;
  }

  get faults(): readonly string[] {
    return this.opened?.faults ?? [];
  }

  field(label: string): Locator {
    return pane(this.page).getByLabel(label, { exact: true });
  }

  /** What stands before the stage in view. */
  gate(): Locator {
    return pane(this.page).locator(".gate");
  }

  /** A step of the stage in view. */
  card(title: string): Locator {
    return pane(this.page).locator(".step", { has: this.page.locator(".step-title", { hasText: new RegExp(`^${title}$`) }) });
  }

  /** The number of the estimate's totals. */
  total(label: string): Promise<string> {
    return pane(this.page)
      .locator(".result", { has: this.page.locator("dt", { hasText: new RegExp(`^${label}`) }) })
      .first()
      .locator(".result-number")
      .innerText();
  }

  /** The status line comes to say this. */
  async said(sentence: string): Promise<void> {
    await expect.poll(async () => (await status(this.page).allTextContents()).join()).toBe(sentence);
  }

  /** The yard's cell on Design comes to this number. */
  async designs(key: keyof typeof designSheet.columns, expected: number): Promise<void> {
    await expect.poll(() => value(this.page, address(designSheet, PLACE, key)), { message: key }).toBeCloseTo(expected, 6);
  }

  async openCard(title: string): Promise<Locator> {
    await unfoldAnswered(this.page);
    const step = this.card(title);
    const toggle = step.locator(".step-toggle");
    const isOpen = async () => (await toggle.getAttribute("aria-expanded")) === "true";
    // The pane may be about to open it by itself.
    await expect.poll(async () => (await isOpen()) || (await toggle.click(), isOpen())).toBe(true);
    return step;
  }

  /** Comes back on a later day, at a stage of the visits. */
  async nextDay(day: string, stage: string): Promise<void> {
    await turnCalendarTo(this.page, day);
    await openTab(this.page, "Yard");
    await openTab(this.page, "Visits");
    await pickStage(this.page, stage);
  }

  /** A letter an item, from the first item of the look on; then it is written. */
  async look(letters: string, name: string): Promise<void> {
    await pane(this.page).locator(".care-steps input").first().focus();
    for (const letter of letters) await this.page.keyboard.press(letter);
    await button(this.page, "Write the look").click();
    await this.said(`${name}: written to Follow-ups and Visits.`);
  }
}
