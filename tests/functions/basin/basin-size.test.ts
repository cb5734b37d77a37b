import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinFloorSize, ellipseEdgeFeet } from "../../../functions/basin/basin-size.ts";
import { floorArea, lengthToWidth, shape } from "./basin-inputs.ts";

describe("published lengths of an ellipse", () => {
  // Abramowitz and Stegun, 1964, table 17.1 (from memory): E = 1.21105603 at m = 0.75, 1.35064388 at m = 0.5.
  test.each([
    { width: 1, complete: 1.21105603, m: 0.75 },
    { width: Math.SQRT2, complete: 1.35064388, m: 0.5 },
  ])("an ellipse 2 long and $width wide is four times $complete around", ({ width, complete }) => {
    expect(ellipseEdgeFeet(2, width)).toBeCloseTo(4 * complete, 7);
  });

  test("a circle is pi times its width around, and a line twice its length", () => {
    expect(ellipseEdgeFeet(10, 10)).toBeCloseTo(Math.PI * 10, 12);
    expect(ellipseEdgeFeet(10, 0)).toBe(20);
  });
});

describe("computed by hand", () => {
  test("a rectangle of 200 sq ft twice as long as wide is 20 by 10 ft and 60 ft around", () => {
    expect(basinFloorSize(200, "rectangle", 2)).toEqual({ lengthFeet: 20, widthFeet: 10, edgeFeet: 60 });
  });

  test("an ellipse of 157.08 sq ft twice as long as wide is 20 by 10 ft", () => {
    const { lengthFeet, widthFeet } = basinFloorSize(157.08, "ellipse", 2);
    expect(lengthFeet).toBeCloseTo(20, 3);
    expect(widthFeet).toBeCloseTo(10, 3);
  });

  test("no floor has no size", () => {
    expect(basinFloorSize(0, "ellipse", 2)).toEqual({ lengthFeet: 0, widthFeet: 0, edgeFeet: 0 });
  });
});

describe("any floor", () => {
  test("has the area it was given", () => {
    fc.assert(
      fc.property(floorArea, shape, lengthToWidth, (area, outline, ratio) => {
        const { lengthFeet, widthFeet } = basinFloorSize(area, outline, ratio);
        const fill = outline === "ellipse" ? Math.PI / 4 : 1;
        expect((fill * lengthFeet * widthFeet) / area).toBeCloseTo(1, 10);
        expect(lengthFeet / widthFeet).toBeCloseTo(ratio, 10);
      }),
    );
  });

  test("has an edge longer than a circle of its area, and longer the longer it is for its width", () => {
    fc.assert(
      fc.property(floorArea, shape, lengthToWidth, (area, outline, ratio) => {
        const { edgeFeet } = basinFloorSize(area, outline, ratio);
        expect(edgeFeet).toBeGreaterThanOrEqual(2 * Math.sqrt(Math.PI * area) * (1 - 1e-12));
        expect(basinFloorSize(area, outline, ratio * 1.1).edgeFeet).toBeGreaterThan(edgeFeet);
      }),
    );
  });

  test("that is an ellipse has the edge that walking it in small steps measures", () => {
    fc.assert(
      fc.property(lengthToWidth, (ratio) => {
        const { lengthFeet, widthFeet, edgeFeet } = basinFloorSize(100, "ellipse", ratio);
        const steps = 20_000;
        const at = (step: number): [number, number] => {
          const turn = (2 * Math.PI * step) / steps;
          return [(lengthFeet / 2) * Math.cos(turn), (widthFeet / 2) * Math.sin(turn)];
        };
        let walked = 0;
        for (let step = 0; step < steps; step += 1) {
          const [x, y] = at(step);
          const [nextX, nextY] = at(step + 1);
          walked += Math.hypot(nextX - x, nextY - y);
        }
        expect(edgeFeet / walked).toBeCloseTo(1, 6);
      }),
      { numRuns: 20, examples: [[1], [6]] },
    );
  });

  test("doubles its edge when its area is four times as large", () => {
    fc.assert(
      fc.property(floorArea, shape, lengthToWidth, (area, outline, ratio) => {
        expect(basinFloorSize(4 * area, outline, ratio).edgeFeet / basinFloorSize(area, outline, ratio).edgeFeet).toBeCloseTo(2, 10);
      }),
    );
  });
});
