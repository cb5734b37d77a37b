import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { addressOf } from "../../addin/workbook/port.ts";
import { goTo, typeInto, values } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { button, narrowPane, onExcelPage, pane } from "./pane.ts";
import { seriousFaults } from "./usable.ts";

const view = (page: Page) => pane(page).locator(".working");

async function openWorking(page: Page, address: string): Promise<void> {
  await goTo(page, address);
  await pane(page).locator(".working-bar", { hasText: address }).waitFor();
  await button(page, "Show the working").click();
  await view(page).waitFor();
}

/** "Ponding depth": what the working says beside each label. */
async function said(page: Page, label: string): Promise<string> {
  const line = view(page)
    .locator(".working-line", { has: page.locator("dt", { hasText: label }) })
    .first();
  return (await line.locator("dd").innerText()).trim();
}

/** The place on Design of the first yard whose cell of the column is like this. */
async function designCell(page: Page, key: keyof typeof designSheet.columns, isWanted: (value: unknown) => boolean): Promise<string> {
  const column = cellOf(designSheet, firstRow(designSheet), key);
  const cells = await values(page, addressOf({ ...column, rows: 20 }));
  const place = cells.findIndex(([value]) => isWanted(value));
  expect(place, `a yard whose ${key} is so`).toBeGreaterThanOrEqual(0);
  return addressOf({ ...column, row: column.row + place });
}

describe("The working of a cell", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  it("of a drawdown typed into any cell shows the equation, the arguments with units and the result", async () => {
    await typeInto(page, "Program!H5", "=SOAK.DRAWDOWN(6,0.5)");
    await openWorking(page, "Program!H5");
    expect(await view(page).locator("h1").innerText()).toBe("Working of Program!H5");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Working of Program!H5");
    expect(await view(page).locator(".working-equation").count()).toBeGreaterThan(0);
    expect(await said(page, "Ponding depth")).toBe("6 in");
    expect(await said(page, "Design rate")).toBe("0.5 in/h");
    expect(await said(page, "Units")).toBe("left out: us");
    expect(await said(page, "Shows")).toBe("12");
    // 6 in at 0.5 in/h, computed by hand.
    expect(await view(page).locator(".working-result dd").innerText()).toBe("12 h");
    expect(
      await view(page)
        .getByRole("link", { name: /function reference/ })
        .getAttribute("href"),
    ).toBe("help.html#DRAWDOWN");
  });

  it("is copied as text", async () => {
    await button(page, "Copy as text").click();
    await view(page).getByText("Copied.").waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toContain("Working of Program!H5");
    expect(text).toContain("Ponding depth: 6 in");
    expect(text).toContain("12 h");
    expect(text).toContain("Local codes and licensed practice decide.");
    expect(text).not.toMatch(/NaN|undefined|\[object/);
  });

  it("is printed alone, as a calculation sheet with cell, date and footer", async () => {
    await page.evaluate(() => {
      window.print = () => void window.dispatchEvent(new Event("beforeprint"));
    });
    await button(page, "Print").click();
    await page.emulateMedia({ media: "print" });
    const paper = await page.locator(".working-paper").innerText();
    expect(paper).toContain("Calculation sheet");
    expect(paper).toContain("Program!H5");
    expect(paper).toMatch(/\d{4}-\d{2}-\d{2}/);
    expect(paper).toContain("Local codes and licensed practice decide.");
    expect(await pane(page).isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    expect(await page.locator(".working-paper").count()).toBe(0);
    expect(await pane(page).isVisible()).toBe(true);
  });

  it("gives the pane back with the keyboard on the button that opened it", async () => {
    await button(page, /Back to the pane/).press("Enter");
    await button(page, "Show the working").waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent.trim())).toBe("Show the working");
  });

  it("of a yard on Design takes that yard's row of the one formula over all yards", async () => {
    const address = await designCell(page, "floorArea", (value) => typeof value === "number");
    await openWorking(page, address);
    expect(await view(page).innerText()).toContain("spills into this cell");
    expect(await said(page, "Contributing area")).toMatch(/^[\d,.]+ (sq ft|m²)$/);
    expect(await view(page).locator(".working-result").innerText()).toMatch(/sq ft|m²/);
    await button(page, /Back to the pane/).click();
  });

  it("of every computed column of Design agrees with what the sheet shows", async () => {
    const address = await designCell(page, "digVolume", (value) => typeof value === "number");
    await openWorking(page, address);
    const row = Number(/\d+$/.exec(address)?.[0]) - 1;
    for (const key of [
      "testedRate",
      "designRate",
      "drawdownHours",
      "status",
      "floorWidth",
      "looseVolume",
      "mulchVolume",
      "plants",
      "groundSlopePercent",
    ] as const) {
      const cell = { ...cellOf(designSheet, firstRow(designSheet), key), row };
      await goTo(page, addressOf(cell));
      await expect.poll(() => view(page).locator("h1").innerText()).toBe(`Working of ${addressOf(cell)}`);
      expect(await view(page).innerText(), key).not.toContain("The cell shows something else");
      expect(await view(page).locator(".working-result").count(), key).toBeGreaterThan(0);
    }
    await button(page, /Back to the pane/).click();
  });

  it("of a yard with an error says in words what stops it", async () => {
    const address = await designCell(page, "floorArea", (value) => typeof value === "string" && value.startsWith("#"));
    await openWorking(page, address);
    const results = await view(page).locator(".working-result").first().innerText();
    expect(results).toMatch(/[A-Z][a-z][^#]+\./);
    expect(results).not.toMatch(/NaN|Infinity|undefined/);
    await button(page, /Back to the pane/).click();
  });

  it("is not offered for a cell that none of our functions computes", async () => {
    await goTo(page, "Program!B5");
    await expect.poll(() => pane(page).locator(".working-bar").count()).toBe(0);
  });

  it.each([
    ["light", "none"],
    ["dark", "none"],
    ["dark", "active"],
  ] as const)(
    "at 320 pixels in the %s theme with forced colors %s is cut off nowhere and has no serious fault of accessibility",
    async (colorScheme, forcedColors) => {
      await narrowPane(page);
      await page.emulateMedia({ colorScheme, forcedColors });
      await openWorking(page, await designCell(page, "status", (value) => value === "fits"));
      const cutOff = await page.evaluate(() => {
        const edge = document.querySelector("#pane")?.getBoundingClientRect().right ?? 0;
        return [...document.querySelectorAll<HTMLElement>("#pane *")]
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > edge + 0.5)
          .map(({ outerHTML }) => outerHTML.slice(0, 100));
      });
      expect(cutOff).toEqual([]);
      if (forcedColors === "none") expect(await seriousFaults(page)).toEqual([]);
      await button(page, /Back to the pane/).click();
      await page.emulateMedia({ colorScheme: "light", forcedColors: "none" });
    },
  );

  it("left nothing uncaught", () => {
    expect(opened.faults).toEqual([]);
  });
});
