import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BASIN_SHAPES } from "../../../functions/basin/basin-shape.ts";
import { plantingZones } from "../../../functions/planting/zone-areas.ts";
import { measured } from "../measured.ts";

const floor = measured(1, 500);
const ponding = measured(0, 12);
const side = measured(0, 5);
const berm = measured(0, 4);
const shape = fc.constantFrom(...BASIN_SHAPES);
const ratio = measured(1, 5);

/** Floor axes by the area of the shape itself. */
function axes(squareFeet: number, of: "ellipse" | "rectangle", lengthToWidth: number): { length: number; width: number; fill: number } {
  const fill = of === "ellipse" ? Math.PI / 4 : 1;
  const width = Math.sqrt(squareFeet / fill / lengthToWidth);
  return { length: lengthToWidth * width, width, fill };
}

describe("computed by hand", () => {
  test("a 17 by 7 ft floor under 6 in of ponding with 3 to 1 sides and a 1 ft berm has zones of 119, 81 and 64 sq ft", () => {
    const { wettestSquareFeet, transitionSquareFeet, bermSquareFeet } = plantingZones(119, 6, 3, 1, "rectangle", 17 / 7);
    expect(wettestSquareFeet).toBe(119);
    expect(transitionSquareFeet).toBeCloseTo(20 * 10 - 17 * 7, 9);
    expect(bermSquareFeet).toBeCloseTo(22 * 12 - 20 * 10, 9);
  });

  // The rim is an ellipse on axes of 20 and 10 ft, the berm's outer edge one on 22 and 12 ft.
  test("a floor of 17 and 7 ft axes has an ellipse ring of axes + 2 w for its berm", () => {
    const zones = plantingZones((Math.PI / 4) * 17 * 7, 6, 3, 1, "ellipse", 17 / 7);
    expect(zones.wettestSquareFeet).toBeCloseTo(93.46, 2);
    expect(zones.wettestSquareFeet + zones.transitionSquareFeet).toBeCloseTo(157.08, 2);
    expect(zones.bermSquareFeet).toBeCloseTo((Math.PI / 4) * (22 * 12 - 20 * 10), 9);
  });

  test("vertical sides leave no transition, and no berm no zone C", () => {
    expect(plantingZones(100, 6, 0, 0, "ellipse", 2)).toEqual({ wettestSquareFeet: 100, transitionSquareFeet: 0, bermSquareFeet: 0 });
    expect(plantingZones(0, 0, 3, 1, "rectangle", 1)).toEqual({ wettestSquareFeet: 0, transitionSquareFeet: 0, bermSquareFeet: 4 });
  });
});

describe("any basin", () => {
  test("has zones that together fill the shape on axes grown by 2 z d + 2 w", () => {
    fc.assert(
      fc.property(floor, ponding, side, berm, shape, ratio, (squareFeet, inches, slope, top, of, lengthToWidth) => {
        const { length, width, fill } = axes(squareFeet, of, lengthToWidth);
        const wider = 2 * slope * (inches / 12) + 2 * top;
        const zones = plantingZones(squareFeet, inches, slope, top, of, lengthToWidth);
        const total = zones.wettestSquareFeet + zones.transitionSquareFeet + zones.bermSquareFeet;
        expect(total).toBeCloseTo(fill * (length + wider) * (width + wider), 6);
      }),
    );
  });

  test("has a floor that is zone A, whatever its sides", () => {
    fc.assert(
      fc.property(floor, ponding, side, berm, shape, ratio, (squareFeet, inches, slope, top, of, lengthToWidth) => {
        expect(plantingZones(squareFeet, inches, slope, top, of, lengthToWidth).wettestSquareFeet).toBe(squareFeet);
      }),
    );
  });

  test("has more transition the flatter its sides, and more berm the wider its top", () => {
    fc.assert(
      fc.property(floor, measured(1, 12), side, berm, shape, ratio, (squareFeet, inches, slope, top, of, lengthToWidth) => {
        const zones = plantingZones(squareFeet, inches, slope, top, of, lengthToWidth);
        const larger = plantingZones(squareFeet, inches, slope + 1, top + 1, of, lengthToWidth);
        expect(larger.transitionSquareFeet).toBeGreaterThan(zones.transitionSquareFeet);
        expect(larger.bermSquareFeet).toBeGreaterThan(zones.bermSquareFeet);
        expect(zones.transitionSquareFeet).toBeGreaterThanOrEqual(-1e-9);
        expect(zones.bermSquareFeet).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });
});
