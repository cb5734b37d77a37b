import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "../../../functions/runoff/runoff-volume.ts";
import { measured } from "../measured.ts";

describe("computed by hand from the definition", () => {
  test("1 in on 1000 sq ft of roof at 0.95 is 79.17 cu ft", () => {
    expect(runoffVolumeCubicFeet(1000, 1, 0.95)).toBeCloseTo(79.17, 2);
  });

  test("1 in on 1000 sq ft is 623.38 gallons", () => {
    expect(runoffVolumeCubicFeet(1000, 1, 1) * (1728 / 231)).toBeCloseTo(623.38, 2);
  });

  test("1 mm on 1 square metre is 1 litre", () => {
    const squareMetre = 1 / 0.09290304;
    expect(runoffVolumeCubicFeet(squareMetre, 1 / 25.4, 1) * 28.316846592).toBeCloseTo(1, 12);
  });

  // Env-Wq 1504.10: 0.05 + 0.9 I, printed to 0.01.
  test("all of an impervious surface runs off 0.95 of the rain", () => {
    expect(ROOF_RUNOFF_SHARE).toBeCloseTo(0.05 + 0.9 * 1, 12);
  });
});

describe("any area", () => {
  const amount = measured(0, 100_000);
  const share = measured(0, 1);

  test("sends no more water than falls on it", () => {
    fc.assert(
      fc.property(amount, amount, share, (area, rain, part) => {
        const volume = runoffVolumeCubicFeet(area, rain, part);
        expect(volume).toBeGreaterThanOrEqual(0);
        expect(volume).toBeLessThanOrEqual(((area * rain) / 12) * (1 + 1e-12));
      }),
      {
        examples: [
          [0, 0, 0],
          [1000, 1, 0],
          [1000, 1, 1],
        ],
      },
    );
  });

  test("sends as much in two halves as whole", () => {
    fc.assert(
      fc.property(amount, amount, share, (area, rain, part) => {
        expect(2 * runoffVolumeCubicFeet(area / 2, rain, part)).toBeCloseTo(runoffVolumeCubicFeet(area, rain, part), 6);
      }),
    );
  });

  test("sends more as the storm deepens", () => {
    fc.assert(
      fc.property(amount, amount, share, (area, rain, part) => {
        expect(runoffVolumeCubicFeet(area, rain + 1, part)).toBeGreaterThanOrEqual(runoffVolumeCubicFeet(area, rain, part));
      }),
    );
  });
});
