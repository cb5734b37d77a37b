import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bermSectionSquareFeet, bermVolumeCubicFeet } from "../../../functions/earthwork/berm-volume.ts";
import { cutAndFill, type SlopingGarden } from "../../../functions/earthwork/cut-fill.ts";
import { levelPad } from "../../../functions/earthwork/level-pad.ts";
import { soilVolumeInState } from "../../../functions/earthwork/soil-state.ts";
import { EARTH_SOILS } from "../../../functions/published/fm-5-434.ts";
import { measured } from "../measured.ts";

const pad: SlopingGarden = {
  acrossFeet: 20,
  downFeet: 10,
  pondingInches: 0,
  groundSlopePercent: 6,
  bermTopFeet: 0,
  bermSideSlope: 0,
  freeboardInches: 0,
  soil: "loam",
};

const garden: fc.Arbitrary<SlopingGarden> = fc.record({
  acrossFeet: measured(1, 40),
  downFeet: measured(1, 20),
  pondingInches: measured(0, 12),
  groundSlopePercent: fc.oneof(fc.constant(0), measured(1, 20)),
  bermTopFeet: measured(0, 3),
  bermSideSlope: measured(0, 4),
  freeboardInches: measured(0, 6),
  soil: fc.constantFrom(...EARTH_SOILS),
});

/** The same garden cut into thin strips across the slope and added up: an independent way to its volumes, in cu yd. */
function byStrips(one: SlopingGarden): { cut: number; fill: number } {
  const strips = 4000;
  const slope = one.groundSlopePercent / 100;
  const compacted = { sand: 0.95, loam: 0.9, clay: 0.9 }[one.soil];
  const balanced = one.downFeet / (1 + Math.sqrt(compacted));
  const section = (height: number): number => (height <= 0 ? 0 : height * (one.bermTopFeet + one.bermSideSlope * height));
  // Heights over the floor of a garden whose water level is the level pad's.
  const ground = (down: number): number => one.pondingInches / 12 + slope * (balanced - down);
  const crest = one.pondingInches / 12 + one.freeboardInches / 12;
  let cut = 0;
  let fill = one.acrossFeet * (section(crest - ground(0)) + section(crest - ground(one.downFeet)));
  for (let strip = 0; strip < strips; strip += 1) {
    const wide = one.downFeet / strips;
    const height = ground((strip + 0.5) * wide);
    cut += Math.max(height, 0) * wide * one.acrossFeet;
    fill += Math.max(-height, 0) * wide * one.acrossFeet + 2 * section(crest - height) * wide;
  }
  return { cut: cut / 27, fill: fill / 27 };
}

describe("computed by hand", () => {
  test("a level pad 10 ft wide on 6 percent, in loam, is cut 5.132 ft wide: 0.790 cu ft a foot in place fill 0.711 compacted", () => {
    const { cutWidthFeet, cutSquareFeet, fillSquareFeet } = levelPad(10, 0.06, 0.9);
    expect(cutWidthFeet).toBeCloseTo(5.132, 3);
    expect(cutSquareFeet).toBeCloseTo(0.79, 3);
    expect(fillSquareFeet).toBeCloseTo(0.711, 3);
    expect(cutSquareFeet * 0.9).toBeCloseTo(fillSquareFeet, 12);
  });

  test("a berm 20 ft long, 1 ft wide at the top, 9 in high with 3 to 1 sides takes 48.75 cu ft, 1.806 cu yd compacted", () => {
    expect(bermVolumeCubicFeet(20, 1, 0.75, 3)).toBe(48.75);
    expect(bermVolumeCubicFeet(20, 1, 0.75, 3) / 27).toBeCloseTo(1.806, 3);
  });

  test("4 cu yd of loam cut and a berm of 1.81 compacted, which takes 2.01 in place, leave 1.99 in place or 2.49 loose", () => {
    const taken = soilVolumeInState(1.81, "compacted", "in place", "loam");
    expect(taken).toBeCloseTo(2.01, 2);
    expect(4 - taken).toBeCloseTo(1.99, 2);
    expect(soilVolumeInState(4 - taken, "in place", "loose", "loam")).toBeCloseTo(2.49, 2);
  });

  test("without ponding or berm, the garden is the level pad and nothing is left over", () => {
    const done = cutAndFill(pad);
    expect(done.cutCubicYards).toBeCloseTo((20 * 0.79) / 27, 3);
    expect(done.fillCubicYards).toBeCloseTo((20 * 0.711) / 27, 3);
    expect(done.leftOverCubicYards).toBeCloseTo(0, 12);
    expect(done.bermHeightFeet).toBeCloseTo(0.06 * (10 - 5.132), 4);
    expect(done.hasFloorOnFill).toBe(true);
  });

  test("on level ground the cut is the ponding depth over the floor and the berm a ring of the freeboard's height", () => {
    const done = cutAndFill({ ...pad, groundSlopePercent: 0, pondingInches: 6, bermTopFeet: 1, bermSideSlope: 3, freeboardInches: 2 });
    expect(done.cutCubicYards).toBeCloseTo((20 * 10 * 0.5) / 27, 12);
    expect(done.fillCubicYards).toBeCloseTo((60 * (1 / 6 + 3 / 36)) / 27, 12);
    expect(done.bermHeightFeet).toBeCloseTo(1 / 6, 12);
    expect(done.deepestDigFeet).toBeCloseTo(0.5, 12);
    expect(done.hasFloorOnFill).toBe(false);
  });

  test("on level ground without freeboard there is no berm", () => {
    const done = cutAndFill({ ...pad, groundSlopePercent: 0, pondingInches: 6, bermTopFeet: 1, bermSideSlope: 3 });
    expect([done.fillCubicYards, done.bermHeightFeet]).toEqual([0, 0]);
    expect(done.leftOverCubicYards).toBe(done.cutCubicYards);
  });

  // 10 x 10 ft on 6 percent, 6 in of ponding: the ground stands 0.8079 ft over the floor uphill and 0.2079 ft downhill.
  test("6 in of ponding on 6 percent digs 9.7 in at the uphill edge and 2.5 in at the downhill edge", () => {
    const done = cutAndFill({ ...pad, acrossFeet: 10, pondingInches: 6 });
    expect(12 * done.deepestDigFeet).toBeCloseTo(9.695, 3);
    expect(done.cutCubicYards).toBeCloseTo((100 * (0.8079 + 0.2079)) / 2 / 27, 4);
    expect(done.hasFloorOnFill).toBe(false);
  });

  test("a small garden on level ground cannot fill its own berm, and the shortage is negative", () => {
    expect(
      cutAndFill({ ...pad, groundSlopePercent: 0, pondingInches: 1, bermTopFeet: 2, bermSideSlope: 4, freeboardInches: 6 })
        .leftOverCubicYards,
    ).toBeLessThan(0);
  });
});

