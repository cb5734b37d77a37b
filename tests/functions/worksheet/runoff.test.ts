import { describe, expect, test } from "vitest";
import { curveNumber, runoffDepth, runoffVolume, yardRunoff } from "../../../functions/worksheet/runoff.ts";
import { cellOf, column, divisionByZero, notThere, refused } from "./sample-functions.ts";

describe("CURVENUMBER", () => {
  // TR-55, 2nd ed., 1986, table 2-2a.
  test("a good lawn on soil group B has curve number 61, however it is typed", () => {
    expect(cellOf(curveNumber, "good lawn", "B")).toBe(61);
    expect(cellOf(curveNumber, " Good  LAWN ", "b")).toBe(61);
  });

  test("a column of covers against a row of soil groups gives the table", () => {
    expect(curveNumber.evaluate([column("roof", "meadow"), [["A", "B", "C", "D"]]])).toEqual([
      [98, 98, 98, 98],
      [30, 58, 71, 78],
    ]);
  });

  test("a cover that is not in the table is answered with the nearest that are", () => {
    expect(cellOf(curveNumber, "lawn good", "B")).toMatchObject({
      code: "#VALUE!",
      sentence: expect.stringMatching(/^Cover "lawn good" is not in its list\. The nearest are "good lawn", /),
    });
    expect(cellOf(curveNumber, "roof", "E")).toEqual(refused('Soil group must be "A", "B", "C" or "D"; it is "E".'));
  });

  test("it cautions under 40, and for the drives whose row counts the right-of-way", () => {
    expect(curveNumber.cautionsFor(["good lawn", "A"])).toEqual(["A curve number is under 40: TR-55 says to use another method."]);
    expect(curveNumber.cautionsFor(["gravel drive", "A"])).toHaveLength(1);
    expect(curveNumber.cautionsFor(["roof", "A"])).toEqual([]);
  });
});

describe("RUNOFFDEPTH", () => {
  // TR-55, 2nd ed., 1986, table 2-1.
  test("4 in on curve number 80 run off 2.04 in, and 101.6 mm run off 51.9 mm", () => {
    expect(cellOf(runoffDepth, 4, 80)).toBeCloseTo(2.04, 2);
    expect(cellOf(runoffDepth, 101.6, 80, null, "metric")).toBeCloseTo(51.86, 2);
  });

  // Computed by hand from the converted storage, 3.8149 in.
  test("a loss ratio of 0.05 converts the curve number as published", () => {
    expect(cellOf(runoffDepth, 2, 80, 0.05)).toBeCloseTo(0.582, 4);
    expect(cellOf(runoffDepth, 50.8, 80, 0.05, "metric")).toBeCloseTo(0.582 * 25.4, 2);
  });

  test.each([0.1, 0, 0.3, -0.2])("a loss ratio of %s has no published curve number and is refused", (ratio) => {
    expect(cellOf(runoffDepth, 2, 80, ratio)).toEqual(refused("Loss ratio must be 0.2 or 0.05: curve numbers are published for no other."));
  });

  test("a curve number over 100 or of 0 is refused, and a blank one is named", () => {
    expect(cellOf(runoffDepth, 4, 101)).toEqual(refused("Curve number must be 100 or less."));
    expect(cellOf(runoffDepth, 4, 0)).toEqual(refused("Curve number must be more than 0."));
    expect(cellOf(runoffDepth, 4, null)).toEqual(notThere("Curve number is missing."));
  });

  test("it cautions under curve number 40 and under 0.5 in of runoff, but not where it does not rain", () => {
    expect(runoffDepth.cautionsFor([12, 39])).toEqual(["A curve number is under 40: TR-55 says to use another method."]);
    expect(runoffDepth.cautionsFor([1, 80])).toEqual(["Less than 0.5 in of runoff: TR-55 is less accurate here."]);
    expect(runoffDepth.cautionsFor([25.4, 80, null, "metric"])).toEqual(["Less than 12.7 mm of runoff: TR-55 is less accurate here."]);
    expect(runoffDepth.cautionsFor([0, 80])).toEqual([]);
    expect(runoffDepth.cautionsFor([4, 80])).toEqual([]);
  });
});

describe("RUNOFFVOLUME", () => {
  test("1 in on 1000 sq ft at the usual 0.95 is 79.17 cu ft, computed by hand", () => {
    expect(cellOf(runoffVolume, 1000, 1)).toBeCloseTo(79.17, 2);
  });

  test("10 mm on 100 m2 at a share of 1 is 1 m3", () => {
    expect(cellOf(runoffVolume, 100, 10, 1, "metric")).toBeCloseTo(1, 12);
  });

  test("a percent typed as the share is refused", () => {
    expect(cellOf(runoffVolume, 1000, 1, 95)).toEqual(refused("Runoff share must be 1 or less."));
  });
});

