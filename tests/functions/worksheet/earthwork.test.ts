import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../../../functions/amendment/material-weight.ts";
import { DUG_SOILS } from "../../../functions/earthwork/dig-hours.ts";
import { EARTH_SOILS } from "../../../functions/published/fm-5-434.ts";
import { basinSize } from "../../../functions/worksheet/basin.ts";
import { digVolume } from "../../../functions/worksheet/soil.ts";
import { cutFill, digHours, stockpile, truckLoads } from "../../../functions/worksheet/earthwork.ts";
import { measured } from "../measured.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, refused } from "./sample-functions.ts";

const CALL_811 = expect.stringContaining("811 in the US");

describe("CUTFILL", () => {
  /** 17 by 7 ft of floor, 20 by 10 ft at the rim. */
  const usual = [17, 7, 6, 6] as const;
  const bare = [...usual, 3, 0, 0, "rectangle"] as const;

  test("answers a column of slopes, a row for each", () => {
    const rows = cutFill.evaluate([17, 7, 6, column(0, 6, 10), 3, 0, 0, "rectangle"]);
    expect(rows.map(({ length }) => length)).toEqual([4, 4, 4]);
    expect(rows[0]![0]).toBeCloseTo(79 / 27, 12);
  });

  test("takes 3 to 1 sides, 3 in of mulch, no soil mix, an ellipse, a berm 1 ft wide, 2 in of freeboard and loam unless told otherwise", () => {
    expect(cutFill.evaluate([...usual])).toEqual(cutFill.evaluate([...usual, 3, 3, 0, "ellipse", 1, 3, 2, "loam"]));
  });

  test("cuts what DIGVOLUME digs, on level ground and on a slope, to the last bit", () => {
    const floor = cellOf(basinSize, 200, "ellipse", 2.5) as number;
    const rows = [0, 2, 6, 12].map((slope) => [
      cutFill.evaluate([floor, floor / 2.5, 7, slope, 4, 2, 18])[0]![0],
      cellOf(digVolume, (Math.PI / 4) * floor * (floor / 2.5), 7, 4, 2, 18, slope, "ellipse", 2.5),
    ]);
    rows.forEach(([cut, dig]) => {
      expect(cut as number).toBeCloseTo(dig as number, 12);
    });
  });

  test("gives the same earth on a metric sheet", () => {
    fc.assert(
      fc.property(
        measured(1, 40),
        measured(1, 20),
        measured(0, 12),
        fc.integer({ min: 0, max: 15 }),
        measured(0, 4),
        measured(0, 6),
        measured(0, 24),
        fc.constantFrom("ellipse", "rectangle"),
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

  test("has only the reminder to have lines marked for a usual garden, and says 811 in US units alone", () => {
    expect(cutFill.cautionsFor([...usual])).toEqual([CALL_811]);
    const [marked] = cutFill.cautionsFor([6, 3, 150, 6, 3, 75, 0, "rectangle", 0.6, 4, 50, "loam", "metric"]);
    expect(marked).toContain("ask the local one-call or utility-marking service");
    expect(marked).not.toContain("811");
  });

  test("says by how much the earth falls short, in the sheet's units", () => {
    expect(cutFill.cautionsFor([17, 7, 1, 0, 3, 0, 0, "rectangle", 2, 4, 6])).toEqual([
      CALL_811,
      expect.stringMatching(/^Earth falls short by [\d.]+ cu yd in place/),
    ]);
    expect(cutFill.cautionsFor([5, 2, 25.4, 0, 3, 0, 0, "rectangle", 0.6, 4, 152.4, "loam", "metric"])).toContainEqual(
      expect.stringMatching(/ m³ in place/),
    );
  });

  test.each([
    [[20, 10, 1, 12, 3, 0], "stand on fill"],
    [[20, 10, 9, 6], "Ponding deeper than 8 in"],
    [[20, 10, 14, 6], "Ponding deeper than 12 in"],
    [[20, 5, 8, 13], "Steeper than 12%"],
    [[20, 5, 8, 6, 2], "Sides steeper than 3 to 1"],
    [[...bare, 0.5], "under 1 ft wide at the top"],
    [[...bare, 1, 2], "Berm sides steeper than 3 to 1"],
    [[...bare, 1, 3, 1], "Under 2 in of freeboard"],
    [[20, 10, 8, 2, 3, 3, 36], "4 ft or more can cave in"],
  ])("cautions for %j: %s", (inputs, says) => {
    expect(cutFill.cautionsFor(inputs)).toContainEqual(expect.stringContaining(says));
  });

  test("a soil mix that reaches below the old ground downhill leaves no floor on fill", () => {
    expect(cutFill.cautionsFor([20, 10, 1, 12, 3, 3, 12])).not.toContainEqual(expect.stringContaining("stand on fill"));
  });

  test("refuses a soil without swell factors", () => {
    expect(cellOf(cutFill, ...bare, 1, 3, 2, "gravel")).toEqual(refused('Soil must be "sand", "loam" or "clay"; it is "gravel".'));
  });

  test("refuses ground as steep as the sides or the berm, where neither ends, and cautions of nothing else there", () => {
    expect(cellOf(cutFill, 17, 7, 6, 34)).toEqual(
      refused("Ground slope must be under 33.3%: sides of 3 to 1 never come up to steeper ground."),
    );
    expect(cellOf(cutFill, 17, 7, 6, 25, 2, 3, 0, "ellipse", 1, 4)).toEqual(
      refused("Ground slope must be under 25%: a berm's side of 4 to 1 never comes down to steeper ground."),
    );
    expect(cutFill.cautionsFor([17, 7, 6, 34])).toEqual([CALL_811, expect.stringContaining("Steeper than 12%")]);
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

  test("says when no truck carries such a load: 10,510 lb typed as tons, or a site's volume as one load", () => {
    expect(truckLoads.cautionsFor([10, 5.19, 10_510])).toEqual([
      "A truck and its load may weigh 40 tons at most: the limit is in tons of 2,000 lb, not in lb.",
    ]);
    expect(truckLoads.cautionsFor([10, 5, 5000, "moist earth", "metric"])).toEqual([
      "A truck and its load may weigh 36.3 t at most: the limit is in tonnes, not in kg.",
    ]);
    expect(truckLoads.cautionsFor([10, 140, 15])).toContainEqual(
      "No truck or box takes more than 40 cu yd: the load volume is that of one load, in cu yd.",
    );
    expect(truckLoads.cautionsFor([10, 40, 40])).toEqual([]);
  });

  // By hand: a pad of 10 ft on 0.556 percent; the ground falls 0.667 in across it.
  test("CUTFILL digs on a flat yard of 0.556 percent", () => {
    const flat = cutFill.evaluate([10, 10, 6, 0])[0]!;
    const nearlyFlat = cutFill.evaluate([10, 10, 6, 100 / 180])[0]!;
    for (const [place, cell] of nearlyFlat.entries()) expect(cell).toBeCloseTo(flat[place] as number, 0);
    expect(cutFill.cautionsFor([10, 10, 6, 100 / 180])).toContain("Ground slope is taken as 0.556%: write a percent as 2, not 0.02.");
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

  test("cautions of more than 4 h for each person, and always to have lines marked", () => {
    expect(digHours.cautionsFor([6, "firm", 6])).toEqual([CALL_811]);
    expect(digHours.cautionsFor([6, "firm", 3])).toEqual([CALL_811, expect.stringContaining("Over 4 h")]);
  });
});
