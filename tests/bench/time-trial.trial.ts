/** A time trial, run by npm run bench: how much a hand does for the same records, by the pane and without it. */
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { estimateLinesSheet } from "../../addin/records/estimate-lines.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { cellOf, firstRow } from "../../addin/records/place.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { answerStep, focused, strike, tabTo } from "../browser/keyboard.ts";
import { button, openTab, openYard, onProgramPage, pane, pickStage, recordsOf } from "../browser/pane.ts";
import { inputsOf, keystrokes, typeRecord } from "../browser/typed-record.ts";

/**
 * The keystroke-level model of Card, Moran and Newell (Communications of the ACM 23:7, 1980), its times from memory: a
 * key of an average typist who is no secretary, pointing with a click, and a hand going between keyboard and mouse.
 * Thinking is left out: the answers are the same, and in bare cells there is more of it.
 */
const SECONDS = { key: 0.28, click: 1.1 + 0.2, hand: 0.4 } as const;

const NEW_YARD = "Y-017";
/** A yard of the demo that is designed, by its place on Sites. */
const DESIGNED = { siteId: "Y-004", place: 3 } as const;

interface Effort {
  readonly keys: number;
  readonly clicks: number;
  readonly hands: number;
}

interface Job {
  readonly name: string;
  readonly sheet: Sheet;
  readonly siteId: string;
  /** The pane asks for at most this part of what bare cells ask for. */
  readonly atMost: number;
  /** By the pane, as quick as a person who knows it. */
  byPane(page: Page): Promise<void>;
}

const SCREENING: readonly (readonly [title: string, ...keys: string[]])[] = [
  ["Foundation", "16"],
  ["Ground slope", "6", "Tab", "150"],
  ["Property line", "12"],
  ["Septic, basin uphill of it", "Tab", "Space"],
  ["Septic, basin downhill of it", "Tab", "Space"],
  ["Well", "Tab", "Space"],
  ["Water table or rock", "Tab", "Space"],
  ["How it is known", "Space"],
  ["Known down to", "40"],
  ["Wet spot", "Space"],
  ["Trees", "Space"],
  ["Steep ground nearby", "Space"],
  ["Overflow", "Space"],
  ["Lead in soil", "Space"],
  ["Basement or sump", "Space"],
  ["Retaining wall", "Space"],
  ["Karst or swelling clay", "Space"],
  ["Fill or buried tank", "Space"],
  ["Easement, right of way", "Space"],
  ["Overhead lines", "Space"],
  ["Sewer lateral", "Space"],
];

const READINGS = [
  ["0", "9"],
  ["20", "8"],
  ["40", "7.1"],
  ["60", "6.3"],
] as const;

const jobs: readonly Job[] = [
  {
    name: "a yard with its address and soil group",
    atMost: 1,
    sheet: sitesSheet,
    siteId: NEW_YARD,
    async byPane(page) {
      await button(page, /All yards/).click();
      await button(page, "Add a yard").click();
      await expect.poll(() => focused(page)).toBe("Yard");
      await page.keyboard.type("Sail loft");
      await page.keyboard.press("Tab");
      await page.keyboard.type("17 Sailmaker Lane");
      await tabTo(page, "Soil group, if known");
      await page.keyboard.press("B");
      await page.keyboard.press("Enter");
      await pane(page).locator("h1", { hasText: NEW_YARD }).waitFor();
    },
  },
  {
    name: "a screening visit of twenty-one answers",
    atMost: 0.1,
    sheet: visitsSheet,
    siteId: NEW_YARD,
    async byPane(page) {
      await openTab(page, "Visits");
      await pickStage(page, "Screening visit");
      await pane(page).getByLabel("Your name").click();
      await page.keyboard.type("Ivo Reed");
      await tabTo(page, /Distance from the nearest edge/);
      for (const [title, ...keys] of SCREENING) await answerStep(page, title, ...keys);
    },
  },
  {
    name: "a hole test of four readings",
    atMost: 0.8,
    sheet: holeTestsSheet,
    siteId: NEW_YARD,
    async byPane(page) {
      await pane(page).getByRole("tab", { name: "Hole test" }).click();
      await pane(page).getByText("Yes", { exact: true }).click();
      await tabTo(page, "Hole depth");
      for (const key of ["18", "Tab", "10"]) await strike(page, key);
      await tabTo(page, "Type a reading");
      await page.keyboard.press("Enter");
      for (const [place, [minutes, water]] of READINGS.entries()) {
        if (place > 0) await page.keyboard.press("Enter");
        await expect.poll(() => focused(page)).toBe(`Minutes of reading ${place + 1}`);
        await page.keyboard.type(minutes);
        await page.keyboard.press("Tab");
        await page.keyboard.type(water);
      }
      await button(page, "Write to the sheet").click();
      await pane(page).getByText("was added to Hole tests.").first().waitFor();
    },
  },
  {
    name: "an estimate drafted from the design",
    atMost: 0.05,
    sheet: estimateLinesSheet,
    siteId: DESIGNED.siteId,
    async byPane(page) {
      await openYard(page, DESIGNED.place, "Estimate");
      await button(page, /^Add (these \d+ lines|this line)$/).click();
      await pane(page).getByText("were added to the estimate of").waitFor();
    },
  },
];

