import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinVolumeCubicFeet } from "../../../functions/basin/basin-volume.ts";
import { digVolumeCubicYards } from "../../../functions/earthwork/dig-volume.ts";
import { depthInches, floorArea, lengthToWidth, shape, sideSlope } from "../basin/basin-inputs.ts";

describe("computed by hand", () => {
  test("a basin 20 by 10 ft at the top, 6 in deep, sides 3 to 1, is 79.00 cu ft, which is 2.926 cu yd", () => {
    expect(digVolumeCubicYards(119, 6, 3, "rectangle", 17 / 7)).toBeCloseTo(2.926, 3);
  });

  test("150 sq ft straight down 18 in are 8.33 cu yd", () => {
    expect(digVolumeCubicYards(150, 18, 0, "ellipse", 2)).toBeCloseTo(8.33, 2);
  });
});

describe("any dig", () => {
  test("is a 27th of the basin's volume in cubic feet", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        expect(digVolumeCubicYards(area, depth, slope, outline, ratio) * 27).toBeCloseTo(
          basinVolumeCubicFeet(area, depth, slope, outline, ratio),
          6,
        );
      }),
    );
  });

  test("is more when it is deeper, and nothing when it has no depth", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        expect(digVolumeCubicYards(area, depth + 1, slope, outline, ratio)).toBeGreaterThan(
          digVolumeCubicYards(area, depth, slope, outline, ratio),
        );
        expect(digVolumeCubicYards(area, 0, slope, outline, ratio)).toBe(0);
      }),
    );
  });

  test("is no less than its floor straight down", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        expect(digVolumeCubicYards(area, depth, slope, outline, ratio)).toBeGreaterThanOrEqual(((area * depth) / 324) * (1 - 1e-12));
      }),
    );
  });
});
