import { describe, expect, test } from "vitest";
import { isCellError } from "../../../functions/worksheet/calling/cell.ts";
import { basinArea, basinDepth, basinSize, basinVolume, deepestPonding, drawdown, ruleArea } from "../../../functions/worksheet/basin.ts";
import { stormRoute } from "../../../functions/worksheet/storm-route.ts";
import { cellOf, column, notThere, refused, row } from "./sample-functions.ts";

const TRIP = "Ponding deeper than 8 in stands long and is a place to trip.";
const FENCE = "Ponding deeper than 12 in near children needs a barrier: ask locally.";
const STANDS =
  "Water that stands for days lets mosquitoes grow: printed limits run from 12 to 72 h for water on the surface, and to 96 h for what drains below it.";

describe("RULEAREA", () => {
  test("500 sq ft needs 50 sq ft by the rule of thumb, and a percent typed as a share is asked about (common practice, no source)", () => {
    expect(cellOf(ruleArea, 500)).toBe(50);
    expect(cellOf(ruleArea, 500, 12)).toBe(60);
    expect(cellOf(ruleArea, 500, 0.1)).toBe(0.5);
    expect(ruleArea.cautionsFor([500, 0.1])).toContain("Percent is taken as 0.1%: write a percent as 2, not 0.02.");
  });

  test("it cautions outside the 5 to 30 percent that print gives, Ontario's 20 parts of paving to one of garden included", () => {
    expect(ruleArea.cautionsFor([500, 4])).toEqual(["Published rules run from 5 to 30 percent of the area that drains to the garden."]);
    expect(ruleArea.cautionsFor([500, 5])).toEqual([]);
    expect(ruleArea.cautionsFor([500, 31])).toHaveLength(1);
    expect(ruleArea.cautionsFor([500, 30])).toEqual([]);
    expect(ruleArea.cautionsFor([500])).toEqual([]);
  });
});

describe("BASINAREA", () => {
  // Computed by hand: 79.17 cu ft over 6 in + 18 in x 0.25 + 0.25 in/h x 6 h.
  test("1000 sq ft of roof, 6 in of ponding and 18 in of media need 79.2 sq ft", () => {
    expect(cellOf(basinArea, 1000, 0.25, 6, 1, 0.95, 18, 0.25, 6, 0, false)).toBeCloseTo(79.2, 1);
  });

  // Computed by hand: 79.17 cu ft over 6 in less 1 in of rain on the basin.
  test("vertical sides and the rest left out, 1000 sq ft need 190 sq ft", () => {
    expect(cellOf(basinArea, 1000, 0.25, 6, null, null, null, null, null, 0)).toBeCloseTo(190, 10);
    expect(cellOf(basinArea, 92.90304, 6.35, 152.4, null, null, null, null, null, 0, null, null, "metric")).toBeCloseTo(
      190 * 0.09290304,
      10,
    );
  });

  test("a column of areas against a row of rates is a what-if grid", () => {
    const grid = basinArea.evaluate([column(500, 1000), row(0.2, 0.1), 6, null, null, null, null, null, 0]);
    expect(grid[0]![0]).toBeCloseTo(95, 10);
    expect(grid[1]![0]).toBeCloseTo(190, 10);
    expect(isCellError(grid[0]![1])).toBe(true);
  });

  test("ponding that would not drain in time is refused in words, in the units of the sheet", () => {
    expect(cellOf(basinArea, 1000, 6 / 62, 6)).toEqual(
      refused("Drains too slowly: 6 in needs 62 h and 48 h is the limit. Up to 4.6 in would drain."),
    );
    expect(cellOf(basinArea, 93, 150 / 62, 150, null, null, null, null, null, null, null, null, "metric")).toEqual(
      refused("Drains too slowly: 150 mm needs 62 h and 48 h is the limit. Up to 116 mm would drain."),
    );
    expect(cellOf(basinArea, 1000, 0.001, 6)).toEqual(
      refused("Drains too slowly: 6 in needs 6,000 h and 48 h is the limit. Up to 0.048 in would drain."),
    );
    expect(cellOf(basinArea, 1000, 0, 6)).toEqual(refused("Does not drain: the design rate is 0."));
  });

  test("a limit of 72 h lets through what 48 h does not", () => {
    expect(cellOf(basinArea, 1000, 0.1, 6, null, null, null, null, null, 0, null, 72)).toBeCloseTo(190, 10);
  });

  test("sides are 3 to 1 where nothing else is said, as everywhere", () => {
    expect(cellOf(basinArea, 1000, 0.25, 6)).toBe(cellOf(basinArea, 1000, 0.25, 6, null, null, null, null, null, 3));
  });

  test("storm hours over a day are minutes typed as hours", () => {
    expect(cellOf(basinArea, 1000, 0.25, 6, 1, 0.95, 0, 0.25, 360)).toEqual(refused("Storm hours must be 24 or less."));
    expect(cellOf(basinArea, 1000, 0.25, 6, 1, 0.95, 0, 0.25, 24)).toBeTypeOf("number");
  });

  test("a storm deeper than the basin holds is refused in words", () => {
    expect(cellOf(basinArea, 1000, 0.5, 2, 3)).toEqual(
      refused(
        "No area can hold this storm: each part of the basin catches 3 in of rain itself and can hold no more than that. Pond deeper or add soil mix.",
      ),
    );
    expect(cellOf(basinArea, 1000, 0.5, 2, 3, null, null, null, null, 0, false)).toBeCloseTo((0.95 * 3000) / 2, 8);
  });

  test("what is missing or mistyped is named", () => {
    expect(cellOf(basinArea, 1000, null, 6)).toEqual(notThere("Design rate is missing."));
    expect(cellOf(basinArea, 1000, 0.25, 6, 1, 1.2)).toEqual(refused("Runoff share must be 1 or less."));
    expect(cellOf(basinArea, 1000, 0.25, 6, 1, 0.95, 0, 0.25, 0, 0, "yes")).toEqual(
      refused('Rain on the basin counted must be TRUE or FALSE; it is "yes".'),
    );
  });

  test("it cautions about deep ponding, steep sides, long standing, a large floor and no floor", () => {
    expect(basinArea.cautionsFor([500, 1, 9])).toEqual([TRIP]);
    expect(basinArea.cautionsFor([500, 1, 13])).toEqual([FENCE]);
    // 100 sq ft with upright sides hold 75 cu ft at 9 in: the depth that comes out is held against the same limit.
    expect(basinDepth.cautionsFor([75, 100, 0])).toContain(TRIP);
    expect(basinDepth.cautionsFor([50, 100, 0])).not.toContain(TRIP);
    // 25.4 typed for an inch.
    expect(basinArea.cautionsFor([500, 1, 6, 25.4]).join()).toContain("Few places ever had 25.4 in of rain in a day");
    expect(stormRoute.cautionsFor([25.4, "II", 1000, 0.95, 200, 6, 0.5]).join()).toContain("Few places ever had 25.4 in");
    expect(basinArea.cautionsFor([500, 1, 6, 1, 0.95, 0, 0.25, 0, 2])).toEqual(["Sides steeper than 3 to 1 wash and slump more easily."]);
    expect(basinArea.cautionsFor([500, 1, 6, 1, 0.95, 0, 0.25, 0, 0, true, 73])).toEqual([STANDS]);
    expect(basinArea.cautionsFor([2000, 1, 6])).toEqual(["A floor over 300 sq ft is hard to dig level: consider two gardens."]);
    expect(basinArea.cautionsFor([5, 1, 6, 1, 0.95, 0, 0.25, 0, 3])).toEqual([
      "The sloping sides alone hold this storm: no level floor is needed.",
    ]);
    expect(basinArea.cautionsFor([0, 1, 6])).toEqual([]);
    expect(basinArea.cautionsFor([1000, 1, 1, 3])).toEqual([]);
  });
});

