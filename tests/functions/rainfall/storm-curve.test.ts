import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stormCurves, STORM_TYPES } from "../../../functions/published/scs-24-hour-storms.ts";
import { designStorm, fallenShare, STORM_MINUTES } from "../../../functions/rainfall/storm-curve.ts";
import { scsBreakpoints, typeIISixMinutes } from "../../published/scs-24-hour-storms.ts";

const type = fc.constantFrom(...STORM_TYPES);
const depth = fc.double({ min: 0, max: 20, noNaN: true });
const hours = fc.double({ min: 0, max: 24, noNaN: true });
const stepMinutes = fc.constantFrom(1, 6, 7.5, 15, 30, 60, 720, 1440);

describe("Soil Conservation Service 24-hour storms at the breakpoints of Chow, Maidment and Mays, 1988 (read in transcription)", () => {
  test.each(scsBreakpoints)(
    "by $hours h types I, IA, II and III have brought $I, $IA, $II and $III of their depth",
    ({ hours: by, I, IA, II, III }) => {
      expect(fallenShare("I", by)).toBe(I);
      expect(fallenShare("IA", by)).toBe(IA);
      // The half-hourly ordinates of II and III are another rounding of the same curves.
      expect(Math.abs(fallenShare("II", by) - II)).toBeLessThanOrEqual(0.0006);
      expect(Math.abs(fallenShare("III", by) - III)).toBeLessThanOrEqual(0.00221);
    },
  );

  test.each(typeIISixMinutes)("type II has brought %f of its depth by the 6-minute series at %f h", (by, share) => {
    expect(Math.abs(fallenShare("II", by) - share)).toBeLessThanOrEqual(0.0005);
  });
});

describe("the curves are whole", () => {
  test.each(STORM_TYPES)("type %s rises from 0 to 1 over 24 h and never falls", (one) => {
    const curve = stormCurves[one].values;
    expect(curve[0]).toEqual([0, 0]);
    expect(curve.at(-1)).toEqual([24, 1]);
    for (const [place, [hoursHere, share]] of curve.entries()) {
      const [hoursBefore, shareBefore] = curve[place - 1] ?? [-1, 0];
      expect(hoursHere).toBeGreaterThan(hoursBefore);
      expect(share).toBeGreaterThanOrEqual(shareBefore);
    }
  });

  test("type II brings 0.306 of its depth from 11.75 to 12 h, more than in any other quarter of an hour", () => {
    const quarters = designStorm(1, "II", 15);
    const heaviest = quarters.toSorted((one, other) => other.stepInches - one.stepInches)[0]!;
    expect(heaviest.minutes).toBe(12 * 60);
    expect(Math.abs(heaviest.stepInches - 0.306)).toBeLessThanOrEqual(0.0005);
    expect(fallenShare("II", 12)).toBe(0.6632);
    expect(fallenShare("II", 12) - fallenShare("II", 11.5)).toBeCloseTo(0.38, 3);
  });

  test("type I brings its heaviest quarter of an hour from 9.75 to 10 h", () => {
    const heaviest = designStorm(1, "I", 15).toSorted((one, other) => other.stepInches - one.stepInches)[0]!;
    expect(heaviest.minutes).toBe(10 * 60);
    expect(heaviest.stepInches).toBeCloseTo(0.153, 12);
  });

  test("type III is the same backward and forward within 0.001 at every minute", () => {
    for (let minute = 0; minute <= STORM_MINUTES; minute += 1) {
      expect(Math.abs(fallenShare("III", minute / 60) + fallenShare("III", 24 - minute / 60) - 1)).toBeLessThanOrEqual(0.001 + 1e-12);
    }
    expect(fallenShare("III", 12)).toBe(0.5);
  });

  test("every ordinate of II and III is printed to four decimals, and of I and IA to three", () => {
    expect(STORM_TYPES.map((one) => stormCurves[one].printedTo)).toEqual([0.001, 0.001, 0.0001, 0.0001]);
  });
});

describe("any design storm", () => {
  test("brings its whole depth in 24 h, in steps that add up to it", () => {
    fc.assert(
      fc.property(depth, type, stepMinutes, (inches, one, step) => {
        const storm = designStorm(inches, one, step);
        expect(storm).toHaveLength(1440 / step + 1);
        expect(storm[0]).toEqual({ minutes: 0, cumulativeInches: 0, stepInches: 0 });
        expect(storm.at(-1)).toMatchObject({ minutes: 1440, cumulativeInches: inches });
        expect(storm.reduce((sum, { stepInches }) => sum + stepInches, 0)).toBeCloseTo(inches, 9);
      }),
      { examples: [[0, "II", 30]] },
    );
  });

  test("never un-rains", () => {
    fc.assert(
      fc.property(depth, type, stepMinutes, (inches, one, step) => {
        for (const { stepInches } of designStorm(inches, one, step)) expect(stepInches).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test("has brought as much by a given minute whatever the step", () => {
    fc.assert(
      fc.property(depth, type, (inches, one) => {
        const fine = designStorm(inches, one, 6);
        for (const { minutes, cumulativeInches } of designStorm(inches, one, 30)) {
          expect(fine[minutes / 6]!.cumulativeInches).toBe(cumulativeInches);
        }
      }),
    );
  });

  test("twice as deep brings twice as much in each step", () => {
    fc.assert(
      fc.property(depth, type, stepMinutes, (inches, one, step) => {
        const twice = designStorm(2 * inches, one, step);
        for (const [place, { stepInches }] of designStorm(inches, one, step).entries())
          expect(twice[place]!.stepInches).toBeCloseTo(2 * stepInches, 9);
      }),
    );
  });

  test("has fallen no less an hour later, and all of it after 24 h", () => {
    fc.assert(
      fc.property(type, hours, hours, (one, early, late) => {
        expect(fallenShare(one, Math.max(early, late))).toBeGreaterThanOrEqual(fallenShare(one, Math.min(early, late)) - 1e-12);
        expect(fallenShare(one, 24 + early)).toBe(1);
      }),
      { examples: [["II", 0, 24]] },
    );
  });
});
