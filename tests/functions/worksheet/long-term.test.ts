import { describe, expect, test } from "vitest";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { areaForCapture, longTerm } from "../../../functions/worksheet/long-term.ts";
import { pollutantLoad } from "../../../functions/worksheet/pollutant-load.ts";
import { stormRoute } from "../../../functions/worksheet/storm-route.ts";
import { dailyRainMillimetres } from "../rainfall/daily-rain.ts";
import { cellOf, column, notThere, refused } from "./sample-functions.ts";

describe("POLLUTANTLOAD", () => {
  test("asks about a year's rain that is in another unit", () => {
    const asked = expect.stringContaining("Towns get 4 in to 120 in of rain in a year");
    expect(pollutantLoad.cautionsFor([435_600, 1000, 30, "tp"])).toContainEqual(asked);
    expect(pollutantLoad.cautionsFor([435_600, 3.3, 30, "tp"])).toContainEqual(asked);
    expect(pollutantLoad.cautionsFor([435_600, 40, 30, "tp"])).toHaveLength(1);
    expect(pollutantLoad.cautionsFor([435_600, 40, 0.3, "tp"])).toContain(
      "Impervious percent is taken as 0.3%: write a percent as 2, not 0.02.",
    );
  });

  test("takes a pollutant by name in any case, or a concentration in mg/L", () => {
    const byName = cellOf(pollutantLoad, 435_600, 40, 30, "tp");
    expect(byName).toBeCloseTo(6.79, 2);
    expect(cellOf(pollutantLoad, 435_600, 40, 30, 0.26)).toBe(byName);
    expect(cellOf(pollutantLoad, 435_600, 40, 30, "TSS")).toBeCloseTo((Number(byName) / 0.26) * 54.5, 6);
  });

  test("carries as many kilograms off hectares as pounds off acres", () => {
    const pounds = Number(cellOf(pollutantLoad, 43_560, 40, 30, "TN"));
    expect(cellOf(pollutantLoad, 4046.8564224, 1016, 30, "TN", null, "metric")).toBeCloseTo(pounds * 0.45359237, 9);
  });

  test.each([
    {
      inputs: [1000, 40, 30, "lead"],
      sentence: 'Pollutant must be "TSS", "TP" or "TN", or a concentration in mg/L of 0 or more; it is "lead".',
    },
    { inputs: [1000, 40, 30, -1], sentence: 'Pollutant must be "TSS", "TP" or "TN", or a concentration in mg/L of 0 or more; it is "-1".' },
    { inputs: [1000, 40, 30, "TP", 90], sentence: "Share of storms that run off must be 1 or less." },
  ])("says: $sentence", ({ inputs, sentence }) => {
    expect(cellOf(pollutantLoad, ...inputs)).toEqual(refused(sentence));
  });

  test("warns over a square mile, and always that concentrations scatter", () => {
    expect(pollutantLoad.cautionsFor([5280 ** 2, 40, 30, "TP"])).toEqual([expect.stringContaining("scatter")]);
    expect(pollutantLoad.cautionsFor([5281 ** 2, 40, 30, "TP"])).toHaveLength(2);
  });
});

/** Vertical sides. */
const roofBasin = [1000, 0.95, 100, 6, 0.5, 24, 0.25, 0] as const;

