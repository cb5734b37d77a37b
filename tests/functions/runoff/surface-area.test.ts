import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaFromWidths } from "../../../functions/basin/widths-area.ts";
import { circleArea, footprintArea, rectangleArea, trapezoidArea, triangleArea } from "../../../functions/runoff/surface-area.ts";
import { measured } from "../measured.ts";

const length = measured(0, 200);

// A mathematics forum's page (read): the three examples of one answer.
describe("published examples", () => {
  test("a trapezoid of 78 and 90 cm, 36 cm apart, encloses 3,024 sq cm", () => {
    expect(trapezoidArea(78, 90, 36)).toBe(3024);
  });

  test("120 of the 360 degrees of a circle of 18 in radius enclose 108 pi sq in", () => {
    expect(circleArea(36, 120 / 360)).toBeCloseTo(108 * Math.PI, 9);
  });

  test("14 by 28 around two circles of radius 7 leaves 392 - 98 pi", () => {
    expect(rectangleArea(14, 28) - 2 * circleArea(14, 1)).toBeCloseTo(392 - 98 * Math.PI, 9);
  });
});

describe("computed by hand", () => {
  test("half of a 20 by 9 ft rectangle is a triangle of 90 sq ft", () => {
    expect(triangleArea(20, 9)).toBe(90);
  });

  // (40 + 2 x 1.5) x (24 + 2 x 1.5) = 43 x 27 = 1,161.
  test("a house of 40 by 24 ft with 1.5 ft of overhang all round has 1,161 sq ft of roof in plan", () => {
    expect(footprintArea(40, 24, 1.5)).toBe(1161);
  });
});

describe("any shape", () => {
  test("a trapezoid of equal sides is a rectangle, and one with a side of 0 a triangle", () => {
    fc.assert(
      fc.property(length, length, (side, between) => {
        expect(trapezoidArea(side, side, between)).toBeCloseTo(rectangleArea(side, between), 6);
        expect(trapezoidArea(side, 0, between)).toBeCloseTo(triangleArea(side, between), 6);
      }),
      { examples: [[0, 0]] },
    );
  });

  test("a trapezoid is what two widths one step apart enclose", () => {
    fc.assert(
      fc.property(length, length, length, (one, other, between) => {
        expect(trapezoidArea(one, other, between)).toBeCloseTo(areaFromWidths([one, other], between), 6);
      }),
    );
  });

  test("a circle fills pi / 4 of the square around it, and its parts add up", () => {
    fc.assert(
      fc.property(length, measured(0, 1), (diameter, part) => {
        expect(circleArea(diameter, 1)).toBeCloseTo((Math.PI / 4) * rectangleArea(diameter, diameter), 6);
        expect(circleArea(diameter, part) + circleArea(diameter, 1 - part)).toBeCloseTo(circleArea(diameter, 1), 6);
      }),
    );
  });

  test("an overhang adds a strip along each wall and a square at each corner", () => {
    fc.assert(
      fc.property(length, length, measured(0, 6), (long, wide, overhang) => {
        const strips = 2 * rectangleArea(long, overhang) + 2 * rectangleArea(wide, overhang);
        expect(footprintArea(long, wide, overhang)).toBeCloseTo(rectangleArea(long, wide) + strips + 4 * overhang ** 2, 6);
      }),
      { examples: [[40, 24, 0]] },
    );
  });
});
