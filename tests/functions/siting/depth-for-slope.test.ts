import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { slopeBands } from "../../../functions/published/wisconsin-size-factors.ts";
import { pondingForSlope } from "../../../functions/siting/depth-for-slope.ts";
import { groundSlopePercent, STEEPEST_PUBLISHED_PERCENT } from "../../../functions/siting/ground-slope.ts";

const slope = fc.double({ min: 0, max: 100, noNaN: true });
const buildable = fc.double({ min: 0, max: 12, noNaN: true });

// Wisconsin homeowner manual GWQ037, 2003, depth by slope, as adapted by URI (read).
describe("the published bands", () => {
  test.each([
    [0, 3, 5],
    [1, 3, 5],
    [3.9, 3, 5],
    [5, 6, 7],
    [6, 6, 7],
    [7, 6, 7],
    [8, 8, 8],
    [10, 8, 8],
    [12, 8, 8],
  ])("ground of %d percent suits ponding of %d to %d in", (percent, shallowestInches, deepestInches) => {
    expect(pondingForSlope(percent)).toEqual({ shallowestInches, deepestInches, isBetweenBands: false });
  });

  test.each([
    [4, 3, 5],
    [4.5, 3, 5],
    [4.99, 3, 5],
    [7.01, 6, 7],
    [7.5, 6, 7],
    [7.99, 6, 7],
  ])("ground of %d percent lies between two bands and gets the shallower, %d to %d in", (percent, shallowestInches, deepestInches) => {
    expect(pondingForSlope(percent)).toEqual({ shallowestInches, deepestInches, isBetweenBands: true });
  });

  test.each([12.01, 13, 50, 100])("ground of %d percent is too steep", (percent) => {
    expect(pondingForSlope(percent)).toBeUndefined();
  });

  // Computed by hand from the definition: 11 in over 15 ft is 6.11 percent.
  test("a drop of 11 in over 15 ft suits 6 to 7 in", () => {
    expect(pondingForSlope(groundSlopePercent(11, 180))).toMatchObject({ shallowestInches: 6, deepestInches: 7 });
  });

  test("the bands end where the steepest published slope does", () => {
    expect(slopeBands.values.at(-1)?.toPercent).toBe(STEEPEST_PUBLISHED_PERCENT);
    expect(slopeBands.printedTo).toBe(1);
  });

  test("the end of a band counts although a slope misses it by rounding", () => {
    expect(pondingForSlope(12 * (1 + 1e-12))).toMatchObject({ deepestInches: 8 });
    expect(pondingForSlope(8 * (1 - 1e-12))).toMatchObject({ deepestInches: 8, isBetweenBands: false });
    expect(pondingForSlope(7 * (1 + 1e-12))).toMatchObject({ deepestInches: 7, isBetweenBands: false });
    expect(pondingForSlope(4 * (1 - 1e-12))).toMatchObject({ deepestInches: 5, isBetweenBands: true });
  });
});

describe("any ground", () => {
  test("is never told to pond shallower because it is steeper", () => {
    fc.assert(
      fc.property(buildable, buildable, (one, other) => {
        const flatter = pondingForSlope(Math.min(one, other))!;
        const steeper = pondingForSlope(Math.max(one, other))!;
        expect(steeper.shallowestInches).toBeGreaterThanOrEqual(flatter.shallowestInches);
        expect(steeper.deepestInches).toBeGreaterThanOrEqual(flatter.deepestInches);
      }),
    );
  });

  test("gets a depth of 3 to 8 in or none", () => {
    fc.assert(
      fc.property(slope, (percent) => {
        const { shallowestInches, deepestInches } = pondingForSlope(percent) ?? { shallowestInches: 3, deepestInches: 8 };
        expect(shallowestInches).toBeGreaterThanOrEqual(3);
        expect(deepestInches).toBeLessThanOrEqual(8);
        expect(shallowestInches).toBeLessThanOrEqual(deepestInches);
      }),
    );
  });

  test("is too steep exactly above 12 percent, and between bands exactly from 4 to 5 and from 7 to 8", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), (hundredths) => {
        const percent = hundredths / 100;
        const suits = pondingForSlope(percent);
        expect(suits === undefined).toBe(percent > 12);
        if (suits !== undefined) expect(suits.isBetweenBands).toBe((percent >= 4 && percent < 5) || (percent > 7 && percent < 8));
      }),
      { examples: [[400], [500], [700], [800], [1200], [1201]] },
    );
  });
});
