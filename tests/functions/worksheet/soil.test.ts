import { describe, expect, test } from "vitest";
import { mixRecipes } from "../../../functions/amendment/mix-recipes.ts";
import { digVolume, layerVolume, soilMix, soilState } from "../../../functions/worksheet/soil.ts";
import { cellOf, column, divisionByZero, notThere, refused, row } from "./sample-functions.ts";

describe("DIGVOLUME", () => {
  // Computed by hand: 79.00 cu ft to the floor, 200 x 0.25 cu ft of mulch, 119 x 1 cu ft of soil mix.
  test("a basin 20 by 10 ft at the top, 6 in deep, sides 3 to 1, is 2.926 cu yd in place, 4.778 with 3 in of mulch, 9.185 with 12 in of mix", () => {
    const dug = (mulch: number | null, media: number | null) => cellOf(digVolume, 119, 6, 3, mulch, media, null, "rectangle", 17 / 7);
    expect(dug(0, 0)).toBeCloseTo(2.926, 3);
    expect(dug(null, null)).toBeCloseTo(4.778, 3);
    expect(dug(3, 12)).toBeCloseTo(9.185, 3);
  });

  test("10 m2 straight down 300 mm are 3 m3", () => {
    expect(cellOf(digVolume, 10, 300, 0, 0, 0, 0, null, null, "metric")).toBeCloseTo(3, 10);
  });

  test("on a slope it digs what stands over the water uphill as well, and on ground as steep as its sides nothing", () => {
    const level = cellOf(digVolume, 119, 6) as number;
    expect(cellOf(digVolume, 119, 6, 3, 3, 0, 8)).toBeGreaterThan(level);
    expect(cellOf(digVolume, 119, 6, 3, 3, 0, 34)).toEqual(
      refused("Ground slope must be under 33.3%: sides of 3 to 1 never come up to steeper ground."),
    );
  });

  test("it always says to have utilities marked, and more of a steep or a deep dig", () => {
    const [marked, ...others] = digVolume.cautionsFor([100, 18]);
    expect(marked).toMatch(/^Have buried utilities marked before any digging/);
    expect(others).toEqual([]);
    expect(digVolume.cautionsFor([100, 18, 2])[1]).toBe("Sides steeper than 3 to 1 wash and slump more easily.");
    expect(digVolume.cautionsFor([100, 6, 3, 3, 39])[1]).toBe(
      "A dig of 4 ft or more can cave in and needs a way out: refer it to a licensed contractor.",
    );
    expect(digVolume.cautionsFor([100, 6, 3, 3, 38.9])).toHaveLength(1);
    expect(digVolume.cautionsFor([100, 6, 3, 3, 38, 10])).toHaveLength(2);
  });
});

describe("SOILSTATE", () => {
  // US Army, FM 5-434, table 1-1.
  test("6 cu yd of clay in place are 8.58 loose, and as much in cubic metres", () => {
    expect(cellOf(soilState, 6, "in place", "loose", "clay")).toBeCloseTo(8.58, 2);
    expect(cellOf(soilState, 6, "In place", "LOOSE", "clay", "metric")).toBeCloseTo(8.58, 2);
  });

  test("a soil that is not in the table is refused", () => {
    expect(cellOf(soilState, 6, "in place", "loose", "peat")).toEqual(refused('Soil must be "sand", "loam" or "clay"; it is "peat".'));
    expect(cellOf(soilState, 6, "bank", "loose", "clay")).toEqual(
      refused('From must be "in place", "loose" or "compacted"; it is "bank".'),
    );
  });
});