describe("The same records, by the pane and typed into bare cells", { timeout: 60_000 }, () => {
  let page: Page;
  let bare: Page;

  onProgramPage((opened) => {
    page = opened.page;
  });
  onProgramPage((opened) => {
    bare = opened.page;
  });

  beforeAll(async () => {
    for (const each of [page, bare]) {
      await countEffort(each);
      await clear(each, estimateLinesSheet);
    }
  });

  it.each(jobs)("$name: the pane asks for no more than $atMost of the seconds", async ({ name, sheet, siteId, atMost, byPane }) => {
    const before = (await recordsOf(page, sheet, siteId)).length;
    const byThePane = await effortOf(page, () => byPane(page));
    const written = (await recordsOf(page, sheet, siteId)).slice(before);
    const [first] = written;
    if (first === undefined) throw new Error(`The pane wrote nothing for ${name}.`);
    // The first record is typed for real; the others are counted the same way, one below the other.
    const forFirst = await effortOf(bare, () => typeRecord(bare, first, first.row));
    const typed = (await recordsOf(bare, sheet, siteId)).slice(before);
    expect(typed.map(inputsOf)).toEqual([inputsOf(first)]);
    expect(forFirst).toMatchObject({ keys: keystrokes(first).flat().length, clicks: 1 });
    const inCells = { ...forFirst, keys: written.flatMap(keystrokes).flat().length };
    console.info(`${name}: ${said(byThePane)} by the pane, ${said(inCells)} in bare cells`);
    expect(seconds(byThePane)).toBeLessThanOrEqual(seconds(inCells) * atMost);
  });
});

function said(effort: Effort): string {
  return `${effort.keys} keys and ${effort.clicks} click${effort.clicks === 1 ? "" : "s"}, ${seconds(effort).toFixed(0)} s,`;
}

function seconds({ keys, clicks, hands }: Effort): number {
  return keys * SECONDS.key + clicks * SECONDS.click + hands * SECONDS.hand;
}

/** From now on the page counts what reaches it from keyboard and mouse. */
async function countEffort(page: Page): Promise<void> {
  await page.evaluate(() => {
    const effort = { keys: 0, clicks: 0, hands: 0 };
    let hand = "";
    const count = (device: "keys" | "clicks") => {
      effort[device] += 1;
      if (hand !== "" && hand !== device) effort.hands += 1;
      hand = device;
    };
    window.addEventListener("keydown", () => count("keys"), { capture: true });
    window.addEventListener("pointerdown", () => count("clicks"), { capture: true });
    Object.assign(window, { effort });
  });
}

async function effortOf(page: Page, work: () => Promise<void>): Promise<Effort> {
  const present = (): Promise<Effort> => page.evaluate(() => ({ ...(window as unknown as { readonly effort: Effort }).effort }));
  const before = await present();
  await work();
  const after = await present();
  return { keys: after.keys - before.keys, clicks: after.clicks - before.clicks, hands: after.hands - before.hands };
}

async function clear(page: Page, sheet: Sheet): Promise<void> {
  const inputs = Object.values(sheet.columns).filter(({ role }) => role === "input").length;
  const range = { ...cellOf(sheet, firstRow(sheet), "siteId"), rows: sheet.rows, columns: inputs };
  await page.evaluate((write) => window.soakbook?.workbook.writeValues([write]), {
    range,
    values: Array.from({ length: sheet.rows }, () => Array<CellValue>(inputs).fill(null)),
  });
}
