import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinFloorSquareFeet, type BasinStorm } from "../../../functions/basin/basin-area.ts";
import { areaAtHeightSquareFeet, basinFloor } from "../../../functions/basin/basin-shape.ts";
import { basinVolumeCubicFeet } from "../../../functions/basin/basin-volume.ts";
import { measured } from "../measured.ts";

/** A storm on an area of which a share runs off. */
type YardStorm = Omit<BasinStorm, "runoffCubicFeet"> & { readonly contributingSquareFeet: number; readonly runoffShare: number };

const storm: YardStorm = {
  contributingSquareFeet: 1000,
  designInchesPerHour: 0.25,
  pondingInches: 6,
  stormInches: 1,
  runoffShare: 0.95,
  mediaInches: 18,
  voidShare: 0.25,
  stormHours: 6,
  sideSlope: 0,
  rainOnBasinCounted: false,
};

const anyStorm: fc.Arbitrary<YardStorm> = fc.record({
  contributingSquareFeet: measured(0, 5000),
  designInchesPerHour: measured(0, 5),
  pondingInches: measured(0, 18),
  stormInches: measured(0, 6),
  runoffShare: measured(0, 1),
  mediaInches: measured(0, 36),
  voidShare: measured(0, 1),
  stormHours: measured(0, 24),
  sideSlope: measured(0, 5),
  rainOnBasinCounted: fc.boolean(),
});

function runoffOf({ runoffShare, contributingSquareFeet, stormInches }: YardStorm): number {
  return (runoffShare * contributingSquareFeet * stormInches) / 12;
}

function floorFor(one: YardStorm): number | undefined {
  return basinFloorSquareFeet({ ...one, runoffCubicFeet: runoffOf(one) });
}

/** Both sides of the water balance for a floor, from the shape alone. */
function balance(one: YardStorm, floorSquareFeet: number): { arrives: number; held: number } {
  const rim = areaAtHeightSquareFeet(basinFloor(floorSquareFeet, "ellipse", 2), one.pondingInches / 12, one.sideSlope);
  const onBasin = one.rainOnBasinCounted ? (rim * one.stormInches) / 12 : 0;
  const ponding = basinVolumeCubicFeet(floorSquareFeet, one.pondingInches, one.sideSlope, "ellipse", 2);
  const below = (floorSquareFeet * (one.voidShare * one.mediaInches + one.designInchesPerHour * one.stormHours)) / 12;
  return { arrives: runoffOf(one) + onBasin, held: ponding + below };
}

describe("computed by hand", () => {
  test("1 in on 1000 sq ft of roof, held by 6 in of ponding, 18 in of media and 6 h at 0.25 in/h, needs 79.2 sq ft", () => {
    expect(floorFor(storm)).toBeCloseTo(79.2, 1);
  });

  // University extension slides (read): half of a roof of 50 by 30 ft, 1 in of rain, a garden 6 in deep: 750 / 6 = 125 sq ft.
  test("1 in off 750 sq ft needs 125 sq ft at 6 in deep", () => {
    const slides = { ...storm, contributingSquareFeet: 750, runoffShare: 1, mediaInches: 0, stormHours: 0 };
    expect(floorFor(slides)).toBeCloseTo(125, 9);
  });

  // A county rain garden page crediting Schmidt, Shaw and Dods 2007 (read): 240 sq ft of roof, 4 in deep, 60 sq ft.
  test("1 in off 240 sq ft needs 60 sq ft at 4 in deep", () => {
    expect(
      floorFor({ ...storm, contributingSquareFeet: 240, pondingInches: 4, runoffShare: 1, mediaInches: 0, stormHours: 0 }),
    ).toBeCloseTo(60, 9);
  });

  // Ontario's form Ap = i D Ai / (d' + f D), as printed on the design guide's wiki (read); the inputs are ours.
  test("5 mm/h for 4 h on 100 m2, held by 0.15 m and 20 mm/h, needs 8.70 m2", () => {
    const ontario = {
      ...storm,
      contributingSquareFeet: 100 / 0.09290304,
      designInchesPerHour: 20 / 25.4,
      pondingInches: 150 / 25.4,
      stormInches: 20 / 25.4,
      runoffShare: 1,
      mediaInches: 0,
      stormHours: 4,
    };
    expect(floorFor(ontario)! * 0.09290304).toBeCloseTo(8.7, 2);
  });

  test("counting the rain on 100 sq ft of basin, 1000 sq ft of roof fills it with 87.5 cu ft of its 100", () => {
    // Vertical sides, 6 in of ponding and 24 in of media with voids of 0.25, 6 h at 0.5 in/h: 25 cu ft soak in, 62.5 stay.
    const end = { ...storm, designInchesPerHour: 0.5, mediaInches: 24, rainOnBasinCounted: true };
    expect(balance(end, 100).arrives).toBeCloseTo(87.5, 10);
    expect(balance(end, 100).held - 25).toBeCloseTo(100, 10);
    // A basin that is just full is smaller: 79.17 / (0.5 + 0.5 + 0.25 - 0.0833).
    expect(floorFor(end)).toBeCloseTo(67.857, 3);
  });
});

