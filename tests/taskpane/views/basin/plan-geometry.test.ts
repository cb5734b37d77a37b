import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { draftBasin } from "../../../../addin/actions/basin/draft-basin.ts";
import { outlineArea, normalAt, planGeometry, pointOn, SILL_ANGLE } from "../../../../taskpane/views/basin/plan-geometry.ts";
import { sectionGeometry } from "../../../../taskpane/views/basin/section-geometry.ts";
import { drawn, pencilBasin, roofInMetric, roofInUs, settings } from "./basin-examples.ts";

const relative = (drawnArea: number, computed: number) => Math.abs(drawnArea - computed) / computed;

function areaOf(answer: ReturnType<typeof draftBasin>["floorArea"]): number {
  if ("sentence" in answer) throw new Error(answer.sentence);
  return answer.value;
}

describe("the plan is drawn to the areas that are computed", () => {
  test.each([
    ["US units", roofInUs],
    ["metric units", roofInMetric],
  ])("the drawn floor and rim have the floor and rim area, in %s", (_, inputs) => {
    const draft = draftBasin(inputs, settings);
    const plan = planGeometry(drawn(inputs));
    expect(relative(outlineArea(plan.floor), areaOf(draft.floorArea))).toBeLessThan(1e-9);
    expect(relative(outlineArea(plan.rim), areaOf(draft.rimArea))).toBeLessThan(1e-9);
  });

  test("so they have at any roof, ponding, soil mix and side slope", () => {
    const inputs = fc.record({
      contributingArea: fc.double({ min: 100, max: 10_000, noNaN: true }),
      pondingDepth: fc.double({ min: 2, max: 12, noNaN: true }),
      mediaDepth: fc.double({ min: 0, max: 36, noNaN: true }),
      sideSlope: fc.double({ min: 0, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(inputs, (chosen) => {
        const basin = { ...roofInUs, ...chosen, testedRate: 4 };
        const draft = draftBasin(basin, settings);
        if ("sentence" in draft.floorArea || draft.floorArea.value < 1) return;
        const plan = planGeometry(drawn(basin));
        expect(relative(outlineArea(plan.floor), draft.floorArea.value)).toBeLessThan(1e-9);
        expect(relative(outlineArea(plan.rim), areaOf(draft.rimArea))).toBeLessThan(1e-9);
      }),
    );
  });

  test("a metric yard is drawn in metres, the same basin as in feet", () => {
    const inFeet = planGeometry(drawn(roofInUs));
    const inMetres = planGeometry(drawn(roofInMetric));
    expect(inMetres.floor.halfLength).toBeCloseTo(inFeet.floor.halfLength * 0.3048, 9);
    expect(inMetres.crestOuter.halfWidth).toBeCloseTo(inFeet.crestOuter.halfWidth * 0.3048, 9);
    expect(inMetres.extent.bottom).toBeCloseTo(inFeet.extent.bottom * 0.3048, 9);
  });
});

// Computed by hand from the definitions: 16 by 8 ft floor, 3 to 1 sides to 0.5 ft, 0.2 ft of freeboard, 1 ft of crest.
describe("a basin checked with pencil and paper", () => {
  const plan = planGeometry(pencilBasin);

  test("the rim is 19 by 11 ft: each axis grows by 2 x 3 x 0.5 ft", () => {
    expect(plan.rim).toEqual({ shape: "ellipse", halfLength: 9.5, halfWidth: 5.5 });
  });

  test("the crest runs from 0.6 ft to 1.6 ft outside the rim", () => {
    expect(plan.crestInner.halfWidth).toBeCloseTo(6.1, 12);
    expect(plan.crestOuter.halfWidth).toBeCloseTo(7.1, 12);
  });

  test("straight downhill the berm's toe lies 13.3 ft from the middle: 1.46 ft of height run out at 1/3 - 1/10", () => {
    // Crest over ground: 0.2 + 0.1 x (7.1 + 5.5) = 1.46 ft; 1.46 / (1/3 - 0.1) = 6.257 ft beyond 7.1 ft.
    const lowest = plan.berm.toe?.[24];
    expect(lowest?.x).toBeCloseTo(0, 9);
    expect(lowest?.y).toBeCloseTo(7.1 + 1.46 / (1 / 3 - 0.1), 9);
  });

  test("on level ground the berm goes all around, its toe three times the freeboard outside the crest", () => {
    const level = planGeometry({ ...pencilBasin, groundFall: 0 });
    expect(level.berm.isAllAround).toBe(true);
    expect(level.cutEdge).toEqual([]);
    const outside = { shape: "ellipse", halfLength: 8 + 1.5 + 0.6 + 1 + 0.6, halfWidth: 4 + 1.5 + 0.6 + 1 + 0.6 };
    level.berm.toe?.forEach(({ x, y }) => {
      expect((x / outside.halfLength) ** 2 + (y / outside.halfWidth) ** 2).toBeCloseTo(1, 9);
    });
    expect(level.berm.toe).toHaveLength(49);
  });

  test("plan and section agree where the berm's toe is", () => {
    expect(plan.berm.toe?.[24]?.y).toBeCloseTo(sectionGeometry(pencilBasin).toe?.x ?? Number.NaN, 9);
  });

  test("ground as steep as a berm's outside has no toe, and the plan still has an extent", () => {
    const steep = planGeometry({ ...pencilBasin, groundFall: 0.34 });
    expect(steep.berm.toe).toBeNull();
    expect(Number.isFinite(steep.extent.bottom)).toBe(true);
  });

  test("an unmeasured slope is drawn level", () => {
    expect(planGeometry({ ...pencilBasin, groundFall: null })).toEqual(planGeometry({ ...pencilBasin, groundFall: 0 }));
  });

  test("the overflow sill starts at the rim and is twice as wide as the crest", () => {
    const [first, , , last] = plan.sill;
    expect(Math.hypot((first?.x ?? 0) - (last?.x ?? 0), (first?.y ?? 0) - (last?.y ?? 0))).toBeCloseTo(2, 9);
    const middle = pointOn(plan.rim, SILL_ANGLE);
    expect(((first?.x ?? 0) + (last?.x ?? 0)) / 2).toBeCloseTo(middle.x, 9);
  });
});

// Computed by hand from the definitions: 16 by 8 ft of rectangle, 3 to 1 sides to 0.5 ft, 0.2 ft of freeboard, 1 ft of crest.
describe("a rectangle checked with pencil and paper", () => {
  const plan = planGeometry({ ...pencilBasin, shape: "rectangle" });

  test("covers 16 x 8 = 128 sq ft with its floor and 19 x 11 = 209 sq ft with its rim", () => {
    expect(outlineArea(plan.floor)).toBeCloseTo(128, 12);
    expect(outlineArea(plan.rim)).toBeCloseTo(209, 12);
  });

  test("has its corners where length and width meet", () => {
    const corner = pointOn(plan.floor, Math.PI / 4);
    expect(corner.x).toBeCloseTo(8, 12);
    expect(corner.y).toBeCloseTo(4, 12);
  });

  test("slopes straight out from its sides", () => {
    expect(normalAt(plan.rim, 0.2)).toEqual({ x: 1, y: 0 });
    expect(normalAt(plan.rim, Math.PI / 2)).toEqual({ x: 0, y: 1 });
  });

  test("has the same berm toe straight downhill as the ellipse", () => {
    expect(plan.berm.toe?.[24]?.y).toBeCloseTo(7.1 + 1.46 / (1 / 3 - 0.1), 9);
  });
});

describe("the cut uphill, checked with pencil and paper", () => {
  test("runs 0.55 / (1/3 - 1/10) = 2.357 ft out from the rim straight uphill, and meets the berm's end where the ground is as high as the crest", () => {
    const plan = planGeometry({ ...pencilBasin, uphillRise: 0.55 });
    expect(plan.cutEdge[24]?.x).toBeCloseTo(0, 9);
    expect(plan.cutEdge[24]?.y).toBeCloseTo(-5.5 - 0.55 / (1 / 3 - 0.1), 9);
    expect(plan.extent.top).toBeCloseTo(plan.cutEdge[24]?.y ?? 0, 12);
    // At the middle the ground is level with the water, and 0.2 ft of freeboard over it 2 ft further uphill.
    for (const end of [plan.cutEdge[0], plan.cutEdge.at(-1), plan.berm.toe?.[0], plan.berm.foot.at(-1)]) expect(end?.y).toBeCloseTo(-2, 9);
  });

  test("where the water stands level with the ground uphill, a low berm stands there too", () => {
    // Crest 5.5 + 0.6 + 1 ft from the middle, 0.2 ft high over ground at 0.16; its face meets the ground 0.04 / (1/3 + 0.1) further out.
    const plan = planGeometry(pencilBasin);
    expect(plan.berm.isAllAround).toBe(true);
    expect(plan.extent.top).toBeCloseTo(-7.1 - 0.04 / (1 / 3 + 0.1), 9);
  });

  test("a berm dies out where the ground is as high as its crest", () => {
    const plan = planGeometry({ ...pencilBasin, uphillRise: 0.9 });
    // The ground stands 0.2 ft over the water where 0.9 - 0.1 (y + 5.5) = 0.2: 1.5 ft downhill of the middle, with no berm left.
    expect(plan.berm.foot[0]?.y).toBeCloseTo(1.5, 9);
    expect(plan.berm.crestInner[0]?.y).toBeCloseTo(1.5, 9);
  });

  test("a rectangle's berm ends on its short sides in the same place", () => {
    const plan = planGeometry({ ...pencilBasin, shape: "rectangle", uphillRise: 0.55 });
    expect(plan.berm.toe?.[0]?.y).toBeCloseTo(-2, 9);
    expect(plan.berm.toe?.[0]?.x).toBeCloseTo(8 + 1.5 + 0.6, 9);
  });

  test("no berm is drawn where all the ground is higher than a crest would be", () => {
    const plan = planGeometry({ ...pencilBasin, groundFall: 0, uphillRise: 1 });
    expect(plan.berm.toe?.every(({ x, y }) => Math.abs(x) < 1e-9 && y > 0)).toBe(true);
    expect(plan.extent.top).toBeCloseTo(-5.5 - 3, 9);
  });
});

test("the outward direction of an ellipse points straight out at its four ends", () => {
  const ellipse = { shape: "ellipse", halfLength: 8, halfWidth: 4 } as const;
  expect(normalAt(ellipse, 0)).toEqual({ x: 1, y: 0 });
  expect(normalAt(ellipse, Math.PI / 2).y).toBeCloseTo(1, 12);
});
