import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinFloor, FILL } from "../../../functions/basin/basin-shape.ts";
import { basinDig, deepestDigFeet } from "../../../functions/earthwork/basin-dig.ts";
import { cutAndFill, type BermedBasin } from "../../../functions/earthwork/cut-fill.ts";
import { levelPad } from "../../../functions/earthwork/level-pad.ts";
import { soilVolumeInState } from "../../../functions/earthwork/soil-state.ts";
import { EARTH_SOILS } from "../../../functions/published/fm-5-434.ts";
import { measured } from "../measured.ts";
import { byColumns, type StandingBasin } from "./by-columns.ts";

/** 20 ft across and 10 ft down a slope of 6 percent. */
const pad: BermedBasin = {
  floor: { areaSquareFeet: 200, lengthFeet: 20, widthFeet: 10, fill: 1 },
  pondingInches: 0,
  mulchInches: 0,
  mediaInches: 0,
  sideSlope: 0,
  groundSlopePercent: 6,
  bermTopFeet: 0,
  bermSideSlope: 0,
  freeboardInches: 0,
  soil: "loam",
};

/** 17 by 7 ft of floor, 3 to 1 to 6 in, 20 by 10 ft at the rim: 79 cu ft of water. */
const rectangle: BermedBasin = {
  ...pad,
  floor: basinFloor(119, "rectangle", 17 / 7),
  pondingInches: 6,
  sideSlope: 3,
  bermTopFeet: 1,
  bermSideSlope: 3,
  freeboardInches: 2,
};

const basin: fc.Arbitrary<BermedBasin> = fc
  .record({
    shape: fc.constantFrom("ellipse" as const, "rectangle" as const),
    lengthFeet: measured(2, 30),
    widthFeet: measured(2, 20),
    pondingInches: measured(0.5, 12),
    mulchInches: measured(0, 6),
    mediaInches: fc.oneof(fc.constant(0), measured(0, 24)),
    sideSlope: fc.oneof(fc.constant(0), measured(0.5, 5)),
    groundSlopePercent: fc.oneof(fc.constant(0), measured(0.1, 15)),
    bermTopFeet: measured(0, 3),
    bermSideSlope: measured(0, 4),
    freeboardInches: measured(0, 6),
    soil: fc.constantFrom(...EARTH_SOILS),
  })
  .map(({ shape, lengthFeet, widthFeet, ...rest }) => ({
    ...rest,
    floor: { areaSquareFeet: FILL[shape] * lengthFeet * widthFeet, lengthFeet, widthFeet, fill: FILL[shape] },
  }));

/** FM 5-434, table 1-1. */
const COMPACTED = { sand: 0.95, loam: 0.9, clay: 0.9 };

/** The same basin as heights over the ground plan, for the columns. */
function standing(one: BermedBasin): StandingBasin {
  const { floor, sideSlope } = one;
  const [ponding, mulch, mix, freeboard] = [one.pondingInches, one.mulchInches, one.mediaInches, one.freeboardInches].map(
    (inches) => inches / 12,
  ) as [number, number, number, number];
  const rim = sideSlope * ponding;
  const inner = rim + sideSlope * freeboard;
  const outer = inner + one.bermTopFeet;
  const fall = one.groundSlopePercent / 100;
  const width = floor.widthFeet + 2 * rim;
  const rise = (fall * width) / (1 + Math.sqrt(COMPACTED[one.soil]));
  const groundHeight = (down: number) => rise - fall * (down + width / 2);
  const within = (out: number) => {
    if (out < 0) return -ponding - mulch - mix;
    return out < rim ? out / sideSlope - ponding - mulch : undefined;
  };
  const drop = freeboard - groundHeight(floor.widthFeet / 2 + outer);
  const toe = outer + (one.bermSideSlope * drop) / (1 - fall * one.bermSideSlope);
  const cutTop = sideSlope * (ponding + rise / (1 - fall * sideSlope));
  return {
    shape: floor.fill === 1 ? "rectangle" : "ellipse",
    floorLength: floor.lengthFeet,
    floorWidth: floor.widthFeet,
    groundHeight,
    dugHeight: (out) => within(out) ?? (sideSlope === 0 ? Number.POSITIVE_INFINITY : out / sideSlope - ponding),
    placedHeight(out) {
      const inside = within(out);
      if (inside !== undefined) return inside;
      if (out < inner) return out / sideSlope - ponding;
      return out < outer ? freeboard : freeboard - (out - outer) / one.bermSideSlope;
    },
    edges: [0, rim, inner, outer, toe, cutTop]
      .sort((one1, other) => one1 - other)
      .filter((way, place, all) => way > (all[place - 1] ?? -1)),
  };
}