describe("YARDRUNOFF", () => {
  const covers = column("roof", "good lawn");
  const areas = column(1000, 3000);

  // Computed by hand: 0.19773 in, weighted surface by surface, on 4,000 sq ft.
  test("1 in on a roof of 1000 sq ft and a lawn of 3000 sq ft runs off 65.91 cu ft", () => {
    expect(cellOf(yardRunoff, 1, covers, areas, "B")).toBeCloseTo(65.91, 2);
  });

  test("a share of its own for each surface counts, a blank one counts as all, and one share counts for all", () => {
    const whole = cellOf(yardRunoff, 2, covers, areas, "B") as number;
    expect(cellOf(yardRunoff, 2, covers, areas, "B", column(0.5, 0.5))).toBeCloseTo(whole / 2, 10);
    expect(cellOf(yardRunoff, 2, covers, areas, "B", 0.5)).toBeCloseTo(whole / 2, 10);
    expect(cellOf(yardRunoff, 2, covers, areas, "B", column(1, null))).toBe(whole);
  });

  test("rows left blank are no surfaces, and rows may run across", () => {
    const whole = cellOf(yardRunoff, 2, covers, areas, "B");
    expect(cellOf(yardRunoff, 2, column("roof", "", "good lawn", null), column(1000, null, 3000, ""), "B")).toBe(whole);
    expect(cellOf(yardRunoff, 2, [["roof", "good lawn"]], [[1000, 3000]], "B")).toBe(whole);
    expect(cellOf(yardRunoff, 2, "roof", 1000, "B")).toBeGreaterThan(0);
  });

  test("a surface half filled in is named by its number", () => {
    expect(cellOf(yardRunoff, 2, column("roof", null), areas, "B")).toEqual(notThere("Surface 2 has an area but no cover."));
    expect(cellOf(yardRunoff, 2, covers, column(null, 3000), "B")).toEqual(notThere("Surface 1 has a cover but no area."));
  });

  test("what is wrong with one surface is said of that surface", () => {
    expect(cellOf(yardRunoff, 2, column("roof", "gras"), areas, "B")).toMatchObject({
      sentence: expect.stringMatching(/^Cover 2 "gras" is not in its list\./),
    });
    expect(cellOf(yardRunoff, 2, covers, column(1000, -1), "B")).toEqual(refused("Area 2 must be 0 or more."));
    expect(cellOf(yardRunoff, 2, covers, areas, "B", column(1, 1.5))).toEqual(refused("Share draining here 2 must be 1 or less."));
    expect(cellOf(yardRunoff, 2, covers, column(1000, divisionByZero), "B")).toBe(divisionByZero);
  });

  test("ranges of different length are refused with their lengths", () => {
    expect(cellOf(yardRunoff, 2, covers, column(1000, 3000, 1), "B")).toEqual(
      refused("Covers (2 cells) and Areas (3 cells) do not line up: give them the same size, or a single cell."),
    );
    expect(cellOf(yardRunoff, 2, "roof", 1000, "B", column(1, 1))).toEqual(
      refused("Covers (1 cell) and Shares draining here (2 cells) do not line up: give them the same size, or a single cell."),
    );
  });

  test("one yard in square metres runs off as much water as in square feet", () => {
    const us = cellOf(yardRunoff, 2, covers, areas, "B") as number;
    expect(cellOf(yardRunoff, 50.8, covers, column(92.90304, 278.70912), "B", null, "metric")).toBeCloseTo(us * 0.028316846592, 9);
  });

  test("it cautions for a curve number under 40 and for little runoff, and stays silent on faulty input", () => {
    expect(yardRunoff.cautionsFor([6, "good lawn", 1000, "A"])).toEqual([
      "A curve number is under 40: TR-55 says to use another method.",
      "Less than 0.5 in of runoff from the yard: TR-55 is less accurate here.",
    ]);
    expect(yardRunoff.cautionsFor([6, "roof", 1000, "A"])).toEqual([]);
    expect(yardRunoff.cautionsFor([0, "roof", 1000, "A"])).toEqual([]);
    expect(yardRunoff.cautionsFor([1, column("roof", null), column(1000, 5), "A"])).toEqual([]);
  });
});
