import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groundSlopePercent } from "../../../functions/siting/ground-slope.ts";
import { measured } from "../measured.ts";

describe("slopes of the handbooks", () => {
  // Stakes 15 ft apart, as in the Wisconsin homeowner manual (read); the drop is computed by hand.
  test("a drop of 11 in over 15 ft is 6.11 percent", () => {
    expect(groundSlopePercent(11, 180)).toBeCloseTo(6.11, 2);
  });

  // University of Wisconsin Extension pages (read): 10 ft of garden on a 10 percent slope needs 12 in of depth to be level.
  test("12 in over 10 ft are 10 percent", () => {
    expect(groundSlopePercent(12, 120)).toBe(10);
  });
});

describe("any ground", () => {
  const drop = measured(0, 100);
  const run = measured(0.1, 1000);

  test("has one slope in whatever unit both lengths are", () => {
    fc.assert(
      fc.property(drop, run, (fall, length) => {
        expect(groundSlopePercent(fall * 25.4, length * 25.4)).toBeCloseTo(groundSlopePercent(fall, length), 8);
      }),
    );
  });

  test("is steeper with more drop and flatter over more run", () => {
    fc.assert(
      fc.property(drop, run, (fall, length) => {
        expect(groundSlopePercent(fall + 1, length)).toBeGreaterThan(groundSlopePercent(fall, length));
        expect(groundSlopePercent(fall, length + 1)).toBeLessThanOrEqual(groundSlopePercent(fall, length));
      }),
    );
  });

  test("drops its slope times its run", () => {
    fc.assert(
      fc.property(drop, run, (fall, length) => {
        expect((groundSlopePercent(fall, length) / 100) * length).toBeCloseTo(fall, 8);
      }),
      { examples: [[0, 10]] },
    );
  });
});
