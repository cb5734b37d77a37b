import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countedRains, rainPercentileInches } from "../../../functions/rainfall/rain-percentile.ts";
import { dailyRainMillimetres } from "./daily-rain.ts";

const rains = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { maxLength: 60 });
const percent = fc.double({ min: 0, max: 100, noNaN: true });
const smallest = fc.constantFrom(0, 0.1, 0.5);

describe("daily rain in Seattle, 2012 to 2015 (vega-datasets 3.2.1), against a spreadsheet's PERCENTILE.INC", () => {
  const millimetres = dailyRainMillimetres.Seattle;
  const inches = millimetres.map((depth) => depth / 25.4);

  test("the record is the one that the expected figures belong to", () => {
    const file = new URL("../../../node_modules/vega-datasets/data/seattle-weather.csv", import.meta.url);
    expect(createHash("sha256").update(readFileSync(file)).digest("hex")).toMatch(/^0845078a290b/);
    expect(millimetres).toHaveLength(1461);
    expect(millimetres.reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(4426, 6);
    expect(Math.max(...millimetres)).toBe(55.9);
  });

  // Values are stored to 0.1 mm, so "above 0.9 mm" is "1.0 mm or more".
  test.each([
    { above: 0, counted: 623, at85: 14.14, at90: 18.5, at95: 26.2 },
    { above: 0.9, counted: 506, at85: 16.5, at90: 20.05, at95: 27.4 },
    { above: 2.54, counted: 371, at85: 19.3, at90: 22.6, at95: 30.25 },
  ])("of the $counted days above $above mm, 90 percent bring no more than $at90 mm", ({ above, counted, at85, at90, at95 }) => {
    expect(countedRains(millimetres, above)).toHaveLength(counted);
    for (const [part, expected] of [
      [85, at85],
      [90, at90],
      [95, at95],
    ] as const) {
      expect(rainPercentileInches(millimetres, part, above)).toBeCloseTo(expected, 2);
      expect(rainPercentileInches(inches, part, above / 25.4)! * 25.4).toBeCloseTo(expected, 2);
    }
  });

  test("the 90th percentile of rains over 0.1 in is 0.89 in, and not the 21.228 mm whose interception captures 90 percent", () => {
    expect(rainPercentileInches(inches, 90, 0.1)).toBeCloseTo(0.89, 2);
    expect(rainPercentileInches(inches, 90, 0.1)! * 25.4).toBeGreaterThan(21.3);
  });

  test("0.10 in, stored as 2.5 mm, does not count, and 0.11 in, stored as 2.8 mm, does", () => {
    expect(millimetres).toContain(2.5);
    expect(countedRains(inches, 0.1).some((depth) => Math.abs(depth * 25.4 - 2.5) < 0.01)).toBe(false);
    expect(Math.min(...countedRains(inches, 0.1)) * 25.4).toBeCloseTo(2.8, 9);
  });
});

describe("daily rain in New York, 2012 to 2015 (vega-datasets 3.2.1)", () => {
  test.each([
    { year: 2012, from: 0, days: 366, total: 1012.5 },
    { year: 2013, from: 366, days: 365, total: 902.7 },
    { year: 2014, from: 731, days: 365, total: 1289.8 },
    { year: 2015, from: 1096, days: 365, total: 973.6 },
  ])("brought $total mm in $year", ({ from, days, total }) => {
    const year = dailyRainMillimetres["New York"].slice(from, from + days);
    expect(year.reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(total, 6);
  });

  test("has one day in ten of those over 0.1 in above its 90th percentile, and the rest at or below it", () => {
    const record = dailyRainMillimetres["New York"];
    const counted = countedRains(record, 2.54);
    const depth = rainPercentileInches(record, 90, 2.54)!;
    const above = counted.filter((rain) => rain > depth).length;
    expect(Math.abs(above - counted.length / 10)).toBeLessThanOrEqual(1);
  });
});

describe("computed by hand", () => {
  test("the 90th percentile of 0.2, 0.4, 0.6, 0.8 and 1 in lies six tenths of the way from 0.8 to 1 in", () => {
    expect(rainPercentileInches([1, 0.4, 0.05, 0.6, 0.8, 0.2], 90, 0.1)).toBeCloseTo(0.92, 12);
  });

  test("a rain as deep as the smallest counted does not count", () => {
    expect(rainPercentileInches([0.1, 0.3], 0, 0.1)).toBe(0.3);
    expect(rainPercentileInches([2.54 / 25.4, 7.62 / 25.4], 0, 0.1)).toBeCloseTo(0.3, 12);
  });

  test("no counted rain, no percentile", () => {
    expect(rainPercentileInches([], 90, 0)).toBeUndefined();
    expect(rainPercentileInches([0, 0.1, 0.05], 90, 0.1)).toBeUndefined();
  });
});

describe("any record", () => {
  test("has a percentile between its smallest and its deepest counted rain, which 0 and 100 percent are", () => {
    fc.assert(
      fc.property(rains, percent, smallest, (record, part, limit) => {
        const counted = countedRains(record, limit);
        if (counted.length === 0) return;
        const depth = rainPercentileInches(record, part, limit)!;
        expect(depth).toBeGreaterThanOrEqual(Math.min(...counted));
        expect(depth).toBeLessThanOrEqual(Math.max(...counted) + 1e-12);
        expect(rainPercentileInches(record, 0, limit)).toBe(Math.min(...counted));
        expect(rainPercentileInches(record, 100, limit)).toBe(Math.max(...counted));
      }),
      { examples: [[[1], 90, 0]] },
    );
  });

  test("has at least that percent of its counted rains at or below it, but for one", () => {
    fc.assert(
      fc.property(rains, percent, smallest, (record, part, limit) => {
        const counted = countedRains(record, limit);
        if (counted.length === 0) return;
        const depth = rainPercentileInches(record, part, limit)!;
        const atOrBelow = counted.filter((rain) => rain <= depth + 1e-12).length;
        expect(atOrBelow).toBeGreaterThanOrEqual(Math.floor((part / 100) * (counted.length - 1)) + 1);
      }),
    );
  });

  test("gives the same depth in any order, with dry days between, and in millimetres, and is left as it was", () => {
    fc.assert(
      fc.property(rains, percent, (record, part) => {
        const before = [...record];
        const depth = rainPercentileInches(record, part, 0.1);
        expect(rainPercentileInches([0, ...record].reverse(), part, 0.1)).toBe(depth);
        const metric = rainPercentileInches(
          record.map((rain) => rain * 25.4),
          part,
          2.54,
        );
        if (depth !== undefined) expect(metric! / 25.4).toBeCloseTo(depth, 9);
        expect(record).toEqual(before);
      }),
    );
  });

  test("gives a deeper rain for a higher percent", () => {
    fc.assert(
      fc.property(rains, percent, percent, (record, one, other) => {
        const [lower, higher] = [Math.min(one, other), Math.max(one, other)];
        if (record.length > 0)
          expect(rainPercentileInches(record, higher, -1)).toBeGreaterThanOrEqual(rainPercentileInches(record, lower, -1)! - 1e-12);
      }),
    );
  });
});