describe("SOILMIX", () => {
  test.each(mixRecipes)("$name lists its materials with what to buy or keep", ({ name, parts }) => {
    const rows = soilMix.evaluate([10, name]);
    expect(rows.map(([material]) => material)).toEqual(parts.map(({ material }) => material));
    expect(rows.reduce((sum, cells) => sum + (cells[1] as number), 0)).toBeCloseTo(10 / 0.85, 10);
  });

  test("shares of one's own stand in a column or a row, blanks left out", () => {
    const mix = [
      ["material 1", expect.closeTo(6, 12)],
      ["material 2", expect.closeTo(4, 12)],
    ];
    expect(soilMix.evaluate([10, column(0.6, 0.4), 0])).toEqual(mix);
    expect(soilMix.evaluate([10, row(0.6, null, 0.4, ""), 0])).toEqual(mix);
    expect(soilMix.evaluate([10, 1, 0])).toEqual([["material 1", 10]]);
  });

  test("thirds typed to three decimals add up well enough, and 90 percent does not", () => {
    expect(soilMix.evaluate([10, column(0.333, 0.333, 0.333), 0])).toHaveLength(3);
    expect(cellOf(soilMix, 10, column(0.6, 0.3))).toEqual(refused("Shares must add up to 1; they add up to 0.9."));
    expect(cellOf(soilMix, 10, column(0.6, 0.402))).toEqual(refused("Shares must add up to 1; they add up to 1.002."));
  });

  test("what is wrong with a recipe or a share is said in words", () => {
    expect(cellOf(soilMix, 10, "loam mix")).toMatchObject({
      sentence: expect.stringMatching(/^Recipe "loam mix" is not in its list\. The nearest are /),
    });
    expect(cellOf(soilMix, 10, column(0.6, "rest"))).toEqual(refused('Share 2 must be a number; it is the text "rest".'));
    expect(cellOf(soilMix, 10, column(1.2, -0.2))).toEqual(refused("Share 1 must be 1 or less."));
    expect(cellOf(soilMix, 10, column(0.6, divisionByZero))).toBe(divisionByZero);
    expect(cellOf(soilMix, 10, column(null, ""))).toEqual(notThere("Recipe name or shares is missing."));
    expect(cellOf(soilMix, 10, "fast soil", 1)).toEqual(refused("Settling share must be less than 1."));
  });

  test("it cautions about a little sand in clay, and about phosphorus from much compost", () => {
    const sand = "A little sand makes a clay worse: keep sand at 50% of the mix or more, and let a soil sample decide.";
    expect(soilMix.cautionsFor([10, "Tight soil"])).toEqual([sand]);
    expect(soilMix.cautionsFor([10, column(0.8, 0.2)])).toEqual([sand]);
    expect(soilMix.cautionsFor([10, "fast soil"])).toEqual([]);
    expect(soilMix.cautionsFor([10, column(null, "sand and compost")])).toEqual([
      "This much compost sheds phosphorus: choose another mix where the overflow reaches a lake or a stream.",
    ]);
  });
});

describe("LAYERVOLUME", () => {
  test("asks about a share for waste or for settling that orders far more than is laid", () => {
    expect(layerVolume.cautionsFor([200, 3, 0.15])).toEqual([]);
    expect(layerVolume.cautionsFor([200, 3, 1])).toEqual(["Usually 0.05 to 0.15 is added for waste: a share of 1 orders twice the layer."]);
    expect(soilMix.cautionsFor([2, "fast soil", 0.2])).toEqual([]);
    expect(soilMix.cautionsFor([2, "fast soil", 0.85])).toEqual([
      "A mix settles by 0.15 to 0.20 of its loose volume as a rule: this share orders far more.",
    ]);
  });

  test("200 sq ft at 3 in take 1.852 cu yd, computed by hand, and 20 m2 at 50 mm take 1 m3", () => {
    expect(cellOf(layerVolume, 200, 3)).toBeCloseTo(1.852, 3);
    expect(cellOf(layerVolume, 20, 50, null, "metric")).toBeCloseTo(1, 12);
    expect(cellOf(layerVolume, 200, 3, 0.1)).toBeCloseTo(1.1 * 1.85185, 4);
  });
});
