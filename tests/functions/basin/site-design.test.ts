import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaAtHeightSquareFeet, basinFloor } from "../../../functions/basin/basin-shape.ts";
import { basinVolumeCubicFeet } from "../../../functions/basin/basin-volume.ts";
import { USUAL_LIMITS, type DesignLimits } from "../../../functions/basin/design-limits.ts";
import { designSite, type Site } from "../../../functions/basin/site-design.ts";
import { measured } from "../measured.ts";
import { lengthToWidth, shape } from "./basin-inputs.ts";

/** 1000 sq ft of roof under 1 in, without mulch; vertical sides or 3 to 1 as said. */
const roof: Site = {
  contributingSquareFeet: 1000,
  testedInchesPerHour: 0.5,
  reductionFactor: 2,
  stormInches: 1,
  runoffCubicFeet: undefined,
  pondingInches: 6,
  mediaInches: 0,
  mulchInches: 0,
  sideSlope: 3,
  drainHours: 48,
  outline: { shape: "ellipse", lengthToWidth: 2 },
  groundSlopePercent: 0,
  limits: USUAL_LIMITS,
};

/** Nothing is held against the design but that it drains. */
const unlimited: DesignLimits = {
  largestFloorShare: 1e9,
  leastFloorSquareFeet: 0,
  leastDesignInchesPerHour: 0,
  longestEmptyHours: 1e9,
  leastStormInches: 0,
  largestStormInches: 1e9,
};

const contributing = measured(0, 5000);
const rate = measured(0, 12);
const stormInches = measured(0, 4);
const ponding = fc.option(measured(0, 18), { nil: undefined });
const media = measured(0, 36);
const slope = measured(0, 5);

describe("computed by hand", () => {
  test("1000 sq ft of roof on soil tested at 0.5 in/h fit 190 sq ft of vertical-sided basin 6 in deep", () => {
    const site = designSite({ ...roof, sideSlope: 0 });
    expect(site).toMatchObject({ designInchesPerHour: 0.25, pondingInches: 6, breaches: [] });
    // 79.17 cu ft of runoff over 6 in less the 1 in of rain that falls on the basin itself.
    expect(site.runoffCubicFeet).toBeCloseTo(79.17, 2);
    expect(site.basin!.floorSquareFeet).toBeCloseTo(190, 1);
    expect(site.basin!.rimSquareFeet).toBeCloseTo(190, 1);
    expect(site.basin!.heldCubicFeet).toBeCloseTo(95, 1);
    expect(site.basin!.drawdownHours).toBeCloseTo(24, 10);
    expect(site.ruleSquareFeet).toBe(100);
    expect(site.basin!.dig.wholeCubicYards).toBeCloseTo(3.519, 3);
  });

  test("a foot of soil mix is dug straight down under the floor: as many cubic feet more as the floor has square feet", () => {
    const withMix = designSite({ ...roof, testedInchesPerHour: 2, mediaInches: 12 });
    const floor = withMix.basin!.floorSquareFeet;
    const toTheFloor = basinVolumeCubicFeet(floor, 6, 3, "ellipse", 2);
    expect(withMix.basin!.dig.wholeCubicYards).toBeCloseTo((toTheFloor + floor) / 27, 10);
  });

  test("ponding that was left out is the deepest that drains, at most 8 in", () => {
    expect(designSite({ ...roof, testedInchesPerHour: 0.2, pondingInches: undefined }).pondingInches).toBeCloseTo(4.8, 10);
    expect(designSite({ ...roof, testedInchesPerHour: 5, pondingInches: undefined }).pondingInches).toBe(8);
  });

  test("6 in of ponding on soil that drains 4.6 in within 48 h drains too slowly, and is sized all the same", () => {
    const site = designSite({ ...roof, testedInchesPerHour: 12 / 62 });
    expect(site.breaches).toEqual(["drains too slowly", "soil too slow"]);
    expect(site.basin!.drawdownHours).toBeCloseTo(62, 10);
    expect(site.basin!.floorSquareFeet).toBeGreaterThan(0);
  });

  test("a hole that takes no water never drains, and its basin has no size", () => {
    expect(designSite({ ...roof, testedInchesPerHour: 0, mediaInches: 24 })).toEqual({
      designInchesPerHour: 0,
      pondingInches: 6,
      runoffCubicFeet: 950 / 12,
      ruleSquareFeet: 100,
      breaches: ["never drains"],
      basin: undefined,
    });
  });

  test("ponding shallower than the storm holds nothing however wide the basin is", () => {
    const site = designSite({ ...roof, testedInchesPerHour: 0.03, pondingInches: undefined });
    expect(site).toMatchObject({ breaches: ["no area holds it", "soil too slow"], basin: undefined });
    expect(site.pondingInches).toBeCloseTo(0.72, 10);
  });
});

