/** The pane beside the grid, as a person finds their way in it, and the cells of a yard by the names of their columns. */
import type { Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll } from "vitest";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { readRecords } from "../../addin/records/read-records.ts";
import type { Sheet, SheetRow } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { addressOf } from "../../addin/workbook/port.ts";
import { goTo, value } from "./grid.ts";
import { PageHost, PANE_VIEWPORT, type OpenPage } from "./page.ts";
import { leaveWarmPage, PERMISSIONS, takeWarmPage, type Theme } from "./warm-page.ts";

/** Hands the page without Excel over before the tests around this call, with the demo in it, and takes it back after them. */
export function onProgramPage(take: (opened: OpenPage) => void, theme: Theme = {}): void {
  let opened: OpenPage | undefined;
  beforeAll(async () => {
    opened = await takeWarmPage(theme);
    take(opened);
  });
  let failed = false;
  afterEach(({ task }) => {
    failed ||= task.result?.state === "fail";
  });
  afterAll(async () => {
    if (opened === undefined) return;
    // Whatever a test that failed has left going on the page is nobody else's.
    if (failed) await opened.context.close();
    else await leaveWarmPage(opened);
  });
}

/**
 * Hands Excel's page over before the tests around this call, with the demo's workbook in an Excel in memory, and closes it
 * after them. It starts in a fraction of the time that the grid takes, and every view of the pane is the same on both.
 */
export function onExcelPage(take: (opened: OpenPage) => void, theme: Theme = {}): void {
  let host: PageHost | undefined;
  beforeAll(async () => {
    host = await PageHost.start();
    const opened = await host.openInExcel({ permissions: PERMISSIONS, colorScheme: "light", ...theme });
    take(opened);
  });
  afterAll(() => host?.close());
}

/** As narrow as Excel lets the pane be, by the handle between pane and grid where there is one. */
export async function narrowPane(page: Page): Promise<void> {
  const handle = page.getByRole("separator", { name: "Width of the pane" });
  if (await handle.isVisible()) await handle.press("End");
  else await page.setViewportSize({ width: 320, height: PANE_VIEWPORT.height });
}

/** "Sites!B5": the cell of a column, `place` rows below the first under the headings. */
export function address<S extends Sheet>(sheet: S, place: number, key: keyof S["columns"] & string): string {
  return addressOf(cellOf(sheet, firstRow(sheet) + place, key)).replaceAll("'", "");
}

export const pane = (page: Page): Locator => page.locator("#pane");
export const button = (page: Page, name: string | RegExp): Locator =>
  pane(page).getByRole("button", { name, exact: typeof name === "string" });
export const openTab = (page: Page, name: string): Promise<void> => pane(page).getByRole("tab", { name }).click();

/** Selects the yard's row of Sites, waits until the pane has followed, and opens the tab. */
export async function openYard(page: Page, place: number, tab: string): Promise<void> {
  await goTo(page, address(sitesSheet, place, "yard"));
  const siteId = String(await value(page, address(sitesSheet, place, "siteId")));
  await pane(page).locator("h1", { hasText: siteId }).waitFor();
  await openTab(page, tab);
}

/** The rows of a sheet that belong to one yard, as records. */
export async function recordsOf<S extends Sheet>(page: Page, sheet: S, siteId: string): Promise<readonly SheetRow<S>[]> {
  const cells = await page.evaluate(async (name) => (await window.soakbook?.workbook.readSheets([name])) ?? [], sheet.name);
  return readRecords(sheet, cells[0] ?? []).rows.filter(({ record }) => (record as { siteId: unknown }).siteId === siteId);
}

/** Opens everything that is folded in the view, and what is folded in that. */
export async function unfoldAll(page: Page): Promise<void> {
  const folded = pane(page).locator(".fold > details:not([open]) > summary");
  while ((await folded.count()) > 0) {
    await folded.first().click();
  }
}

/** Opens the line that the answered steps of a visit are folded to. */
export async function unfoldAnswered(page: Page): Promise<void> {
  const folded = pane(page).locator('.fold[aria-label^="Answered"] > details:not([open]) > summary');
  if ((await folded.count()) > 0) await folded.click();
}

export const status = (page: Page): Locator => pane(page).locator(".status-line p");

/** Goes to a stage of the yard's visits by the list of stages. */
export async function pickStage(page: Page, name: string): Promise<void> {
  await pane(page).locator(".stage-picker summary").click();
  await pane(page)
    .locator(".stage-button", { hasText: new RegExp(`^${name}`) })
    .click();
  await pane(page).locator(".stage-head h2", { hasText: name }).waitFor();
}
