import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inKindValue } from "../../../functions/cost/volunteer-value.ts";
import { volunteerDollarsPerHour } from "../../../functions/published/volunteer-hour.ts";
import { measured } from "../measured.ts";

const hours = measured(0, 500);
const rate = measured(0, 60);

// Independent Sector and Do Good Institute, national values by year (read), printed to 0.01.
describe("published values of a volunteer's hour", () => {
  test.each([
    [2001, 16.27],
    [2008, 20.25],
    [2009, 20.85],
    [2012, 22.14],
    [2014, 23.07],
    [2015, 23.56],
    [2016, 24.14],
    [2017, 24.69],
    [2018, 25.43],
    [2019, 27.2],
    [2020, 28.54],
    [2021, 29.95],
    [2022, 31.8],
  ])("an hour worked in %d is worth %d", (year, dollars) => {
    expect(volunteerDollarsPerHour.values.get(year)).toBe(dollars);
    expect(inKindValue(10, volunteerDollarsPerHour.values.get(year)!)).toBeCloseTo(10 * dollars, 9);
  });

  test("values end with 2022 and rise from year to year", () => {
    const printed = [...volunteerDollarsPerHour.values];
    expect(Math.max(...printed.map(([year]) => year))).toBe(2022);
    expect(printed.map(([, dollars]) => dollars)).toEqual(printed.map(([, dollars]) => dollars).sort((a, b) => a - b));
    expect(volunteerDollarsPerHour.printedTo).toBe(0.01);
  });
});

describe("any hours", () => {
  test("are worth their sum, worked in two days or in one", () => {
    fc.assert(
      fc.property(hours, hours, rate, (one, other, hourly) => {
        expect(inKindValue(one + other, hourly)).toBeCloseTo(inKindValue(one, hourly) + inKindValue(other, hourly), 6);
      }),
    );
  });

  test("are worth nothing at no rate, and the rate for each", () => {
    fc.assert(
      fc.property(hours, rate, (worked, hourly) => {
        expect(inKindValue(worked, 0)).toBe(0);
        expect(inKindValue(1, hourly)).toBe(hourly);
      }),
    );
  });

  test("are worth more at a higher rate", () => {
    fc.assert(
      fc.property(measured(0.1, 500), rate, measured(0.01, 20), (worked, hourly, more) => {
        expect(inKindValue(worked, hourly + more)).toBeGreaterThan(inKindValue(worked, hourly));
      }),
    );
  });
});
