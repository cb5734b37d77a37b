import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  agree,
  changeShare,
  dropRateInchesPerHour,
  holeIntervals,
  readingsWithWater,
  steadyRunStart,
} from "../../../functions/infiltration/drop-rate.ts";
import { measured } from "../measured.ts";
import { fallingLevel, readingsOf } from "./falling-level.ts";

describe("published and hand-computed drops", () => {
  // A county's soil test instructions quoting a Minnesota guide, p. 12 (read): 1 in in 4 h is 6 in a day.
  test("1 in in 4 h is 6 in a day", () => {
    expect(dropRateInchesPerHour(readingsOf([0, 7], [240, 6])) * 24).toBeCloseTo(6, 12);
  });

  // Riverside County handbook, 2011, appendix A (from memory): the water falls from 47.75 to 46.25 in in 10 min.
  test("1.5 in in 10 min is 9 in/h", () => {
    expect(dropRateInchesPerHour(readingsOf([0, 47.75], [10, 46.25]))).toBeCloseTo(9, 12);
  });
});

describe("the last steady run", () => {
  test("takes the intervals at the end that agree within 10 percent and leaves the fast start out", () => {
    // 6, then 4, 3.8 and 3.7 in/h.
    const readings = readingsOf([0, 12], [30, 9], [60, 7], [90, 5.1], [120, 3.25]);
    expect(dropRateInchesPerHour(readings)).toBeCloseTo((7 + 2 - 3.25) / 1.5, 12);
  });

  test("is the last interval alone when that one does not agree with the one before", () => {
    expect(dropRateInchesPerHour(readingsOf([0, 12], [30, 10], [60, 9]))).toBeCloseTo(2, 12);
  });

  test("holds all its rates within 10 percent of each other, not each of the next alone", () => {
    expect(steadyRunStart([1.2, 1.1, 1.05, 1])).toBe(1);
    expect(steadyRunStart([1, 1.05, 1.1, 1.2])).toBe(2);
  });

  test("counts a difference of exactly 10 percent as agreement, and a little more as none", () => {
    expect(agree(3, 2.7)).toBe(true);
    expect(agree(2.7, 3)).toBe(true);
    expect(agree(1, 0.899)).toBe(false);
    expect(agree(0, 0)).toBe(true);
    expect(agree(0, 1)).toBe(false);
    expect(changeShare(2, 1)).toBeCloseTo(-0.5, 12);
    expect(changeShare(1, 2)).toBeCloseTo(0.5, 12);
  });

  test("is steady at 0 when the water does not move", () => {
    expect(dropRateInchesPerHour(readingsOf([0, 6], [30, 6], [60, 6]))).toBe(0);
  });

  test("weighs intervals of unequal length by their time", () => {
    expect(dropRateInchesPerHour(readingsOf([0, 10], [60, 9], [180, 7.1]))).toBeCloseTo(2.9 / 3, 12);
  });
});

describe("a hole that runs dry", () => {
  test("is read up to the first dry reading", () => {
    const readings = readingsOf([0, 3], [10, 1], [20, 0], [30, 0], [40, 0]);
    expect(readingsWithWater(readings)).toEqual(readingsOf([0, 3], [10, 1], [20, 0]));
    expect(readingsWithWater(readings.slice(0, 2))).toEqual(readings.slice(0, 2));
  });
});

describe("any falling level", () => {
  test("gives a rate no faster than its fastest interval and no slower than its slowest", () => {
    fc.assert(
      fc.property(fallingLevel, (readings) => {
        const rates = holeIntervals(readings).map(({ dropInchesPerHour }) => dropInchesPerHour);
        expect(dropRateInchesPerHour(readings)).toBeGreaterThanOrEqual(Math.min(...rates) - 1e-9);
        expect(dropRateInchesPerHour(readings)).toBeLessThanOrEqual(Math.max(...rates) + 1e-9);
      }),
      { examples: [[readingsOf([0, 1], [1, 1])]] },
    );
  });

  test("gives the same rate in millimetres, and whenever the watch was started", () => {
    fc.assert(
      fc.property(fallingLevel, fc.integer({ min: 0, max: 600 }), (readings, later) => {
        const metric = readings.map(({ minutes, waterDepthInches }) => ({
          minutes: minutes + later,
          waterDepthInches: waterDepthInches * 25.4,
        }));
        expect(dropRateInchesPerHour(metric) / 25.4).toBeCloseTo(dropRateInchesPerHour(readings), 6);
      }),
    );
  });

  test("falling at one rate throughout gives that rate, over all its intervals", () => {
    fc.assert(
      fc.property(measured(0, 20), fc.integer({ min: 1, max: 10 }), (rate, count) => {
        const readings = Array.from({ length: count + 1 }, (_, i) => ({ minutes: 15 * i, waterDepthInches: 100 - (rate / 4) * i }));
        expect(dropRateInchesPerHour(readings)).toBeCloseTo(rate, 8);
        expect(steadyRunStart(holeIntervals(readings).map((one) => one.dropInchesPerHour))).toBe(0);
      }),
    );
  });
});
