import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { filterAreaSquareFeet } from "../../../functions/basin/filter-area.ts";
import { mediaFeetPerDay } from "../../../functions/published/georgia-stormwater-manual.ts";
import { measured } from "../measured.ts";

const water = measured(0, 20_000);
const media = measured(6, 72);
const mediaRate = measured(0.1, 5);
const averagePonding = measured(0, 12);
const drainHours = measured(6, 96);

// Georgia Stormwater Management Manual, volume 2, 2001, appendix D (answer from memory; k of 0.5 ft a day and 48 h read):
// 8,102 cu ft, 5 ft of media, 3 in of average ponding, 2 days, printed to 1 sq ft.
describe("the Georgia example", () => {
  const inchesPerHour = (mediaFeetPerDay.values["bioretention soil"] * 12) / 24;

  test("8,102 cu ft through 5 ft of media at 0.5 ft a day under 3 in of average ponding in 2 days take 7,716 sq ft", () => {
    expect(Math.abs(filterAreaSquareFeet(8102, 60, inchesPerHour, 3, 48) - 7716)).toBeLessThanOrEqual(0.5);
  });

  test("the volume of the example follows from its runoff coefficient rounded to 0.62", () => {
    expect((1.2 * 0.62 * 3 * 43_560) / 12).toBeCloseTo(8102, -1);
  });

  test("the deepest ponding in place of the average makes the bed too small", () => {
    expect(filterAreaSquareFeet(8102, 60, inchesPerHour, 6, 48)).toBeLessThan(7716 - 300);
  });

  // Computed by hand: the same in meters and days is 716.86 sq m.
  test("the same arithmetic in meters and days gives the same bed", () => {
    const foot = 0.3048;
    const squareMeters = (8102 * foot ** 3 * 5 * foot) / (0.5 * foot * (0.25 * foot + 5 * foot) * 2);
    expect(squareMeters).toBeCloseTo(716.86, 2);
    expect(filterAreaSquareFeet(8102, 60, inchesPerHour, 3, 48) * foot ** 2).toBeCloseTo(squareMeters, 6);
  });
});

describe("any filter bed", () => {
  test("passes its water in time: rate x gradient x area x hours gives the volume back", () => {
    fc.assert(
      fc.property(water, media, mediaRate, averagePonding, drainHours, (cubicFeet, inches, rate, ponding, hours) => {
        const squareFeet = filterAreaSquareFeet(cubicFeet, inches, rate, ponding, hours);
        const passed = squareFeet * (rate / 12) * ((ponding + inches) / inches) * hours;
        expect(Math.abs(passed - cubicFeet)).toBeLessThanOrEqual(1e-9 * cubicFeet);
      }),
      { examples: [[0, 60, 0.25, 3, 48]] },
    );
  });

  test("without ponding needs the water's volume over the media rate and the hours alone, whatever its depth", () => {
    fc.assert(
      fc.property(water, media, mediaRate, drainHours, (cubicFeet, inches, rate, hours) => {
        expect(filterAreaSquareFeet(cubicFeet, inches, rate, 0, hours)).toBeCloseTo((12 * cubicFeet) / (rate * hours), 6);
      }),
    );
  });

  test("is smaller with faster media, more ponding or more time", () => {
    fc.assert(
      fc.property(water, media, mediaRate, averagePonding, drainHours, (cubicFeet, inches, rate, ponding, hours) => {
        const squareFeet = filterAreaSquareFeet(cubicFeet, inches, rate, ponding, hours);
        expect(filterAreaSquareFeet(cubicFeet, inches, 2 * rate, ponding, hours)).toBeCloseTo(squareFeet / 2, 6);
        expect(filterAreaSquareFeet(cubicFeet, inches, rate, ponding, 2 * hours)).toBeCloseTo(squareFeet / 2, 6);
        expect(filterAreaSquareFeet(cubicFeet, inches, rate, ponding + 1, hours)).toBeLessThanOrEqual(squareFeet);
      }),
    );
  });
});