describe("computed by hand", () => {
  test("a level pad 10 ft wide on 6 percent, in loam, is cut 5.132 ft wide: 0.790 cu ft a foot in place fill 0.711 compacted", () => {
    const { cutWidthFeet, cutSquareFeet, fillSquareFeet } = levelPad(10, 0.06, 0.9);
    expect(cutWidthFeet).toBeCloseTo(5.132, 3);
    expect(cutSquareFeet).toBeCloseTo(0.79, 3);
    expect(fillSquareFeet).toBeCloseTo(0.711, 3);
    expect(cutSquareFeet * 0.9).toBeCloseTo(fillSquareFeet, 12);
  });

  test("4 cu yd of loam cut and a berm of 1.81 compacted, which takes 2.01 in place, leave 1.99 in place or 2.49 loose", () => {
    const taken = soilVolumeInState(1.81, "compacted", "in place", "loam");
    expect(taken).toBeCloseTo(2.01, 2);
    expect(4 - taken).toBeCloseTo(1.99, 2);
    expect(soilVolumeInState(4 - taken, "in place", "loose", "loam")).toBeCloseTo(2.49, 2);
  });

  test("without ponding, layers or berm, the basin is the level pad and nothing is left over", () => {
    const done = cutAndFill(pad);
    expect(done.dig.wholeCubicYards).toBeCloseTo((20 * 0.79) / 27, 3);
    expect(done.fillCubicYards).toBeCloseTo((20 * 0.711) / 27, 3);
    expect(done.leftOverCubicYards).toBeCloseTo(0, 12);
    expect(done.bermHeightFeet).toBeCloseTo(0.06 * (10 - 5.132), 4);
    expect(done.hasFloorOnFill).toBe(true);
  });

  // 79 cu ft of water, 200 sq ft x 3 in of mulch = 50 cu ft, 119 sq ft x 12 in of mix = 119 cu ft.
  test("on level ground the cut is the water's volume, the mulch under the rim and the mix under the floor: 248 cu ft", () => {
    const done = cutAndFill({ ...rectangle, groundSlopePercent: 0, mulchInches: 3, mediaInches: 12 });
    expect(done.dig.wholeCubicYards * 27).toBeCloseTo(248, 12);
    expect(done.dig.slopeCubicYards).toBe(0);
    expect(deepestDigFeet({ ...rectangle, groundSlopePercent: 0, mulchInches: 3, mediaInches: 12 })).toBeCloseTo(1.75, 12);
  });

  // Crest 21 x 11 to 23 x 13 ft, 2 in high, with corners: layers of 24 x 14 to 23 x 13 outside less 20 x 10 to 21 x 11 inside.
  test("on level ground the berm is a ring of the freeboard's height: 2 in of 336 to 299 sq ft less 200 to 231", () => {
    const outside = ((24 * 14 + 4 * 23.5 * 13.5 + 23 * 13) / 6) * (1 / 6);
    const inside = ((20 * 10 + 4 * 20.5 * 10.5 + 21 * 11) / 6) * (1 / 6);
    const done = cutAndFill({ ...rectangle, groundSlopePercent: 0 });
    expect(done.fillCubicYards * 27).toBeCloseTo(outside - inside, 10);
    expect(done.bermHeightFeet).toBeCloseTo(1 / 6, 12);
    expect(done.hasFloorOnFill).toBe(false);
  });

  test("on level ground without freeboard there is no berm", () => {
    const done = cutAndFill({ ...rectangle, groundSlopePercent: 0, freeboardInches: 0 });
    expect([done.fillCubicYards, done.bermHeightFeet]).toEqual([0, 0]);
    expect(done.leftOverCubicYards).toBe(done.dig.wholeCubicYards);
  });

  // 10 x 10 ft on 6 percent, 6 in of ponding: the ground stands 0.8079 ft over the floor uphill and 0.2079 ft downhill.
  test("6 in of ponding between upright sides on 6 percent digs 9.7 in at the uphill edge and 2.5 in at the downhill edge", () => {
    const upright = { ...pad, floor: { areaSquareFeet: 100, lengthFeet: 10, widthFeet: 10, fill: 1 }, pondingInches: 6 };
    expect(12 * deepestDigFeet(upright)).toBeCloseTo(9.695, 3);
    expect(cutAndFill(upright).dig.wholeCubicYards).toBeCloseTo((100 * (0.8079 + 0.2079)) / 2 / 27, 4);
    expect(cutAndFill(upright).hasFloorOnFill).toBe(false);
  });

  // A cone cut off by a plane holds pi/3 z^2 H^3 / (1 - s^2 z^2)^1.5, H from its tip straight up to the plane (geometry).
  test("a cone 6 in deep, 3 to 1, on 10 percent is dug as the cone that the ground cuts off", () => {
    const rim = 3;
    const rise = 0.1 * (rim / (1 + Math.sqrt(0.9)) - rim / 2);
    const cone = { ...pad, floor: basinFloor(0, "ellipse", 1), pondingInches: 6, sideSlope: 3, groundSlopePercent: 10 };
    expect(basinDig(cone).wholeCubicYards * 27).toBeCloseTo(((Math.PI / 3) * 9 * (0.5 + rise) ** 3) / (1 - 0.01 * 9) ** 1.5, 9);
  });

  test("a small basin on level ground cannot fill its own berm, and the shortage is negative", () => {
    const small = { ...pad, groundSlopePercent: 0, pondingInches: 1, bermTopFeet: 2, bermSideSlope: 4, freeboardInches: 6 };
    expect(cutAndFill(small).leftOverCubicYards).toBeLessThan(0);
  });
});

