import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { basinStore, type Garden } from "../../../functions/basin/water-balance.ts";
import { capturedShare, longTermBalance, yearsOf, type LongTermBalance } from "../../../functions/long-term/long-term-balance.ts";
import { rainRecord } from "../../../functions/long-term/rain-record.ts";
import { garden, roofGarden } from "../basin/garden.ts";
import { dailyRainMillimetres } from "../rainfall/daily-rain.ts";

/** A bucket under open sky: nothing drains to it, and a square foot of floor makes a depth of every volume. */
function bucket(storeInches: number, drainInchesPerDay: number): Garden {
  return {
    ...roofGarden,
    contributingSquareFeet: 0,
    floorSquareFeet: 12,
    mediaInches: 0,
    pondingInches: storeInches,
    designInchesPerHour: drainInchesPerDay / 24,
  };
}

function balanceOver(rainInches: readonly number[], stepHours: number, one: Garden): LongTermBalance {
  return longTermBalance(rainRecord(rainInches, stepHours), one);
}

const inches = dailyRainMillimetres.Seattle.map((depth) => depth / 25.4);

describe("daily rain in Seattle, 2012 to 2015 (vega-datasets 3.2.1), against a plain bucket", () => {
  // A store that is empty at each wet day takes the rain up to its depth: here a floor that soaks that depth in a day.
  test.each([
    [0.25, 52.49],
    [0.5, 75.6],
    [0.75, 87.5],
    [1, 93.47],
    [1.25, 96.83],
    [1.5, 98.33],
  ])("a store of %f in, empty at each wet day, captures %f percent", (depth, captured) => {
    expect(100 * capturedShare(balanceOver(inches, 24, bucket(0, depth)))!).toBeCloseTo(captured, 2);
  });

  test("21.228 mm, empty at each wet day, captures 90 percent", () => {
    expect(capturedShare(balanceOver(inches, 24, bucket(0, 21.228 / 25.4)))).toBeCloseTo(0.9, 5);
  });

  // The bucket is filled, spilled and drained; ours soaks before it spills, so its store is less by a day's draining.
  test.each([
    { store: 25.4, drain: 25.4, captured: 93.47 },
    { store: 25.4, drain: 12.7, captured: 90.27 },
  ])("a bucket of $store mm that drains $drain mm a day captures $captured percent", ({ store, drain, captured }) => {
    const balance = balanceOver(inches, 24, bucket((store - drain) / 25.4, drain / 25.4));
    expect(100 * capturedShare(balance)!).toBeCloseTo(captured, 2);
    expect(balance.storedCubicFeet).toBe(0);
    if (drain === 12.7) expect(balance.overflowCubicFeet * 25.4).toBeCloseTo(430.6, 1);
  });

  test("the record is four years, in which 4,426 mm fall", () => {
    const balance = balanceOver(inches, 24, bucket(1, 1));
    expect(balance.years).toBe(4);
    expect(balance.directCubicFeet * 25.4).toBeCloseTo(4426, 6);
  });
});

test("in New York, 2012 to 2015 (vega-datasets 3.2.1), 4,178.6 mm run off a roof that runs off whole", () => {
  const rain = dailyRainMillimetres["New York"].map((depth) => depth / 25.4);
  const balance = balanceOver(rain, 24, { ...roofGarden, contributingSquareFeet: 12, runoffShare: 1 });
  expect(balance.runoffCubicFeet * 25.4).toBeCloseTo(1012.5 + 902.7 + 1289.8 + 973.6, 6);
});

describe("the handbook's roof garden, computed by hand", () => {
  const shower = (inchesAnHour: number) => [...new Array<number>(6).fill(inchesAnHour), ...new Array<number>(60).fill(0)];

  test("1 in in 6 h is captured whole; it ponds from 4.8 h on and for 4.2 h", () => {
    const balance = balanceOver(shower(1 / 6), 1, roofGarden);
    expect(capturedShare(balance)).toBe(1);
    expect(balance.soakedCubicFeet).toBeCloseTo(87.5, 9);
    // The media's 50 cu ft fill at 10.41667 cu ft/h in 4.8 h; the pond is gone 3 h after the rain.
    expect(balance.longestPondingHours).toBeCloseTo(6 - 4.8 + 3, 9);
  });

  test("2 in in 6 h spill 50 of 175 cu ft in one overflow, and pond for 16.08 h", () => {
    const balance = balanceOver(shower(1 / 3), 1, roofGarden);
    expect(balance.overflowCubicFeet).toBeCloseTo(50, 9);
    expect(capturedShare(balance)).toBeCloseTo(1 - 50 / 175, 12);
    expect(balance.overflows).toBe(1);
    // 29.16667 in and 4.16667 out an hour fill the media in 2 h; then 50 cu ft of pond take 12 h to drain.
    expect(balance.longestPondingHours).toBeCloseTo(4 + 12, 9);
  });

  test("a second overflow counts when a step between them does not spill", () => {
    const burst = [2, 0, 2, 2, 0];
    expect(balanceOver(burst, 1, { ...roofGarden, designInchesPerHour: 0.1 }).overflows).toBe(2);
  });

  test("a basin that never drains ponds to the end of the record", () => {
    const balance = balanceOver([2, 0, 0, 0], 6, { ...roofGarden, designInchesPerHour: 0, mediaInches: 0 });
    expect(balance.longestPondingHours).toBe(24);
    expect(balance.soakedCubicFeet).toBe(0);
    expect(balance.storedCubicFeet).toBe(50);
  });

  test("a bed without ponding depth never ponds, whether it is full or fills just as fast as it drains", () => {
    expect(balanceOver([1, 1, 0], 1, { ...roofGarden, pondingInches: 0 }).longestPondingHours).toBe(0);
    const even = { ...roofGarden, contributingSquareFeet: 0, pondingInches: 0, mediaInches: 0, designInchesPerHour: 0.5 };
    expect(balanceOver([0.5, 0.5], 1, even)).toMatchObject({ longestPondingHours: 0, overflowCubicFeet: 0 });
  });

  test("evapotranspiration takes its part of what leaves", () => {
    const balance = balanceOver(shower(1 / 6), 1, { ...roofGarden, designInchesPerHour: 0.03, evapotranspirationInchesPerDay: 0.24 });
    expect(balance.evaporatedCubicFeet / (balance.evaporatedCubicFeet + balance.soakedCubicFeet)).toBeCloseTo(0.25, 12);
  });

  test("without rain nothing is captured and nothing lost", () => {
    const balance = balanceOver([0, 0], 1, roofGarden);
    expect(capturedShare(balance)).toBeUndefined();
    expect(balance).toMatchObject({ overflows: 0, overflowCubicFeet: 0, longestPondingHours: 0, soakedCubicFeet: 0 });
  });

  test("8,766 hours are a year", () => {
    expect(yearsOf(8766, 1)).toBe(1);
    expect(yearsOf(365.25, 24)).toBe(1);
  });
});

