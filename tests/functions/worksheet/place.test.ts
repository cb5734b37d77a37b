import { describe, expect, test } from "vitest";
import { depthForSlope } from "../../../functions/worksheet/place.ts";
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

  test("refuses a share for a percent, and a slope below level or over 100", () => {
    expect(cellOf(depthForSlope, 0.06)).toEqual(refused("Ground slope is a percent, 0 or 1 to 100: for 6% write 6, not 0.06."));
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