describe("STORMROUTE", () => {
  test("routes one depth by the type of its storm, in quarters of an hour", () => {
    const table = stormRoute.evaluate([1, "ii", ...roofBasin]);
    expect(table[0]?.[0]).toBe(0.25);
    expect(table[95]?.[0]).toBe(24);
    const inflow = table.map((row) => Number(row[1]));
    expect(inflow.reduce((sum, cubicFeet) => sum + cubicFeet, 0)).toBeCloseTo(87.5, 9);
    expect(Math.max(...inflow)).toBe(inflow[47]);
    expect(Math.max(...inflow) / 87.5).toBeCloseTo(0.306, 3);
  });

  test("routes depths by the minutes of their steps, blanks below them left out", () => {
    const table = stormRoute.evaluate([column(0.5, 0, 0.5, null, ""), 60, ...roofBasin]);
    expect(table.slice(0, 3).map((row) => row[1])).toEqual([43.75, 0, 43.75]);
    expect(table.at(-1)).toEqual([21, 0, 0, 0, expect.closeTo(4.1667, 4), 0]);
  });

  test("gives the same storm on a metric sheet", () => {
    const us = stormRoute.evaluate([4, "III", ...roofBasin]);
    const metric = stormRoute.evaluate([101.6, "III", 92.90304, 0.95, 9.290304, 152.4, 12.7, 609.6, null, 0, "metric"]);
    expect(metric).toHaveLength(us.length);
    const cubicMetres = 0.028316846592;
    for (const [place, [hours, inflow, stored, ponding, soaked, overflow]] of us.entries()) {
      const inMetric = [
        [inflow, cubicMetres],
        [stored, cubicMetres],
        [ponding, 25.4],
        [soaked, cubicMetres],
        [overflow, cubicMetres],
      ] as const;
      expect(metric[place]).toEqual([hours, ...inMetric.map(([cell, factor]) => expect.closeTo(Number(cell) * factor, 8) as Cell)]);
    }
  });

  test.each<{ inputs: readonly CellInput[]; answer: Cell }>([
    {
      inputs: [column(0.5, 0.5), "II", ...roofBasin],
      answer: refused("A storm type takes a single storm depth: for rain in each step, give the minutes in a step."),
    },
    {
      inputs: [1, "IV", ...roofBasin],
      answer: refused('Storm type must be "I", "IA", "II" or "III", or the minutes in a step, 1 to 1,440; it is "IV".'),
    },
    {
      inputs: [1, 0.5, ...roofBasin],
      answer: refused('Storm type must be "I", "IA", "II" or "III", or the minutes in a step, 1 to 1,440; it is "0.5".'),
    },
    {
      inputs: [1, 1441, ...roofBasin],
      answer: refused('Storm type must be "I", "IA", "II" or "III", or the minutes in a step, 1 to 1,440; it is "1441".'),
    },
    { inputs: [column(0.5, null, 0.5), 60, ...roofBasin], answer: notThere("Rain 2 is blank: write 0 where it stayed dry.") },
    { inputs: [column(0.5, -1), 60, ...roofBasin], answer: refused("Storm depth, or rain in each step 2 must be 0 or more.") },
    { inputs: [1, "II", 1000, 0.95, 0, 6, 0.5], answer: refused("Floor area must be more than 0.") },
    { inputs: [1, "II", 1000, 0.95, 100, 6], answer: notThere("Design rate is missing.") },
  ])("says: $answer.sentence", ({ inputs, answer }) => {
    expect(cellOf(stormRoute, ...inputs)).toEqual(answer);
  });

  test("warns of an overflow, of water that stands over 72 h, of steep sides and of deep ponding", () => {
    expect(stormRoute.cautionsFor([1, "II", ...roofBasin])).toEqual([]);
    expect(stormRoute.cautionsFor([10, "II", ...roofBasin])).toEqual([expect.stringContaining("overflows in this storm")]);
    expect(stormRoute.cautionsFor([1, "II", 1000, 0.95, 100, 6, 0.01, 24])).toEqual([expect.stringContaining("72 h after the rain")]);
    expect(stormRoute.cautionsFor([1, "II", 1000, 0.95, 100, 9, 0.5, 24, 0.25, 1])).toHaveLength(2);
    expect(stormRoute.cautionsFor([column(1, null, 1), 60, ...roofBasin])).toEqual([]);
    expect(stormRoute.cautionsFor([1, "II", 1000, 0.95, 100, 6, 0.5, 24, 0.6])).toEqual([expect.stringContaining("printed void shares")]);
    expect(stormRoute.cautionsFor([1, "II", 1000, 0.95, 100, 6, 25])).toEqual([expect.stringContaining("more than 20 in/h")]);
  });
});

const seattle = column(...dailyRainMillimetres.Seattle);