describe("any basin on a slope", () => {
  test("has the cut and the fill that upright columns add up to", () => {
    fc.assert(
      fc.property(basin, (one) => {
        const { cut, fill } = byColumns(standing(one));
        const done = cutAndFill(one);
        expect(Math.abs(done.dig.wholeCubicYards * 27 - cut)).toBeLessThanOrEqual(5e-4 * (1 + cut));
        expect(Math.abs(done.fillCubicYards * 27 - fill)).toBeLessThanOrEqual(1e-3 * (1 + fill));
      }),
      {
        numRuns: 30,
        examples: [
          [pad],
          [rectangle],
          [{ ...rectangle, mulchInches: 3, mediaInches: 12 }],
          [{ ...rectangle, floor: basinFloor(119, "ellipse", 2), groundSlopePercent: 14, mulchInches: 3 }],
        ],
      },
    );
  });

  test("keeps its earth: what is cut is in the fill or left over, counted in place", () => {
    fc.assert(
      fc.property(basin, (one) => {
        const { dig, fillCubicYards, leftOverCubicYards } = cutAndFill(one);
        const inFill = fillCubicYards / COMPACTED[one.soil];
        expect(Math.abs(dig.wholeCubicYards - inFill - leftOverCubicYards)).toBeLessThanOrEqual(1e-9 * (1 + dig.wholeCubicYards + inFill));
      }),
    );
  });

  test("is dug as its parts say: to the floor, for the mulch, for the mix, and what the slope adds", () => {
    fc.assert(
      fc.property(basin, (one) => {
        const dig = basinDig(one);
        const bare = basinDig({ ...one, mulchInches: 0, mediaInches: 0, groundSlopePercent: 0 });
        expect(dig.toFloorCubicYards).toBe(bare.wholeCubicYards);
        expect(dig.slopeCubicYards).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  test("is dug deeper uphill and bermed higher downhill the steeper the ground", () => {
    fc.assert(
      fc.property(basin, measured(0.1, 5), (one, steeper) => {
        const steep = { ...one, groundSlopePercent: one.groundSlopePercent + steeper };
        expect(deepestDigFeet(steep)).toBeGreaterThan(deepestDigFeet(one));
        expect(cutAndFill(steep).bermHeightFeet).toBeGreaterThan(cutAndFill(one).bermHeightFeet);
      }),
    );
  });

  test("gives more cut the deeper it ponds, and the more mulch and soil mix go in", () => {
    fc.assert(
      fc.property(basin, measured(0.1, 6), (one, deeper) => {
        const cut = (other: Partial<BermedBasin>) => basinDig({ ...one, ...other }).wholeCubicYards;
        expect(cut({ pondingInches: one.pondingInches + deeper })).toBeGreaterThan(cut({}));
        expect(cut({ mulchInches: one.mulchInches + deeper })).toBeGreaterThan(cut({}));
        expect(cut({ mediaInches: one.mediaInches + deeper })).toBeGreaterThan(cut({}));
      }),
    );
  });
});

describe("any level pad", () => {
  const width = measured(0, 60);
  const slope = measured(0, 0.5);
  const compacted = measured(0.5, 1);

  test("fills with its own cut, compacted", () => {
    fc.assert(
      fc.property(width, slope, compacted, (feet, rise, factor) => {
        const { cutSquareFeet, fillSquareFeet } = levelPad(feet, rise, factor);
        expect(cutSquareFeet * factor).toBeCloseTo(fillSquareFeet, 9);
      }),
    );
  });

  test("is cut on half of its width or more", () => {
    fc.assert(
      fc.property(width, slope, compacted, (feet, rise, factor) => {
        const { cutWidthFeet } = levelPad(feet, rise, factor);
        expect(cutWidthFeet).toBeGreaterThanOrEqual(feet / 2);
        expect(cutWidthFeet).toBeLessThanOrEqual(feet);
      }),
      { examples: [[10, 0.06, 1]] },
    );
  });

  test("takes earth in proportion to the slope, and to the square of its width", () => {
    fc.assert(
      fc.property(width, slope, compacted, (feet, rise, factor) => {
        expect(levelPad(feet, 2 * rise, factor).cutSquareFeet).toBeCloseTo(2 * levelPad(feet, rise, factor).cutSquareFeet, 9);
        expect(levelPad(2 * feet, rise, factor).cutSquareFeet).toBeCloseTo(4 * levelPad(feet, rise, factor).cutSquareFeet, 6);
      }),
    );
  });
});
