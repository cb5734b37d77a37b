import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { expectCell, goTo, typeInto, value } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, narrowPane, onExcelPage, openYard, pane, unfoldAll } from "./pane.ts";
import { seriousFaults } from "./usable.ts";

/** Rows of the demo's yards below the headings of Sites. */
const CORNER_HOUSE = 0;
const UNTESTED = 6;
const METRIC = 8;

const field = (page: Page, label: string) => pane(page).getByLabel(label, { exact: true });
const result = (page: Page, label: string) =>
  pane(page).locator(".basin-results .result", { hasText: label }).locator(".result-number").innerText();
const asShown = (area: unknown) => Number(area).toLocaleString("en-US", { maximumFractionDigits: 1 });

async function openBasin(page: Page, place: number): Promise<void> {
  await openYard(page, place, "Basin");
  await unfoldAll(page);
}

describe("The basin in the pane", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  it("starts from the numbers of the Design sheet", async () => {
    await openBasin(page, CORNER_HOUSE);
    expect(await result(page, "Floor area")).toBe(asShown(await value(page, address(designSheet, CORNER_HOUSE, "floorArea"))));
    expect(await pane(page).getByText("The form holds what the sheet holds.").isVisible()).toBe(true);
  });

  it("works out another ponding at once, says what writing would change, and changes no cell", async () => {
    const before = await value(page, address(designSheet, CORNER_HOUSE, "floorArea"));
    await field(page, "Ponding depth").fill("4");
    await expect.poll(() => result(page, "Floor area")).not.toBe(asShown(before));
    expect(await pane(page).getByText("Ponding depth: blank becomes 4 in").isVisible()).toBe(true);
    expect(await value(page, address(designSheet, CORNER_HOUSE, "floorArea"))).toBe(before);
    expect(await value(page, address(sitesSheet, CORNER_HOUSE, "pondingDepth"))).toBeNull();
  });

  it("writes the ponding, and the Design sheet computes the floor area that the pane showed", async () => {
    const inPane = await result(page, "Floor area");
    await button(page, "Write to the sheet").click();
    await expectCell(page, address(sitesSheet, CORNER_HOUSE, "pondingDepth"), 4);
    await expect.poll(async () => asShown(await value(page, address(designSheet, CORNER_HOUSE, "floorArea")))).toBe(inPane);
    await expect
      .poll(() => pane(page).locator(".sheet-part").innerText())
      .toContain(`The Design sheet computes a floor of ${inPane} sq ft, the same as the pane.`);
  });

  it("shows what is changed in the sheet", async () => {
    await typeInto(page, address(sitesSheet, CORNER_HOUSE, "stormDepth"), "1.5");
    await goTo(page, address(sitesSheet, CORNER_HOUSE, "yard"));
    await expect.poll(() => field(page, "Storm depth").inputValue()).toBe("1.5");
    await expect.poll(() => result(page, "Floor area")).toBe(asShown(await value(page, address(designSheet, CORNER_HOUSE, "floorArea"))));
  });

  it("says what is wrong with an impossible input, and writes nothing", async () => {
    await field(page, "Ponding depth").fill("-4");
    expect(await pane(page).getByText("Ponding depth must be more than 0.").isVisible()).toBe(true);
    await field(page, "Storm depth").fill("two");
    expect(await pane(page).getByText('Storm depth must be a number; it is the text "two".').isVisible()).toBe(true);
    await button(page, "Write to the sheet").click();
    expect(await pane(page).getByText("Nothing was written: put right what is marked first.").isVisible()).toBe(true);
    await expectCell(page, address(sitesSheet, CORNER_HOUSE, "pondingDepth"), 4);
    expect(await pane(page).innerText()).not.toMatch(/NaN|Infinity|#VALUE!/);
  });

  it("says that the least floor holds 1 in of rain with less than the 40 in of ponding asked for", async () => {
    await field(page, "Storm depth").fill("");
    await field(page, "Ponding depth").fill("40");
    // By hand: 710 sq ft x 0.95 in run off, 56.208 cu ft; an ellipse of 50 sq ft twice as long as wide, sides 3 to 1, holds
    // them and 1 in on its rim at 9.285 in.
    await expect
      .poll(() => pane(page).innerText())
      .toContain("Less ponding than asked for: the least floor of 50 sq ft holds this storm at 9.29 in.");
  });

  it("says that 40 in of ponding drains too slowly where the storm needs them, and stops", async () => {
    // By hand: the same floor holds 959 cu ft at 40 in; 12 in of rain bring 674.5, and 630 on its rim: the floor must be larger.
    await field(page, "Storm depth").fill("12");
    await field(page, "Ponding depth").fill("40");
    const size = pane(page).locator(".checks li", { hasText: "Size and soil" });
    await expect.poll(() => size.innerText()).toMatch(/Drains too slowly: 40 in needs .* 48 h is the limit/);
    expect(await size.locator(".verdict").innerText()).toBe("Stop");
    expect(await pane(page).locator(".headline .verdict").innerText()).toBe("Stop");
  });

  it("goes back to what the sheet holds", async () => {
    await button(page, "Back to what the sheet holds").click();
    expect(await field(page, "Ponding depth").inputValue()).toBe("4");
    expect(await field(page, "Storm depth").inputValue()).toBe("1.5");
  });

  it("draws plan and section, and says the same numbers in words", async () => {
    const plan = pane(page).getByRole("img", { name: "Plan of the basin" });
    const section = pane(page).getByRole("img", { name: "Section down the slope" });
    await page.evaluate(() => window.soakbook?.workbook.calculated());
    const length = await value(page, address(designSheet, CORNER_HOUSE, "floorLength"));
    expect(await plan.locator("desc").textContent()).toContain(`an ellipse ${asShown(length)} ft across the slope`);
    expect(await plan.locator("text", { hasText: `${asShown(length)} ft` }).count()).toBeGreaterThan(0);
    expect(await section.locator("desc").textContent()).toContain("lies 4 in below the overflow sill");
    expect(await section.locator("text", { hasText: "ponding 4 in" }).isVisible()).toBe(true);
  });

  it("says what to do where the rate is missing, and tries an assumed one without writing it", async () => {
    await openBasin(page, UNTESTED);
    expect(await pane(page).getByText("No tested rate yet: test a hole on the Hole test tab").isVisible()).toBe(true);
    expect(await pane(page).locator(".headline .verdict").innerText()).toBe("Not measured");
    await field(page, "Assumed tested rate").fill("0.8");
    await expect.poll(() => result(page, "Floor area")).toMatch(/^[\d.,]+$/);
    expect(
      await pane(page).getByText("A what-if: the tested rate is assumed, not measured. Do not build from these numbers.").isVisible(),
    ).toBe(true);
    await field(page, "Ponding depth").fill("5");
    await button(page, "Write to the sheet").click();
    await expectCell(page, address(sitesSheet, UNTESTED, "pondingDepth"), 5);
    expect(await value(page, address(designSheet, UNTESTED, "testedRate"))).not.toBe(0.8);
    expect(await value(page, address(designSheet, UNTESTED, "floorArea"))).not.toEqual(expect.any(Number));
  });

  it("says that a basin does not fit the room, puts what would fit into the form, and then it fits", async () => {
    await openBasin(page, CORNER_HOUSE);
    await field(page, "Storm depth").fill("1");
    await field(page, "Room across the slope").fill("14");
    const room = pane(page).locator(".checks li", { hasText: "Room" });
    await expect.poll(() => room.innerText()).toMatch(/Does not fit: it is .* at the rim, and there is room for 14 ft across the slope\./);
    await button(page, "Put this into the form").click();
    await expect.poll(() => room.locator(".verdict").innerText()).toBe("Pass");
    expect(Number(await field(page, "Length to width").inputValue())).toBeGreaterThanOrEqual(1);
  });

  it("keeps two alternatives side by side, and writes the chosen one to the sheet, whose Design agrees", async () => {
    await button(page, "Keep the form as A").click();
    await field(page, "Shape").selectOption("rectangle");
    await field(page, "Ponding depth").fill("6");
    await button(page, "Keep the form as B").click();
    const floors = pane(page).locator(".compared tr", { hasText: "Floor area" }).locator("td");
    await expect.poll(() => floors.allInnerTexts()).toEqual([expect.stringMatching(/sq ft$/), expect.stringMatching(/sq ft$/), "–"]);
    const [, ofB = ""] = await floors.allInnerTexts();
    await button(page, "Write B to the sheet").click();
    await expectCell(page, address(sitesSheet, CORNER_HOUSE, "shape"), "rectangle");
    await expectCell(page, address(sitesSheet, CORNER_HOUSE, "roomLength"), 14);
    await expect.poll(async () => `${asShown(await value(page, address(designSheet, CORNER_HOUSE, "floorArea")))} sq ft`).toBe(ofB);
    await expect.poll(() => pane(page).locator(".sheet-part").innerText()).toContain("the same as the pane.");
  });

  it("tells the storm in words beside its chart, and of another type other words", async () => {
    const facts = pane(page).locator(".routed");
    await expect.poll(() => facts.innerText()).toMatch(/type II\b/);
    expect(await facts.innerText()).toMatch(/Captured\s+100 %/);
    await pane(page).locator(".routing .segment", { hasText: /^IA$/ }).click();
    await expect.poll(() => facts.innerText()).toMatch(/type IA\b/);
    expect(await pane(page).locator(".routing .chart-frame canvas").count()).toBe(2);
  });

  it("saves the drawing into the workbook as a picture, with the same words in the cell above it", async () => {
    await button(page, "Save into the workbook").click();
    await expect.poll(() => page.evaluate(async () => (await window.soakbook?.workbook.sheetNames())?.includes("Drawings"))).toBe(true);
    await expect.poll(() => page.evaluate(() => window.soakbook?.workbook.pictureNames("Drawings"))).toEqual(["Basin Y-001"]);
    expect(await value(page, "Drawings!D4")).toContain(
      "Seen from above, to scale, uphill at the top. The level floor, zone A, is a rectangle",
    );
    await button(page, "Save again, in place of the last one").waitFor();
  });

  it("prints the drawing alone on one page", async () => {
    await page.evaluate(() => {
      window.print = () => void window.dispatchEvent(new Event("beforeprint"));
    });
    await button(page, "Print the drawing").click();
    await page.emulateMedia({ media: "print" });
    const { pages, paneShows } = await page.evaluate(() => {
      const paper = document.querySelector(".working-paper");
      // Letter paper less half an inch of margin on each side: 960 pixels of height for 720 of width.
      return { pages: (paper?.scrollHeight ?? 0) / 960, paneShows: document.querySelector("#pane")?.checkVisibility() };
    });
    expect(pages).toBeGreaterThan(0);
    expect(pages).toBeLessThanOrEqual(1);
    expect(paneShows).toBe(false);
    await page.emulateMedia({ media: "screen" });
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  });

  it("speaks metric of a metric yard, throughout", async () => {
    await openBasin(page, METRIC);
    const said = await pane(page).getByRole("tabpanel").innerText();
    expect(said).not.toMatch(/\d (in|ft|sq ft|cu ft|cu yd|in\/h)\b/);
    expect(said).toMatch(/\d m²/);
    expect(await pane(page).getByRole("img", { name: "Plan of the basin" }).innerHTML()).not.toMatch(/\d (in|ft)\b/);
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});

describe.each([
  { colorScheme: "light", forcedColors: "none" },
  { colorScheme: "dark", forcedColors: "none" },
  { colorScheme: "light", forcedColors: "active" },
] as const)("The basin and the hole test at 320 pixels, $colorScheme with forced colors $forcedColors", (theme) => {
  let page: Page;

  onExcelPage((ready) => {
    page = ready.page;
  }, theme);

  beforeAll(async () => {
    await narrowPane(page);
    await openBasin(page, CORNER_HOUSE);
  });

  it.each(["Basin", "Hole test"])("%s has no serious fault of accessibility and no letter under 11 pixels", async (tab) => {
    await pane(page).getByRole("tab", { name: tab }).click();
    expect(await seriousFaults(page)).toEqual([]);
    const letters = await page.evaluate(() =>
      [...document.querySelectorAll<SVGTextElement>("#pane svg text")].map(
        (each) => Number.parseFloat(getComputedStyle(each).fontSize) * (each.getScreenCTM()?.d || 1),
      ),
    );
    expect(letters.filter((size) => Math.abs(size) > 0.01 && Math.abs(size) < 11)).toEqual([]);
  });

  it("keeps every word of the drawings inside them", async () => {
    await pane(page).getByRole("tab", { name: "Basin" }).click();
    await expect.poll(() => pane(page).locator(".drawing-figure svg").count()).toBe(2);
    const outside = await page.evaluate(() =>
      [...document.querySelectorAll<SVGTextElement>("#pane .drawing-figure svg text")].flatMap((words) => {
        const own = words.getBoundingClientRect();
        const paper = words.ownerSVGElement?.getBoundingClientRect() ?? own;
        return own.left < paper.left - 1 || own.right > paper.right + 1 || own.top < paper.top - 1 || own.bottom > paper.bottom + 1
          ? [words.textContent]
          : [];
      }),
    );
    expect(outside).toEqual([]);
  });
});
