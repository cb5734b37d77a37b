import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GALLONS_PER_CUBIC_FOOT, USUAL_WEEKLY_INCHES, waterGallons } from "../../../functions/planting/water-need.ts";
import { measured } from "../measured.ts";

const area = measured(0, 2000);
const depth = measured(0, 4);

// Computed by hand from the definition; an inch a week is common practice, no source.
describe("computed by hand", () => {
  test("150 sq ft take 93.5 gallons for an inch a week", () => {
    expect(waterGallons(150, USUAL_WEEKLY_INCHES)).toBeCloseTo(93.5, 1);
  });

  test("a square foot takes 0.623 gallons an inch", () => {
    expect(waterGallons(1, 1)).toBeCloseTo(0.623, 3);
  });

  test("a cubic foot is 7.48 gallons", () => {
    expect(GALLONS_PER_CUBIC_FOOT).toBeCloseTo(7.48, 2);
  });
});

describe("any planting", () => {
  test("takes a liter for each square meter and millimeter", () => {
    fc.assert(
      fc.property(area, depth, (squareFeet, inches) => {
        expect(waterGallons(squareFeet, inches) * 3.785411784).toBeCloseTo(squareFeet * 0.09290304 * inches * 25.4, 6);
      }),
    );
  });

  test("takes water in proportion to its area and to the depth", () => {
    fc.assert(
      fc.property(area, depth, (squareFeet, inches) => {
        expect(waterGallons(2 * squareFeet, inches)).toBeCloseTo(2 * waterGallons(squareFeet, inches), 6);
        expect(waterGallons(squareFeet, 2 * inches)).toBeCloseTo(2 * waterGallons(squareFeet, inches), 6);
      }),
    );
  });

  test("takes none where there is no area or no depth, and never less than none", () => {
    fc.assert(
      fc.property(area, depth, (squareFeet, inches) => {
        expect(waterGallons(0, inches)).toBe(0);
        expect(waterGallons(squareFeet, 0)).toBe(0);
        expect(waterGallons(squareFeet, inches)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
