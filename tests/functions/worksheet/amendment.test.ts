import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../../../functions/amendment/material-weight.ts";
import { bags, compostDepth, materialWeight, sandToAdd } from "../../../functions/worksheet/amendment.ts";
import { measured } from "../measured.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, refused } from "./sample-functions.ts";

describe("COMPOSTDEPTH", () => {
  test("is 0 where the soil already has the target, however poor the compost", () => {
    expect(compostDepth.evaluate([8, column(2, 10, 12), 10, column(55, 5, 5), 2000, 600])).toEqual([[expect.closeTo(2.977, 3)], [0], [0]]);
  });

  test("refuses compost no richer than the target", () => {
    for (const compost of [10, 9])
      expect(cellOf(compostDepth, 8, 2, 10, compost, 2000, 600)).toEqual(refused("Compost organic percent must be more than the target."));
  });

  test("refuses a density of nothing", () => {
    expect(cellOf(compostDepth, 8, 2, 10, 55, 0, 600)).toEqual(refused("Soil density must be more than 0."));
    expect(cellOf(compostDepth, 8, 2, 10, 55, 2000, 0)).toEqual(refused("Compost density must be more than 0."));
  });

  test("gives the same depth on a metric sheet, densities in either unit", () => {
    fc.assert(
      fc.property(
        measured(1, 24),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 12 }),
        measured(1000, 2500),
        measured(300, 900),
        (inches, soil, target, dense, light) => {
          expectSameOnMetric(compostDepth, [inches, soil, target, 55, dense, light]);
          expect(cellOf(compostDepth, inches, soil, target, 55, dense * 0.593276, light * 0.593276)).toBeCloseTo(
            cellOf(compostDepth, inches, soil, target, 55, dense, light) as number,
            9,
          );
        },
      ),
    );
  });

  test("cautions of a target over 10 percent and of compost as heavy as soil", () => {
    const finished = expect.stringContaining("finished depth, compost included");
    expect(compostDepth.cautionsFor([8, 2, 10, 55, 2000, 600])).toEqual([finished]);
    expect(compostDepth.cautionsFor([8, 2, 11, 55, 2000, 600])).toEqual([expect.stringContaining("over 10%"), finished]);
    expect(compostDepth.cautionsFor([8, 2, 10, 55, 600, 600])).toEqual([expect.stringContaining("lighter than soil"), finished]);
    expect(compostDepth.cautionsFor([8, 12, 10, 55, 2000, 600])).toEqual([]);
  });
});

describe("SANDTOADD", () => {
  test("is 0 where the soil already has the target", () => {
    expect(sandToAdd.evaluate([1, column(20, 60, 75), 95, 60])).toEqual([[expect.closeTo(1.143, 3)], [0], [0]]);
  });

  test("refuses a sand source no sandier than the target", () => {
    for (const source of [60, 50])
      expect(cellOf(sandToAdd, 1, 20, source, 60)).toEqual(refused("Sand source's sand percent must be more than the target."));
  });

  test("gives the same sand on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 50), fc.integer({ min: 1, max: 70 }), fc.integer({ min: 1, max: 80 }), (cubicYards, native, target) => {
        expectSameOnMetric(sandToAdd, [cubicYards, native, 95, target]);
      }),
    );
  });

  test("cautions where the sand is too little to help a clay, and only there", () => {
    expect(sandToAdd.cautionsFor([1, 20, 95, 40])).toEqual([expect.stringContaining("too little to help a clay")]);
    expect(sandToAdd.cautionsFor([1, 20, 95, 60])).toEqual([]);
    expect(sandToAdd.cautionsFor([1, 60, 95, 60])).toEqual([]);
  });
});

describe("BAGS", () => {
  test("asks about a bag that nobody sells", () => {
    expect(bags.cautionsFor([1, 2])).toEqual([]);
    expect(bags.cautionsFor([1, 85, "metric"])).toEqual([]);
    expect(bags.cautionsFor([1, 1000])).toEqual(["Bags hold 0.5 to 3 cu ft (metric: 15 to 85 L): the size is that of one bag."]);
  });

  test("counts bags in cubic feet on a US sheet and in liters on a metric sheet", () => {
    expect(cellOf(bags, 1, 2)).toBe(14);
    expect(cellOf(bags, 1, 40, "metric")).toBe(25);
    expect(cellOf(bags, 1, 50, "metric")).toBe(20);
  });

  test("counts as many bags of one size, whichever unit it is in", () => {
    fc.assert(
      fc.property(measured(0, 50), measured(0.25, 3), (cubicYards, cubicFeet) => {
        expect(cellOf(bags, cubicYards * 0.764554857984, cubicFeet * 28.316846592, "metric")).toBe(cellOf(bags, cubicYards, cubicFeet));
      }),
    );
  });

  test("does not buy a bag for the rounding of a conversion", () => {
    expect(cellOf(bags, 10.0000001 / 27, 1)).toBe(10);
  });

  test("refuses a bag of nothing", () => {
    expect(cellOf(bags, 1, 0)).toEqual(refused("Bag size in cu ft (metric: L) must be more than 0."));
  });
});

describe("MATERIALWEIGHT", () => {
  test("weighs a column of materials", () => {
    expect(materialWeight.evaluate([10, column("dry earth", "wet mud", "mulch")])).toEqual([
      [expect.closeTo(10.125, 9)],
      [expect.closeTo(16.2, 9)],
      [expect.closeTo(4, 9)],
    ]);
  });

  test("gives the same weight on a metric sheet: 1,202 kg a cubic meter of dry earth", () => {
    expect(cellOf(materialWeight, 1, "dry earth", "metric")).toBeCloseTo(1.202, 2);
    fc.assert(
      fc.property(measured(0, 100), fc.constantFrom(...MATERIALS), (...inputs) => {
        expectSameOnMetric(materialWeight, inputs);
      }),
    );
  });

  test("says when a weight is not a published one", () => {
    expect(materialWeight.cautionsFor([1, "mulch"])).toEqual([
      "The weight of mulch is common practice, not a published value: ask the supplier.",
    ]);
    expect(materialWeight.cautionsFor([1, "gravel"])).toEqual([]);
  });
});
