import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaAtHeightSquareFeet, basinFloor } from "../../../functions/basin/basin-shape.ts";
import { basinVolumeCubicFeet, USUAL_SIDE_SLOPE } from "../../../functions/basin/basin-volume.ts";
import { depthInches, floorArea, lengthToWidth, shape, sideSlope } from "./basin-inputs.ts";

describe("computed by hand: a basin 20 by 10 ft at the top, 6 in deep, sides 3 to 1", () => {
  const rectangle = basinFloor(119, "rectangle", 17 / 7);

  test("a rectangle has a floor of 17 by 7 ft, 119 sq ft, 157.25 sq ft at half depth and 200 at the top", () => {
    expect(rectangle.lengthFeet).toBeCloseTo(17, 12);
    expect(rectangle.widthFeet).toBeCloseTo(7, 12);
    expect(areaAtHeightSquareFeet(rectangle, 0.25, 3)).toBeCloseTo(157.25, 10);
    expect(areaAtHeightSquareFeet(rectangle, 0.5, 3)).toBeCloseTo(200, 10);
  });

  test("a rectangle holds 79.00 cu ft, which is 591 gallons", () => {
    expect(basinVolumeCubicFeet(119, 6, 3, "rectangle", 17 / 7)).toBeCloseTo(79, 2);
    expect(basinVolumeCubicFeet(119, 6, 3, "rectangle", 17 / 7) * (1728 / 231)).toBeCloseTo(591, 0);
  });

  test("the cone-frustum formula gives 78.88 cu ft and average ends 79.75, so neither is used", () => {
    expect((0.5 / 3) * (119 + 200 + Math.sqrt(119 * 200))).toBeCloseTo(78.88, 2);
    expect((0.5 * (119 + 200)) / 2).toBeCloseTo(79.75, 2);
  });

  test("an ellipse has a floor of 93.46 sq ft, 157.08 sq ft at the top, and holds 62.05 cu ft", () => {
    const floor = Math.PI * 8.5 * 3.5;
    expect(floor).toBeCloseTo(93.46, 2);
    expect(areaAtHeightSquareFeet(basinFloor(floor, "ellipse", 17 / 7), 0.5, USUAL_SIDE_SLOPE)).toBeCloseTo(157.08, 2);
    expect(basinVolumeCubicFeet(floor, 6, USUAL_SIDE_SLOPE, "ellipse", 17 / 7)).toBeCloseTo(62.05, 2);
  });
});

describe("any basin", () => {
  test("holds what the prismoidal rule says: a sixth of the depth times floor, four times the middle, and top", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        const floor = basinFloor(area, outline, ratio);
        const at = (inches: number) => areaAtHeightSquareFeet(floor, inches / 12, slope);
        const prismoidal = (depth / 12 / 6) * (at(0) + 4 * at(depth / 2) + at(depth));
        expect(basinVolumeCubicFeet(area, depth, slope, outline, ratio) / (prismoidal || 1)).toBeCloseTo(prismoidal === 0 ? 0 : 1, 10);
      }),
    );
  });

  test("holds its floor area times its depth when its sides are vertical", () => {
    fc.assert(
      fc.property(floorArea, depthInches, shape, lengthToWidth, (area, depth, outline, ratio) => {
        expect(basinVolumeCubicFeet(area, depth, 0, outline, ratio)).toBeCloseTo((area * depth) / 12, 8);
      }),
      { examples: [[119, 0, "rectangle", 1]] },
    );
  });

  test("holds more when it is deeper, wider or flatter at the sides", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        const volume = basinVolumeCubicFeet(area, depth, slope, outline, ratio);
        expect(basinVolumeCubicFeet(area, depth + 1, slope, outline, ratio)).toBeGreaterThan(volume);
        expect(basinVolumeCubicFeet(area + 1, depth, slope, outline, ratio)).toBeGreaterThanOrEqual(volume);
        expect(basinVolumeCubicFeet(area, depth, slope + 1, outline, ratio)).toBeGreaterThanOrEqual(volume);
      }),
    );
  });

  test("holds at least a straight prism on its floor and at most one on its rim", () => {
    fc.assert(
      fc.property(floorArea, depthInches, sideSlope, shape, lengthToWidth, (area, depth, slope, outline, ratio) => {
        const volume = basinVolumeCubicFeet(area, depth, slope, outline, ratio);
        const rim = areaAtHeightSquareFeet(basinFloor(area, outline, ratio), depth / 12, slope);
        expect(volume).toBeGreaterThanOrEqual(((area * depth) / 12) * (1 - 1e-12));
        expect(volume).toBeLessThanOrEqual(((rim * depth) / 12) * (1 + 1e-12));
      }),
    );
  });

  test("with no floor at all is a cone: a third of its rim times its depth", () => {
    const rim = areaAtHeightSquareFeet(basinFloor(0, "ellipse", 2), 1, 3);
    expect(rim).toBeCloseTo(Math.PI * 9, 12);
    expect(basinVolumeCubicFeet(0, 12, 3, "ellipse", 2)).toBeCloseTo(rim / 3, 12);
  });
});
