import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinFloorSquareFeet } from "../../../functions/basin/basin-area.ts";
import { areaForCaptureSquareFeet } from "../../../functions/long-term/area-for-capture.ts";
import { capturedShare, longTermBalance } from "../../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../../functions/long-term/rain-record.ts";
import { garden, roofGarden } from "../basin/garden.ts";
import { dailyRainMillimetres } from "../rainfall/daily-rain.ts";

const inches = dailyRainMillimetres.Seattle.map((depth) => depth / 25.4);
const record = fc.array(
  fc.oneof(
    fc.constant(0),
    fc.integer({ min: 1, max: 200 }).map((hundredths) => hundredths / 100),
  ),
  { minLength: 1, maxLength: 40 },
);
const share = fc.double({ min: 0.05, max: 1, noNaN: true });

describe("daily rain in Seattle, 2012 to 2015 (vega-datasets 3.2.1)", () => {
  // 21.228 mm a day, empty at each wet day, capture 90 percent. A floor as large as its roof sees the day's rain twice.
  test("a floor that soaks twice 21.228 mm a day must be as large as its roof to capture 90 percent", () => {
    const soaking = { ...roofGarden, runoffShare: 1, pondingInches: 0, mediaInches: 0, designInchesPerHour: (2 * 21.228) / 25.4 / 24 };
    expect(areaForCaptureSquareFeet(0.9, rainRecord(inches, 24), soaking)! / 1000).toBeCloseTo(1, 3);
  });
});

describe("against the area that holds one storm", () => {
  test.each([
    { sideSlope: 0, mediaInches: 0 },
    { sideSlope: 3, mediaInches: 0 },
    { sideSlope: 3, mediaInches: 18 },
  ])(
    "capturing all of 1 in in a soil that takes nothing needs BASINAREA's floor, sides $sideSlope to 1 and media $mediaInches in",
    (shape) => {
      const one = { ...roofGarden, ...shape, designInchesPerHour: 0 };
      const held = basinFloorSquareFeet({
        ...one,
        runoffCubicFeet: (one.runoffShare * one.contributingSquareFeet) / 12,
        stormInches: 1,
        stormHours: 0,
        rainOnBasinCounted: true,
      })!;
      expect(areaForCaptureSquareFeet(1, rainRecord([1, 0], 1), one)! / held).toBeCloseTo(1, 9);
    },
  );
});

describe("corners", () => {
  test("nothing wanted needs no floor, and neither does a record without rain", () => {
    expect(areaForCaptureSquareFeet(0, rainRecord([1], 1), roofGarden)).toBe(0);
    expect(areaForCaptureSquareFeet(1, rainRecord([0, 0], 1), roofGarden)).toBe(0);
  });

  test("no floor holds rain that is deeper than the basin and its soaking", () => {
    expect(areaForCaptureSquareFeet(1, rainRecord([10], 1), { ...roofGarden, mediaInches: 0 })).toBeUndefined();
    expect(areaForCaptureSquareFeet(0.5, rainRecord([10], 1), { ...roofGarden, mediaInches: 0 })).toBeGreaterThan(0);
  });

  test("sloping sides alone may capture the share", () => {
    expect(areaForCaptureSquareFeet(0.01, rainRecord([0.1], 1), { ...roofGarden, contributingSquareFeet: 1, sideSlope: 4 })).toBe(0);
  });
});

// Numbers at the end of what arithmetic can tell apart: each of these once went on for ever.
test.each([
  "contributingSquareFeet",
  "runoffShare",
  "pondingInches",
  "designInchesPerHour",
  "mediaInches",
  "voidShare",
  "sideSlope",
] as const)("an answer is found for the least number there is as %s, and for a share wanted or rain of it", (key) => {
  const least = { ...roofGarden, [key]: Number.MIN_VALUE };
  for (const share of [Number.MIN_VALUE, 0.5, 1]) {
    for (const rain of [1, Number.MIN_VALUE]) {
      const floor = areaForCaptureSquareFeet(share, rainRecord([rain, 0], 1), least);
      expect(floor === undefined || floor >= 0).toBe(true);
    }
  }
});

describe("any record on any garden", () => {
  test("captures the share on the area found, and less than it on a hair less", () => {
    fc.assert(
      fc.property(share, record, garden, (wanted, rain, any) => {
        const one = { ...any, contributingSquareFeet: any.contributingSquareFeet + 10 };
        const captured = (floorSquareFeet: number) => capturedShare(longTermBalance(rainRecord(rain, 1), { ...one, floorSquareFeet })) ?? 1;
        const floor = areaForCaptureSquareFeet(wanted, rainRecord(rain, 1), one);
        if (floor === undefined) expect(captured(100 * one.contributingSquareFeet)).toBeLessThan(wanted);
        else {
          expect(captured(floor)).toBeGreaterThanOrEqual(wanted);
          // The last step of the bracket, which starts at 100 times the contributing area and is halved 60 times.
          const lastStep = (100 * one.contributingSquareFeet) / 2 ** 60;
          if (floor > 0) expect(captured(Math.max(floor * (1 - 1e-9) - lastStep, 0))).toBeLessThan(wanted);
        }
      }),
      {
        examples: [
          [
            0.05,
            [0.01],
            {
              contributingSquareFeet: 0,
              runoffShare: 0,
              floorSquareFeet: 10,
              pondingInches: 0.0012,
              designInchesPerHour: 0,
              mediaInches: 0,
              voidShare: 0.05,
              sideSlope: 0.0004,
              evapotranspirationInchesPerDay: 0,
            },
          ],
        ],
      },
    );
  });

  test("needs no less area for a larger share", () => {
    fc.assert(
      fc.property(share, share, record, garden, (one, other, rain, any) => {
        const vertical = { ...any, contributingSquareFeet: any.contributingSquareFeet + 10, sideSlope: 0 };
        const [less, more] = [Math.min(one, other), Math.max(one, other)].map(
          (wanted) => areaForCaptureSquareFeet(wanted, rainRecord(rain, 1), vertical) ?? Infinity,
        );
        expect(more!).toBeGreaterThanOrEqual(less! * (1 - 1e-9));
      }),
    );
  });

  test("needs twice the area where twice as much drains to it, between vertical sides", () => {
    fc.assert(
      fc.property(share, record, garden, (wanted, rain, any) => {
        const one = { ...any, contributingSquareFeet: any.contributingSquareFeet + 10, sideSlope: 0 };
        const [floor, twice] = [one, { ...one, contributingSquareFeet: 2 * one.contributingSquareFeet }].map((each) =>
          areaForCaptureSquareFeet(wanted, rainRecord(rain, 1), each),
        );
        if (floor === undefined || twice === undefined) expect(twice).toBe(floor);
        else expect(Math.abs(twice - 2 * floor)).toBeLessThanOrEqual(1e-6 * twice);
      }),
    );
  });
});
