import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BASIN_SHAPES, basinFloor } from "../../../functions/basin/basin-shape.ts";
import { floorAreaOf } from "../../../functions/basin/floor-area.ts";

describe("the area of a basin floor from tape measurements", () => {
  // The area of an ellipse is pi a b with half axes a and b: pi x 8.5 ft x 3.5 ft = 93.462 sq ft; a rectangle is length times width.
  test("a 17 by 7 ft ellipse has 93.46 sq ft, a rectangle as long and as wide 119 sq ft", () => {
    expect(floorAreaOf(17, 7, "ellipse")).toBeCloseTo(Math.PI * 8.5 * 3.5, 10);
    expect(floorAreaOf(17, 7, "ellipse")).toBeCloseTo(93.462, 3);
    expect(floorAreaOf(17, 7, "rectangle")).toBe(119);
  });

  test("a floor staked out from its area measures that area again", () => {
    const sizes = fc.record({
      area: fc.double({ min: 1, max: 1e4, noNaN: true }),
      ratio: fc.double({ min: 1, max: 6, noNaN: true }),
      shape: fc.constantFrom(...BASIN_SHAPES),
    });
    fc.assert(
      fc.property(sizes, ({ area, ratio, shape }) => {
        const { lengthFeet, widthFeet } = basinFloor(area, shape, ratio);
        expect(floorAreaOf(lengthFeet, widthFeet, shape) / area).toBeCloseTo(1, 12);
      }),
    );
  });
});
