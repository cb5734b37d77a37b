import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { startPages } from "../browser/built-pages.ts";
import { PageHost } from "../browser/page.ts";
import type { Calls } from "./many-sites-entry.ts";
import { atMost, interleaved, median, medianRatio, type BenchRow, type BenchSection } from "./measure.ts";

const YARDS = [1000, 10_000] as const;
const ROUNDS = 5;
const LONGEST_EDIT_MILLISECONDS = 300;

export const manySites: BenchSection = {
  title: "The page without Excel: BASINAREA for many yards, by one wide call and by a function a cell",
  async measure() {
    const pages = await startPages();
    const host = await PageHost.start(pages);
    try {
      const rows: BenchRow[] = [];
      for (const yards of YARDS) rows.push(...(await sized(host, yards)));
      return { rows };
    } finally {
      await host.close();
      await pages.stop();
    }
  },
};

async function sized(host: PageHost, yards: number): Promise<readonly BenchRow[]> {
  const [wide, each] = [await opened(host, yards, "one wide call"), await opened(host, yards, "a function a cell")];
  let area = 500;
  const edit = ({ page }: { readonly page: Page }) => ({
    name: "edit",
    timesItself: true as const,
    run: () => page.evaluate(([yard, newArea]) => window.manySites?.edit(yard, newArea), [yards >> 1, (area += 10)] as const),
  });
  const [wideEdits = [], eachEdits = []] = await interleaved([edit(wide), edit(each)], ROUNDS, 1);
  await Promise.all([wide, each].map(({ page }) => page.evaluate((yard) => window.manySites?.edit(yard, 500), yards >> 1)));
  const [wideAreas = [], eachAreas = []] = await Promise.all(
    [wide, each].map(({ page }) => page.evaluate((count) => window.manySites?.basinAreas(count), yards)),
  );
  assert.equal(wideAreas.filter((basinArea) => typeof basinArea === "number").length, yards);
  assert.deepEqual(eachAreas, wideAreas);
  await Promise.all([wide.page.context().close(), each.page.context().close()]);

  const count = yards.toLocaleString("en-US");
  const oneEdit = { name: `${count} yards, one cell edited, one wide call`, value: median(wideEdits), unit: "ms" };
  return [
    { name: `${count} yards, opened and computed, one wide call`, value: wide.milliseconds, unit: "ms" },
    {
      name: `${count} yards, opened and computed, a function a cell / one wide call`,
      value: each.milliseconds,
      unit: "ms",
      ratio: each.milliseconds / wide.milliseconds,
    },
    yards === YARDS[1] ? atMost(oneEdit, LONGEST_EDIT_MILLISECONDS) : oneEdit,
    {
      name: `${count} yards, one cell edited, a function a cell / one wide call`,
      value: median(eachEdits),
      unit: "ms",
      ratio: medianRatio(eachEdits, wideEdits),
    },
  ];
}

async function opened(host: PageHost, yards: number, calls: Calls): Promise<{ readonly page: Page; readonly milliseconds: number }> {
  const { page, address } = await host.newPage();
  await page.goto(`${address}many-sites.html`);
  await page.waitForFunction(() => window.manySites !== undefined);
  const milliseconds = await page.evaluate(([count, how]) => window.manySites?.open(count, how), [yards, calls] as const);
  return { page, milliseconds: milliseconds ?? Number.NaN };
}
