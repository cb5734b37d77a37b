import { describe, expect, test } from "vitest";
import { depthForSlope } from "../../../functions/worksheet/place.ts";
import { groundSlope } from "../../../functions/worksheet/siting.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, refused } from "./sample-functions.ts";

const TOO_STEEP = "Too steep: over 12% look for another place.";

describe("DEPTHFORSLOPE", () => {
  test("answers slopes down a column with the shallowest and the deepest ponding", () => {
    expect(depthForSlope.evaluate([column(0, 6, 10)])).toEqual([
      [3, 5],
      [6, 7],
      [8, 8],
    ]);
  });

  test("says in words where the ground is too steep, in both cells", () => {
    expect(depthForSlope.evaluate([15])).toEqual([[TOO_STEEP, TOO_STEEP]]);
  });

  test("gives millimeters on a metric sheet, and the same words", () => {
    expect(depthForSlope.evaluate([6, "metric"])).toEqual([[expect.closeTo(152.4, 9), expect.closeTo(177.8, 9)]]);
    for (const slope of [0, 3, 4.5, 6, 7.5, 9, 12, 15]) expectSameOnMetric(depthForSlope, [slope]);
  });

  // By hand: 1 in over 180 in is 0.556 percent, which lies under 4, where 3 to 5 in are printed.
  test("takes a flat yard as it stands, with a caution that a share may have been meant", () => {
    const slope = cellOf(groundSlope, 1, 180);
    expect(slope).toBeCloseTo(0.5556, 4);
    expect(depthForSlope.evaluate([slope])).toEqual([[3, 5]]);
    expect(depthForSlope.cautionsFor([slope])).toEqual(["Ground slope is taken as 0.556%: write a percent as 2, not 0.02."]);
    for (const steeper of [0, 1, 2]) expect(depthForSlope.cautionsFor([steeper])).toEqual([]);
  });

  test("refuses a slope below level or over 100", () => {
    expect(cellOf(depthForSlope, -1)).toEqual(refused("Ground slope must be 0 or more."));
    expect(cellOf(depthForSlope, 101)).toEqual(refused("Ground slope must be 100 or less."));
  });

  test("cautions between the published bands and above them, and nowhere else", () => {
    expect(depthForSlope.cautionsFor([4.5])).toEqual([expect.stringContaining("between two published bands")]);
    expect(depthForSlope.cautionsFor([7.5])).toEqual([expect.stringContaining("between two published bands")]);
    expect(depthForSlope.cautionsFor([13])).toEqual([expect.stringContaining("to another place")]);
    for (const slope of [0, 3, 5, 7, 8, 12]) expect(depthForSlope.cautionsFor([slope])).toEqual([]);
  });
});
