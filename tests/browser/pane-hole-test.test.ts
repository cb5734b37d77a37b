import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { demoYards } from "../../addin/actions/demo/demo-program.ts";
import { designSheet } from "../../addin/records/design.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { expectCell, typeInto, value } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { address, button, onExcelPage, openYard, pane, unfoldAll } from "./pane.ts";

/** Rows below the headings: the demo's yard that waits for its utility marks, and its slow one. */
const UNTESTED = 6;
const SLOW = 2;

/** The first row of Hole tests that the demo leaves blank. */
const nextHole = demoYards.reduce((count, { holes = [] }) => count + holes.length, 0);

const reading = (page: Page, number: number) => ({
  minutes: pane(page).getByLabel(`Minutes of reading ${number}`, { exact: true }),
  water: pane(page).getByLabel(new RegExp(`^(Water depth|Distance down) of reading ${number}$`)),
});

async function openHoleTest(page: Page, place: number): Promise<void> {
  await openYard(page, place, "Hole test");
  await unfoldAll(page);
}

async function typeReadings(page: Page, readings: readonly (readonly [minutes: string, water: string])[]): Promise<void> {
  for (const [index, [minutes, water]] of readings.entries()) {
    await button(page, "Type a reading").click();
    await reading(page, index + 1).minutes.fill(minutes);
    await reading(page, index + 1).water.fill(water);
  }
}

/** The large number of the verdict, "0.84". */
const shownRate = (page: Page) => pane(page).locator(".hole-verdict .result-headline .result-number").innerText();

const asShown = (rate: unknown) => Number(rate).toLocaleString("en-US", { maximumFractionDigits: 2 });

