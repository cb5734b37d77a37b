/**
 * One page for many files of tests. Starting the page costs more than most of what is tested on it, so a file takes over
 * the page that another left, started over with the demo, and with window, pane and storage put back as they were.
 */
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { workingText } from "../../taskpane/views/working/text.ts";
import { PageHost, VIEWPORT, type OpenPage } from "./page.ts";

export interface Theme {
  readonly colorScheme?: "light" | "dark";
  readonly forcedColors?: "none" | "active";
}

export const PERMISSIONS = ["clipboard-read", "clipboard-write"];
/** From the narrowest it can be to the width that a new page begins with. */
const STEPS_TO_USUAL_WIDTH = 5;

let left: OpenPage | null = null;

/** The page that was left last, as if it had just been opened, or a new one where none was left that can be put back. */
export async function takeWarmPage(theme: Theme): Promise<OpenPage> {
  const opened = (await lastPage()) ?? (await (await PageHost.start()).openProgram({ permissions: PERMISSIONS }));
  await opened.page.emulateMedia({ media: null, colorScheme: "light", forcedColors: "none", ...theme });
  return opened;
}

async function lastPage(): Promise<OpenPage | null> {
  const found = left;
  left = null;
  if (found === null) return null;
  try {
    await live(found, "active");
    await putBack(found);
    return found;
  } catch (error) {
    console.warn(`A page could not be put back, so another is opened: ${String(error)}`);
    await found.context.close();
    return null;
  }
}

/** Keeps the page for the next file, unless something went wrong on it. */
export async function leaveWarmPage(opened: OpenPage): Promise<void> {
  if (opened.faults.length > 0 || left !== null) await opened.context.close();
  else {
    await live(opened, "frozen");
    left = opened;
  }
}

/** A page that waits for the next file would go on drawing frames, a quarter of a core for nothing. */
async function live({ page, context }: OpenPage, state: "frozen" | "active"): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send("Page.setWebLifecycleState", { state });
  await session.detach();
}

async function putBack({ page }: OpenPage): Promise<void> {
  const pane = page.locator("#pane");
  await page.setViewportSize(VIEWPORT);
  await page.keyboard.press("Escape");
  await page.evaluate(() => {
    localStorage.clear();
    sessionStorage.clear();
  });
  const toggle = page.locator("#toggle-pane");
  if ((await toggle.getAttribute("aria-expanded")) === "false") await toggle.click();
  await page.locator("#splitter").press("End");
  for (let step = 0; step < STEPS_TO_USUAL_WIDTH; step += 1) await page.locator("#splitter").press("ArrowLeft");

  // The list of yards, and a tab of it without a form, so that no view carries anything over.
  const back = pane.getByRole("button", { name: workingText.back, exact: true });
  if (await back.isVisible()) await back.click();
  const leave = pane.getByRole("button", { name: /All yards/ });
  if (await leave.isVisible()) await leave.click();
  await pane.getByRole("tab").first().click();

  await pane.locator(".pane").evaluate((each) => each.classList.add("left-by-a-test"));
  await page.getByRole("button", { name: "Start over with the demo", exact: true }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Start over", exact: true }).click();
  // The pane is made anew when the demo is open and computed.
  await pane.locator(".pane:not(.left-by-a-test)").waitFor();
  // By way of the second, so that the first is selected anew.
  for (const [place, siteId] of [
    [1, "Y-002"],
    [0, "Y-001"],
  ] as const) {
    await page.evaluate((range) => window.soakbook?.workbook.select(range), cellOf(sitesSheet, firstRow(sitesSheet) + place, "siteId"));
    await pane.locator("h1", { hasText: siteId }).waitFor();
  }
  await pane.getByRole("tab").first().click();
  await page.mouse.move(0, 0);
}
