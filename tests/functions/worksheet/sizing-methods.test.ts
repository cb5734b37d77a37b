import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FACTOR_SOILS } from "../../../functions/published/wisconsin-size-factors.ts";
import { factorArea, filterArea, widthsArea } from "../../../functions/worksheet/sizing-methods.ts";
import { measured } from "../measured.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, notThere, refused, row } from "./sample-functions.ts";

describe("FACTORAREA", () => {
  test("takes a grid of areas and depths, near the downspout unless told otherwise", () => {
    expect(factorArea.evaluate([column(200, 1000), "sandy", row(4, 6, 8)])).toEqual([
      [38, 30, 16],
      [190, 150, 80],
    ]);
    expect(cellOf(factorArea, 1000, "Silty", 6, true)).toBe(60);
  });

  test("gives the same garden on a metric sheet", () => {
    fc.assert(
      fc.property(
        measured(0, 5000),
        fc.constantFrom(...FACTOR_SOILS),
        fc.constantFrom(3, 5, 5.5, 6, 7, 7.5, 8, 10),
        fc.boolean(),
        (squareFeet, soil, inches, isFar) => {
          expectSameOnMetric(factorArea, [squareFeet, soil, inches, isFar]);
        },
      ),
    );
  });

  test("refuses a soil that is not in the table and a depth of nothing", () => {
    expect(cellOf(factorArea, 100, "loam", 6)).toEqual(refused('Soil must be "sandy", "silty" or "clayey"; it is "loam".'));
    expect(cellOf(factorArea, 100, "silty", 0)).toEqual(refused("Ponding depth must be more than 0."));
    expect(cellOf(factorArea, null, "silty", 6)).toEqual(notThere("Contributing area is missing."));
  });

  test("flags a factor that is from memory, and no other", () => {
    expect(factorArea.cautionsFor([100, "silty", 8])).toEqual(["The factor 0.16 is from memory: check it in the manual before use."]);
    expect(factorArea.cautionsFor([100, "silty", 6])).toEqual([]);
  });

  test.each([
    [5.5, "between two published bands"],
    [7.5, "between two published bands"],
    [2, "under the published bands"],
    [10, "over the published bands"],
  ])("cautions of %d in that it lies %s", (inches, says) => {
    expect(factorArea.cautionsFor([100, "sandy", inches])).toEqual([expect.stringContaining(says)]);
  });

  test("over 30 ft away asks for the lawn uphill, and leaves the depth alone", () => {
    const cautions = factorArea.cautionsFor([100, "sandy", 5.5, true]);
    expect(cautions).toEqual([expect.stringContaining("0.03 is from memory"), expect.stringContaining("the lawn uphill")]);
  });

  test("cautions of a garden over 300 sq ft", () => {
    expect(factorArea.cautionsFor([2000, "sandy", 6])).toEqual([]);
    expect(factorArea.cautionsFor([2100, "sandy", 6])).toEqual([expect.stringContaining("300 sq ft")]);
  });
});

describe("FILTERAREA", () => {
  test("gives the Georgia example on a metric sheet as 716.86 sq m", () => {
    expect(cellOf(filterArea, 8102 * 0.3048 ** 3, 1524, 6.35, 76.2, 48, "metric")).toBeCloseTo(716.86, 2);
  });

  test("gives the same bed on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 20_000), measured(6, 72), measured(0.1, 5), measured(0, 12), measured(6, 96), (...inputs) => {
        expectSameOnMetric(filterArea, inputs);
      }),
    );
  });

  test.each([
    [2, "Soil mix depth"],
    [3, "Soil mix rate"],
    [5, "Drain hours"],
  ])("refuses a zero as argument %d, %s", (place, label) => {
    const inputs = [8102, 60, 0.25, 3, 48].map((value, at) => (at === place - 1 ? 0 : value));
    expect(cellOf(filterArea, ...inputs)).toEqual(refused(`${label} must be more than 0.`));
  });

  test("always says what the method rests on", () => {
    expect(filterArea.cautionsFor([8102, 60, 0.25, 3, 48])).toEqual([expect.stringContaining("outlet below")]);
  });

  test("cautions of average ponding that would be deep in the middle, in the sheet's units", () => {
    expect(filterArea.cautionsFor([8102, 60, 0.25, 6, 48])[0]).toBe(
      "Average ponding is half of the deepest: this one means 12 in at the deepest.",
    );
    expect(filterArea.cautionsFor([100, 1524, 6.35, 152.4, 48, "metric"])[0]).toContain("305 mm");
  });

  test.each([0.24, 4.36])("cautions of a media rate of %d in/h", (rate) => {
    expect(filterArea.cautionsFor([8102, 60, rate, 3, 48])).toContainEqual(
      expect.stringContaining("run from 0.25 in/h (bioretention soil) to 4.35 in/h (leaf compost)"),
    );
  });

  test("cautions of water that stands over 72 h", () => {
    expect(filterArea.cautionsFor([8102, 60, 0.25, 3, 73])).toContainEqual(expect.stringContaining("72 h"));
    expect(filterArea.cautionsFor([8102, 60, 0.25, 3, 2])).toContainEqual(expect.stringContaining("two days are 48"));
  });
});

describe("WIDTHSAREA", () => {
  test("takes a column or a row of widths, and leaves blanks after the last alone", () => {
    expect(cellOf(widthsArea, column(0, 12, 0), 10)).toBeCloseTo(160, 9);
    expect(cellOf(widthsArea, row(0, 12, 0, null, ""), 10)).toBeCloseTo(160, 9);
  });

  test("says by which rule it computed", () => {
    expect(widthsArea.cautionsFor([column(0, 12, 0), 10])).toEqual([expect.stringContaining("Simpson's rule, for an edge")]);
    expect(widthsArea.cautionsFor([column(0, 12, 0, 1), 10])).toEqual([expect.stringContaining("the last strip as a trapezoid")]);
    expect(widthsArea.cautionsFor([column(4, 6), 10])).toEqual([expect.stringContaining("one trapezoid between two widths")]);
    expect(widthsArea.cautionsFor([column(12), 10])).toEqual([]);
  });

  test("names the width that is missing instead of closing the gap", () => {
    expect(cellOf(widthsArea, column(4, null, 6), 10)).toEqual(notThere("Width 2 is missing: write 0 where the outline closes."));
    expect(cellOf(widthsArea, column(null, 4, 6), 10)).toEqual(notThere("Width 1 is missing: write 0 where the outline closes."));
  });

  test("refuses one width, a negative one and a step of nothing", () => {
    expect(cellOf(widthsArea, column(4), 10)).toEqual(refused("An outline needs at least two widths."));
    expect(cellOf(widthsArea, column(4, -1), 10)).toEqual(refused("Width 2 must be 0 or more."));
    expect(cellOf(widthsArea, column(4, 5), 0)).toEqual(refused("Step must be more than 0."));
  });

  test("gives the same outline on a metric sheet", () => {
    fc.assert(
      fc.property(fc.array(measured(0, 40), { minLength: 2, maxLength: 9 }), measured(0.1, 20), (widths, step) => {
        expectSameOnMetric(widthsArea, [widths.map((width) => [width]), step]);
      }),
    );
  });
});
