import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BASIN_SHAPES } from "../../../functions/basin/basin-shape.ts";
import { plantMix, waterNeed, zoneAreas } from "../../../functions/worksheet/plants.ts";
import { measured } from "../measured.ts";
import { expectSameOnMetric } from "./same-on-metric.ts";
import { cellOf, column, notThere, refused, row } from "./sample-functions.ts";

describe("ZONEAREAS", () => {
  test("takes 3 to 1 sides, a 1 ft berm and an ellipse twice as long as wide unless told otherwise", () => {
    expect(zoneAreas.evaluate([100, 6])).toEqual(zoneAreas.evaluate([100, 6, 3, 1, "ellipse", 2]));
  });

  test("gives the same zones on a metric sheet", () => {
    fc.assert(
      fc.property(
        measured(0, 500),
        measured(0, 12),
        measured(0, 5),
        measured(0, 4),
        fc.constantFrom(...BASIN_SHAPES),
        measured(1, 5),
        (...inputs) => {
          expectSameOnMetric(zoneAreas, inputs);
        },
      ),
    );
  });

  test.each([
    [[100, 6, 2], "Sides steeper than 3 to 1"],
    [[100, 9], "Ponding deeper than 8 in"],
    [[100, 13], "Ponding deeper than 12 in"],
    [[301, 6], "A floor over 300 sq ft"],
  ])("cautions for %j: %s", (inputs, says) => {
    expect(zoneAreas.cautionsFor(inputs)).toEqual([expect.stringContaining(says)]);
  });

  test("has no caution for a usual garden, and refuses a shape wider than long", () => {
    expect(zoneAreas.cautionsFor([100, 6])).toEqual([]);
    expect(cellOf(zoneAreas, 100, 6, 3, 1, "ellipse", 0.5)).toEqual(refused("Length to width must be 1 or more."));
  });
});

describe("PLANTMIX", () => {
  test("rounds up kind by kind, on triangles unless told otherwise", () => {
    expect(plantMix.evaluate([100, column(1, 1.5), column(0.5, 0.5)])).toEqual([[58], [26]]);
    expect(plantMix.evaluate([100, row(1, 1.5), row(0.5, 0.5), "square"])).toEqual([[50], [23]]);
  });

  test("keeps a row for a kind that is not typed yet", () => {
    expect(plantMix.evaluate([100, column(1, null, 2), column(0.5, null, 0.5), "square"])).toEqual([[50], [""], [13]]);
  });

  test("gives the same plants on a metric sheet", () => {
    fc.assert(
      fc.property(measured(0, 1000), fc.array(measured(0.5, 6), { minLength: 1, maxLength: 6 }), (squareFeet, spacings) => {
        expectSameOnMetric(plantMix, [squareFeet, spacings.map((spacing) => [spacing]), spacings.map(() => [1 / spacings.length])]);
      }),
    );
  });

  test("names the kind whose spacing or share is missing", () => {
    expect(cellOf(plantMix, 100, column(1, null), column(0.5, 0.5))).toEqual(notThere("Kind 2 has a share but no spacing."));
    expect(cellOf(plantMix, 100, column(1, 2), column(0.5, null))).toEqual(notThere("Kind 2 has a spacing but no share."));
  });

  test("refuses shares of more than the whole and series that do not pair up", () => {
    expect(cellOf(plantMix, 100, column(1, 2), column(0.7, 0.5))).toEqual(
      refused("Shares of the area must add up to 1 or less; they add up to 1.2."),
    );
    expect(cellOf(plantMix, 100, column(1, 2, 3), column(0.5, 0.5))).toEqual(
      refused("Spacings (3 cells) and Shares of the area (2 cells) do not line up: give them the same size, or a single cell."),
    );
    expect(cellOf(plantMix, 100, column(1, 0), column(0.5, 0.5))).toEqual(refused("Spacing 2 must be more than 0."));
  });

  test("cautions of bare ground, and of a spacing typed in inches", () => {
    expect(plantMix.cautionsFor([100, column(1, 2), column(0.5, 0.3)])).toEqual(["The shares leave 20% of the area bare."]);
    expect(plantMix.cautionsFor([100, column(1, 18), column(0.5, 0.5)])).toEqual([expect.stringContaining("feet, so 18 in is 1.5")]);
    expect(plantMix.cautionsFor([10, column(0.3, 45), column(0.5, 0.5), null, "metric"])).toEqual([
      expect.stringContaining("meters, so 45 cm is 0.45"),
    ]);
    expect(plantMix.cautionsFor([100, column(1, null, 2), column(0.3333, null, 0.6667)])).toEqual([]);
    expect(plantMix.cautionsFor([100, column(1, 2), column(0.7, 0.5)])).toEqual([]);
  });
});

describe("WATERNEED", () => {
  test("asks about more than 3 in a week (common practice, no source)", () => {
    expect(waterNeed.cautionsFor([150, 3])).toEqual([]);
    expect(waterNeed.cautionsFor([150, 25])).toEqual(["Over 3 in a week drowns young plants: the depth is in inches, 1 in as a rule."]);
    expect(waterNeed.cautionsFor([10, 250, "metric"])).toEqual([
      "Over 76.2 mm a week drowns young plants: the depth is in mm, 25.4 mm as a rule.",
    ]);
  });

  test("is an inch a week in gallons unless told otherwise, and liters on a metric sheet", () => {
    expect(cellOf(waterNeed, 150)).toBeCloseTo(93.5, 1);
    expect(cellOf(waterNeed, 10, 25, "metric")).toBeCloseTo(250, 9);
    expect(cellOf(waterNeed, 10, null, "metric")).toBeCloseTo(254, 9);
  });

  test("is the same water on both sheets: 3.785411784 L to the gallon", () => {
    fc.assert(
      fc.property(measured(0, 2000), measured(0, 4), (squareFeet, inches) => {
        const liters = cellOf(waterNeed, squareFeet * 0.09290304, inches * 25.4, "metric") as number;
        expect(liters).toBeCloseTo(3.785411784 * (cellOf(waterNeed, squareFeet, inches) as number), 6);
      }),
    );
  });

  test("answers a column of zones", () => {
    expect(waterNeed.evaluate([column(150, 0, null)])).toEqual([[expect.closeTo(93.5, 1)], [0], [""]]);
  });
});
