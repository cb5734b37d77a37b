import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { designRateInchesPerHour, RATES_TAKEN, USUAL_REDUCTION_FACTOR } from "../../../functions/infiltration/design-rate.ts";
import { measured } from "../measured.ts";

const rates = fc.array(measured(0.01, 30), { minLength: 1, maxLength: 12 });
const factor = measured(1, 4);
const take = fc.constantFrom(...RATES_TAKEN);

describe("published reductions", () => {
  // Minnesota Stormwater Manual, "Determining soil infiltration rates" (read): field rate divided by 2.
  test("a field rate of 1 in/h is designed with as 0.5 in/h", () => {
    expect(designRateInchesPerHour([1], USUAL_REDUCTION_FACTOR, "geometric mean")).toBe(0.5);
  });

  // A Santa Ana (California) geotechnical report (read): Porchet rates of 0.842 and 1.3585 in/h, halved, are 0.421 and 0.679.
  test.each([
    { tested: 0.842, halved: 0.421 },
    { tested: 1.3585, halved: 0.679 },
  ])("$tested in/h halved is $halved in/h", ({ tested, halved }) => {
    expect(Math.abs(designRateInchesPerHour([tested], 2, "lowest") - halved)).toBeLessThanOrEqual(0.0005);
  });
});

describe("computed by hand from the definitions", () => {
  const tested = [4, 1, 0.25];

  test("4, 1 and 0.25 in/h have the geometric mean 1, the median 1 and the lowest 0.25 in/h", () => {
    expect(designRateInchesPerHour(tested, 1, "geometric mean")).toBeCloseTo(1, 12);
    expect(designRateInchesPerHour(tested, 1, "median")).toBe(1);
    expect(designRateInchesPerHour(tested, 1, "lowest")).toBe(0.25);
  });

  test("2 and 8 in/h have the geometric mean 4 and the median 5 in/h", () => {
    expect(designRateInchesPerHour([8, 2], 1, "geometric mean")).toBeCloseTo(4, 12);
    expect(designRateInchesPerHour([8, 2], 1, "median")).toBe(5);
  });

  test("the median of 9, 0.5, 30, 2 and 10 in/h is 9, whatever the order they were tested in", () => {
    // By hand: sorted 0.5, 2, 9, 10, 30. Sorted as text it would be 0.5, 10, 2, 30, 9.
    for (const order of [
      [9, 0.5, 30, 2, 10],
      [30, 10, 9, 2, 0.5],
      [0.5, 10, 2, 30, 9],
    ])
      expect(designRateInchesPerHour(order, 1, "median")).toBe(9);
  });

  test("one hole that takes no water makes the geometric mean 0", () => {
    expect(designRateInchesPerHour([3, 0, 2], 2, "geometric mean")).toBe(0);
  });
});

describe("any tests", () => {
  test("give a rate between the lowest and the highest, however it is taken", () => {
    fc.assert(
      fc.property(rates, take, (tested, taken) => {
        const rate = designRateInchesPerHour(tested, 1, taken);
        expect(rate).toBeGreaterThanOrEqual(Math.min(...tested) * (1 - 1e-12));
        expect(rate).toBeLessThanOrEqual(Math.max(...tested) * (1 + 1e-12));
      }),
    );
  });

  test("that all agree give that very rate", () => {
    fc.assert(
      fc.property(measured(0, 30), fc.integer({ min: 1, max: 6 }), take, (rate, count, taken) => {
        expect(designRateInchesPerHour(new Array<number>(count).fill(rate), 1, taken)).toBe(rate);
      }),
      { examples: [[0, 1, "geometric mean"]] },
    );
  });

  test("give the same rate in any order, and are left as they were", () => {
    fc.assert(
      fc.property(rates, factor, take, (tested, reduced, taken) => {
        const before = [...tested];
        expect(designRateInchesPerHour([...tested].reverse(), reduced, taken)).toBeCloseTo(
          designRateInchesPerHour(tested, reduced, taken),
          10,
        );
        expect(tested).toEqual(before);
      }),
    );
  });

  test("give a smaller rate the larger the reduction, and the reduction is applied once", () => {
    fc.assert(
      fc.property(rates, factor, take, (tested, reduced, taken) => {
        expect(designRateInchesPerHour(tested, reduced, taken) * reduced).toBeCloseTo(designRateInchesPerHour(tested, 1, taken), 8);
      }),
    );
  });

  test("have a lowest no higher than the geometric mean", () => {
    fc.assert(
      fc.property(rates, (tested) => {
        expect(designRateInchesPerHour(tested, 1, "lowest")).toBeLessThanOrEqual(designRateInchesPerHour(tested, 1, "geometric mean"));
      }),
    );
  });
});
