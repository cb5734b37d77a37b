/** Walks every tab of the pane, and every stage of the visits, as it is shown in a field and in an office. */
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { sitesSheet } from "../../addin/records/sites.ts";
import { PROGRAM_TAB_IDS, TAB_IDS } from "../../taskpane/tab-ids.ts";
import { text } from "../../taskpane/text.ts";
import { goTo } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, narrowPane, onExcelPage, openTab, pane } from "./pane.ts";
import { expectUsable } from "./usable.ts";

/** A garden that the demo has built and looked after, so that every view has something to show. */
const BUILT_YARD = 14;
const YARD_TABS = TAB_IDS.map((id) => text.tabs[id]);
const PROGRAM_TABS = PROGRAM_TAB_IDS.map((id) => text.programTabs[id]);

const LOOKS = [
  { look: "light at 400 pixels", colorScheme: "light", isNarrow: false },
  { look: "dark at 320 pixels", colorScheme: "dark", isNarrow: true },
] as const;

describe("Every view of the pane", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  describe.each(LOOKS)("$look", ({ colorScheme, isNarrow }) => {
    beforeAll(async () => {
      await page.emulateMedia({ colorScheme });
      if (isNarrow) await narrowPane(page);
      await openYardPage(page);
    });

    it.each(YARD_TABS)("of a yard, %s, can be used by anybody", async (tab) => {
      await openTab(page, tab);
      await expectUsable(page);
    });

    it("of the visits, every stage can be used by anybody", async () => {
      await openTab(page, text.tabs.visits);
      const stages = await pane(page).locator(".stage-button > span:first-child").allTextContents();
      expect(stages.length).toBeGreaterThan(10);
      for (const stage of stages) {
        await pane(page).locator(".stage-picker summary").click();
        await pane(page).locator(".stage-button").nth(stages.indexOf(stage)).click();
        await pane(page).locator(".stage-head h2", { hasText: stage }).waitFor();
        await expectUsable(page);
      }
    });

    it.each(PROGRAM_TABS)("of the program, %s, can be used by anybody", async (tab) => {
      await openProgramPage(page);
      await openTab(page, tab);
      await expectUsable(page);
    });
  });

  it("can be reached with the arrow keys alone, one tab after the other and round again", async () => {
    for (const [open, tabs] of [
      [openYardPage, YARD_TABS],
      [openProgramPage, PROGRAM_TABS],
    ] as const) {
      await open(page);
      await openTab(page, tabs[0] ?? "");
      for (const next of [...tabs.slice(1), tabs[0]]) {
        await page.keyboard.press("ArrowRight");
        await expect.poll(() => pane(page).getByRole("tabpanel").getAttribute("aria-labelledby")).toBe(await focusedId(page));
        expect(await pane(page).locator("fluent-tab[aria-selected=true]").innerText()).toBe(next);
      }
    }
  });

  it("keeps what the keyboard reaches out from under the tabs and the foot, downward and upward", async () => {
    await openYardPage(page);
    await openTab(page, text.tabs.basin);
    const first = pane(page).locator("fluent-tab[aria-selected=true]");
    const last = pane(page).locator(".tab-panel summary").last();
    for (const [from, key, to] of [
      [first, "Tab", last],
      [last, "Shift+Tab", first],
    ] as const) {
      await from.focus();
      let stops = 0;
      while (stops < 100 && !(await hasFocus(to))) {
        await page.keyboard.press(key);
        stops += 1;
        expect(await coveredBy(page), `stop ${stops} by ${key}`).toBe("nothing");
      }
      expect(stops).toBeGreaterThan(12);
      expect(await hasFocus(to)).toBe(true);
    }
  });

  it("shows in forced colors where the keyboard stands, and which button does nothing", async () => {
    await page.emulateMedia({ forcedColors: "active" });
    await openYardPage(page);
    await openTab(page, text.tabs.basin);
    const doesNothing = button(page, "Write to the sheet");
    expect(await doesNothing.evaluate((each) => [each.getAttribute("aria-disabled"), getComputedStyle(each).borderTopStyle])).toEqual([
      "true",
      "dashed",
    ]);
    await pane(page).locator("fluent-tab[aria-selected=true]").focus();
    let stops = 0;
    while (stops < 100 && !(await hasFocus(pane(page).locator(".tab-panel summary").last()))) {
      await page.keyboard.press("Tab");
      stops += 1;
      expect(await outlineOfFocus(page), `stop ${stops}`).toBe("3px solid");
    }
    expect(stops).toBeGreaterThan(12);
    await page.emulateMedia({ forcedColors: "none" });
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});

async function openYardPage(page: Page): Promise<void> {
  await goTo(page, address(sitesSheet, BUILT_YARD, "yard"));
  await pane(page).getByRole("tablist", { name: text.tabs.label }).waitFor();
}

async function openProgramPage(page: Page): Promise<void> {
  const leave = button(page, /All yards/);
  if (await leave.isVisible()) await leave.click();
  await pane(page).getByRole("tablist", { name: text.programTabs.label }).waitFor();
}

function focusedId(page: Page): Promise<string> {
  return page.evaluate(() => document.activeElement?.id ?? "");
}

function hasFocus(element: Locator): Promise<boolean> {
  return element.evaluate((each) => each === document.activeElement);
}

/** What lies over the middle of the element that has the focus. */
function coveredBy(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focused = document.activeElement ?? document.body;
    const { left, top, width, height } = focused.getBoundingClientRect();
    const over = document.elementFromPoint(left + width / 2, top + height / 2);
    const inSight =
      over !== null && (focused.contains(over) || over.contains(focused) || focused.closest("label")?.contains(over) === true);
    return inSight ? "nothing" : `${focused.outerHTML.slice(0, 100)} lies under ${over?.outerHTML.slice(0, 100) ?? "the edge"}`;
  });
}

/** The line around what has the focus, or around the label that stands for it. */
function outlineOfFocus(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focused = document.activeElement ?? document.body;
    const { outlineWidth, outlineStyle } = getComputedStyle(focused.closest(".segment, .check") ?? focused);
    return `${outlineWidth} ${outlineStyle}`;
  });
}