// Handbook section 3c, G2, computed by hand: 17 by 7 ft of rectangular floor with 3 to 1 sides, 6 in deep, have a rim of
// 20 by 10 ft and hold 79.00 cu ft. Less 1 in of rain on the rim, 200 / 12 cu ft, that is the runoff of 787.37 sq ft at 0.95.
describe("a rectangular floor of 17 by 7 ft, computed by hand", () => {
  const runoff = 79 - 200 / 12;
  const site = designSite({
    ...roof,
    contributingSquareFeet: (runoff * 12) / 0.95,
    outline: { shape: "rectangle", lengthToWidth: 17 / 7 },
  });

  test("is what holds 62.33 cu ft of runoff and the rain on its rim", () => {
    expect(site.runoffCubicFeet).toBeCloseTo(runoff, 9);
    expect(site.basin!.floorSquareFeet).toBeCloseTo(119, 9);
    expect(site.basin!.rimSquareFeet).toBeCloseTo(200, 9);
    expect(site.basin!.heldCubicFeet).toBeCloseTo(79, 9);
    expect(site.basin!.dig.wholeCubicYards).toBeCloseTo(79 / 27, 9);
  });

  test("is larger as a round one, whose shorter edge leaves less between its sloping sides", () => {
    const round = designSite({ ...roof, contributingSquareFeet: (runoff * 12) / 0.95, outline: { shape: "ellipse", lengthToWidth: 1 } });
    expect(round.basin!.floorSquareFeet).toBeGreaterThan(119);
  });
});

describe("any yard", () => {
  test("whose floor is more than the least holds the runoff and the rain on its rim, no more and no less; a least floor holds them at 3 in, or just", () => {
    fc.assert(
      fc.property(contributing, rate, stormInches, ponding, media, slope, (area, tested, storm, given, layer, side) => {
        const { basin, runoffCubicFeet, pondingInches } = designSite({
          ...roof,
          contributingSquareFeet: area,
          testedInchesPerHour: tested,
          stormInches: storm,
          pondingInches: given,
          mediaInches: layer,
          sideSlope: side,
        });
        if (basin === undefined) return;
        const balance = basin.heldCubicFeet / (runoffCubicFeet + (basin.rimSquareFeet * storm) / 12);
        expect(basin.floorSquareFeet).toBeGreaterThanOrEqual(50);
        if (basin.floorSquareFeet > 50 || pondingInches > 3) expect(balance).toBeCloseTo(1, 6);
        else expect(balance).toBeGreaterThanOrEqual(1 - 1e-9);
        if (given !== undefined) expect(pondingInches).toBeLessThanOrEqual(given);
      }),
      {
        examples: [
          // The sides of so deep a basin hold the storm alone, but on the least floor not at 4 in, under rain of 3.
          [5, 1, 3, 4, 0, 3],
          [1000, 0.5, 1, 30, 0, 3],
        ],
      },
    );
  });

  test("holds it in a floor of any shape as well", () => {
    fc.assert(
      fc.property(contributing, rate, ponding, slope, shape, lengthToWidth, (area, tested, given, side, outline, ratio) => {
        const { basin, runoffCubicFeet } = designSite({
          ...roof,
          contributingSquareFeet: area,
          testedInchesPerHour: tested,
          pondingInches: given,
          sideSlope: side,
          outline: { shape: outline, lengthToWidth: ratio },
          limits: unlimited,
        });
        if (basin === undefined || basin.floorSquareFeet === 0) return;
        expect(basin.heldCubicFeet / (runoffCubicFeet + basin.rimSquareFeet / 12)).toBeCloseTo(1, 8);
      }),
    );
  });

  test("has a rim, a volume and a dig that follow from its floor", () => {
    fc.assert(
      fc.property(contributing, rate, stormInches, ponding, media, slope, (area, tested, storm, given, layer, side) => {
        const { basin, pondingInches } = designSite({
          ...roof,
          contributingSquareFeet: area,
          testedInchesPerHour: tested,
          stormInches: storm,
          pondingInches: given,
          mediaInches: layer,
          sideSlope: side,
        });
        if (basin === undefined) return;
        const floor = basinFloor(basin.floorSquareFeet, "ellipse", 2);
        expect(basin.rimSquareFeet).toBeCloseTo(areaAtHeightSquareFeet(floor, pondingInches / 12, side), 8);
        const dugForMedia = (basin.floorSquareFeet * layer) / 12;
        expect(basin.dig.wholeCubicYards * 27).toBeCloseTo(
          basinVolumeCubicFeet(basin.floorSquareFeet, pondingInches, side, "ellipse", 2) + dugForMedia,
          6,
        );
        expect(basin.rimSquareFeet).toBeGreaterThanOrEqual(basin.floorSquareFeet);
      }),
    );
  });

  test("drains in time whenever its ponding was left to be worked out", () => {
    fc.assert(
      fc.property(contributing, measured(0.01, 12), stormInches, media, slope, (area, tested, storm, layer, side) => {
        const { breaches } = designSite({
          ...roof,
          contributingSquareFeet: area,
          testedInchesPerHour: tested,
          stormInches: storm,
          pondingInches: undefined,
          mediaInches: layer,
          sideSlope: side,
        });
        expect(breaches).not.toContain("drains too slowly");
      }),
    );
  });

  test("is held against each limit by itself", () => {
    fc.assert(
      fc.property(measured(1, 5000), measured(0.01, 12), measured(4, 18), media, slope, (area, tested, given, layer, side) => {
        const { breaches, basin, pondingInches } = designSite({
          ...roof,
          contributingSquareFeet: area,
          testedInchesPerHour: tested,
          pondingInches: given,
          mediaInches: layer,
          sideSlope: side,
        });
        const design = tested / 2;
        expect(breaches.includes("drains too slowly")).toBe(pondingInches / design > 48 * (1 + 1e-9));
        expect(breaches.includes("empties too slowly")).toBe((pondingInches + 0.25 * layer) / design > 72 * (1 + 1e-9));
        expect(breaches.includes("soil too slow")).toBe(design * (1 + 1e-9) < 0.125);
        expect(breaches.includes("floor too large")).toBe(basin!.floorSquareFeet > 0.43 * area * (1 + 1e-9));
      }),
    );
  });
});

