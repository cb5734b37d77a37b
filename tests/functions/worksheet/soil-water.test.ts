import { describe, expect, test } from "vitest";
import { soakIn, soilTexture, soilWater, textureRate } from "../../../functions/worksheet/soil-water.ts";
import { cellOf, column, refused } from "./sample-functions.ts";

describe("SOILTEXTURE", () => {
  test("classes a column of soils", () => {
    expect(soilTexture.evaluate([column(90, 40, 20), column(5, 20, 60)])).toEqual([["sand"], ["loam"], ["clay"]]);
  });

  test("refuses sand and clay over 100 percent, and asks about percents that look like shares", () => {
    expect(cellOf(soilTexture, 60, 50)).toEqual(refused("Sand percent and clay percent together must be 100 or less; they are 110."));
    expect(soilTexture.cautionsFor([0.4, 20])).toContain("Sand percent is taken as 0.4%: write a percent as 2, not 0.02.");
    expect(cellOf(soilTexture, 60.1, 39.9)).toBe("sandy clay");
  });

  test("takes no units, and says what the percents leave out", () => {
    expect(soilTexture.parameters.map(({ key }) => key)).toEqual(["sandPercent", "clayPercent"]);
    expect(soilTexture.cautionsFor([40, 20])).toEqual([expect.stringContaining("gravel")]);
  });
});

describe("TEXTURERATE", () => {
  test("gives loam 0.52 in/h, which is 13.2 mm/h, and takes what SOILTEXTURE gives", () => {
    expect(cellOf(textureRate, soilTexture.evaluate([40, 20]))).toBeCloseTo(0.52, 2);
    expect(cellOf(textureRate, "Loam", "metric")).toBeCloseTo(13.2, 9);
  });

  test("has no rate for silt, and names the nearest classes to one it does not know", () => {
    expect(cellOf(textureRate, "silt")).toEqual(refused("No rate is published for silt: the table has no such row."));
    expect(cellOf(textureRate, "loam, sandy")).toEqual(
      refused(expect.stringContaining('The nearest are "sandy loam"') as unknown as string),
    );
  });

  test("always says that it is no test of the yard and not reduced", () => {
    expect(textureRate.cautionsFor(["loam"])).toEqual([expect.stringContaining("test a hole"), expect.stringContaining("not yet reduced")]);
  });
});

describe("SOILWATER", () => {
  test("gives a loam 14, 28 and 46 percent and 15.5 mm/h", () => {
    const [[wilting, capacity, saturation, rate] = []] = soilWater.evaluate([40, 20, null, null, "metric"]);
    expect([wilting, capacity, saturation].map((cell) => Math.round(100 * Number(cell)))).toEqual([14, 28, 46]);
    expect(rate).toBeCloseTo(15.48, 2);
  });

  test.each([
    { inputs: [60, 50], sentence: "Sand percent and clay percent together must be 100 or less; they are 110." },
    {
      inputs: [40, 20, 2.5, 2],
      sentence: "Sand, clay and organic percent and compaction are outside what the regressions can describe: they give no possible soil.",
    },
    { inputs: [40, 20, 2.5, 0], sentence: "Compaction must be more than 0." },
  ])("says: $sentence", ({ inputs, sentence }) => {
    expect(soilWater.evaluate(inputs)).toEqual([Array.from({ length: 4 }, () => refused(sentence))]);
  });

  test("warns outside the published limits", () => {
    const others = (...inputs: readonly number[]) => soilWater.cautionsFor(inputs).slice(1);
    expect(others(20, 60, 8, 0.9)).toEqual([]);
    expect(others(20, 60, 8, 1.3)).toEqual([]);
    expect(others(20, 61)).toEqual(["The regressions were made for clay up to 60 percent."]);
    expect(others(40, 20, 9)).toEqual(["The regressions were made for organic matter up to 8 percent."]);
    expect(others(40, 20, 2.5, 1.31)).toEqual(["Compaction is published from 0.9 (loosened) to 1.3 (hard)."]);
    expect(others(40, 20, 2.5, 0.89)).toHaveLength(1);
  });
});

describe("SOAKIN", () => {
  test("soaks 3.17 cm into silt loam under a pond in an hour, and no more than it rains", () => {
    expect(cellOf(soakIn, 1, "silt loam", 0.3, null, "metric")).toBeCloseTo(31.7, 1);
    expect(cellOf(soakIn, 1, "silt loam", 0.3, 10, "metric")).toBeCloseTo(10, 9);
    expect(cellOf(soakIn, 1, "silt loam", null, 0)).toBe(0);
  });

  test("spills a what-if grid of hours against classes", () => {
    const grid = soakIn.evaluate([column(1, 2, 4), [["sand", "clay"]]]);
    expect(grid).toHaveLength(3);
    for (const [sand, clay] of grid) expect(sand).toBeGreaterThan(Number(clay));
  });

  test("has no values for silt", () => {
    expect(cellOf(soakIn, 1, "silt")).toEqual(refused("No Green and Ampt values are published for silt: the table has no such row."));
  });

  test("says which porosity it takes for clay loam", () => {
    expect(soakIn.cautionsFor([1, "loam"])).toHaveLength(1);
    expect(soakIn.cautionsFor([1, "clay loam"])).toEqual([expect.any(String), expect.stringContaining("0.39 of 1982")]);
  });
});
