import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { plantingSheet } from "../../addin/records/planting.ts";
import { plantingText } from "../../taskpane/views/planting/text.ts";
import { at, typeInto, value } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, narrowPane, onExcelPage, openYard, pane, status, unfoldAll } from "./pane.ts";
import { inWideLetters, seriousFaults } from "./usable.ts";

const CORNER_HOUSE = 0;

let opened: OpenPage;
let page: Page;

onExcelPage((ready) => {
  opened = ready;
  page = ready.page;
});

beforeAll(async () => {
  while ((await cell(0, "siteId")) !== null) above += 1;
});

const clumps = () => pane(page).locator("[data-clump]");
const field = (label: string) => pane(page).getByLabel(label, { exact: true });
/** Clumps of the plan, those included that have no room to be drawn. */
const planned = async () => (await field("Clump").locator("option").count()) - 1;
const sheetPart = () => pane(page).locator('section[aria-label="On the sheet"]');
/** Rows of other yards stand above those that this test writes. */
let above = 0;
const cell = (place: number, key: keyof typeof plantingSheet.columns) => value(page, address(plantingSheet, above + place, key));

describe("The planting of a yard in the pane", () => {
  it("says what to do where no plant suits: the wet floor in shade", async () => {
    await openYard(page, CORNER_HOUSE, "Planting");
    await unfoldAll(page);
    await field("Sun here").selectOption("shade");
    expect(await pane(page).getByText("No plant on your Plants sheet suits zone A in shade with these filters.").isVisible()).toBe(true);
    await field("Sun here").selectOption("sun");
  });

  it("drafts a plan of suggested plants, drawn to scale with a legend, and writes nothing yet", async () => {
    await button(page, "Suggest plants").click();
    await button(page, "Draft the plan").click();
    await expect.poll(() => clumps().count()).toBeGreaterThan(8);
    const legend = pane(page).getByRole("list", { name: "Plants of the plan" });
    expect(await legend.getByRole("listitem").count()).toBeGreaterThan(5);
    expect(
      await pane(page)
        .getByText(/^\d+ plants of \d+ kinds in \d+ clumps\.$/)
        .isVisible(),
    ).toBe(true);
    expect(await cell(0, "plant")).toBeNull();
  });

  it("moves a clump by the arrow keys, its place in the form and its plants in the drawing with it", async () => {
    const first = clumps().first();
    await first.focus();
    await expect.poll(() => field("Place across the basin").inputValue()).not.toBe("");
    const before = Number(await field("Place along the basin").inputValue());
    const drawn = await first.locator("circle").first().getAttribute("cx");
    await page.keyboard.press("ArrowRight");
    await expect.poll(async () => Number(await field("Place along the basin").inputValue())).not.toBe(before);
    expect(await first.locator("circle").first().getAttribute("cx")).not.toBe(drawn);
    expect(await first.evaluate((clump) => clump === document.activeElement)).toBe(true);
  });

  it("writes the plan, and the cells of Planting hold the clumps with plant, zone, count and place", async () => {
    const along = Number(await field("Place along the basin").inputValue());
    const count = await planned();
    await button(page, "Write to the Planting sheet").click();
    await expect.poll(() => cell(0, "alongLength")).toBe(along);
    await expect.poll(() => sheetPart().innerText()).toContain("The plan is as the Planting sheet holds it.");
    expect(await cell(0, "siteId")).toBe("Y-001");
    expect(await cell(0, "zone")).toBe("A");
    await expect.poll(planned).toBe(count);
    expect(await cell(count - 1, "planned")).toEqual(expect.any(Number));
    expect(await cell(count, "siteId")).toBeNull();
  });

  it("draws a row that a person types on the sheet", async () => {
    const count = await planned();
    await typeInto(page, address(plantingSheet, above + count, "siteId"), "Y-001");
    await typeInto(page, address(plantingSheet, above + count, "plant"), "<b>My own sedge</b>");
    await typeInto(page, address(plantingSheet, above + count, "zone"), "A");
    await typeInto(page, address(plantingSheet, above + count, "planned"), "1");
    await expect.poll(() => pane(page).getByText("<b>My own sedge</b>").count()).toBeGreaterThan(0);
  });

  it("takes a clump out and says what writing changes, then goes back to what the sheet holds", async () => {
    const count = await planned();
    await field("Clump").selectOption({ index: 2 });
    await button(page, "Remove this clump").click();
    await expect.poll(() => sheetPart().innerText()).toContain("Writing removes 1 clump on Planting.");
    await button(page, "Back to what the sheet holds").click();
    await expect.poll(planned).toBe(count);
  });

  it("asks what becomes of a clump that was removed from the sheet while the plan is open", async () => {
    const count = await planned();
    const plant = await cell(0, "plant");
    await field("Clump").selectOption({ index: 2 });
    await field("Plants in the clump").fill("4");
    const { rows, ...first } = at(address(plantingSheet, above, "siteId"));
    await page.evaluate(
      (range) => window.soakbook?.workbook.writeValues([{ range, values: [Array.from({ length: range.columns }, () => null)] }]),
      { ...first, rows, columns: Object.keys(plantingSheet.columns).length },
    );
    await expect.poll(() => sheetPart().innerText()).toContain(plantingText.sheet.removedTitle);
    expect(await sheetPart().innerText()).toContain(String(plant));
    await button(page, "Write to the Planting sheet").click();
    await expect.poll(() => status(page).innerText()).toContain("Say first what becomes of them.");
    expect(await cell(0, "plant")).toBeNull();

    await button(page, plantingText.sheet.leaveOut).click();
    await button(page, "Write to the Planting sheet").click();
    await expect.poll(planned).toBe(count - 1);
    await expect.poll(() => sheetPart().innerText()).toContain("The plan is as the Planting sheet holds it.");
    expect(await cell(0, "plant")).toBeNull();
    expect(await cell(1, "planned")).toBe(4);
  });

  it("lists materials with the loads of a truck that is typed", async () => {
    await field("One load holds").fill("5");
    const materials = pane(page).locator('section[aria-label="Materials"]');
    await expect.poll(() => materials.innerText()).toMatch(/Loads\s+1 to carry all of it off/);
    expect(await materials.innerText()).not.toMatch(/NaN|Infinity|#VALUE!/);
  });

  it("has no serious fault of accessibility, and no letter under 11 pixels", async () => {
    expect(await seriousFaults(page)).toEqual([]);
    const letters = await page.evaluate(() =>
      [...document.querySelectorAll<SVGTextElement>("#pane svg text")].map((each) => Number.parseFloat(getComputedStyle(each).fontSize)),
    );
    expect(letters.filter((size) => size < 11)).toEqual([]);
  });

  it("lists what to buy within a pane of 320 pixels", async () => {
    await narrowPane(page);
    await button(page, "Suggest plants").click();
    await button(page, "Draft the plan").click();
    const list = pane(page).getByRole("region", { name: "Shopping list" });
    await list.locator("table").waitFor();
    await field("Plants in a flat").fill("32");
    expect(await pane(page).evaluate((shell) => shell.clientWidth)).toBeLessThanOrEqual(320);
    const standingOut = () =>
      list.evaluate((section) => {
        const edge = section.getBoundingClientRect().right;
        return [...section.querySelectorAll("table, td, th")]
          .filter((each) => each.getBoundingClientRect().right > edge + 0.5)
          .map((each) => `${each.tagName} ${each.getBoundingClientRect().right - edge} px`);
      });
    expect(await standingOut()).toEqual([]);
    await inWideLetters(page, async () => expect(await standingOut()).toEqual([]));
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});
