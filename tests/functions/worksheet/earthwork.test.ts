import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../../../functions/amendment/material-weight.ts";
import { DUG_SOILS } from "../../../functions/earthwork/dig-hours.ts";
import { EARTH_SOILS } from "../../../functions/published/fm-5-434.ts";
import { cutFill, digHours, stockpile, truckLoads } from "../../../functions/worksheet/earthwork.ts";
import { measured } from "../measured.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, refused } from "./sample-functions.ts";

const CALL_811 = expect.stringContaining("811 in the US");

describe("CUTFILL", () => {
  const usual = [20, 10, 6, 6] as const;

  test("answers a column of slopes, a row for each", () => {
    const rows = cutFill.evaluate([20, 10, 6, column(0, 6, 10)]);
    expect(rows.map(({ length }) => length)).toEqual([4, 4, 4]);
    expect(rows[0]![0]).toBeCloseTo((20 * 10 * 0.5) / 27, 12);
  });

  test("takes a berm 1 ft wide with 3 to 1 sides, 2 in of freeboard and loam unless told otherwise", () => {
    expect(cutFill.evaluate([...usual])).toEqual(cutFill.evaluate([...usual, 1, 3, 2, "loam"]));
  });

  test("gives the same earth on a metric sheet", () => {
    fc.assert(
      fc.property(
        measured(1, 40),
        measured(1, 20),
        measured(0, 12),
        fc.integer({ min: 0, max: 15 }),
        measured(0, 3),
        measured(0, 4),
        measured(0, 6),
        fc.constantFrom(...EARTH_SOILS),
        (...inputs) => {
          expectSameOnMetric(cutFill, inputs);
        },
      ),
    );
  });

  test("has only the reminder to call 811 for a usual garden", () => {
    expect(cutFill.cautionsFor([...usual])).toEqual([CALL_811]);
  });

  test("says by how much the earth falls short, in the sheet's units", () => {
    expect(cutFill.cautionsFor([20, 10, 1, 0, 2, 4, 6])).toEqual([
      CALL_811,
      expect.stringMatching(/^Earth falls short by [\d.]+ cu yd in place/),
    ]);
    expect(cutFill.cautionsFor([6, 3, 25.4, 0, 0.6, 4, 152.4, "loam", "metric"])).toContainEqual(expect.stringMatching(/ m³ in place/));
  });

  test.each([
    [[20, 10, 1, 10], "stand on fill"],
    [[20, 10, 9, 6], "Ponding deeper than 8 in"],
    [[20, 10, 14, 6], "Ponding deeper than 12 in"],
    [[20, 5, 8, 13], "Steeper than 12%"],
    [[20, 10, 6, 6, 0.5], "under 1 ft wide at the top"],
    [[20, 10, 6, 6, 1, 2], "Berm sides steeper than 3 to 1"],
    [[20, 10, 6, 6, 1, 3, 1], "Under 2 in of freeboard"],
    [[20, 60, 8, 12], "4 ft or more can cave in"],
  ])("cautions for %j: %s", (inputs, says) => {
    expect(cutFill.cautionsFor(inputs)).toContainEqual(expect.stringContaining(says));
  });

  test("refuses a soil without swell factors and a slope given as a share", () => {
    expect(cellOf(cutFill, 20, 10, 6, 6, 1, 3, 2, "gravel")).toEqual(refused('Soil must be "sand", "loam" or "clay"; it is "gravel".'));
    expect(cellOf(cutFill, 20, 10, 6, 0.06)).toEqual(refused("Ground slope is a percent, 0 or 1 to 100: for 6% write 6, not 0.06."));
  });
});

