import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import type { CellRange, CellValue } from "../../addin/workbook/port.ts";
import { expectCell, goTo, typeInto, value, values } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, narrowPane, onExcelPage, openTab, pane } from "./pane.ts";
import { expectUsable } from "./usable.ts";

const heading = (page: Page) => pane(page).locator("h1");
const status = (page: Page) => pane(page).locator(".status-line p");

/** The number that the pane's results show beside the label. */
async function result(page: Page, label: string): Promise<string> {
  return (await pane(page).locator(".result", { hasText: label }).locator("dd").innerText()).replaceAll(/\s+/g, " ");
}

async function selectYard(page: Page, place: number): Promise<void> {
  await page.evaluate((range) => window.soakbook?.workbook.select(range), cellOf(sitesSheet, firstRow(sitesSheet) + place, "yard"));
  const siteId = String(await value(page, address(sitesSheet, place, "siteId")));
  await expect.poll(() => heading(page).innerText()).toContain(siteId);
}

describe("The pane beside the workbook", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  it("follows the selected row of Sites, of Surfaces and of Design", async () => {
    await goTo(page, address(sitesSheet, 4, "yard"));
    await expect.poll(() => heading(page).innerText()).toBe("Y-005 Top of Quarry Stair");
    await goTo(page, address(designSheet, 1, "floorArea"));
    await expect.poll(() => heading(page).innerText()).toBe("Y-002 Old sand pit, Fennel Row");
    await goTo(page, address(surfacesSheet, 0, "area"));
    await expect.poll(() => heading(page).innerText()).toBe("Y-001 Corner house, Fennel Row");
  });

  it("shows the same numbers as the Design sheet", async () => {
    await selectYard(page, 0);
    await openTab(page, "Yard");
    for (const [label, key, decimals, unit] of [
      ["Contributing area", "contributingArea", 1, "sq ft"],
      ["Floor area", "floorArea", 1, "sq ft"],
      ["Water held", "waterHeld", 2, "cu ft"],
      ["Drawdown", "drawdownHours", 1, "h"],
      ["Dig, in place", "digVolume", 2, "cu yd"],
    ] as const) {
      const inSheet = await value(page, address(designSheet, 0, key));
      expect(typeof inSheet).toBe("number");
      expect(await result(page, label)).toBe(`${Number(inSheet).toLocaleString("en-US", { maximumFractionDigits: decimals })} ${unit}`);
    }
  });

  it("picks a yard by a search, and selects its row in the sheet", async () => {
    await button(page, /All yards/).click();
    await pane(page).getByLabel("Find a yard").fill("larkspur 21");
    await pane(page).getByRole("button", { name: /Y-010/ }).click();
    await expect.poll(() => heading(page).innerText()).toContain("Y-010");
    const selection = await page.evaluate(() => window.soakbook?.workbook.selection());
    expect(selection).toMatchObject({ sheet: "Sites", row: firstRow(sitesSheet) + 9 } satisfies Partial<CellRange>);
  });

  it("adds a yard to Sites under a number of its own, and shows it", async () => {
    await button(page, /All yards/).click();
    await button(page, "Add a yard").click();
    await button(page, "Add the yard").click();
    expect(await pane(page).getByText("Yard is missing.").isVisible()).toBe(true);
    await pane(page).getByLabel("Yard", { exact: true }).fill("=Weir cottage");
    await pane(page).getByLabel("Address").fill("2 Weir Lane");
    await button(page, "Add the yard").click();
    await expectCell(page, address(sitesSheet, 16, "siteId"), "Y-017");
    // A name that begins like a formula is still a name.
    await expectCell(page, address(sitesSheet, 16, "yard"), "=Weir cottage");
    await expectCell(page, address(sitesSheet, 16, "units"), "us");
    await expect.poll(() => heading(page).innerText()).toBe("Y-017 =Weir cottage");
    const selection = await page.evaluate(() => window.soakbook?.workbook.selection());
    expect(selection).toMatchObject({ sheet: "Sites", row: firstRow(sitesSheet) + 16 });
  });

  it("adds a surface, which Design and the pane count at once", async () => {
    await selectYard(page, 16);
    await openTab(page, "Yard");
    await button(page, "Add a surface").click();
    await pane(page).getByLabel("Surface", { exact: true }).fill("Front roof, half");
    await pane(page).getByLabel("Cover").selectOption("roof");
    await pane(page).getByLabel("Area", { exact: true }).fill("600 sq ft");
    await pane(page).getByLabel("Share draining here").fill("0.5");
    await button(page, "Write to the sheet").click();
    expect(await pane(page).getByText('Area must be a number alone, in the unit shown; it is "600 sq ft".').isVisible()).toBe(true);
    expect(await pane(page).getByLabel("Area", { exact: true }).inputValue()).toBe("600 sq ft");

    await pane(page).getByLabel("Area", { exact: true }).fill("600");
    await button(page, "Write to the sheet").click();
    await expect.poll(() => status(page).innerText()).toBe("Written to Surfaces.");
    // 600 sq ft of roof, half of it draining here: computed by hand.
    await expectCell(page, address(designSheet, 16, "contributingArea"), 300);
    await expect.poll(() => result(page, "Contributing area")).toBe("300 sq ft");
  });

  it("shows what is changed in the sheet", async () => {
    await selectYard(page, 3);
    await openTab(page, "Yard");
    expect(await result(page, "Contributing area")).toBe("800 sq ft");
    await goTo(page, address(surfacesSheet, 4, "area"));
    expect(await value(page, address(surfacesSheet, 4, "siteId"))).toBe("Y-004");
    await typeInto(page, address(surfacesSheet, 4, "area"), "740");
    // 740 sq ft of roof and the 160 sq ft patio.
    await expect.poll(() => result(page, "Contributing area")).toBe("900 sq ft");
    await expectCell(page, address(designSheet, 3, "contributingArea"), 900);
  });

  it("says in words why a number is not there, and goes to the cell", async () => {
    await selectYard(page, 7);
    await openTab(page, "Yard");
    expect(await pane(page).locator(".slips").innerText()).toContain('Hole diameter must be a number; it is the text "8 in".');
    await pane(page).locator(".slips fluent-button").first().click();
    await expect.poll(() => page.evaluate(() => window.soakbook?.workbook.selection())).toMatchObject({ sheet: "Hole tests" });
    expect(await pane(page).innerText()).not.toMatch(/#VALUE!|#N\/A|NaN|Infinity/);
  });

  it("asks when the cell changed behind an open form, and overwrites nothing", async () => {
    await selectYard(page, 16);
    await openTab(page, "Yard");
    const area = (await surfaceRows(page)).indexOf("Y-017");
    await button(page, "Change Front roof, half").click();
    await pane(page).getByLabel("Area", { exact: true }).fill("640");
    await typeInto(page, address(surfacesSheet, area, "area"), "620");
    await selectYard(page, 16);
    expect(await pane(page).getByLabel("Area", { exact: true }).inputValue()).toBe("640");

    await button(page, "Write to the sheet").click();
    const question = pane(page).getByRole("alertdialog");
    await expect
      .poll(() => question.innerText())
      .toContain("held 600 when you opened it and holds 620 now. Nothing was written; you wanted 640.");
    await expectCell(page, address(surfacesSheet, area, "area"), 620);

    await button(page, "Leave the sheet as it is").click();
    await expect.poll(() => status(page).innerText()).toBe("The sheet stays as it is. What you typed is still in the form.");
    await expectCell(page, address(surfacesSheet, area, "area"), 620);
    expect(await pane(page).getByLabel("Area", { exact: true }).inputValue()).toBe("640");

    await button(page, "Write to the sheet").click();
    await button(page, "Write mine over it").click();
    await expect.poll(() => status(page).innerText()).toBe("Surfaces was changed.");
    await expectCell(page, address(surfacesSheet, area, "area"), 640);
    await expect.poll(() => result(page, "Contributing area")).toBe("320 sq ft");
  });

  it("measures a surface by its shape, keeps the lengths beside it, and takes it out again when asked", async () => {
    await button(page, "Add a surface").click();
    await pane(page).getByLabel("Surface", { exact: true }).fill("Drive");
    await pane(page).getByLabel("Cover").selectOption("paving");
    await pane(page).getByLabel("How it is measured").selectOption("rectangle");
    await pane(page).getByLabel("Length", { exact: true }).fill("40");
    await pane(page).getByLabel("Width", { exact: true }).fill("12");
    expect(await pane(page).locator(".measured-area").innerText()).toBe("Area: 480 sq ft");
    await pane(page).getByLabel("Share draining here").fill("0.25");
    await button(page, "Write to the sheet").click();
    await expect.poll(() => status(page).innerText()).toBe("Written to Surfaces.");
    const drive = (await surfaceRows(page)).lastIndexOf("Y-017");
    await expectCell(page, address(surfacesSheet, drive, "area"), 480);
    await expectCell(page, address(surfacesSheet, drive, "howMeasured"), "rectangle: length 40 ft, width 12 ft");
    // 320 of the roof and a quarter of 40 x 12.
    await expectCell(page, address(designSheet, 16, "contributingArea"), 440);

    await button(page, "Remove Drive").click();
    await button(page, "Remove it").click();
    await expectCell(page, address(surfacesSheet, drive, "area"), null);
    await expectCell(page, address(designSheet, 16, "contributingArea"), 320);
  });

  it("checks a rerouted downspout's pipe, and keeps the answer beside its roof", async () => {
    await button(page, "Check a rerouted downspout of Front roof, half").click();
    // Half of 640 sq ft drains elsewhere: 0.95 x 6 in/h x 320 sq ft / 43,200 = 0.0422 cfs. A 3 in smooth pipe on 1 % carries 51.6 / 448.83 = 0.115 cfs.
    await pane(page).getByLabel("Rain intensity").fill("6");
    await pane(page).getByLabel("Inside diameter").fill("3");
    await pane(page).getByLabel("Slope", { exact: true }).fill("1");
    expect(await pane(page).locator(".downspout-answer").innerText()).toMatch(/Carries it.*0\.042 cfs.*3 in takes 0\.115 cfs/s);
    await button(page, "Write the check").click();
    expect(await pane(page).getByText("Source of the intensity is missing: say where the number is from.").isVisible()).toBe(true);
    await pane(page).getByLabel("Source of the intensity").fill("county table, 10 years");
    await button(page, "Write the check").click();
    await expect.poll(() => status(page).innerText()).toBe("The check was written to Surfaces.");
    expect(await pane(page).locator(".downspout").innerText()).toContain(
      "320 sq ft of roof, 6 in/h (county table, 10 years), coefficient 0.95.",
    );
  });

  it("can be used with the keyboard alone", async () => {
    await selectYard(page, 0);
    await pane(page).getByRole("tab", { name: "Yard" }).focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => pane(page).getByRole("tabpanel").getAttribute("aria-labelledby")).toBe("soakbook-tab-visits");
    await page.keyboard.press("Home");
    await expect.poll(() => pane(page).getByRole("tabpanel").getAttribute("aria-labelledby")).toBe("soakbook-tab-yard");
    await button(page, "Add a surface").focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("INPUT");
    await page.keyboard.type("Shed");
    await button(page, "Discard").focus();
    await page.keyboard.press("Space");
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("Add a surface");
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });

  /** The Site ID of each row of Surfaces, from the first below the headings. */
  async function surfaceRows(of: Page): Promise<readonly CellValue[]> {
    return (await values(of, `Surfaces!A${firstRow(surfacesSheet) + 1}:A${firstRow(surfacesSheet) + 100}`)).map(
      ([siteId]) => siteId ?? null,
    );
  }
});

describe.each(["light", "dark"] as const)("The pane at 320 pixels in the %s theme", (colorScheme) => {
  let page: Page;

  onExcelPage(
    (ready) => {
      page = ready.page;
    },
    { colorScheme },
  );

  beforeAll(async () => {
    await narrowPane(page);
    await page.evaluate((range) => window.soakbook?.workbook.select(range), cellOf(sitesSheet, firstRow(sitesSheet) + 7, "yard"));
    await heading(page).filter({ hasText: "Y-008" }).waitFor();
  });

  it.each(["Yard", "Visits", "Hole test", "Basin"])(
    "%s has no serious fault of accessibility, nothing cut off and no target under 44 pixels",
    async (tab) => {
      await openTab(page, tab);
      await expectUsable(page);
    },
  );

  it("the list of yards has none either", async () => {
    await button(page, /All yards/).click();
    await button(page, "Add a yard").click();
    await expectUsable(page);
  });
});
