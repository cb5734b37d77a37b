import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  HIGHEST_PRINTED_HEAD_FEET,
  overflowWidthFeet,
  USUAL_WEIR_COEFFICIENT,
  WEIR_COEFFICIENTS,
} from "../../../functions/overflow/overflow-width.ts";
import { broadCrestedCoefficients } from "../../../functions/published/hec-22-weirs.ts";
import { measured } from "../measured.ts";

const flow = measured(0, 10);
const head = measured(0.02, 1);
const coefficient = measured(2.3, 3.1);

describe("published example", () => {
  // San Diego State University, CIVE 530 (read): C 3.09, 20 ft, 0.8 ft of head, printed to 0.01 cfs.
  test("44.22 cfs over a broad crest at 0.8 ft of head and C of 3.09 take 20 ft", () => {
    expect(overflowWidthFeet(44.22, 0.8, 3.09)).toBeCloseTo(20, 2);
    expect(Math.abs(3.09 * 20 * 0.8 ** 1.5 - 44.22)).toBeLessThanOrEqual(0.005);
  });

  // The same: 2/3 sqrt(2/3 x 32.17) is 3.087, printed to 0.001.
  test("the coefficient of a frictionless broad crest is 3.087, the highest of the range", () => {
    const frictionless = (2 / 3) * Math.sqrt((2 / 3) * 32.17);
    expect(frictionless).toBeCloseTo(3.087, 3);
    expect(frictionless).toBeLessThan(WEIR_COEFFICIENTS.most);
  });
});

// FHWA HEC-22, broad-crested weir coefficients after Brater and King (from memory).
describe("the coefficient table", () => {
  const printed = broadCrestedCoefficients.values.flatMap(({ breadthFeet, byHeadFeet }) =>
    byHeadFeet.map(([headFeet, value]) => ({ breadthFeet, headFeet, value })),
  );

  test.each(printed)("a crest $breadthFeet ft broad under $headFeet ft of head has $value, inside the range", ({ headFeet, value }) => {
    expect(value).toBeGreaterThanOrEqual(WEIR_COEFFICIENTS.least);
    expect(value).toBeLessThanOrEqual(WEIR_COEFFICIENTS.most);
    expect(headFeet).toBeLessThanOrEqual(HIGHEST_PRINTED_HEAD_FEET);
  });

  test("the usual 2.6 lies among those of a crest 2 ft broad", () => {
    const ofTwoFeet = printed.filter(({ breadthFeet }) => breadthFeet === 2).map(({ value }) => value);
    expect(USUAL_WEIR_COEFFICIENT).toBeGreaterThanOrEqual(Math.min(...ofTwoFeet));
    expect(USUAL_WEIR_COEFFICIENT).toBeLessThanOrEqual(Math.max(...ofTwoFeet));
    expect(broadCrestedCoefficients.printedTo).toBe(0.01);
  });
});

// Computed by hand: the peak of 1,000 sq ft of roof at 6 in/h is 0.132 cfs.
test("0.132 cfs at 0.2 ft of head and C of 2.69 take a notch of 0.549 ft, about 7 in", () => {
  expect(overflowWidthFeet(0.132, 0.2, 2.69)).toBeCloseTo(0.549, 3);
});

describe("any overflow", () => {
  test("passes its flow: C L H^1.5 gives it back", () => {
    fc.assert(
      fc.property(flow, head, coefficient, (cubicFeetPerSecond, feet, value) => {
        const width = overflowWidthFeet(cubicFeetPerSecond, feet, value);
        expect(value * width * feet * Math.sqrt(feet)).toBeCloseTo(cubicFeetPerSecond, 9);
      }),
      { examples: [[0, 0.2, 2.6]] },
    );
  });

  test("is narrower under more head: four times the head needs an eighth of the width", () => {
    fc.assert(
      fc.property(flow, head, coefficient, (cubicFeetPerSecond, feet, value) => {
        expect(overflowWidthFeet(cubicFeetPerSecond, 4 * feet, value)).toBeCloseTo(
          overflowWidthFeet(cubicFeetPerSecond, feet, value) / 8,
          9,
        );
      }),
    );
  });

  test("is as wide in metric units, where a coefficient is 0.552 of that in US units", () => {
    fc.assert(
      fc.property(flow, head, coefficient, (cubicFeetPerSecond, feet, value) => {
        const cubicMetersPerSecond = cubicFeetPerSecond * 0.3048 ** 3;
        const meters = cubicMetersPerSecond / (value * Math.sqrt(0.3048) * (feet * 0.3048) ** 1.5);
        expect(Math.sqrt(0.3048)).toBeCloseTo(0.552, 3);
        expect(meters / 0.3048).toBeCloseTo(overflowWidthFeet(cubicFeetPerSecond, feet, value), 8);
      }),
    );
  });
});
