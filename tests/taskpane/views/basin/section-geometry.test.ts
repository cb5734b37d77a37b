import { describe, expect, test } from "vitest";
import type { Point } from "../../../../taskpane/views/basin/plan-geometry.ts";
import { scaleBarLength, verticalExaggeration } from "../../../../taskpane/views/basin/scale.ts";
import { sectionGeometry } from "../../../../taskpane/views/basin/section-geometry.ts";
import { drawn, pencilBasin, roofInMetric, roofInUs } from "./basin-examples.ts";

/** Area inside a closed outline, by the shoelace rule. */
function shoelace(points: readonly Point[]): number {
  return (
    Math.abs(
      points.reduce((sum, { x, y }, index) => {
        const next = points[(index + 1) % points.length] ?? { x, y };
        return sum + x * next.y - next.x * y;
      }, 0),
    ) / 2
  );
}

// Computed by hand from the definitions: 8 ft floor 0.5 ft deep, 3 to 1 sides, ground falling 1 ft in 10.
describe("a section checked with pencil and paper", () => {
  const section = sectionGeometry(pencilBasin);

  test("full water stands level with the ground at the uphill rim, 5.5 ft from the middle", () => {
    expect(section.uphillRim).toEqual({ x: -5.5, y: 0 });
    const [left, right] = section.ground;
    const atRim = left.y + ((right.y - left.y) * (-5.5 - left.x)) / (right.x - left.x);
    expect(atRim).toBeCloseTo(0, 12);
  });

  test("the water's cut is a trapezoid of (8 + 11) / 2 x 0.5 = 4.75 sq ft", () => {
    expect(shoelace(section.water)).toBeCloseTo(4.75, 12);
  });

  test("soil mix lies straight down from the floor: 8 ft x 1.5 ft = 12 sq ft", () => {
    expect(shoelace(section.mix)).toBeCloseTo(12, 12);
  });

  test("mulch is as deep as it is over floor and sides alike: 11 ft x 0.25 ft = 2.75 sq ft", () => {
    expect(shoelace(section.mulch)).toBeCloseTo(2.75, 12);
  });

  test("the ground falls 1.1 ft from rim to rim", () => {
    expect(section.groundDrop).toBeCloseTo(1.1, 12);
  });

  test("the berm stands 0.2 ft of freeboard over the 1.1 ft that the ground falls to the downhill rim", () => {
    expect(section.bermHeight).toBeCloseTo(1.3, 12);
  });

  test("the toe is 13.357 ft downhill of the middle, on the ground", () => {
    expect(section.toe?.x).toBeCloseTo(13.357142857, 8);
    expect(section.toe?.y).toBeCloseTo(-0.1 * (13.357142857 + 5.5), 8);
  });

  test("placed earth is drawn from the finished floor where the ground lies under it", () => {
    // Under the floor's downhill edge the ground is 0.1 x 9.5 = 0.95 ft below the sill, the floor only 0.5 ft.
    expect(section.berms[0]?.[0]).toEqual({ x: -0.5, y: -0.5 });
  });

  test("the floor stands on placed earth, and that is said, where the ground lies under its mulch and soil mix too", () => {
    expect(section.floorOnFill).toBe(false);
    expect(sectionGeometry({ ...pencilBasin, mixDepth: 0 }).floorOnFill).toBe(true);
    // 0.95 ft of ground against 0.5 + 0.25 + 0.2 ft: just cut.
    expect(sectionGeometry({ ...pencilBasin, mixDepth: 0.21 }).floorOnFill).toBe(false);
  });

  test("a low berm stands uphill as well, because the ground there is no higher than the sill", () => {
    // Inner face up to 0.2 ft at -6.1 ft, crest to -7.1 ft over ground at 0.16 ft, face down 0.04 / (1/3 + 1/10) ft further.
    const [foot, toe, crestOuter, crestInner] = section.berms[1] ?? [];
    expect(foot).toEqual({ x: -5.5, y: 0 });
    expect(toe?.x).toBeCloseTo(-7.1 - 0.04 / (1 / 3 + 0.1), 12);
    expect(crestOuter?.x).toBeCloseTo(-7.1, 12);
    expect(crestInner?.x).toBeCloseTo(-6.1, 12);
  });

  test("on a gentle slope the floor is cut into the ground and placed earth begins on the inner face", () => {
    const gentle = sectionGeometry({ ...pencilBasin, groundFall: 0.04 });
    expect(gentle.floorOnFill).toBe(false);
    // Inner face y = -0.5 + (x - 4) / 3 meets ground y = -0.04 (x + 5.5) at x = (0.5 + 4/3 - 0.22) / (1/3 + 0.04).
    expect(gentle.berms[0]?.[0]?.x).toBeCloseTo((0.5 + 4 / 3 - 0.22) / (1 / 3 + 0.04), 9);
  });

  test("on level ground the berm is as high as the freeboard and its earth lies on the lawn", () => {
    const level = sectionGeometry({ ...pencilBasin, groundFall: 0 });
    expect(level.bermHeight).toBeCloseTo(0.2, 12);
    expect(level.toe?.x).toBeCloseTo(5.5 + 0.6 + 1 + 0.6, 12);
    expect(level.berms[0]?.[0]).toEqual({ x: 5.5, y: 0 });
  });

  test("vertical sides go straight up from the floor", () => {
    const vertical = sectionGeometry({ ...pencilBasin, sideSlope: 0, groundFall: 0.02 });
    expect(vertical.downhillRim).toEqual({ x: 4, y: 0 });
    expect(vertical.crestInner).toEqual({ x: 4, y: 0.2 });
    expect(vertical.berms[0]?.[0]?.x).toBe(4);
    expect(vertical.berms[0]?.[0]?.y).toBeCloseTo(-0.16, 12);
  });

  test("ground as steep as a berm's outside has no toe", () => {
    expect(sectionGeometry({ ...pencilBasin, groundFall: 1 / 3 }).toe).toBeNull();
  });
});