describe("DEEPESTPONDING and DRAWDOWN", () => {
  // Computed by hand from the definitions.
  test("6 in at 0.5 and 0.25 in/h drain in 12 and 24 h, and 4 in at 0.1 in/h in 40 h", () => {
    expect(cellOf(drawdown, 6, 0.5)).toBeCloseTo(12, 10);
    expect(cellOf(drawdown, 6, 0.25)).toBeCloseTo(24, 10);
    expect(cellOf(drawdown, 4, 0.1)).toBeCloseTo(40, 10);
    expect(cellOf(drawdown, 152.4, 12.7, null, null, "metric")).toBeCloseTo(12, 10);
    expect(cellOf(drawdown, 6, 0.5, 24)).toBeCloseTo(24, 10);
  });

  test("0.1 in/h drain at most 4.8 in within the usual 48 h", () => {
    expect(cellOf(deepestPonding, 0.1)).toBeCloseTo(4.8, 10);
    expect(cellOf(deepestPonding, 2.54, 24, "metric")).toBeCloseTo(60.96, 10);
  });

  test("a design rate of 0 never drains, and no ponding drains in no time", () => {
    expect(cellOf(drawdown, 6, 0)).toEqual(refused("Does not drain: the design rate is 0."));
    expect(cellOf(deepestPonding, 0)).toEqual(refused("Does not drain: the design rate is 0."));
    expect(cellOf(deepestPonding, 0.1, 0)).toEqual(refused("Drain hours must be more than 0."));
    expect(drawdown.cautionsFor([6, 0])).toEqual([]);
  });

  test("they caution about deep ponding and about water that stands long", () => {
    expect(deepestPonding.cautionsFor([0.2])).toEqual([TRIP]);
    expect(deepestPonding.cautionsFor([0.01, 96])).toEqual([STANDS]);
    expect(drawdown.cautionsFor([6, 0.1])).toEqual(["The ponding stands longer than the usual 48 h: ask what the local limit is."]);
    expect(drawdown.cautionsFor([6, 0.08])).toEqual([STANDS]);
    expect(drawdown.cautionsFor([6, 0.125])).toEqual([]);
    expect(drawdown.cautionsFor([6, 0.125, 24])).toEqual([]);
    expect(drawdown.cautionsFor([6, 0.125, 26])).toEqual([
      "The soil mix is not empty after 96 h, the longest printed limit: the next rain finds it wet.",
    ]);
  });

  test("two days typed as 2 h, voids of 0.9 and a rate typed in mm/h are cautioned, wherever they are typed", () => {
    const days = "The shortest printed limit is 12 h: drain hours are hours, so two days are 48.";
    const voids =
      "No soil mix holds so much: printed void shares run from 0.2 (bioretention soil) to 0.4 (stone), and no printed soil has more than 0.5 of pores.";
    const fast =
      "Hardly any soil takes more than 20 in/h: check the units and the readings, and look for gravel, a burrow or a pipe's bed.";
    expect(deepestPonding.cautionsFor([1, 2])).toEqual([days]);
    expect(deepestPonding.cautionsFor([25, 0.3])).toEqual([days, fast]);
    expect(deepestPonding.cautionsFor([1, 12])).toEqual([TRIP]);
    expect(basinArea.cautionsFor([500, 12.5, 6, 1, 0.95, 0, 0.5, 0, 0, true, 11])).toEqual([days]);
    expect(basinArea.cautionsFor([500, 12.5, 6, 1, 0.95, 12, 0.9])).toEqual([voids]);
    expect(basinArea.cautionsFor([500, 20.1, 6])).toEqual([fast]);
    expect(drawdown.cautionsFor([6, 0.5, 24, 0.5])).toEqual([]);
    expect(drawdown.cautionsFor([6, 0.5, 24, 0.51])).toEqual([voids]);
    expect(drawdown.cautionsFor([6, 25])).toEqual([fast]);
  });
});

