import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinDepthInches } from "../../../functions/basin/basin-depth.ts";
import { basinVolumeCubicFeet } from "../../../functions/basin/basin-volume.ts";
import { measured } from "../measured.ts";
import { depthInches, floorArea, lengthToWidth, shape, sideSlope } from "./basin-inputs.ts";

describe("computed by hand: floors of a basin 20 by 10 ft at the top, 6 in deep, sides 3 to 1", () => {
  test("79.00 cu ft stand 6 in deep on a floor of 17 by 7 ft", () => {
    expect(basinDepthInches(79, 119, 3, "rectangle", 17 / 7)).toBeCloseTo(6, 9);
  });

  test("62.05 cu ft stand 6 in deep on the ellipse, to the printed hundredth", () => {
    expect(basinDepthInches(62.05, Math.PI * 8.5 * 3.5, 3, "ellipse", 17 / 7)).toBeCloseTo(6, 2);
  });
});

describe("any basin", () => {
  test("filled with what it holds at a depth stands at that depth", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        const volume = basinVolumeCubicFeet(area, depth, slope, outline, ratio);
        expect(Math.abs(basinDepthInches(volume, area, slope, outline, ratio) - depth)).toBeLessThanOrEqual(1e-9);
      }),
      {
        examples: [
          [100, 0, 3, "ellipse", 2],
          [1, 48, 6, "ellipse", 1],
          [1e-6, 48, 3, "rectangle", 1],
          [100, 6, 0, "ellipse", 2],
        ],
      },
    );
  });

  test("stands deeper with more water, and shallower with flatter sides", () => {
    fc.assert(
      fc.property(floorArea, measured(1, 5000), sideSlope, shape, lengthToWidth, (area, volume, slope, outline, ratio) => {
        const depth = basinDepthInches(volume, area, slope, outline, ratio);
        expect(basinDepthInches(volume * 1.01, area, slope, outline, ratio)).toBeGreaterThan(depth);
        expect(basinDepthInches(volume, area, slope + 0.5, outline, ratio)).toBeLessThan(depth);
      }),
    );
  });

  test("stands no deeper than between vertical sides", () => {
    fc.assert(
      fc.property(floorArea, measured(0, 5000), sideSlope, shape, lengthToWidth, (area, volume, slope, outline, ratio) => {
        const depth = basinDepthInches(volume, area, slope, outline, ratio);
        expect(depth).toBeGreaterThanOrEqual(0);
        expect(depth).toBeLessThanOrEqual(((12 * volume) / area) * (1 + 1e-12));
      }),
      {
        examples: [
          [100, 0, 3, "ellipse", 2],
          [1, 5000, 3, "ellipse", 2],
        ],
      },
    );
  });
});