describe("The hole test in the pane", () => {
  let opened: OpenPage;
  let page: Page;

  onExcelPage((ready) => {
    opened = ready;
    page = ready.page;
  });

  it("says first what must be safe before a hole is dug", async () => {
    await openHoleTest(page, UNTESTED);
    const first = pane(page).getByRole("tabpanel").locator("section").first();
    expect(await first.innerText()).toMatch(
      /utilities marked first.*Cover a hole.*children.*within 24 hours of more than 1\/2 in of rain.*frozen/s,
    );
  });

  it("says at the reading concerned that water rose, and shows no rate", async () => {
    await pane(page).getByLabel("Hole diameter").fill("8");
    await typeReadings(page, [
      ["0", "8"],
      ["15", "7"],
      ["30", "7.5"],
    ]);
    expect(await pane(page).locator(".reading").nth(3).innerText()).toContain(
      "Reading 3 stands higher than reading 2: water was added. Start a new series after refilling.",
    );
    expect(await pane(page).locator(".hole-verdict .result-headline").count()).toBe(0);
    expect(await pane(page).innerText()).not.toMatch(/NaN|Infinity|#VALUE!|#N\/A/);
  });

  it("asks whether a 4 in hole's radius was typed when it reads 2 in", async () => {
    await pane(page).getByLabel("Hole diameter").fill("2");
    expect(await pane(page).getByText("A hole under 3 in across is unusual: give its diameter, not its radius.").isVisible()).toBe(true);
    await pane(page).getByLabel("Hole diameter").fill("8 in");
    expect(await pane(page).getByText('Hole diameter must be a number alone, in the unit shown; it is "8 in".').isVisible()).toBe(true);
    await button(page, "Write to the sheet").click();
    expect(await pane(page).getByText("Nothing was written: put right what is marked first.").isVisible()).toBe(true);
    await expectCell(page, address(holeTestsSheet, nextHole, "siteId"), null);
    await pane(page).getByLabel("Hole diameter").fill("8");
  });

  it("writes the readings as typed, and the sheet computes the rate that the pane shows", async () => {
    await reading(page, 3).water.fill("6.1");
    await pane(page).getByLabel("Yes", { exact: true }).check();
    await pane(page).getByLabel("Hole depth").fill("18");
    const inPane = await shownRate(page);
    await button(page, "Write to the sheet").click();
    await expectCell(page, address(holeTestsSheet, nextHole, "siteId"), "Y-007");
    for (const [key, held] of [
      ["minutes2", 15],
      ["water2", 7],
      ["water3", 6.1],
      ["minutes4", null],
      ["holeDiameter", 8],
      ["holeDepth", 18],
      ["soaked", "yes"],
    ] as const) {
      await expectCell(page, address(holeTestsSheet, nextHole, key), held);
    }
    const inSheet = () => value(page, address(holeTestsSheet, nextHole, "infiltrationRate"));
    // Porchet's log form by hand, r = 4 in, both intervals within 10 %: 4 / (2 x 0.5) x ln((2 x 8 + 4) / (2 x 6.1 + 4)).
    await expect.poll(inSheet).toBeCloseTo(4 * Math.log(20 / 16.2), 9);
    expect(asShown(await inSheet())).toBe(inPane);
    await expect
      .poll(() => pane(page).locator(".sheet-part").innerText())
      .toContain(`The sheet computes ${inPane} in/h from its cells, the same as the pane.`);
    await expectCell(page, address(designSheet, UNTESTED, "holes"), 1);
  });

  it("shows another rate as soon as a reading is changed in the sheet", async () => {
    await typeInto(page, address(holeTestsSheet, nextHole, "water3"), "6.4");
    // 15 min from 7 to 6.4 in is more than 10 % slower than the interval before, so it stands alone: 8 ln(18 / 16.8).
    await expect.poll(() => shownRate(page)).toBe(asShown(8 * Math.log(18 / 16.8)));
    expect(await reading(page, 3).water.inputValue()).toBe("6.4");
    await expect.poll(() => value(page, address(holeTestsSheet, nextHole, "infiltrationRate"))).toBeCloseTo(8 * Math.log(18 / 16.8), 9);
    // Rates of 8 ln(20/18) = 0.843 and 0.552 in/h differ by 34.5 %.
    expect(await pane(page).locator(".steadiness").innerText()).toBe(
      "Keep going: the last two rates differ by 34.5 %, and 10 % or less is steady.",
    );
  });

  it("takes readings down from a mark, and writes the water's depth", async () => {
    await unfoldAll(page);
    await pane(page).getByText("Down from a mark").click();
    expect(await reading(page, 3).water.inputValue()).toBe("11.6");
    await reading(page, 3).water.fill("11.9");
    expect(await pane(page).locator(".reading").nth(3).innerText()).toContain("= 6.1 in of water");
    await button(page, "Write to the sheet").click();
    await expectCell(page, address(holeTestsSheet, nextHole, "water3"), 6.1);
    await pane(page).getByText("Up from the floor").click();
    expect(await reading(page, 3).water.inputValue()).toBe("6.1");
  });

  it("takes the geometric mean of a second hole, as Design does, and goes back to one when it is cleared", async () => {
    await pane(page).getByLabel("Hole", { exact: true }).selectOption("new");
    await unfoldAll(page);
    await pane(page).getByLabel("Hole diameter").fill("8");
    await pane(page).getByLabel("Yes", { exact: true }).check();
    await typeReadings(page, [
      ["0", "8"],
      ["15", "7.5"],
      ["30", "7.03"],
    ]);
    await button(page, "Write to the sheet").click();
    await expectCell(page, address(holeTestsSheet, nextHole + 1, "siteId"), "Y-007");
    // By hand, r = 4 in over half an hour: 4 ln(20 / 16.2) = 0.8429 and 4 ln(20 / 18.06) = 0.4081; sqrt(0.8429 x 0.4081) = 0.5865, halved 0.2933.
    const mean = Math.sqrt(4 * Math.log(20 / 16.2) * 4 * Math.log(20 / 18.06));
    await expect.poll(() => value(page, address(designSheet, UNTESTED, "testedRate"))).toBeCloseTo(mean, 9);
    const summary = pane(page).getByRole("region", { name: "The soil of this yard" });
    await expect
      .poll(() => summary.innerText())
      .toMatch(
        /0\.84 in\/h.*0\.41 in\/h.*0\.59 in\/h.*0\.29 in\/h.*2\.1 times the lowest.*Nothing speaks for testing again.*We tested your soil in 2 holes/s,
      );

    await button(page, "Remove this hole").click();
    await button(page, "Remove it").click();
    await expectCell(page, address(holeTestsSheet, nextHole + 1, "siteId"), null);
    await expectCell(page, address(holeTestsSheet, nextHole + 1, "water3"), null);
    await expectCell(page, address(designSheet, UNTESTED, "holes"), 1);
    await expect.poll(() => summary.innerText()).toContain("Only one hole was tested: test at least two.");
  });

  it("has room for ten readings, and says so at the tenth", async () => {
    await openHoleTest(page, SLOW);
    await pane(page).getByLabel("Hole", { exact: true }).selectOption("new");
    await unfoldAll(page);
    for (let number = 1; number <= 10; number++) await button(page, "Type a reading").click();
    expect(
      await pane(page).getByText("All 10 readings of this hole are used. Write them to the sheet and go on with a new hole.").isVisible(),
    ).toBe(true);
    expect(await button(page, "Type a reading").count()).toBe(0);
    await button(page, "Discard").click();
    expect(await pane(page).locator(".reading").count()).toBe(0);
  });

  it("draws level and rate, and holds the same numbers in a table", async () => {
    await pane(page).getByLabel("Hole", { exact: true }).selectOption({ index: 0 });
    await unfoldAll(page);
    await expect.poll(() => pane(page).locator(".chart canvas").count()).toBe(2);
    expect(
      await pane(page)
        .getByRole("img", { name: /^Chart of water level against time, 5 readings/ })
        .isVisible(),
    ).toBe(true);
    expect(await pane(page).locator(".intervals tbody tr").count()).toBe(4);
    const narrow = await pane(page)
      .locator(".chart-frame")
      .first()
      .evaluate((frame) => {
        const canvas = frame.querySelector("canvas")?.getBoundingClientRect();
        return (canvas?.width ?? 0) <= frame.clientWidth;
      });
    expect(narrow).toBe(true);
  });

  it("caused no error on the page", () => {
    expect(opened.faults).toEqual([]);
  });
});
