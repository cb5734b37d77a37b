import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { depth, rate, text, units } from "../../../functions/worksheet/calling/arguments.ts";
import { worksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { about, cellOf, column, drainRow, dropTable, meanRate, notThere, pondedVolume, product, refused, row } from "./sample-functions.ts";

const numberOf = (answer: unknown): number => {
  expect(answer).toBeTypeOf("number");
  return answer as number;
};

describe("us and metric", () => {
  test("units are us unless the caller says metric", () => {
    expect(cellOf(pondedVolume, 120, 6)).toBe(60);
    expect(cellOf(pondedVolume, 120, 6, "us")).toBe(60);
  });

  test("10 square metres under 150 mm of water hold 1.5 cubic metres", () => {
    expect(cellOf(pondedVolume, 10, 150, "metric")).toBeCloseTo(1.5, 12);
  });

  test("each row of a column has its own units", () => {
    const volumes = pondedVolume.evaluate([
      column(120, 10, 120, 10, 120),
      column(6, 150, 6, 150, 6),
      column("us", "metric", null, " Metric", "si"),
    ]);
    expect(volumes).toEqual([
      [60],
      [expect.closeTo(1.5, 12)],
      [60],
      [expect.closeTo(1.5, 12)],
      [refused('Units must be "us" or "metric"; it is "si".')],
    ]);
  });

  test("one rate may be shown in both units side by side", () => {
    const sameRate = worksheetFunction({ ...about, name: "SAMERATE", arguments: [units], result: rate("Rate"), calculate: () => 2 });
    expect(sameRate.evaluate([row("us", "metric")])).toEqual([[2, 50.8]]);
  });

  test("a function without a dimension takes no units", () => {
    expect(product.parameters.map(({ key }) => key)).toEqual(["first", "second"]);
    expect(product.evaluate([2, 3, "metric"])).toEqual([[6]]);
  });

  test("a function may ask for units that none of its arguments has", () => {
    const speaks = worksheetFunction({
      ...about,
      name: "SPEAKS",
      arguments: [units],
      result: text("Words"),
      calculate: (_, speaker) => speaker.depth(6),
    });
    expect(speaks.parameters.map(({ key }) => key)).toEqual(["units"]);
    expect(speaks.evaluate([column("us", "metric")])).toEqual([["6 in"], ["152 mm"]]);
  });

  test("an argument that was added later stands after the units, and the calculation is handed both", () => {
    const added = worksheetFunction({
      ...about,
      name: "ADDED",
      arguments: [depth("depth", "Depth"), units, depth("freeboard", "Freeboard").optional(2)],
      result: depth("Dig"),
      calculate: ({ depth: inches, freeboard }) => inches + freeboard,
      cautions: [{ when: ({ depth: inches, freeboard }) => freeboard > inches, says: "The freeboard is more than the depth." }],
    });
    expect(added.parameters.map(({ key }) => key)).toEqual(["depth", "units", "freeboard"]);
    expect(added.evaluate([6])).toEqual([[8]]);
    expect(added.evaluate([6, "us", 3])).toEqual([[9]]);
    expect(added.evaluate([152.4, "metric", 76.2])).toEqual([[expect.closeTo(228.6, 9)]]);
    expect(added.evaluate([column(6, 152.4), column("us", "metric"), column(3, 76.2)])).toEqual([[9], [expect.closeTo(228.6, 9)]]);
    expect(added.evaluate([6, "si", 3])).toEqual([[refused('Units must be "us" or "metric"; it is "si".')]]);
    expect(added.cautionsFor([25.4, "metric", 76.2])).toEqual(["The freeboard is more than the depth."]);
    expect(added.cautionsFor([6, "us", 3])).toEqual([]);
  });

  test("words that a calculation refuses with are in the units of the row", () => {
    const [us, metric] = drainRow.evaluate([column(600, 15240), column(0.5, 12.7), 48, column("us", "metric")]);
    expect(us?.[0]).toEqual(refused("600 in would stand for weeks."));
    expect(metric?.[0]).toEqual(refused("15,240 mm would stand for weeks."));
  });

  test("a cell of a row may have an error of its own, and the rest of the row stands", () => {
    expect(drainRow.evaluate([30, 0.5])).toEqual([[60, 24, notThere("Up to 24 in would drain.")]]);
    expect(drainRow.evaluate([762, 12.7, null, "metric"])).toEqual([[60, expect.closeTo(609.6, 9), notThere("Up to 609 mm would drain.")]]);
  });

  test("a refusal of a table is one cell", () => {
    expect(dropTable.evaluate([column(25.4), 1, "metric"])).toEqual([[refused("One reading of 25.4 mm is no series.")]]);
  });

  test("tables come back in the units of the caller", () => {
    expect(dropTable.evaluate([column(254, 203.2, 203.2), 1, "metric"])).toEqual([
      [expect.closeTo(50.8, 9), true],
      [expect.closeTo(0, 9), false],
    ]);
  });

  test("a metric sheet and a us sheet describe the same water", () => {
    const squareFeet = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    const inches = fc.double({ min: 1e-6, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(squareFeet, inches, (area, depth) => {
        const cubicFeet = numberOf(cellOf(pondedVolume, area, depth));
        const cubicMetres = numberOf(cellOf(pondedVolume, area * 0.09290304, depth * 25.4, "metric"));
        expect(Math.abs(cubicMetres - cubicFeet * 0.3048 ** 3)).toBeLessThanOrEqual(1e-12 * cubicFeet);
      }),
      {
        examples: [
          [0, 0],
          [100, 0],
          [0, 6],
        ],
      },
    );
  });

  test("a series is read in the units of the caller", () => {
    expect(cellOf(meanRate, column(25.4, 76.2), 1, "metric")).toBeCloseTo(50.8, 9);
    expect(meanRate.evaluate([column(25.4, 76.2), 1, column("us", "metric")])).toEqual([
      [expect.closeTo(50.8, 9)],
      [expect.closeTo(50.8, 9)],
    ]);
  });
});
