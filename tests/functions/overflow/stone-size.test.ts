import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { medianStoneInches, TAILWATER_SHARES } from "../../../functions/overflow/stone-size.ts";
import { measured } from "../measured.ts";

const flow = measured(0.01, 5);
const diameter = measured(2, 24);
const tailwater = measured(0, 36);

describe("published examples", () => {
  // HEC-14, 3rd ed., section 10.2, riprap apron design example (from memory), in US and in metric units.
  test("85 cfs from a 5 ft pipe under 1.6 ft of tailwater need stone of 0.43 ft, 5.2 in", () => {
    const inches = medianStoneInches(85, 60, 12 * 1.6);
    expect(inches / 12).toBeCloseTo(0.43, 2);
    expect(inches).toBeCloseTo(5.2, 1);
  });

  test("2.33 cu m/s from a 1.5 m pipe under 0.5 m of tailwater need stone of 0.13 m", () => {
    const inches = medianStoneInches(2.33 / 0.3048 ** 3, 1.5 / 0.0254, 0.5 / 0.0254);
    expect(inches * 0.0254).toBeCloseTo(0.13, 2);
  });
});

describe("computed by hand", () => {
  test("59 gpm from a 4 in pipe of unknown tailwater need stone of 0.51 in", () => {
    expect(medianStoneInches(59 / 448.83, 4, undefined)).toBeCloseTo(0.51, 2);
  });

  test("no flow needs no stone", () => {
    expect(medianStoneInches(0, 4, undefined)).toBe(0);
  });

  test("tailwater as deep as the pipe needs two fifths of the stone that unknown tailwater does", () => {
    expect(medianStoneInches(1, 12, 12)).toBeCloseTo(0.4 * medianStoneInches(1, 12, undefined), 12);
  });
});

describe("any outlet", () => {
  test("counts tailwater of no less than 0.4 and no more than 1 diameter", () => {
    fc.assert(
      fc.property(flow, diameter, tailwater, (cubicFeetPerSecond, inches, deep) => {
        const share = Math.min(Math.max(deep / inches, 0.4), 1);
        expect(medianStoneInches(cubicFeetPerSecond, inches, deep)).toBeCloseTo(
          medianStoneInches(cubicFeetPerSecond, inches, share * inches),
          9,
        );
        expect([TAILWATER_SHARES.least, TAILWATER_SHARES.most]).toEqual([0.4, 1]);
      }),
      {
        examples: [
          [1, 10, 0],
          [1, 10, 4],
          [1, 10, 10],
          [1, 10, 11],
        ],
      },
    );
  });

  test("needs stone that grows with the flow to the power of 4/3", () => {
    fc.assert(
      fc.property(flow, diameter, tailwater, (cubicFeetPerSecond, inches, deep) => {
        expect(medianStoneInches(8 * cubicFeetPerSecond, inches, deep) / medianStoneInches(cubicFeetPerSecond, inches, deep)).toBeCloseTo(
          16,
          6,
        );
      }),
    );
  });

  test("needs smaller stone for the same flow from a larger pipe, and no larger under more tailwater", () => {
    fc.assert(
      fc.property(flow, diameter, tailwater, (cubicFeetPerSecond, inches, deep) => {
        const stone = medianStoneInches(cubicFeetPerSecond, inches, deep);
        expect(medianStoneInches(cubicFeetPerSecond, 2 * inches, 2 * deep)).toBeLessThan(stone);
        expect(medianStoneInches(cubicFeetPerSecond, inches, deep + 1)).toBeLessThanOrEqual(stone);
      }),
    );
  });
});
