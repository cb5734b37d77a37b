import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { routedTotals, routeStorm, typedStormRains, type RoutedStep, type StepRains } from "../../../functions/basin/storm-route.ts";
import { basinStore, type Garden } from "../../../functions/basin/water-balance.ts";
import { STORM_TYPES } from "../../../functions/published/scs-24-hour-storms.ts";
import { fallenShare } from "../../../functions/rainfall/storm-curve.ts";
import { garden as anyGarden, roofGarden, slicedPond } from "./garden.ts";

const steps: fc.Arbitrary<StepRains> = fc.record({
  stepMinutes: fc.constantFrom(5, 15, 60),
  inches: fc.array(
    fc.integer({ min: 0, max: 150 }).map((hundredths) => hundredths / 100),
    { minLength: 1, maxLength: 30 },
  ),
});
/** A storm is too short for evapotranspiration to tell. */
const garden = anyGarden.map((one): Garden => ({ ...one, evapotranspirationInchesPerDay: 0 }));
const type = fc.constantFrom(...STORM_TYPES);

const sum = (routed: readonly RoutedStep[], key: keyof RoutedStep) => routed.reduce((total, step) => total + step[key], 0);

describe("1 in of even rain in 6 h on the handbook's roof garden, computed by hand from the step's definition", () => {
  const routed = routeStorm({ stepMinutes: 60, inches: new Array<number>(6).fill(1 / 6) }, roofGarden);

  test("14.5833 cu ft flow in and 4.16667 soak in every hour, and 62.5 are stored when the rain ends", () => {
    for (const step of routed.slice(0, 6)) {
      expect(step.inflowCubicFeet).toBeCloseTo(14.5833, 4);
      expect(step.soakedCubicFeet).toBeCloseTo(4.16667, 5);
    }
    expect(routed[5]!.storedCubicFeet).toBeCloseTo(62.5, 9);
    expect(routed[5]!.pondingInches).toBeCloseTo(1.5, 9);
  });

  test("nothing of the 87.5 cu ft overflows; the ponding is gone 3 h after the rain and the media 15 h after it", () => {
    expect(sum(routed, "inflowCubicFeet")).toBeCloseTo(87.5, 9);
    expect(sum(routed, "overflowCubicFeet")).toBe(0);
    expect(routed[7]!.pondingInches).toBeGreaterThan(0);
    expect(routed[8]!.pondingInches).toBeCloseTo(0, 9);
    expect(routed).toHaveLength(21);
    expect(routed[20]!.storedCubicFeet).toBe(0);
    expect(routed[19]!.storedCubicFeet).toBeCloseTo(4.16667, 5);
  });

  test("twice the rain fills the 100 cu ft and spills the 50 that do not fit or soak in", () => {
    const twice = routeStorm({ stepMinutes: 60, inches: new Array<number>(6).fill(1 / 3) }, roofGarden);
    expect(twice[5]!.storedCubicFeet).toBe(100);
    expect(twice[5]!.pondingInches).toBeCloseTo(6, 12);
    expect(sum(twice, "overflowCubicFeet")).toBeCloseTo(175 - 25 - 100, 9);
  });
});

// Handbook section 3c, G2, computed by hand: 17 by 7 ft, 3 to 1, 6 in: 79.00 cu ft under a rim of 200 sq ft.
test("a rectangular basin of 17 by 7 ft catches rain on its 200 sq ft of rim and spills what is over 79 cu ft", () => {
  const rectangle: Garden = {
    ...roofGarden,
    floorSquareFeet: 119,
    mediaInches: 0,
    sideSlope: 3,
    designInchesPerHour: 0,
    outline: { shape: "rectangle", lengthToWidth: 17 / 7 },
  };
  const [step] = routeStorm({ stepMinutes: 60, inches: [2] }, rectangle);
  // 2 in on 0.95 x 1,000 + 200 sq ft are 191.667 cu ft.
  expect(step!.inflowCubicFeet).toBeCloseTo(1150 / 6, 9);
  expect(step!.storedCubicFeet).toBeCloseTo(79, 9);
  expect(step!.pondingInches).toBeCloseTo(6, 9);
  expect(step!.overflowCubicFeet).toBeCloseTo(1150 / 6 - 79, 9);
});

describe("a typed storm", () => {
  test("brings 0.306 of its depth in one quarter of an hour when it is type II", () => {
    const { stepMinutes, inches } = typedStormRains(4, "II");
    expect(stepMinutes).toBe(15);
    expect(inches).toHaveLength(96);
    expect(Math.max(...inches)).toBe(inches[47]);
    expect(Math.abs(inches[47]! / 4 - 0.306)).toBeLessThanOrEqual(0.0005);
  });

  // Each second by itself, its rain read off the curve: nothing is shared with the routing but the curve and the shape.
  test.each(STORM_TYPES)("type %s is routed as when every second is followed by itself", (one) => {
    const sloped: Garden = { ...roofGarden, sideSlope: 3, designInchesPerHour: 1, mediaInches: 6 };
    const store = basinStore(sloped);
    const area = 0.95 * 1000 + store.rimSquareFeet;
    const seconds = 24 * 3600;
    let [stored, soaked, overflow] = [0, 0, 0];
    for (let second = 1; second <= seconds; second += 1) {
      const rain = 3 * (fallenShare(one, second / 3600) - fallenShare(one, (second - 1) / 3600));
      stored += (area * rain) / 12;
      const down = Math.min(stored, 100 / 12 / 3600);
      stored -= down;
      soaked += down;
      const spilled = Math.max(stored - store.capacityCubicFeet, 0);
      stored -= spilled;
      overflow += spilled;
    }
    const routed = routeStorm(typedStormRains(3, one), sloped).slice(0, 96);
    expect(routed[95]!.storedCubicFeet).toBeCloseTo(stored, 6);
    expect(sum(routed, "soakedCubicFeet")).toBeCloseTo(soaked, 4);
    expect(sum(routed, "overflowCubicFeet")).toBeCloseTo(overflow, 4);
    if (one === "II") expect(overflow).toBeGreaterThan(0);
  });
});

