/** The main job as a newcomer does it, starting from the demo page: keyboard and pane, the same numbers in both. */
import { expect, test } from "vitest";
import type { Page } from "playwright-core";
import { demoYards } from "../../addin/actions/demo/demo-program.ts";
import { columnLetters } from "../../addin/workbook/port.ts";
import { designSheet } from "../../addin/records/design.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { columnOf, firstRow } from "../../addin/records/place.ts";
import type { DesignCells } from "../../addin/actions/program/read-program.ts";
import { calculated, expectCell, goTo, typeInto, value } from "./grid.ts";
import type { OpenPage } from "./page.ts";
import { onProgramPage } from "./pane.ts";

let opened: OpenPage;

onProgramPage((ready) => {
  opened = ready;
});

const siteRow = firstRow(designSheet) + demoYards.length + 1;
const surfaceRow = 4 + demoYards.reduce((count, { surfaces }) => count + surfaces.length, 0);
const holeRow = 4 + demoYards.reduce((count, { holes = [] }) => count + holes.length, 0);
const design = (key: keyof DesignCells) => `Design!${columnLetters(columnOf(designSheet, key))}${siteRow}`;

/** The number the pane shows beside a label of its results. */
async function paneNumber(page: Page, label: string): Promise<string> {
  const row = page.locator(".results .result", { has: page.locator("dt", { hasText: new RegExp(`^${label}( \\(|$)`) }) });
  return (await row.locator(".result-number").innerText()).replaceAll(",", "");
}

async function sheetNumber(page: Page, address: string): Promise<number> {
  await calculated(page);
  const cell = await value(page, address);
  expect(cell, address).toBeTypeOf("number");
  return Number(cell);
}

const compared = [
  ["Contributing area", "contributingArea", 1],
  ["Tested rate", "testedRate", 2],
  ["Floor area", "floorArea", 1],
  ["Water held", "waterHeld", 2],
  ["Drawdown", "drawdownHours", 1],
  ["Dig, in place", "digVolume", 2],
  ["Soil mix, in place", "mixVolume", 2],
  ["Mix: sand, loose", "mixSand", 2],
  ["Mix: compost, loose", "mixCompost", 2],
] as const;

async function expectPaneAndSheetAgree(page: Page): Promise<void> {
  for (const [label, key, decimals] of compared) {
    const onSheet = await sheetNumber(page, design(key));
    await expect
      .poll(async () => Number(await paneNumber(page, label)), { message: label })
      .toBeCloseTo(Number(onSheet.toFixed(decimals)), 10);
  }
}

test("a yard typed into the sheet and tested in the pane has the same basin, drawdown, dig and mix in both", async () => {
  const { page, faults } = opened;
  const pane = page.locator("#pane");

  // By keyboard, in bare cells: the yard and its roof.
  for (const [column, text] of [
    ["A", "Y-017"],
    ["B", "Lantern House"],
    ["C", "3 Coopers Rise"],
    ["E", "B"],
    ["J", "12"],
    ["L", "tight soil"],
  ] as const) {
    await typeInto(page, `Sites!${column}${siteRow}`, text);
  }
  for (const [column, text] of [
    ["A", "Y-017"],
    ["B", "Roof to the garden"],
    ["C", "roof"],
    ["D", "600"],
  ] as const) {
    await typeInto(page, `Surfaces!${column}${surfaceRow}`, text);
  }
  await expectCell(page, design("contributingArea"), 600);

  // In the pane: the yard is followed, half a drive is added, a hole is tested.
  await goTo(page, `Sites!B${siteRow}`);
  await pane.getByRole("heading", { name: "Lantern House" }).waitFor();
  await pane.getByRole("button", { name: "Add a surface" }).click();
  await pane.getByLabel("Surface", { exact: true }).fill("Drive");
  await pane.getByLabel("Area", { exact: true }).fill("300");
  await pane.getByLabel("Share draining here").fill("0.5");
  await pane.getByRole("button", { name: "Write to the sheet" }).click();
  // 600 + 300 x 0.5 = 750 sq ft.
  await expectCell(page, design("contributingArea"), 750);

  await pane.getByRole("tab", { name: "Hole test" }).click();
  await pane.getByLabel("Hole name").fill("A");
  await pane.getByLabel("Hole depth").fill("18");
  await pane.getByLabel("Hole diameter").fill("8");
  const readings = [
    ["0", "8"],
    ["15", "7"],
    ["30", "6.1"],
    ["45", "5.3"],
  ] as const;
  for (const [index, [minutes, water]] of readings.entries()) {
    await pane.getByRole("button", { name: "Type a reading" }).click();
    await pane.getByLabel(`Minutes of reading ${index + 1}`).fill(minutes);
    await pane.getByLabel(`Water depth of reading ${index + 1}`).fill(water);
  }
  await pane.getByRole("button", { name: "Write to the sheet" }).click();

  // Porchet's log form by hand (ILRI publication 16, 1994, chapter 12): r = 4 in; the three intervals give
  // 8 ln(20/18) = 0.843, 8 ln(18/16.2) = 0.843 and 8 ln(16.2/14.6) = 0.832 in/h, all within 10 %, so over all of them
  // f = 4/(2 x 0.75) x ln((2 x 8 + 4)/(2 x 5.3 + 4)) = 0.8392 in/h.
  await expect.poll(() => value(page, design("testedRate"))).toBeCloseTo(0.8392, 4);

  await pane.getByRole("tab", { name: "Yard" }).click();
  await expectPaneAndSheetAgree(page);
  expect(faults).toEqual([]);
});

test("one reading changed in the sheet changes the basin in the sheet and in the pane", async () => {
  const { page } = opened;
  const before = { rate: await sheetNumber(page, design("testedRate")), pane: await paneNumber(page, "Drawdown") };
  const water4 = `Hole tests!${columnLetters(columnOf(holeTestsSheet, "water4"))}${holeRow}`;
  await expectCell(page, water4, 5.3);
  await typeInto(page, water4, "5.5");
  // The last interval is now 8 ln(16.2/15) = 0.616 in/h, more than 10 % off: it stands alone.
  await expect.poll(() => value(page, design("testedRate"))).toBeCloseTo(8 * Math.log(16.2 / 15), 9);
  expect(await sheetNumber(page, design("testedRate"))).toBeLessThan(before.rate);
  await goTo(page, `Sites!B${siteRow}`);
  await expectPaneAndSheetAgree(page);
  expect(await paneNumber(page, "Drawdown")).not.toBe(before.pane);
});

test("showing something further down the pane does not move the page under the hand", async () => {
  const { page } = opened;
  await page.evaluate(() => document.querySelector("#pane .surface-list")?.scrollIntoView());
  expect(
    await page.evaluate(() => [
      document.scrollingElement?.scrollTop,
      document.querySelector("header, #workbook-bar")?.getBoundingClientRect().top,
    ]),
  ).toEqual([0, 0]);
});
