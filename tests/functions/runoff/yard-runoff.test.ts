import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runoffDepthInches } from "../../../functions/runoff/runoff-depth.ts";
import { yardRunoffCubicFeet, type YardSurface } from "../../../functions/runoff/yard-runoff.ts";
import { measured } from "../measured.ts";

const surface = fc.record({
  curveNumber: measured(30, 98),
  areaSquareFeet: measured(0, 10_000),
  shareDrainingHere: measured(0, 1),
});
const surfaces = fc.array(surface, { maxLength: 8 });
const rain = measured(0, 15);

describe("a roof of 1000 sq ft (curve number 98) and a lawn of 3000 sq ft (61), computed by hand from the equation", () => {
  const yard: YardSurface[] = [
    { curveNumber: 98, areaSquareFeet: 1000, shareDrainingHere: 1 },
    { curveNumber: 61, areaSquareFeet: 3000, shareDrainingHere: 1 },
  ];

  test.each([
    { rainInches: 1, weightedDepth: 0.19773, ofAverage: 0.00534 },
    { rainInches: 2, weightedDepth: 0.49844, ofAverage: 0.24675 },
  ])("$rainInches in runs off $weightedDepth in surface by surface, where the averaged curve number says $ofAverage in", (row) => {
    expect((yardRunoffCubicFeet(row.rainInches, yard) * 12) / 4000).toBeCloseTo(row.weightedDepth, 5);
    expect(runoffDepthInches(row.rainInches, 70.25)).toBeCloseTo(row.ofAverage, 5);
  });

  test("half the lawn draining here sends half the lawn's water", () => {
    const half = [yard[0]!, { ...yard[1]!, shareDrainingHere: 0.5 }];
    const roof = yardRunoffCubicFeet(2, [yard[0]!]);
    expect(yardRunoffCubicFeet(2, half) - roof).toBeCloseTo((yardRunoffCubicFeet(2, yard) - roof) / 2, 12);
  });
});

describe("any yard", () => {
  // Runoff curves upward with the curve number up to 6 in of rain; in the deepest storms the two agree to a hair.
  test("never sends less than the averaged curve number says, up to 6 in of rain", () => {
    fc.assert(
      fc.property(measured(0, 6), surfaces, (depth, yard) => {
        const area = yard.reduce((sum, one) => sum + one.areaSquareFeet * one.shareDrainingHere, 0);
        if (area === 0) return;
        const average = yard.reduce((sum, one) => sum + one.areaSquareFeet * one.shareDrainingHere * one.curveNumber, 0) / area;
        expect(yardRunoffCubicFeet(depth, yard)).toBeGreaterThanOrEqual(
          ((area * runoffDepthInches(depth, average)) / 12) * (1 - 1e-9) - 1e-9,
        );
      }),
    );
  });

  test("sends the sum of what its surfaces send one by one, in any order", () => {
    fc.assert(
      fc.property(rain, surfaces, (depth, yard) => {
        const sum = yard.reduce((total, one) => total + yardRunoffCubicFeet(depth, [one]), 0);
        expect(yardRunoffCubicFeet(depth, yard)).toBeCloseTo(sum, 6);
        expect(yardRunoffCubicFeet(depth, [...yard].reverse())).toBeCloseTo(sum, 6);
      }),
      { examples: [[1, []]] },
    );
  });

  test("sends no more than the rain that falls on what drains here", () => {
    fc.assert(
      fc.property(rain, surfaces, (depth, yard) => {
        const caught = yard.reduce((sum, one) => sum + (one.areaSquareFeet * one.shareDrainingHere * depth) / 12, 0);
        expect(yardRunoffCubicFeet(depth, yard)).toBeLessThanOrEqual(caught * (1 + 1e-12));
      }),
    );
  });
});
