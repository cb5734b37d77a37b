import { describe, expect, test } from "vitest";
import { plantCount } from "../../../functions/worksheet/planting.ts";
import { cellOf, column, refused } from "./sample-functions.ts";

describe("PLANTCOUNT", () => {
  // A nursery's chart for 100 sq ft on squares (read): 400, 100, 44 (rounded) and 25.
  test("100 sq ft at 6, 12, 18 and 24 in take 400, 100, 45 and 25 plants", () => {
    expect(plantCount.evaluate([100, column(0.5, 1, 1.5, 2), "square"])).toEqual([[400], [100], [45], [25]]);
  });

  test("triangles are the pattern unless another is named", () => {
    expect(cellOf(plantCount, 100, 1)).toBe(116);
    expect(cellOf(plantCount, 100, 1, "triangle")).toBe(116);
  });

  test("10 m2 at 0.5 m take 40 plants on squares", () => {
    expect(cellOf(plantCount, 10, 0.5, "square", "metric")).toBe(40);
  });

  test("no spacing and an unknown pattern are refused", () => {
    expect(cellOf(plantCount, 100, 0)).toEqual(refused("Spacing must be more than 0."));
    expect(cellOf(plantCount, 100, 1, "hexagon")).toEqual(refused('Pattern must be "triangle" or "square"; it is "hexagon".'));
  });

  test("a spacing that looks like inches is questioned in the unit of the sheet", () => {
    expect(plantCount.cautionsFor([100, 18])).toEqual(["A spacing over 10 ft suits trees alone: spacing is in feet, so 18 in is 1.5."]);
    expect(plantCount.cautionsFor([10, 45, null, "metric"])).toEqual([
      "A spacing over 3.05 m suits trees alone: spacing is in meters, so 45 cm is 0.45.",
    ]);
    expect(plantCount.cautionsFor([100, 10])).toEqual([]);
  });
});