describe("STOCKPILE", () => {
  test("rests at 37 degrees unless told otherwise", () => {
    expect(stockpile.evaluate([10])).toEqual(stockpile.evaluate([10, 37]));
  });

  test("gives the same heap on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 100), measured(5, 60), (...inputs) => {
        expectSameOnMetric(stockpile, inputs);
      }),
    );
  });

  test.each([
    [0, "more than 0"],
    [90, "less than 90"],
  ])("refuses a resting angle of %d degrees", (angle, limit) => {
    expect(cellOf(stockpile, 10, angle)).toEqual(refused(`Resting angle in degrees must be ${limit}.`));
  });

  test("always keeps the heap back from the edge, and cautions of an angle no earth rests at", () => {
    expect(stockpile.cautionsFor([10])).toEqual([expect.stringContaining("2 ft or more back from the edge")]);
    expect(stockpile.cautionsFor([10, 37, "metric"])).toEqual([expect.stringContaining("0.61 m or more back")]);
    for (const angle of [14, 46]) expect(stockpile.cautionsFor([10, angle])[1]).toContain("15 (wet clay) to 45 degrees");
    for (const angle of [15, 45]) expect(stockpile.cautionsFor([10, angle])).toHaveLength(1);
  });
});

describe("TRUCKLOADS", () => {
  test("counts volume alone where no weight limit is given, and moist earth unless told otherwise", () => {
    expect(cellOf(truckLoads, 10, 2)).toBe(5);
    expect(cellOf(truckLoads, 10, 2, 0.75)).toBe(cellOf(truckLoads, 10, 2, 0.75, "moist earth"));
  });

  test("gives the same loads on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 60), measured(0.2, 12), measured(0.1, 15), fc.constantFrom(...MATERIALS), (...inputs) => {
        expectSameOnMetric(truckLoads, inputs);
      }),
    );
  });

  test("says what a full load weighs where no limit is given", () => {
    expect(truckLoads.cautionsFor([10, 2])).toEqual([expect.stringContaining("a full load weighs about 2.57 tons")]);
    expect(truckLoads.cautionsFor([10, 2, null, "moist earth", "metric"])).toEqual([expect.stringContaining("3.04 t,")]);
  });

  test("says when weight sets the number of loads", () => {
    expect(truckLoads.cautionsFor([10, 2, 0.75])).toEqual([expect.stringContaining("Weight, not volume")]);
    expect(truckLoads.cautionsFor([10, 2, 15])).toEqual([]);
  });

  test("says when a weight is not a published one", () => {
    expect(truckLoads.cautionsFor([10, 2, 15, "compost"])).toEqual([
      "The weight of compost is common practice, not a published value: ask the supplier.",
    ]);
  });

  test("refuses a material that has no weight, naming the nearest", () => {
    expect(cellOf(truckLoads, 10, 2, 1, "moist dirt")).toMatchObject({
      sentence: expect.stringContaining('Material "moist dirt" is not in its list. The nearest are "moist earth", '),
    });
  });
});

describe("DIGHOURS", () => {
  test("takes one volunteer unless told otherwise", () => {
    expect(digHours.evaluate([6, "firm"])).toEqual(digHours.evaluate([6, "firm", 1, true]));
    expect(cellOf(digHours, 6, "firm", 1, false)).toBeCloseTo(10.67, 2);
  });

  test("gives the same hours on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 60), fc.constantFrom(...DUG_SOILS), fc.integer({ min: 1, max: 20 }), fc.boolean(), (...inputs) => {
        expectSameOnMetric(digHours, inputs);
      }),
    );
  });

  test("refuses nobody and half a person", () => {
    expect(cellOf(digHours, 6, "firm", 0)).toEqual(refused("People must be 1 or more."));
    expect(cellOf(digHours, 6, "firm", 1.5)).toEqual(refused("People must be a whole number."));
  });

  test("cautions of more than 4 h for each person, and always to call 811", () => {
    expect(digHours.cautionsFor([6, "firm", 6])).toEqual([CALL_811]);
    expect(digHours.cautionsFor([6, "firm", 3])).toEqual([CALL_811, expect.stringContaining("Over 4 h")]);
  });
});
