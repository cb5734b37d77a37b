import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planLength } from "../../../functions/runoff/roof-plan.ts";
import { measured } from "../measured.ts";

// A roofing estimator's help page (read): slope over plan by pitch, printed to 0.00001.
describe("published multipliers", () => {
  test.each([
    [1, 1.00347],
    [2, 1.01379],
    [3, 1.03078],
    [4, 1.05409],
    [5, 1.08333],
    [6, 1.11803],
    [7, 1.1577],
    [8, 1.20185],
    [9, 1.25],
    [10, 1.30171],
    [11, 1.35657],
    [12, 1.41421],
    [16, 1.66667],
    [18, 1.80278],
  ])("a roof that rises %d in 12 is %d times as long along its slope as in plan", (rise, multiplier) => {
    expect(Math.abs(1 / planLength(1, rise, 12) - multiplier)).toBeLessThanOrEqual(0.000_006);
  });

  // Another page (read): 5,000 sq ft of footprint under a roof of 6 in 12 are 5,590 sq ft along the slope.
  test("5,590 sq ft along a slope of 6 in 12 are 5,000 sq ft in plan", () => {
    expect(Math.abs(planLength(5590, 6, 12) - 5000)).toBeLessThanOrEqual(0.5);
  });
});

test("15 ft up a slope of 3 in 4 are 12 ft in plan, by the 3-4-5 triangle", () => {
  expect(planLength(15, 3, 4)).toBe(12);
});

describe("any roof", () => {
  const rise = measured(0, 24);
  const run = measured(0.1, 24);

  test("is the cosine of its pitch, and a flat one is as long as it is", () => {
    fc.assert(
      fc.property(measured(0, 60), rise, run, (sloped, up, along) => {
        expect(planLength(sloped, up, along)).toBeCloseTo(sloped * Math.cos(Math.atan(up / along)), 9);
        expect(planLength(sloped, 0, along)).toBe(sloped);
      }),
    );
  });

  test("covers the same plan at every pitch when its slope spans the same walls", () => {
    fc.assert(
      fc.property(measured(1, 30), rise, run, (plan, up, along) => {
        const sloped = Math.hypot(plan, (plan * up) / along);
        expect(planLength(sloped, up, along)).toBeCloseTo(plan, 9);
      }),
    );
  });
});
