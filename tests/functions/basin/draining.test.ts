import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { deepestPondingInches, drainsInTime } from "../../../functions/basin/deepest-ponding.ts";
import { drawdownHours } from "../../../functions/basin/drawdown.ts";
import { measured } from "../measured.ts";

const rate = measured(0.01, 12);
const hours = measured(0, 96);
const depth = measured(0, 48);
const share = measured(0, 1);

describe("drawdowns computed by hand", () => {
  test.each([
    { ponding: 6, rate: 0.5, hours: 12 },
    { ponding: 6, rate: 0.25, hours: 24 },
    { ponding: 4, rate: 0.1, hours: 40 },
    { ponding: 9, rate: 0.5, hours: 18 },
  ])("$ponding in at $rate in/h drain in $hours h", ({ ponding, rate: inchesPerHour, hours: expected }) => {
    expect(drawdownHours(ponding, inchesPerHour, 0, 0.25)).toBeCloseTo(expected, 10);
    expect(deepestPondingInches(inchesPerHour, expected)).toBeCloseTo(ponding, 10);
  });

  // Wisconsin homeowner manual GWQ037 (read): a hole 6 in deep must empty in 24 h.
  test("6 in that must empty in 24 h need 0.25 in/h", () => {
    expect(drainsInTime(6, 0.25, 24)).toBe(true);
    expect(drainsInTime(6, 0.249, 24)).toBe(false);
  });

  test("6 in of ponding over 24 in of media with voids of 0.25 drain at 0.5 in/h in 24 h", () => {
    expect(drawdownHours(6, 0.5, 24, 0.25)).toBeCloseTo(24, 10);
  });
});

describe("any basin", () => {
  test("as deep as drains in time drains exactly at the limit", () => {
    fc.assert(
      fc.property(rate, hours, (inchesPerHour, limit) => {
        const deepest = deepestPondingInches(inchesPerHour, limit);
        expect(drawdownHours(deepest, inchesPerHour, 0, 0)).toBeCloseTo(limit, 8);
        expect(drainsInTime(deepest, inchesPerHour, limit)).toBe(true);
        expect(drainsInTime(deepest + 0.01, inchesPerHour, limit)).toBe(false);
      }),
    );
  });

  test("takes as long in millimetres as in inches", () => {
    fc.assert(
      fc.property(depth, rate, depth, share, (ponding, inchesPerHour, media, voids) => {
        expect(drawdownHours(ponding * 25.4, inchesPerHour * 25.4, media * 25.4, voids)).toBeCloseTo(
          drawdownHours(ponding, inchesPerHour, media, voids),
          6,
        );
      }),
    );
  });

  test("takes longer with deeper ponding or media, and half as long in soil twice as fast", () => {
    fc.assert(
      fc.property(depth, rate, depth, share, (ponding, inchesPerHour, media, voids) => {
        const time = drawdownHours(ponding, inchesPerHour, media, voids);
        expect(drawdownHours(ponding + 1, inchesPerHour, media, voids)).toBeGreaterThan(time);
        expect(drawdownHours(ponding, inchesPerHour, media + 1, voids)).toBeGreaterThanOrEqual(time);
        expect(drawdownHours(ponding, 2 * inchesPerHour, media, voids)).toBeCloseTo(time / 2, 8);
      }),
    );
  });

  test("drains at once when nothing ponds, and never when nothing soaks in", () => {
    expect(drainsInTime(0, 0, 48)).toBe(true);
    expect(drainsInTime(0.1, 0, 48)).toBe(false);
    expect(deepestPondingInches(0, 48)).toBe(0);
  });
});
