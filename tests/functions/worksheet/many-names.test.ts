/** Columns of names as long as a sheet: what a call costs grows with its rows plus the table's, never with their product. */
import { expect, test } from "vitest";
import type { Cell } from "../../../functions/worksheet/calling/cell.ts";
import { priced } from "../../../functions/worksheet/cost.ts";
import { siteCheck } from "../../../functions/worksheet/siting.ts";
import { textureRate } from "../../../functions/worksheet/soil-water.ts";

/** Of the processor, so that what else runs on the machine does not count; the best of three. */
const A_SECOND = 1000;
const ROWS = 100_000;

/** The nearest of some names is looked for in each. */
const MISSPELT_ROWS = 20_000;
const misspelt = Array.from({ length: MISSPELT_ROWS }, (_, row) => [`sandy loem ${row}`]);

function bestMilliseconds(work: () => unknown): number {
  const times = Array.from({ length: 3 }, () => {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  return times.reduce((best, time) => (time < best ? time : best));
}

test("20,000 misspelt names are each answered by the nearest within a second", () => {
  expect(textureRate.evaluate([misspelt])[MISSPELT_ROWS - 1]).toEqual([
    expect.objectContaining({ sentence: expect.stringContaining('The nearest are "sandy loam"') }),
  ]);
  expect(bestMilliseconds(() => textureRate.evaluate([misspelt]))).toBeLessThan(A_SECOND);
});

const table = (row: (place: number) => readonly Cell[]) => Array.from({ length: 5000 }, (_, place) => row(place));
const names = (prefix: string) => Array.from({ length: ROWS }, (_, row) => [`${prefix} ${row % 5000}`]);

test("100,000 orders are priced by a table of 5,000 items within a second", () => {
  const prices = table((place) => [`item ${place}`, place, "each", null, null, null, 46_000]);
  const amounts = priced.evaluate([2, names("item"), prices]);
  expect([amounts[0], amounts[4999], amounts[5001]]).toEqual([[0], [9998], [2]]);
  expect(bestMilliseconds(() => priced.evaluate([2, names("item"), prices]))).toBeLessThan(A_SECOND);
});

test("100,000 values are held against 5,000 rules within a second", () => {
  const rules = table((place) => [`rule ${place}`, "at least", 10, "ft", place % 2 === 0 ? "stop" : "refer"]);
  expect(siteCheck.evaluate([names("rule"), 9, rules]).slice(0, 2)).toEqual([["stop"], ["refer"]]);
  expect(bestMilliseconds(() => siteCheck.evaluate([names("rule"), 9, rules]))).toBeLessThan(A_SECOND);
});