describe("LONGTERM", () => {
  test("counts runoff, capture, overflows and ponding a year, for Seattle's days in millimetres", () => {
    const row = longTerm.evaluate([seattle, 24, 100, 0.95, 10, 150, 6, 0, null, 0, null, "metric"])[0]!;
    const [runoff, captured, overflows, overflow, ponding, soaked] = row.map(Number);
    expect(runoff).toBeCloseTo((0.95 * 100 * 4.426) / 4, 9);
    const reached = runoff! + (10 * 4.426) / 4;
    expect(captured).toBeCloseTo(1 - overflow! / reached, 12);
    // The last day of the record is dry enough to leave nothing behind.
    expect(soaked! + overflow!).toBeCloseTo(reached, 9);
    expect(overflows).toBeGreaterThan(0);
    expect(ponding).toBeGreaterThan(24);
  });

  test("answers many designs over one record, a row for each", () => {
    const rows = longTerm.evaluate([column(1, 0, 2, 0), 6, 1000, 0.95, column(50, 100, 200), 6, 0.25]);
    expect(rows).toHaveLength(3);
    const captured = rows.map((row) => Number(row[1]));
    expect(captured).toEqual(captured.toSorted((one, other) => one - other));
  });

  test("gives no captured share where it did not rain, and the rest of the row stands", () => {
    const dry = notThere("It did not rain in this record: there is nothing to capture.");
    expect(longTerm.evaluate([column(0, 0), 24, 1000, 0.95, 100, 6, 0.25])).toEqual([[0, dry, 0, 0, 0, 0]]);
  });

  test.each<{ inputs: readonly CellInput[]; answer: Cell }>([
    { inputs: [column(0.5, null, 0), 24, 1000, 0.95, 100, 6, 0.5], answer: notThere("Rain 2 is blank: write 0 where it stayed dry.") },
    { inputs: [column(0.5, "T"), 24, 1000, 0.95, 100, 6, 0.5], answer: refused('Rain 2 must be a number; it is the text "T".') },
    { inputs: [1, 0, 1000, 0.95, 100, 6, 0.5], answer: refused("Hours in a step must be more than 0.") },
    { inputs: [1, 24, 1000, 95, 100, 6, 0.5], answer: refused("Runoff share must be 1 or less.") },
  ])("says: $answer.sentence", ({ inputs, answer }) => {
    expect(longTerm.evaluate(inputs)).toEqual([Array.from({ length: 6 }, () => answer)]);
  });

  test("warns of steps over an hour and of a record under 20 years", () => {
    const garden = [1000, 0.95, 100, 6, 0.25] as const;
    expect(longTerm.cautionsFor([column(1), 1, ...garden])).toEqual([expect.stringContaining("fewer than 20 years")]);
    expect(longTerm.cautionsFor([column(1), 24, ...garden])).toHaveLength(2);
    expect(longTerm.cautionsFor([column(1), 20 * 8766, ...garden])).toEqual([expect.stringContaining("spread evenly")]);
  });
});

describe("AREAFORCAPTURE", () => {
  test("finds the floor on which LONGTERM captures the share", () => {
    const rest = [6, 0.25, 12] as const;
    const floor = cellOf(areaForCapture, 0.8, column(1, 0, 3, 0, 0, 1), 6, 1000, 0.95, ...rest);
    expect(floor).toBeTypeOf("number");
    expect(longTerm.evaluate([column(1, 0, 3, 0, 0, 1), 6, 1000, 0.95, floor, ...rest])[0]?.[1]).toBeCloseTo(0.8, 9);
  });

  test("finds the same floor on a metric sheet", () => {
    const us = Number(cellOf(areaForCapture, 0.9, column(1, 0, 2), 6, 1000, 0.95, 6, 0.25));
    const metric = Number(
      cellOf(areaForCapture, 0.9, column(25.4, 0, 50.8), 6, 92.90304, 0.95, 152.4, 6.35, null, null, null, null, "metric"),
    );
    expect(metric / 0.09290304 / us).toBeCloseTo(1, 9);
  });

  test.each<{ inputs: readonly CellInput[]; answer: Cell }>([
    {
      inputs: [1, column(10), 1, 1000, 0.95, 6, 0.25],
      answer: refused(
        "No floor up to 100 times the contributing area captures that share: pond deeper, add soil mix or find a faster soil.",
      ),
    },
    {
      inputs: [0.9, column(0, 0), 1, 1000, 0.95, 6, 0.25],
      answer: notThere("It did not rain in this record: there is nothing to capture."),
    },
    { inputs: [0.9, column(1, null, 1), 1, 1000, 0.95, 6, 0.25], answer: notThere("Rain 2 is blank: write 0 where it stayed dry.") },
    { inputs: [90, column(1), 1, 1000, 0.95, 6, 0.25], answer: refused("Captured share wanted must be 1 or less.") },
    { inputs: [0.9, column(1), 1, 0, 0.95, 6, 0.25], answer: refused("Contributing area must be more than 0.") },
  ])("says: $answer.sentence", ({ inputs, answer }) => {
    expect(cellOf(areaForCapture, ...inputs)).toEqual(answer);
  });

  test("warns when the floor is hard to dig level, and not where there is none", () => {
    const others = (wanted: number, rain: number) => areaForCapture.cautionsFor([wanted, column(rain), 1, 10_000, 0.95, 6, 0.25]).slice(1);
    expect(others(0.9, 1)).toEqual([expect.stringContaining("hard to dig level")]);
    expect(others(0.01, 1)).toEqual([]);
    expect(others(1, 10)).toEqual([]);
  });
});