describe("any storm through any basin", () => {
  test("balances in every row and over all rows, to 1e-9", () => {
    fc.assert(
      fc.property(steps, garden, (rains, one) => {
        let [before, worst] = [0, 0];
        const routed = routeStorm(rains, one);
        for (const step of routed) {
          const brought = before + step.inflowCubicFeet;
          const accounted = step.storedCubicFeet + step.soakedCubicFeet + step.overflowCubicFeet;
          worst = Math.max(worst, Math.abs(brought - accounted) - 1e-12 * brought);
          before = step.storedCubicFeet;
        }
        expect(worst).toBeLessThanOrEqual(0);
        const inflow = sum(routed, "inflowCubicFeet");
        const outflow = sum(routed, "soakedCubicFeet") + sum(routed, "overflowCubicFeet") + before;
        expect(Math.abs(inflow - outflow)).toBeLessThanOrEqual(1e-9 * inflow);
        const area = one.runoffShare * one.contributingSquareFeet + basinStore(one).rimSquareFeet;
        const rain = rains.inches.reduce((total, inches) => total + inches, 0);
        expect(Math.abs(inflow - (area * rain) / 12)).toBeLessThanOrEqual(1e-9 * inflow + 1e-12);
      }),
    );
  });

  test("stands as deep as its sliced shape says, never above the ponding depth, and spills only when full", () => {
    fc.assert(
      fc.property(steps, garden, (rains, one) => {
        const store = basinStore(one);
        for (const step of routeStorm(rains, one).slice(0, 5)) {
          const pond = Math.max(step.storedCubicFeet - store.mediaCubicFeet, 0);
          expect(step.pondingInches).toBeLessThanOrEqual(one.pondingInches * (1 + 1e-9));
          expect(Math.abs(slicedPond(one, step.pondingInches).cubicFeet - pond)).toBeLessThanOrEqual(1e-6 * (pond + 1));
          if (step.overflowCubicFeet > 0) expect(step.storedCubicFeet).toBe(store.capacityCubicFeet);
        }
      }),
      { numRuns: 25 },
    );
  });

  test("leaves nothing behind when the basin empties, not even a film of rounding", () => {
    const routed = routeStorm({ stepMinutes: 60, inches: [1] }, { ...roofGarden, designInchesPerHour: 0.7 });
    expect(routed.at(-1)!.storedCubicFeet).toBe(0);
    expect(sum(routed, "soakedCubicFeet")).toBeCloseTo(87.5, 10);
  });

  test("is followed until it is empty, and no longer than 72 h after the rain", () => {
    fc.assert(
      fc.property(steps, garden, (rains, one) => {
        const routed = routeStorm(rains, one);
        const longest = rains.inches.length + (72 * 60) / rains.stepMinutes;
        const last = routed.at(-1)!;
        expect(last.hours * 60).toBeCloseTo(routed.length * rains.stepMinutes, 6);
        expect(routed.length).toBeGreaterThanOrEqual(rains.inches.length);
        expect(routed.length).toBeLessThanOrEqual(longest);
        if (routed.length < longest) expect(last.storedCubicFeet).toBe(0);
        expect(routed.slice(rains.inches.length, -1).every(({ storedCubicFeet }) => storedCubicFeet > 0)).toBe(true);
      }),
      {
        examples: [
          [{ stepMinutes: 60, inches: [0] }, roofGarden],
          [
            { stepMinutes: 60, inches: [1] },
            { ...roofGarden, designInchesPerHour: 0 },
          ],
        ],
      },
    );
  });

  test("deeper never spills less, and through faster soil never more", () => {
    fc.assert(
      fc.property(type, fc.double({ min: 0, max: 10, noNaN: true }), garden, (one, inches, basin) => {
        const spilled = (depth: number, rate: number) =>
          sum(routeStorm(typedStormRains(depth, one), { ...basin, designInchesPerHour: rate }), "overflowCubicFeet");
        const usual = spilled(inches, basin.designInchesPerHour);
        expect(spilled(inches + 1, basin.designInchesPerHour)).toBeGreaterThanOrEqual(usual - 1e-9);
        expect(spilled(inches, basin.designInchesPerHour + 0.5)).toBeLessThanOrEqual(usual + 1e-9);
      }),
      { numRuns: 50 },
    );
  });
});

test("a storm of no steps brings nothing and leaves nothing", () => {
  expect(routedTotals([])).toEqual({ inflowCubicFeet: 0, soakedCubicFeet: 0, overflowCubicFeet: 0, storedCubicFeet: 0 });
});