// The same basin with the ground 0.55 ft over the full water at the uphill rim: half of the fall is cut, half filled.
describe("a section whose water stands where the cut balances the fill", () => {
  const section = sectionGeometry({ ...pencilBasin, uphillRise: 0.55 });

  test("the uphill face goes on at 3 to 1 and meets the ground 0.55 / (1/3 - 1/10) = 2.357 ft above the rim", () => {
    expect(section.cutTop.x).toBeCloseTo(-5.5 - 0.55 / (1 / 3 - 0.1), 12);
    expect(section.cutTop.y).toBeCloseTo(0.55 + 0.1 * (0.55 / (1 / 3 - 0.1)), 12);
  });

  test("the berm is lower by as much: 0.2 + 1.1 - 0.55 ft", () => {
    expect(section.bermHeight).toBeCloseTo(0.75, 12);
  });

  test("its toe is at (0.2 - 0.55 + 0.55 + 7.1 / 3) / (1/3 - 1/10) ft, on the ground", () => {
    expect(section.toe?.x).toBeCloseTo((0.2 + 7.1 / 3) / (1 / 3 - 0.1), 12);
    expect(section.toe?.y).toBeCloseTo(0.55 - 0.1 * ((section.toe?.x ?? 0) + 5.5), 12);
  });

  test("the floor's downhill edge lies over ground 0.4 ft under the sill, so none of it is on fill", () => {
    expect(section.floorOnFill).toBe(false);
  });

  test("no berm stands uphill, where the ground is higher than one", () => {
    expect(section.berms).toHaveLength(1);
    expect(section.surface[1]).toBe(section.cutTop);
  });

  test("upright sides are cut straight up to the ground", () => {
    expect(sectionGeometry({ ...pencilBasin, sideSlope: 0, uphillRise: 0.4 }).cutTop).toEqual({ x: -4, y: 0.4 });
  });
});

test("the section of a metric yard is the US one, in metres", () => {
  const inFeet = sectionGeometry(drawn(roofInUs));
  const inMetres = sectionGeometry(drawn(roofInMetric));
  inFeet.surface.forEach((point, index) => {
    expect(inMetres.surface[index]?.x).toBeCloseTo(point.x * 0.3048, 9);
    expect(inMetres.surface[index]?.y).toBeCloseTo(point.y * 0.3048, 9);
  });
});

describe("scales", () => {
  test.each([
    [7.3, 5],
    [2, 2],
    [1.9, 1],
    [0.7, 0.5],
    [43, 20],
  ])("a bar with room for %d is %d long", (room, length) => {
    expect(scaleBarLength(room)).toBe(length);
  });

  test("heights are stretched by whole numbers, as far as there is room and no further than allowed", () => {
    expect(verticalExaggeration(40, 170, 5)).toBe(4);
    expect(verticalExaggeration(10, 170, 5)).toBe(5);
  });

  test("a section taller than its room is drawn true", () => {
    expect(verticalExaggeration(400, 170, 5)).toBe(1);
  });
});