describe("limits met to the last digit are met", () => {
  test("6 in through 0.125 in/h stand 48 h, and with 12 in of mix are gone in 72 h", () => {
    expect(designSite({ ...roof, testedInchesPerHour: 0.25, mediaInches: 12 }).breaches).toEqual([]);
    expect(designSite({ ...roof, testedInchesPerHour: 0.25, mediaInches: 12.1 }).breaches).toEqual(["empties too slowly"]);
    expect(designSite({ ...roof, testedInchesPerHour: 0.2499, pondingInches: 5.9 }).breaches).toEqual(["soil too slow"]);
  });

  // Vertical sides by hand: runoff 0.95 x 1000 / 12 cu ft on (d - 1) / 12 ft; a floor of 430 sq ft for d = 1 + 950 / 430 in.
  test("a floor of 43 percent of what drains to it is the largest", () => {
    const upright = { ...roof, sideSlope: 0 };
    expect(designSite({ ...upright, pondingInches: 1 + 950 / 430 }).breaches).toEqual([]);
    expect(designSite({ ...upright, pondingInches: 1 + 950 / 431 }).breaches).toEqual(["floor too large"]);
  });

  // Vertical sides by hand: 50 sq ft under 1 in of rain and 0.95 in off 200 sq ft stand 1 + 190 / 50 in deep.
  test("the least floor stands as deep as its storm needs, and no shallower than 3 in", () => {
    const small = designSite({ ...roof, sideSlope: 0, contributingSquareFeet: 200 });
    expect(small.basin!.floorSquareFeet).toBe(50);
    expect(small.pondingInches).toBeCloseTo(4.8, 8);
    expect(
      designSite({ ...roof, sideSlope: 0, contributingSquareFeet: 120, limits: { ...USUAL_LIMITS, largestFloorShare: 1 } }),
    ).toMatchObject({
      pondingInches: expect.closeTo(3.28, 8) as number,
      breaches: [],
    });
    expect(designSite({ ...roof, sideSlope: 0, contributingSquareFeet: 50 }).pondingInches).toBe(3);
    expect(designSite({ ...roof, sideSlope: 0, contributingSquareFeet: 5, pondingInches: 2 }).pondingInches).toBe(2);
  });
});

describe("no water has no size", () => {
  test.each([
    ["nothing drains to it", { contributingSquareFeet: 0 }],
    ["there is no storm", { stormInches: 0 }],
    ["nothing runs off", { runoffCubicFeet: 0 }],
  ])("where %s", (_, none) => {
    expect(designSite({ ...roof, ...none })).toMatchObject({
      breaches: ["no water"],
      basin: undefined,
      pondingInches: 6,
      runoffCubicFeet: 0,
    });
  });
});
