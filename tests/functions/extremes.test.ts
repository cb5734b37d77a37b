import { expect, test } from "vitest";
import { largestOf, smallestOf } from "../../functions/extremes.ts";
import { designRate } from "../../functions/worksheet/hole-test.ts";

test("the smallest and the largest are found wherever they stand, and of one number both are it", () => {
  expect([smallestOf([3, -1, 7, 2]), largestOf([3, -1, 7, 2])]).toEqual([-1, 7]);
  expect([smallestOf([5]), largestOf([5])]).toEqual([5, 5]);
  expect([smallestOf([]), largestOf([])]).toEqual([Infinity, -Infinity]);
});

test("a column of 300,000 tested rates has a lowest and its cautions", () => {
  const rates = Array.from({ length: 300_000 }, (_, row) => [row === 123_456 ? 0.5 : 1]);
  expect(designRate.evaluate([rates, 2, "lowest"])).toEqual([[0.25]]);
  expect(designRate.cautionsFor([rates])).toEqual([]);
});
