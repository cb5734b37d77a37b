import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fullPipeCubicFeetPerSecond, MANNING_US, USUAL_ROUGHNESS } from "../../../functions/overflow/pipe-flow.ts";
import { pipeRoughness } from "../../../functions/published/winchester-stormwater-code.ts";
import { measured } from "../measured.ts";

const GALLONS_PER_MINUTE_PER_CFS = 448.83;
const diameter = measured(2, 48);
const slope = measured(0.1, 10);
const roughness = measured(0.009, 0.03);

describe("published examples", () => {
  // An engineering exam page, practice problem 472 (read), printed to 0.01 cfs.
  test("a pipe of 0.5 ft on 5 percent with n of 0.02 carries 0.82 cfs", () => {
    expect(Math.abs(fullPipeCubicFeetPerSecond(6, 5, 0.02) - 0.82)).toBeLessThanOrEqual(0.005);
  });

  // A worked example of a 24 in concrete pipe, with K of 1.486 (read), printed to 0.1 cfs.
  test("a 24 in concrete pipe on 0.3 percent with n of 0.012 carries 13.4 cfs", () => {
    expect(Math.abs(fullPipeCubicFeetPerSecond(24, 0.3, 0.012) - 13.4)).toBeLessThanOrEqual(0.05);
  });
});

// Computed by hand from Manning's equation, to 0.1 gpm.
describe("computed by hand", () => {
  test.each([
    [3, 0.01, [36.5, 51.6, 72.9, 103.1]],
    [3, 0.015, [24.3, 34.4, 48.6, 68.7]],
    [4, 0.01, [78.5, 111.0, 157.0, 222.1]],
    [4, 0.012, [65.4, 92.5, 130.9, 185.1]],
    [4, 0.015, [52.3, 74.0, 104.7, 148.1]],
    [6, 0.012, [192.9, 272.8, 385.8, 545.7]],
  ])("a %d in pipe with n of %d carries %j gpm on 0.5, 1, 2 and 4 percent", (inches, n, gallonsPerMinute) => {
    for (const [place, percent] of [0.5, 1, 2, 4].entries()) {
      const computed = fullPipeCubicFeetPerSecond(inches, percent, n) * GALLONS_PER_MINUTE_PER_CFS;
      expect(Math.abs(computed - gallonsPerMinute[place]!)).toBeLessThanOrEqual(0.05);
    }
  });

  test("a level pipe carries nothing by its slope", () => {
    expect(fullPipeCubicFeetPerSecond(4, 0, 0.01)).toBe(0);
  });
});

// City of Winchester, Indiana, stormwater code, table 4 (read).
test("smooth plastic has the least of the printed roughness, 0.010, and concrete 0.013", () => {
  expect(pipeRoughness.values.PVC).toBe(USUAL_ROUGHNESS);
  expect(Math.min(...Object.values(pipeRoughness.values))).toBe(USUAL_ROUGHNESS);
  expect([pipeRoughness.values.HDPE, pipeRoughness.values.concrete, pipeRoughness.printedTo]).toEqual([0.011, 0.013, 0.001]);
});

describe("any pipe", () => {
  test("carries what Manning's metric form gives, but for the rounding of 1.486", () => {
    fc.assert(
      fc.property(diameter, slope, roughness, (inches, percent, n) => {
        const meters = inches * 0.0254;
        const metric = (1 / n) * ((Math.PI * meters ** 2) / 4) * (meters / 4) ** (2 / 3) * (percent / 100) ** 0.5;
        const us = fullPipeCubicFeetPerSecond(inches, percent, n) * 0.3048 ** 3;
        expect(Math.abs(us / metric - 1)).toBeLessThanOrEqual(0.0005 / MANNING_US);
      }),
    );
  });

  test("carries twice as much on four times the slope, or with half the roughness", () => {
    fc.assert(
      fc.property(diameter, slope, roughness, (inches, percent, n) => {
        const flow = fullPipeCubicFeetPerSecond(inches, percent, n);
        expect(fullPipeCubicFeetPerSecond(inches, 4 * percent, n) / flow).toBeCloseTo(2, 9);
        expect(fullPipeCubicFeetPerSecond(inches, percent, n / 2) / flow).toBeCloseTo(2, 9);
      }),
    );
  });

  test("carries 2^(8/3) times as much at twice the diameter", () => {
    fc.assert(
      fc.property(diameter, slope, roughness, (inches, percent, n) => {
        expect(fullPipeCubicFeetPerSecond(2 * inches, percent, n) / fullPipeCubicFeetPerSecond(inches, percent, n)).toBeCloseTo(
          2 ** (8 / 3),
          9,
        );
      }),
    );
  });
});
