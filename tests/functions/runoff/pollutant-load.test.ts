import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { medianConcentrations, POLLUTANTS } from "../../../functions/published/new-york-stormwater-manual.ts";
import { otherConcentrations } from "../../published/event-mean-concentrations.ts";
import { runoffCoefficient, USUAL_RUNOFF_STORM_SHARE, yearlyLoadPounds } from "../../../functions/runoff/pollutant-load.ts";

const ACRE = 43_560;
const area = fc.double({ min: 0, max: 1e6, noNaN: true });
const rain = fc.double({ min: 0, max: 100, noNaN: true });
const percent = fc.double({ min: 0, max: 100, noNaN: true });
const concentration = fc.double({ min: 0, max: 1000, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("the simple method as printed", () => {
  // New Hampshire Env-Wq 1504.10 (read): 0.05 + 0.9 I.
  test.each([
    [0, 0.05],
    [25, 0.275],
    [50, 0.5],
    [100, 0.95],
  ])("ground of %i percent impervious runs off %f of the rain", (impervious, coefficient) => {
    expect(runoffCoefficient(impervious)).toBeCloseTo(coefficient, 12);
  });

  // Maryland Stormwater Design Manual, 2000, chapter 2 (from memory), printed to 0.01.
  test.each([
    [36.3, 0.38],
    [63.3, 0.62],
  ])("ground of %f percent impervious has the runoff coefficient %f", (impervious, printed) => {
    expect(Math.abs(runoffCoefficient(impervious) - printed)).toBeLessThanOrEqual(0.005);
  });

  // New York manual, appendix A (read): 0.226; Minnesota Stormwater Manual, page "Simple Method" (read): 0.227.
  test("an acre-inch of 1 mg/L carries 0.2266 lb, between the two printed factors and within 0.3 percent of each", () => {
    const pounds = yearlyLoadPounds(ACRE, 1 / runoffCoefficient(100), 100, 1, 1);
    expect(pounds).toBeCloseTo(0.226613, 6);
    expect(Math.abs(pounds / 0.226 - 1)).toBeLessThan(0.003);
    expect(Math.abs(pounds / 0.227 - 1)).toBeLessThan(0.003);
  });

  // New York manual, appendix A, table A.1 (read). The loads were worked by hand with the printed factor.
  test.each([
    { pollutant: "TSS", median: 54.5, printedLoad: 1418.92 },
    { pollutant: "TP", median: 0.26, printedLoad: 6.76915 },
    { pollutant: "TN", median: 2, printedLoad: 52.0704 },
  ] as const)("10 acres, 30 percent impervious, under 40 in a year send out $printedLoad lb of $pollutant by the factor 0.226", (row) => {
    expect(medianConcentrations.values[row.pollutant]).toBe(row.median);
    const pounds = yearlyLoadPounds(10 * ACRE, 40, 30, row.median, USUAL_RUNOFF_STORM_SHARE);
    expect(pounds * (0.226 / 0.226613)).toBeCloseTo(row.printedLoad, row.printedLoad > 1000 ? 1 : 3);
  });

  test.each(otherConcentrations)(
    "$from prints no less suspended solids than the national median, and phosphorus within 55 percent of it",
    ({ TSS, TP }) => {
      expect(TSS).toBeGreaterThanOrEqual(medianConcentrations.values.TSS);
      expect(Math.abs(TP / medianConcentrations.values.TP - 1)).toBeLessThanOrEqual(0.55);
    },
  );

  test("no pollutant is offered that the table does not print", () => {
    expect(Object.keys(medianConcentrations.values)).toEqual(POLLUTANTS);
  });
});

describe("computed by hand", () => {
  test("1 mm off a hectare of 1 mg/L carries 0.01 kg", () => {
    const hectare = 10_000 / 0.09290304;
    const pounds = yearlyLoadPounds(hectare, 1 / 25.4 / runoffCoefficient(100), 100, 1, 1);
    expect(pounds * 0.45359237).toBeCloseTo(0.01, 12);
  });

  test("1 in off 1,000 sq ft of roof of 54.5 mg/L carries 5.20232e-6 x 0.95 x 54.5 x 1,000 lb", () => {
    expect(yearlyLoadPounds(1000, 1, 100, 54.5, 1)).toBeCloseTo(5.20232e-6 * 0.95 * 54.5 * 1000, 5);
  });
});

describe("any area", () => {
  test("sends out no more than if all its rain ran off, and nothing where nothing rains or nothing is dissolved", () => {
    fc.assert(
      fc.property(area, rain, percent, concentration, share, (squareFeet, inches, impervious, milligrams, storms) => {
        const pounds = yearlyLoadPounds(squareFeet, inches, impervious, milligrams, storms);
        const all = ((squareFeet * inches) / 12) * 28.316846592 * milligrams * (1e-6 / 0.45359237);
        expect(pounds).toBeGreaterThanOrEqual(0);
        expect(pounds).toBeLessThanOrEqual(all * (1 + 1e-9));
        expect(yearlyLoadPounds(squareFeet, 0, impervious, milligrams, storms)).toBe(0);
        expect(yearlyLoadPounds(squareFeet, inches, impervious, 0, storms)).toBe(0);
      }),
      {
        examples: [
          [0, 0, 0, 0, 0],
          [1000, 40, 100, 54.5, 1],
        ],
      },
    );
  });

  test("sends out in proportion to its size, its rain, the concentration and the storms that run off", () => {
    fc.assert(
      fc.property(area, rain, percent, concentration, share, (squareFeet, inches, impervious, milligrams, storms) => {
        const one = yearlyLoadPounds(squareFeet, inches, impervious, milligrams, storms);
        for (const twice of [
          yearlyLoadPounds(2 * squareFeet, inches, impervious, milligrams, storms),
          yearlyLoadPounds(squareFeet, 2 * inches, impervious, milligrams, storms),
          yearlyLoadPounds(squareFeet, inches, impervious, 2 * milligrams, storms),
          2 * yearlyLoadPounds(squareFeet, inches, impervious, milligrams, storms / 2) * 2,
        ]) {
          expect(twice).toBeCloseTo(2 * one, 6);
        }
      }),
    );
  });

  test("sends out more the more of it is paved, and some even from a lawn", () => {
    fc.assert(
      fc.property(percent, percent, (one, other) => {
        const load = (impervious: number) => yearlyLoadPounds(1000, 40, impervious, 1, 0.9);
        expect(load(Math.max(one, other))).toBeGreaterThanOrEqual(load(Math.min(one, other)));
        expect(load(one)).toBeGreaterThan(0);
      }),
      { examples: [[0, 100]] },
    );
  });
});