const nothingDrainsToIt = {
  contributingSquareFeet: 0,
  designInchesPerHour: 0.001,
  pondingInches: 3.329,
  stormInches: 3.33,
  runoffShare: 0,
  mediaInches: 0.001,
  voidShare: 0.001,
  stormHours: 0,
  sideSlope: 0.001,
  rainOnBasinCounted: true,
};

describe("any storm", () => {
  test("that a basin can hold fills it exactly: what arrives is what it holds", () => {
    fc.assert(
      fc.property(anyStorm, (one) => {
        const floor = floorFor(one);
        if (floor === undefined || floor === 0) return;
        const { arrives, held } = balance(one, floor);
        expect(held / arrives).toBeCloseTo(1, 8);
      }),
      {
        examples: [
          [{ ...storm, sideSlope: 3, rainOnBasinCounted: true }],
          [{ ...storm, sideSlope: 3, stormInches: 4, rainOnBasinCounted: true }],
        ],
      },
    );
  });

  test("that no basin can hold overfills every floor tried", () => {
    fc.assert(
      fc.property(anyStorm, measured(0.1, 100_000), (one, floor) => {
        if (floorFor(one) !== undefined) return;
        const { arrives, held } = balance(one, floor);
        expect(held).toBeLessThan(arrives);
      }),
      {
        examples: [
          [{ ...storm, pondingInches: 0, mediaInches: 0, stormHours: 0 }, 100],
          [{ ...storm, pondingInches: 1, mediaInches: 0, stormHours: 0, sideSlope: 3, rainOnBasinCounted: true }, 100],
        ],
      },
    );
  });

  test("that needs no floor is held by the sloping sides alone, or there is no runoff", () => {
    fc.assert(
      fc.property(anyStorm, (one) => {
        if (floorFor(one) !== 0) return;
        const { arrives, held } = balance(one, 0);
        expect(held >= arrives * (1 - 1e-12) || runoffOf(one) === 0).toBe(true);
      }),
      {
        examples: [
          [{ ...storm, contributingSquareFeet: 0 }],
          [{ ...storm, contributingSquareFeet: 0, pondingInches: 0, mediaInches: 0, stormHours: 0 }],
          [{ ...storm, contributingSquareFeet: 5, sideSlope: 3 }],
        ],
      },
    );
  });

  test("needs a larger floor when more drains to it, and a smaller one when it soaks in for longer", () => {
    fc.assert(
      fc.property(anyStorm, (one) => {
        const floor = floorFor(one);
        if (floor === undefined) return;
        const more = floorFor({ ...one, contributingSquareFeet: one.contributingSquareFeet + 100 });
        if (more !== undefined) expect(more).toBeGreaterThanOrEqual(floor * (1 - 1e-9));
        expect(floorFor({ ...one, stormHours: one.stormHours + 1 })).toBeLessThanOrEqual(floor * (1 + 1e-9) + 1e-9);
      }),
      { examples: [[nothingDrainsToIt]] },
    );
  });

  test("needs twice the floor for twice the area, when the sides are vertical", () => {
    fc.assert(
      fc.property(anyStorm, (one) => {
        const upright = { ...one, sideSlope: 0 };
        const floor = floorFor(upright);
        if (floor === undefined) return;
        const twice = floorFor({ ...upright, contributingSquareFeet: 2 * one.contributingSquareFeet })!;
        expect(twice / (floor || 1)).toBeCloseTo(floor === 0 ? 0 : 2, 8);
      }),
    );
  });
});