describe("any garden on a slope", () => {
  test("has the cut and the fill that thin strips across the slope add up to", () => {
    fc.assert(
      fc.property(garden, (one) => {
        const { cut, fill } = byStrips(one);
        const done = cutAndFill(one);
        expect(Math.abs(done.cutCubicYards - cut)).toBeLessThanOrEqual(1e-5 * (1 + cut));
        expect(Math.abs(done.fillCubicYards - fill)).toBeLessThanOrEqual(1e-4 * (1 + fill));
      }),
      { numRuns: 60, examples: [[pad], [{ ...pad, bermTopFeet: 1, bermSideSlope: 3, freeboardInches: 4 }]] },
    );
  });

  test("keeps its earth: what is cut is in the fill or left over, counted in place", () => {
    fc.assert(
      fc.property(garden, (one) => {
        const done = cutAndFill(one);
        const inFill = done.fillCubicYards / { sand: 0.95, loam: 0.9, clay: 0.9 }[one.soil];
        expect(Math.abs(done.cutCubicYards - inFill - done.leftOverCubicYards)).toBeLessThanOrEqual(
          1e-9 * (1 + done.cutCubicYards + inFill),
        );
      }),
    );
  });

  test("is dug deeper uphill and bermed higher downhill the steeper the ground", () => {
    fc.assert(
      fc.property(garden, measured(0.1, 5), (one, steeper) => {
        const flat = cutAndFill(one);
        const steep = cutAndFill({ ...one, groundSlopePercent: one.groundSlopePercent + steeper });
        expect(steep.deepestDigFeet).toBeGreaterThan(flat.deepestDigFeet);
        expect(steep.bermHeightFeet).toBeGreaterThan(flat.bermHeightFeet);
      }),
    );
  });

  test("gives more cut and the same berm when it ponds deeper", () => {
    fc.assert(
      fc.property(garden, measured(0.1, 6), (one, deeper) => {
        const shallow = cutAndFill(one);
        const deep = cutAndFill({ ...one, pondingInches: one.pondingInches + deeper });
        expect(deep.cutCubicYards).toBeGreaterThan(shallow.cutCubicYards);
        expect(deep.bermHeightFeet).toBe(shallow.bermHeightFeet);
        expect(deep.fillCubicYards).toBeLessThanOrEqual(shallow.fillCubicYards + 1e-12);
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

describe("any berm", () => {
  const feet = measured(0, 10);

  test("holds the trapezoid of its crest and its foot, times its length", () => {
    fc.assert(
      fc.property(feet, feet, feet, measured(0, 5), (long, top, height, side) => {
        const foot = top + 2 * side * height;
        expect(bermVolumeCubicFeet(long, top, height, side)).toBeCloseTo((long * height * (top + foot)) / 2, 6);
      }),
    );
  });

  test("takes as much in two lengths as in one", () => {
    fc.assert(
      fc.property(feet, feet, feet, feet, (one, other, top, height) => {
        expect(bermVolumeCubicFeet(one + other, top, height, 3)).toBeCloseTo(
          bermVolumeCubicFeet(one, top, height, 3) + bermVolumeCubicFeet(other, top, height, 3),
          6,
        );
      }),
    );
  });

  test("is nothing without height, and more the higher", () => {
    fc.assert(
      fc.property(feet, feet, measured(0, 5), measured(0.001, 1), (top, height, side, more) => {
        expect(bermSectionSquareFeet(top, 0, side)).toBe(0);
        expect(bermSectionSquareFeet(top, height + more, side)).toBeGreaterThanOrEqual(bermSectionSquareFeet(top, height, side));
      }),
    );
  });
});
