import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { holeIntervals } from "../../../functions/infiltration/drop-rate.ts";
import { wallCorrectedInchesPerHour } from "../../../functions/infiltration/hole-rate.ts";
import { holeTestIntervals } from "../../../functions/infiltration/hole-test.ts";
import { measured } from "../measured.ts";
import { fallingLevel, readingsOf } from "./falling-level.ts";

describe("a hole test, interval by interval", () => {
  // Riverside County handbook, 2011, appendix A (from memory): 0.37 in/h; 9 in/h is its raw drop.
  test("the Riverside example drops at 9 in/h and infiltrates at 0.37 in/h", () => {
    const [interval, ...others] = holeTestIntervals(readingsOf([0, 47.75], [10, 46.25]), 8);
    expect(others).toEqual([]);
    expect(interval).toMatchObject({ minutes: 10, change: undefined, verdict: "not steady" });
    expect(interval!.dropInchesPerHour).toBeCloseTo(9, 12);
    expect(interval!.rateInchesPerHour).toBeCloseTo(0.37, 2);
  });

  test("settles when the corrected rate changes by 10 percent or less", () => {
    const rows = holeTestIntervals(readingsOf([0, 12], [30, 9], [60, 7.5], [90, 6.3]), 8);
    expect(rows.map(({ minutes }) => minutes)).toEqual([30, 60, 90]);
    expect(rows.map(({ verdict }) => verdict)).toEqual(["not steady", "not steady", "steady"]);
    expect(rows[1]!.change).toBeCloseTo((rows[1]!.rateInchesPerHour - rows[0]!.rateInchesPerHour) / rows[0]!.rateInchesPerHour, 12);
  });

  test("says so of an interval that starts in a dry hole, and judges the one that empties it", () => {
    const rows = holeTestIntervals(readingsOf([0, 2], [10, 1], [20, 0], [30, 0]), 8);
    expect(rows.map(({ verdict }) => verdict)).toEqual(["not steady", "not steady", "hole dry"]);
    expect(rows[2]).toMatchObject({ dropInchesPerHour: 0, rateInchesPerHour: 0 });
  });
});

describe("any hole test", () => {
  test("has a row for each interval, with its drop and its corrected rate", () => {
    fc.assert(
      fc.property(fallingLevel, measured(3, 48), (readings, diameter) => {
        const rows = holeTestIntervals(readings, diameter);
        holeIntervals(readings).forEach(({ from, to, dropInchesPerHour }, row) => {
          expect(rows[row]).toMatchObject({
            minutes: to.minutes,
            dropInchesPerHour,
            rateInchesPerHour: wallCorrectedInchesPerHour(from, to, diameter),
          });
        });
        expect(rows).toHaveLength(readings.length - 1);
      }),
    );
  });

  test("changes by no more than the whole of a rate, up or down", () => {
    fc.assert(
      fc.property(fallingLevel, (readings) => {
        for (const { change } of holeTestIntervals(readings, 8).slice(1)) expect(Math.abs(change!)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("is steady exactly where the change is 10 percent or less", () => {
    fc.assert(
      fc.property(fallingLevel, (readings) => {
        for (const { change, verdict } of holeTestIntervals(readings, 8).slice(1)) {
          expect(verdict).toBe(Math.abs(change!) <= 0.1 + 1e-9 ? "steady" : "not steady");
        }
      }),
    );
  });
});
