import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { longTermBalance } from "../../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../../functions/long-term/rain-record.ts";
import { roofGarden } from "../basin/garden.ts";
import { dailyRainMillimetres } from "../rainfall/daily-rain.ts";

describe("a record of rain", () => {
  test("keeps the wet steps and counts the dry ones before, between and after them", () => {
    expect(rainRecord([0, 0, 0.5, 0.25, 0, 0, 0, 1, 0], 1)).toEqual({
      steps: 9,
      stepHours: 1,
      stepsBefore: 2,
      rainInches: [0.5, 0.25, 1],
      runoffInches: [0.5, 0.25, 1],
      drySteps: [0, 3, 1],
      totalRainInches: 1.75,
      totalRunoffInches: 1.75,
    });
  });

  // The handbook's table of the dataset: 177, 152, 150 and 144 wet days, 4,426.0 mm in all.
  test("of Seattle's days, 2012 to 2015 (vega-datasets 3.2.1), has 623 wet days with 4,426 mm", () => {
    const record = rainRecord(dailyRainMillimetres.Seattle, 24);
    expect(record.rainInches).toHaveLength(177 + 152 + 150 + 144);
    expect(record.totalRainInches).toBeCloseTo(4426, 6);
    expect(record.steps).toBe(1461);
  });

  test("without rain is all before the first", () => {
    expect(rainRecord([0, 0], 1)).toMatchObject({ steps: 2, stepsBefore: 2, rainInches: [], totalRainInches: 0 });
  });
});

describe("the initial loss", () => {
  test("of 0.1 in comes off the first rain of a storm and off the next only when six dry hours lie between, computed by hand", () => {
    const five = [0.06, 0.06, 0, 0, 0, 0, 0, 0.06];
    expect(rainRecord(five, 1, 0.1).runoffInches).toEqual([0, expect.closeTo(0.02, 12), 0.06]);
    const six = [0.06, 0.06, 0, 0, 0, 0, 0, 0, 0.06];
    expect(rainRecord(six, 1, 0.1).runoffInches).toEqual([0, expect.closeTo(0.02, 12), 0]);
  });

  test("of 0.5 in leaves a roof garden half an inch of a 1 in day, and all of the rain on the garden itself", () => {
    // 1,000 sq ft x 0.95 x 0.5 in / 12 = 39.58 cu ft run off; 100 sq ft x 1 in / 12 = 8.33 cu ft fall on the garden.
    const balance = longTermBalance(rainRecord([1, 0], 24, 0.5), roofGarden);
    expect(balance.runoffCubicFeet).toBeCloseTo(39.5833, 4);
    expect(balance.directCubicFeet).toBeCloseTo(8.3333, 4);
  });
});

const rain = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 2, noNaN: true })), { maxLength: 60 });
const loss = fc.double({ min: 0, max: 1, noNaN: true });
const stepHours = fc.constantFrom(0.25, 1, 5, 6, 24);

/** The initial loss as a person would book it: a store that each storm fills, empty again after six dry hours. */
function bookedRunoff(inches: readonly number[], hours: number, initialLoss: number): readonly number[] {
  let [wetted, dryHours] = [0, 0];
  return inches.map((depth) => {
    dryHours = depth > 0 ? 0 : dryHours + hours;
    if (dryHours >= 6) wetted = 0;
    const taken = Math.min(depth, initialLoss - wetted);
    wetted += taken;
    return depth - taken;
  });
}

describe("any rain", () => {
  test("has as many steps as went in, and as much water", () => {
    fc.assert(
      fc.property(rain, stepHours, (inches, hours) => {
        const { steps, stepsBefore, drySteps, rainInches, totalRainInches } = rainRecord(inches, hours);
        expect(drySteps.reduce((sum, dry) => sum + dry, stepsBefore + rainInches.length)).toBe(steps);
        expect(rainInches).toEqual(inches.filter((depth) => depth > 0));
        expect(totalRainInches).toBeCloseTo(
          inches.reduce((sum, depth) => sum + depth, 0),
          9,
        );
      }),
    );
  });

  test("runs off as much as from a store that each storm fills and six dry hours empty", () => {
    fc.assert(
      fc.property(rain, stepHours, loss, (inches, hours, initialLoss) => {
        const { runoffInches } = rainRecord(inches, hours, initialLoss);
        const booked = bookedRunoff(inches, hours, initialLoss).filter((_, step) => inches[step]! > 0);
        expect(runoffInches).toHaveLength(booked.length);
        for (const [place, runoff] of runoffInches.entries()) expect(runoff).toBeCloseTo(booked[place]!, 12);
      }),
    );
  });

  test("runs off no more where more is lost, and never more than falls", () => {
    fc.assert(
      fc.property(rain, stepHours, loss, loss, (inches, hours, one, other) => {
        const totals = [0, Math.min(one, other), Math.max(one, other)].map((each) => rainRecord(inches, hours, each).totalRunoffInches);
        expect(totals[0]).toBeCloseTo(rainRecord(inches, hours).totalRainInches, 12);
        expect(totals[1]).toBeLessThanOrEqual(totals[0]! + 1e-12);
        expect(totals[2]).toBeLessThanOrEqual(totals[1]! + 1e-12);
      }),
    );
  });
});