const record = fc.array(
  fc.oneof(
    fc.constant(0),
    fc.constant(0),
    fc.integer({ min: 1, max: 200 }).map((hundredths) => hundredths / 100),
  ),
  { minLength: 1, maxLength: 120 },
);
const stepHours = fc.constantFrom(0.25, 1, 6, 24);

const arrived = ({ runoffCubicFeet, directCubicFeet }: LongTermBalance) => runoffCubicFeet + directCubicFeet;

describe("any record on any garden", () => {
  test("conserves water to 1e-9", () => {
    fc.assert(
      fc.property(record, stepHours, garden, (rain, length, one) => {
        const balance = balanceOver(rain, length, one);
        const accounted = balance.soakedCubicFeet + balance.evaporatedCubicFeet + balance.overflowCubicFeet + balance.storedCubicFeet;
        expect(Math.abs(arrived(balance) - accounted)).toBeLessThanOrEqual(1e-9 * arrived(balance));
      }),
    );
  });

  test("is the same in steps of a third the length, each with a third of the rain", () => {
    fc.assert(
      fc.property(record, stepHours, garden, (rain, length, one) => {
        const whole = balanceOver(rain, length, one);
        const parts = balanceOver(
          rain.flatMap((depth) => [depth / 3, depth / 3, depth / 3]),
          length / 3,
          one,
        );
        expect(parts.overflowCubicFeet).toBeCloseTo(whole.overflowCubicFeet, 6);
        expect(parts.soakedCubicFeet).toBeCloseTo(whole.soakedCubicFeet, 6);
        expect(parts.longestPondingHours).toBeCloseTo(whole.longestPondingHours, 6);
        expect(parts.storedCubicFeet).toBeCloseTo(whole.storedCubicFeet, 6);
      }),
    );
  });

  test("ponds as long as when every minute is looked at", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 }), garden, (rain, one) => {
        const store = basinStore(one);
        const area = one.runoffShare * one.contributingSquareFeet + store.rimSquareFeet;
        let [stored, minutes, longest] = [0, 0, 0];
        for (const depth of rain) {
          for (let minute = 0; minute < 60; minute += 1) {
            stored = Math.max(stored + (area * depth) / 720 - store.drawCubicFeetPerHour / 60, 0);
            stored = Math.min(stored, store.capacityCubicFeet);
            minutes = stored > store.mediaCubicFeet ? minutes + 1 : 0;
            longest = Math.max(longest, minutes);
          }
        }
        // Spells that meet within a minute may count as one there and as two here.
        const { longestPondingHours } = balanceOver(rain, 1, one);
        if (one.pondingInches > 0.1) expect(Math.abs(longestPondingHours - longest / 60)).toBeLessThanOrEqual(2 / 60 + 1e-9);
      }),
    );
  });

  test("captures no less in faster soil, in a deeper pond between vertical sides and with less draining to it", () => {
    fc.assert(
      fc.property(record, stepHours, garden, (rain, length, one) => {
        const captured = (other: Partial<Garden>) => capturedShare(balanceOver(rain, length, { ...one, sideSlope: 0, ...other })) ?? 1;
        const usual = captured({}) - 1e-9;
        expect(captured({ designInchesPerHour: one.designInchesPerHour + 1 })).toBeGreaterThanOrEqual(usual);
        expect(captured({ pondingInches: one.pondingInches + 1 })).toBeGreaterThanOrEqual(usual);
        expect(captured({ mediaInches: one.mediaInches + 1 })).toBeGreaterThanOrEqual(usual);
        expect(captured({ contributingSquareFeet: one.contributingSquareFeet / 2 })).toBeGreaterThanOrEqual(usual);
      }),
    );
  });

  test("is a bucket that is filled, spilled and drained, of a capacity greater by one step's draining", () => {
    fc.assert(
      fc.property(record, fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }), (rain, store, drain) => {
        let [held, spilled] = [0, 0];
        for (const depth of rain) {
          held += depth;
          spilled += Math.max(held - (store + drain), 0);
          held = Math.min(held, store + drain);
          held -= Math.min(held, drain);
        }
        expect(balanceOver(rain, 24, bucket(store, drain)).overflowCubicFeet).toBeCloseTo(spilled, 8);
      }),
    );
  });
});
