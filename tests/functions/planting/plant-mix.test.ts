import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { PLANTING_PATTERNS, plantsPerArea } from "../../../functions/planting/plant-count.ts";
import { plantsOfKind } from "../../../functions/planting/plant-mix.ts";
import { measured } from "../measured.ts";

const area = measured(0, 1000);
const spacing = measured(0.5, 6);
const share = measured(0, 1);
const pattern = fc.constantFrom(...PLANTING_PATTERNS);

// A nursery spacing chart (read): 100 sq ft take 400, 100, 44 and 25 plants on squares of 6, 12, 18 and 24 in.
describe("published spacing chart", () => {
  test.each([
    [0.5, 400],
    [1, 100],
    [2, 25],
  ])("half of 200 sq ft at %d ft on squares takes %d plants", (spacingFeet, plants) => {
    expect(plantsOfKind(200, { spacingFeet, share: 0.5 }, "square")).toBe(plants);
  });

  test("half of 200 sq ft at 18 in takes 45, the printed 44.4 rounded up", () => {
    expect(plantsOfKind(200, { spacingFeet: 1.5, share: 0.5 }, "square")).toBe(45);
  });
});

describe("any kind in a mix", () => {
  test("is whole plants that cover its share, with less than one to spare", () => {
    fc.assert(
      fc.property(area, spacing, share, pattern, (squareFeet, spacingFeet, part, on) => {
        const plants = plantsOfKind(squareFeet, { spacingFeet, share: part }, on);
        const exact = plantsPerArea(part * squareFeet, spacingFeet, on);
        expect(Number.isInteger(plants)).toBe(true);
        expect(plants).toBeGreaterThanOrEqual(exact * (1 - 1e-8));
        expect(plants).toBeLessThan(exact + 1);
      }),
      {
        examples: [
          [0, 1, 0.5, "square"],
          [100, 1, 0, "triangle"],
        ],
      },
    );
  });

  test("takes in the mix no fewer plants than the whole area would at one spacing", () => {
    fc.assert(
      fc.property(area, spacing, fc.integer({ min: 1, max: 8 }), pattern, (squareFeet, spacingFeet, kinds, on) => {
        const mixed = kinds * plantsOfKind(squareFeet, { spacingFeet, share: 1 / kinds }, on);
        const alone = plantsOfKind(squareFeet, { spacingFeet, share: 1 }, on);
        expect(mixed).toBeGreaterThanOrEqual(alone);
        expect(mixed).toBeLessThan(alone + kinds);
      }),
    );
  });

  test("takes no fewer plants for a larger share, a closer spacing or a triangle", () => {
    fc.assert(
      fc.property(area, spacing, measured(0, 0.5), (squareFeet, spacingFeet, part) => {
        const plants = plantsOfKind(squareFeet, { spacingFeet, share: part }, "square");
        expect(plantsOfKind(squareFeet, { spacingFeet, share: 2 * part }, "square")).toBeGreaterThanOrEqual(plants);
        expect(plantsOfKind(squareFeet, { spacingFeet: spacingFeet / 2, share: part }, "square")).toBeGreaterThanOrEqual(plants);
        expect(plantsOfKind(squareFeet, { spacingFeet, share: part }, "triangle")).toBeGreaterThanOrEqual(plants);
      }),
    );
  });
});
