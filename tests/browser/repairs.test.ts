/** What each repair of what is typed and drawn is for: with it the grid is right, and without it the same check fails. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Repair } from "../../addin/workbook/embedded/repairs/list.ts";
import type { OF_THE_PAGE } from "../addin/workbook/embedded/on-node/entry.ts";
import { at, calculated, formula, goTo, pressWithoutWaiting, value, values } from "./grid.ts";
import { PageHost } from "./page.ts";

type PageRepair = (typeof OF_THE_PAGE)[number];

interface Check {
  readonly right: unknown;
  /** What a person does, and what stands in the grid after it. */
  readonly seen: (page: Page) => Promise<unknown>;
}

/** In the pixels of the grid. */
interface Point {
  readonly x: number;
  readonly y: number;
}
const IN_FROZEN_COLUMN: Point = { x: 80, y: 300 };
/** In the first cell below the frozen rows of Sites and beside its frozen columns. */
const CORNER_OF_SITES: Point = { x: 427, y: 134 };
/** A column of errors. */
const POINTED_AT: readonly Point[] = [
  { x: 300, y: 280 },
  { x: 310, y: 300 },
];
const WORDS = Array.from({ length: 9 }, (_, index) => `w${index} abc`);

const checks: Readonly<Record<PageRepair, Check>> = {
  // A cell up and to the left of what was in view comes to the corner beside what is frozen, where a click then finds it.
  "selected cell in view": {
    right: { row: 149, column: 7 },
    async seen(page) {
      for (const cell of ["Sites!AB30", "Sites!B400", "Sites!H150"]) await goTo(page, cell);
      await clickIntoGrid(page, CORNER_OF_SITES);
      return selectedPlace(page);
    },
  },
  "editor placed by its cell": {
    right: [WORDS],
    async seen(page) {
      await goTo(page, "Typed!A5");
      await clickIntoGrid(page, IN_FROZEN_COLUMN);
      const row = ((await selectedPlace(page))?.row ?? 0) + 1;
      await pressWithoutWaiting(
        page,
        WORDS.flatMap((word) => [word, "Tab"]),
      );
      await calculated(page);
      return values(page, `Typed!A${row}:I${row}`);
    },
  },
  "typing kept": {
    right: "Ask at the bakery",
    async seen(page) {
      await goTo(page, "Typed!C7");
      await page.keyboard.type("Ask at ");
      await page.evaluate((range) => window.soakbook?.workbook.writeValues([{ range, values: [["elsewhere"]] }]), at("Elsewhere!C7"));
      await calculated(page);
      await page.keyboard.type("the bakery");
      await page.keyboard.press("Enter");
      await calculated(page);
      return value(page, "Typed!C7");
    },
  },
  "Enter takes what was typed": {
    right: "=TRUE",
    async seen(page) {
      await goTo(page, "Typed!B8");
      await page.keyboard.type("=TRU", { delay: 40 });
      await page.getByText("TRUNC", { exact: true }).waitFor();
      await page.keyboard.type("E");
      await pressWithoutWaiting(page, ["Enter"]);
      await calculated(page);
      return formula(page, "Typed!B8");
    },
  },
  "errors explained": {
    right: "#VALUE! Does not drain: the design rate is 0.",
    async seen(page) {
      await goTo(page, "Elsewhere!A5");
      const grid = await gridBox(page);
      const alert = page.locator("div:has(> div > svg.univer-text-red-500)");
      for (const { x, y } of POINTED_AT) await page.mouse.move(grid.x + x, grid.y + y);
      return (await alert.innerText()).replaceAll(/\s+/g, " ");
    },
  },
};

describe("What is typed and drawn", () => {
  let host: PageHost;
  let page: Page;
  beforeAll(async () => {
    host = await PageHost.start();
    ({ page } = await host.newPage());
  });
  afterAll(() => host.close());

  const open = async (without: readonly Repair[]) => {
    const address = new URL("repairs.html", host.address);
    for (const repair of without) address.searchParams.append("without", repair);
    await page.goto(address.href);
    await page.waitForFunction(() => window.soakbook !== undefined);
  };

  it("is right with its repairs", async () => {
    await open([]);
    for (const [name, { right, seen }] of Object.entries(checks)) expect(await seen(page), name).toEqual(right);
  });

  it.each(Object.entries(checks))("is not without the repair: %s", async (name, { right, seen }) => {
    await open([name as Repair]);
    expect(await seen(page)).not.toEqual(right);
  });
});

async function gridBox(page: Page) {
  const box = await page.locator("[id^=univer-sheet-main-canvas]").boundingBox();
  if (box === null) throw new Error("The grid is not drawn.");
  return box;
}

async function clickIntoGrid(page: Page, { x, y }: Point): Promise<void> {
  const grid = await gridBox(page);
  await page.mouse.click(grid.x + x, grid.y + y);
}

function selectedPlace(page: Page) {
  return page.evaluate(async () => {
    const selection = await window.soakbook?.workbook.selection();
    return selection ? { row: selection.row, column: selection.column } : null;
  });
}
