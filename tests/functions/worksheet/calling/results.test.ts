import { describe, expect, test } from "vitest";
import { depth, flag, length, number, text, units, type ResultValue } from "../../../../functions/worksheet/calling/arguments.ts";
import { rowOf, tableOf, type ResultSpec } from "../../../../functions/worksheet/calling/results.ts";
import { worksheetFunction } from "../../../../functions/worksheet/calling/worksheet-function.ts";
import { about, cellOf, column, pondedVolume, product, refused } from "../sample-functions.ts";

const returning = (result: ResultSpec<never>, output: unknown) =>
  worksheetFunction({ ...about, name: "SAMPLE", arguments: [number("x", "Width"), units], result, calculate: () => output as never });

const value = (one: ResultValue<unknown>) => one as ResultValue<never>;
const fault = refused("SAMPLE could not be computed. This is a fault in Soakbook, not in your sheet: please report it.");
const faultOfSample = { ...fault, sentence: `SOAK.${fault.sentence}` };

describe("what a cell may show", () => {
  test.each([[0], [-2.5], ["fits"], [""], [true], [refused("It does not fit.")]])("%j is shown as it is", (output) => {
    expect(cellOf(returning(value(number("Answer")), output), 1)).toEqual(output);
  });

  test("an answer beyond the largest number is too large, and is named", () => {
    expect(cellOf(product, 1e200, 1e200)).toEqual(refused("Product is too large to compute."));
    expect(cellOf(product, -1e200, 1e200)).toEqual(refused("Product is too large to compute."));
  });

  test("an answer that overflows only when its unit is converted is too large", () => {
    expect(cellOf(returning(value(depth("Depth")), 1e308), 1, "metric")).toEqual(refused("Depth is too large to compute."));
    expect(cellOf(returning(value(depth("Depth")), 1e308), 1)).toBe(1e308);
  });

  test.each<[string, unknown]>([
    ["not a number", Number.NaN],
    ["nothing", undefined],
    ["null", null],
    ["an object", {}],
    ["a list", [1]],
  ])("%s from a calculation is our fault, never the user's", (_, output) => {
    expect(cellOf(returning(value(number("Answer")), output), 1)).toEqual(faultOfSample);
  });

  test("a calculation that breaks down is our fault", () => {
    const breaks = worksheetFunction({
      ...about,
      name: "SAMPLE",
      arguments: [number("x", "Width")],
      result: number("Answer"),
      calculate: () => {
        throw new RangeError("no");
      },
    });
    expect(breaks.evaluate([column(1, null)])).toEqual([[faultOfSample], [""]]);
    expect(cellOf(breaks, 0)).toEqual(faultOfSample);
    for (const extreme of [1e300, -1e300, 1e-300]) {
      expect(cellOf(breaks, extreme)).toEqual(refused("These numbers are too large or too small to compute with."));
    }
  });

  test("numbers beyond arithmetic are said to be so", () => {
    expect(cellOf(returning(value(number("Answer")), Number.NaN), 1e300)).toEqual(
      refused("These numbers are too large or too small to compute with."),
    );
  });
});

describe("rows and tables", () => {
  const row = rowOf([length("Length"), text("Status"), flag("Fits")]);

  test("a row is shown in the units of the caller", () => {
    const declared = worksheetFunction({ ...about, name: "SAMPLE", arguments: [units], result: row, calculate: () => [10, "fits", true] });
    expect(declared.evaluate(["us"])).toEqual([[10, "fits", true]]);
    expect(declared.evaluate(["metric"])).toEqual([[3.048, "fits", true]]);
  });

  test("one overflowing cell of a row does not hide the rest", () => {
    expect(returning(row as ResultSpec<never>, [Infinity, "fits", true]).evaluate([1])).toEqual([
      [refused("Length is too large to compute."), "fits", true],
    ]);
  });

  test.each<[string, unknown]>([
    ["too short", [1, "fits"]],
    ["not a row", 7],
    ["of things no cell shows", [Number.NaN, "fits", true]],
  ])("a row that is %s is our fault in each of its cells", (_, output) => {
    expect(returning(row as ResultSpec<never>, output).evaluate([1])).toEqual([[faultOfSample, faultOfSample, faultOfSample]]);
  });

  test.each<[string, unknown]>([
    ["empty", []],
    ["not a table", "words"],
    [
      "broken in one row",
      [
        [1, "fits", true],
        [undefined, "", true],
      ],
    ],
  ])("a table that is %s is our fault, in one cell", (_, output) => {
    const table = tableOf([length("Length"), text("Status"), flag("Fits")]);
    expect(returning(table as ResultSpec<never>, output).evaluate([1])).toEqual([[faultOfSample]]);
  });

  test("a result lists its values with their units", () => {
    expect(worksheetFunction({ ...about, name: "SAMPLE", arguments: [], result: row, calculate: () => [1, "", true] }).result).toEqual({
      shape: "row",
      values: [
        { label: "Length", kind: "length", units: { us: "ft", metric: "m" } },
        { label: "Status", kind: "text", units: undefined },
        { label: "Fits", kind: "flag", units: undefined },
      ],
    });
    expect(pondedVolume.result).toEqual({
      shape: "value",
      values: [{ label: "Water held", kind: "waterVolume", units: { us: "cu ft", metric: "m³" } }],
    });
  });
});

describe("cautions", () => {
  test("input inside the usual range carries none", () => {
    expect(pondedVolume.cautionsFor([100, 6])).toEqual([]);
  });

  test("input outside the usual range computes and carries a caution", () => {
    expect(cellOf(pondedVolume, 100, 18)).toBe(150);
    expect(pondedVolume.cautionsFor([100, 18])).toEqual(["Ponding over 12 in drowns most plants."]);
  });

  test("a caution judges the same depth in metric, and speaks metric", () => {
    expect(pondedVolume.cautionsFor([100, 300, "metric"])).toEqual(["100 m² is more than a yard usually has."]);
    expect(pondedVolume.cautionsFor([200, 310, "metric"])).toEqual([
      "Ponding over 12 in drowns most plants.",
      "200 m² is more than a yard usually has.",
    ]);
  });

  test.each([
    ["missing", [null, 18]],
    ["impossible", [-1, 18]],
    ["in no known units", [100, 18, "si"]],
  ])("input that is %s carries none", (_, inputs) => {
    expect(pondedVolume.cautionsFor(inputs)).toEqual([]);
  });

  test("a function without cautions gives none", () => {
    expect(product.cautionsFor([1, 2])).toEqual([]);
  });
});