describe("BASINVOLUME, BASINDEPTH and BASINSIZE", () => {
  // Computed by hand: a floor of 17 by 7 ft with 3 to 1 sides is 20 by 10 ft at 6 in.
  test("a rectangle 20 by 10 ft at the top, 6 in deep, holds 79.00 cu ft, and 79.00 cu ft stand 6 in deep in it", () => {
    expect(cellOf(basinVolume, 119, 6, 3, "rectangle", 17 / 7)).toBeCloseTo(79, 2);
    expect(cellOf(basinDepth, 79, 119, 3, "rectangle", 17 / 7)).toBeCloseTo(6, 9);
  });

  test("an ellipse 20 by 10 ft at the top, 6 in deep, holds 62.05 cu ft with the usual sides", () => {
    expect(cellOf(basinVolume, Math.PI * 8.5 * 3.5, 6, null, null, 17 / 7)).toBeCloseTo(62.05, 2);
  });

  test("in metres and millimetres the same basin holds the same water", () => {
    const cubicMetres = cellOf(basinVolume, 119 * 0.09290304, 152.4, 3, "rectangle", 17 / 7, "metric") as number;
    expect(cubicMetres).toBeCloseTo(79 * 0.028316846592, 8);
    expect(cellOf(basinDepth, cubicMetres, 119 * 0.09290304, 3, "rectangle", 17 / 7, "metric")).toBeCloseTo(152.4, 7);
  });

  test("200 sq ft as a rectangle is 20 by 10 ft and 60 ft around, row by row", () => {
    expect(basinSize.evaluate([column(200, 50), "rectangle"])).toEqual([
      [20, 10, 60],
      [10, 5, 30],
    ]);
  });

  test("an ellipse of 157.08 sq ft is 20 by 10 ft and 48.44 ft around", () => {
    // Abramowitz and Stegun, 1964, table 17.1 (from memory): 4 x 10 ft x E at m = 0.75, 1.21105603.
    const [[length, width, edge] = []] = basinSize.evaluate([50 * Math.PI]);
    expect(length).toBeCloseTo(20, 10);
    expect(width).toBeCloseTo(10, 10);
    expect(edge).toBeCloseTo(48.44, 2);
  });

  test("a basin wider than long and a floor of nothing are refused where they cannot be", () => {
    expect(cellOf(basinVolume, 119, 6, 3, "ellipse", 0.5)).toEqual(refused("Length to width must be 1 or more."));
    expect(cellOf(basinDepth, 79, 0)).toEqual(refused("Floor area must be more than 0."));
    expect(cellOf(basinVolume, 119, 6, -1)).toEqual(refused("Side slope must be 0 or more."));
    expect(cellOf(basinVolume, 119, 6, 3, "kidney")).toEqual(refused('Shape must be "ellipse" or "rectangle"; it is "kidney".'));
  });

  test("they caution about deep ponding, steep sides and large floors", () => {
    expect(basinVolume.cautionsFor([119, 9, 1])).toEqual([TRIP, "Sides steeper than 3 to 1 wash and slump more easily."]);
    expect(basinVolume.cautionsFor([119, 6, 0])).toEqual([]);
    expect(basinDepth.cautionsFor([79, 119, 2.9])).toHaveLength(1);
    expect(basinSize.cautionsFor([301])).toHaveLength(1);
    expect(basinSize.cautionsFor([300])).toEqual([]);
  });
});
