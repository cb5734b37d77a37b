import { describe, expect, test } from "vitest";
import { basinArea, basinSize, basinVolume, drawdown } from "../../../functions/worksheet/basin.ts";
import type { Cell } from "../../../functions/worksheet/calling/cell.ts";
import { siteDesign } from "../../../functions/worksheet/site-design.ts";
import { digVolume } from "../../../functions/worksheet/soil.ts";
import { cellOf, column, divisionByZero, notThere, refused } from "./sample-functions.ts";

const RATE = 0,
  PONDING = 1,
  FLOOR = 2,
  RIM = 3,
  RUNOFF = 4,
  HELD = 5,
  HOURS = 6,
  RULE = 7,
  DIG = 8,
  STATUS = 9;

const design = (...inputs: readonly Cell[]) => siteDesign.evaluate(inputs)[0]!;

describe("SITEDESIGN, computed by hand", () => {
  test("1000 sq ft of roof on soil tested at 0.5 in/h fit 190 sq ft of vertical-sided basin", () => {
    const site = design(1000, 0.5, 2, 1, null, 6, 0, null, 0, 48);
    expect(site[RATE]).toBe(0.25);
    expect(site[PONDING]).toBe(6);
    expect(site[FLOOR]).toBeCloseTo(190, 8);
    expect(site[RIM]).toBeCloseTo(190, 8);
    expect(site[RUNOFF]).toBeCloseTo(79.17, 2);
    expect(site[HELD]).toBeCloseTo(95, 8);
    expect(site[HOURS]).toBeCloseTo(24, 8);
    expect(site[RULE]).toBe(100);
    // 190 sq ft to 6 in, and 3 in more for the mulch: 95 + 47.5 cu ft.
    expect(site[DIG]).toBeCloseTo(142.5 / 27, 8);
    expect(site[STATUS]).toBe("fits");
  });

  // 3.51 cu yd down to the finished floor, and 3 in of mulch under 188 sq ft of rim, 1.74 cu yd.
  test("1000 sq ft of roof on soil tested at 0.5 in/h are dug 5.25 cu yd, mulch included", () => {
    const site = design(1000, 0.5);
    expect(Math.abs((site[DIG] as number) - 5.25)).toBeLessThan(0.01);
    expect((site[DIG] as number) - (design(1000, 0.5, null, null, null, null, null, 0)[DIG] as number)).toBeCloseTo(1.74, 2);
    expect(site[RIM]).toBeCloseTo(188, 0);
  });

  // Prismoidal rule by hand: a 17 by 7 ft floor with 3 to 1 sides holds 79 cu ft at 6 in, less 1 in of rain on its 20 by 10 ft rim.
  test("runoff of 62.33 cu ft needs 119 sq ft of rectangular floor, wherever it comes from", () => {
    const site = design(5000, 0.5, 2, 1, 79 - 200 / 12, 6, 0, 3, 3, 48, "rectangle", 17 / 7);
    expect(site[FLOOR]).toBeCloseTo(119, 8);
    expect(site[RIM]).toBeCloseTo(200, 8);
    expect(site[RUNOFF]).toBeCloseTo(62.3333, 4);
    expect(site[RULE]).toBe(500);
  });

  test("the same yard in metric is the same yard", () => {
    const us = design(1000, 0.5, 2, 1, 60, 6, 12, 2, 3, 48);
    const metric = design(
      92.90304,
      12.7,
      2,
      25.4,
      60 * 0.3048 ** 3,
      152.4,
      304.8,
      50.8,
      3,
      48,
      ...new Array<null>(10).fill(null),
      "metric",
    );
    const factors = [25.4, 25.4, 0.09290304, 0.09290304, 0.028316846592, 0.028316846592, 1, 0.09290304, 0.764554857984];
    factors.forEach((factor, place) => expect((metric[place] as number) / (us[place] as number)).toBeCloseTo(factor, 9));
    expect(metric[STATUS]).toBe("fits");
  });
});

describe("SITEDESIGN and the functions beside it", () => {
  test("agree on floor, rim, water held, drawdown and dig", () => {
    const site = design(800, 1, 2, 1.25, null, 6, 12, null, 3, 48);
    const floor = site[FLOOR] as number;
    expect(cellOf(basinArea, 800, 0.5, 6, 1.25, 0.95, 12, 0.25, 0, 3)).toBe(floor);
    const held = (cellOf(basinVolume, floor, 6, 3) as number) + (floor * 12 * 0.25) / 12;
    expect(site[HELD]).toBeCloseTo(held, 10);
    expect(cellOf(drawdown, 6, 0.5, 12)).toBe(site[HOURS]);
    expect(cellOf(digVolume, floor, 6, 3, 3, 12)).toBe(site[DIG]);
    const [[length, width] = []] = basinSize.evaluate([floor]);
    // Sides of 3 to 1 rising 6 in reach 1.5 ft further out at each end.
    expect(site[RIM]).toBeCloseTo((Math.PI / 4) * ((length as number) + 3) * ((width as number) + 3), 8);
  });

  test("agree on the words for a basin that drains too slowly, and its size is still shown", () => {
    const site = design(1000, 12 / 62, 2, 1, null, 6);
    const words = "Drains too slowly: 6 in needs 62 h and 48 h is the limit. Up to 4.6 in would drain.";
    expect(site[STATUS]).toBe(
      `${words} Soil too slow: the design rate of 0.0967 in/h is under 0.125 in/h, the least without an underdrain. Choose another place or ask a professional.`,
    );
    expect(cellOf(basinArea, 1000, 6 / 62, 6)).toEqual(refused(words));
    expect(site[HOURS]).toBeCloseTo(62, 8);
    expect(site[FLOOR]).toBeGreaterThan(100);
  });

  test("a metric yard is told in millimetres", () => {
    expect(design(93, 300 / 62, 2, 25, null, 150, 0, null, 3, 48, ...new Array<null>(10).fill(null), "metric")[STATUS]).toEqual(
      expect.stringMatching(/^Drains too slowly: 150 mm needs 62 h and 48 h is the limit. Up to 116 mm would drain. Soil too slow: /),
    );
  });
});

describe("SITEDESIGN of a shape of one's own", () => {
  test("is an ellipse twice as long as wide where shape and length to width are left out", () => {
    expect(design(800, 1, 2, 1.25, null, 6, 12, 3, 3, 48)).toEqual(design(800, 1, 2, 1.25, null, 6, 12, 3, 3, 48, "ellipse", 2));
  });

  test("agrees with BASINVOLUME, DIGVOLUME and BASINSIZE on the floor of its shape", () => {
    const site = design(800, 1, 2, 1, null, 6, 0, 0, 3, 48, "rectangle", 3);
    const floor = site[FLOOR] as number;
    expect(site[HELD]).toBeCloseTo(cellOf(basinVolume, floor, 6, 3, "rectangle", 3) as number, 9);
    expect(site[DIG]).toBeCloseTo(cellOf(digVolume, floor, 6, 3, 0, 0, 0, "rectangle", 3) as number, 9);
    const [long, wide] = basinSize.evaluate([floor, "rectangle", 3])[0] as [number, number];
    // Each side of 3 to 1 reaches 1.5 ft further out at 6 in.
    expect(site[RIM]).toBeCloseTo((long + 3) * (wide + 3), 9);
  });

  test("keeps a blank yard blank whatever shape stands beside it, and refuses a shape it does not know", () => {
    expect(design(1000, 0.5, 2, 1, null, 6, 0, null, 3, 48, "circle")[FLOOR]).toEqual(
      refused('Shape must be "ellipse" or "rectangle"; it is "circle".'),
    );
    expect(design(1000, 0.5, 2, 1, null, 6, 0, null, 3, 48, "ellipse", 0.5)[FLOOR]).toEqual(refused("Length to width must be 1 or more."));
    expect(design("", "", 2, 1, null, "", "", null, 3, 48, "ellipse", 2)).toEqual(new Array(10).fill(""));
  });
});

describe("SITEDESIGN on ground that falls", () => {
  test("digs as much as DIGVOLUME on the same slope, and the size stays", () => {
    const level = design(800, 1, 2, 1, null, 6, 12, 3, 3, 48, "rectangle", 2);
    const falling = design(800, 1, 2, 1, null, 6, 12, 3, 3, 48, "rectangle", 2, 8);
    expect(falling.slice(0, DIG)).toEqual(level.slice(0, DIG));
    expect(falling[DIG]).toBe(cellOf(digVolume, falling[FLOOR]!, 6, 3, 3, 12, 8, "rectangle", 2));
    expect(falling[DIG]).toBeGreaterThan(level[DIG] as number);
  });

  test("refuses ground as steep as its sides, which never come up to it", () => {
    expect(design(1000, 0.5, 2, 1, null, 6, 0, 3, 4, 48, null, null, 25)[FLOOR]).toEqual(
      refused("Ground slope must be under 25%: sides of 4 to 1 never come up to steeper ground."),
    );
  });
});

// What stood as "fits" or as a size, and what is wrong with each.
describe("a verdict that means it", () => {
  const SLOW = (rate: string) =>
    `Soil too slow: the design rate of ${rate} is under 0.125 in/h, the least without an underdrain. Choose another place or ask a professional.`;

  test("5,000 sq ft of garden for 1,000 sq ft of roof are too many, and 0.05 in/h is too slow", () => {
    const site = design(1000, 0.05);
    expect(site[FLOOR]).toBeCloseTo(4909, 0);
    expect(site[STATUS]).toBe(
      `${SLOW("0.025 in/h")} Too large: a floor of 4,909 sq ft is 491% of what drains to it and 43% is the limit. Pond deeper, add soil mix or look for faster soil.`,
    );
    expect(design(1000, 0.05, ...new Array<null>(11).fill(null), 1, null, 0)[STATUS]).toMatch(/^Too large: .* 100% is the limit/);
  });

  test("96 h to empty are said beside 48 h of standing water", () => {
    const site = design(1000, 0.25, 2, 1, null, 6, 24);
    expect(site[HOURS]).toBeCloseTo(96, 9);
    expect(site[STATUS]).toBe(
      "Empties too slowly: with its soil mix the basin needs 96 h and 72 h is the limit. Less soil mix or shallower ponding empties sooner.",
    );
    expect(design(1000, 0.25, 2, 1, null, 6, 24, ...new Array<null>(9).fill(null), 96)[STATUS]).toBe("fits");
  });

  test.each<[string, readonly Cell[], string]>([
    ["nothing drains to it", [0, 0.5], "No size: nothing drains to this basin."],
    ["there is no storm", [1000, 0.5, 2, 0], "No size: the storm is 0, so no water comes."],
    ["nothing runs off", [1000, 0.5, 2, 1, 0], "No size: a storm of 1 in gives no runoff from what drains here."],
  ])("where %s there is no size", (_, inputs, words) => {
    const site = design(...inputs);
    expect(site[STATUS]).toBe(words);
    for (const place of [FLOOR, RIM, HELD, HOURS, DIG]) expect(site[place]).toEqual(notThere(words));
  });

  test("sides that alone hold the storm are no floor of 0: the least floor stands, with less ponding", () => {
    const site = design(1000, 0.5, 2, 1, null, 30);
    expect(site[FLOOR]).toBe(50);
    expect(site[PONDING]).toBeGreaterThan(3);
    expect(site[PONDING]).toBeLessThan(12);
    // The prismoid of the least floor at that ponding holds the runoff and the rain on its own rim.
    expect(cellOf(basinVolume, 50, site[PONDING]!, 3)).toBeCloseTo(950 / 12 + (site[RIM] as number) / 12, 6);
    expect(site[STATUS]).toBe("fits");
    expect(siteDesign.cautionsFor([1000, 0.5, 2, 1, null, 30])).toContainEqual(
      expect.stringMatching(/^Less ponding than asked for: the least floor of 50 sq ft holds this storm at 11\.5 in\.$/),
    );
  });

  test("50 sq ft of roof are too little to dig for", () => {
    const site = design(50, 0.5);
    expect(site[FLOOR]).toBe(50);
    expect(site[STATUS]).toBe("Too little drains here: the least floor of 50 sq ft is more than 43% of 50 sq ft.");
    expect(siteDesign.cautionsFor([50, 0.5])).not.toContainEqual(expect.stringMatching(/^Less ponding/));
  });

  test("a metric storm of 1 and one of 25.4 in are no storms, and nothing fits them", () => {
    const metric = (storm: number) => design(100, 12, 2, storm, ...new Array<null>(16).fill(null), "metric")[STATUS];
    expect(metric(1)).toMatch(/^Unlikely storm: 1 mm is under the least of 3\.81 mm: look at its unit, an inch is 25\.4 mm\./);
    expect(metric(5)).not.toMatch(/look at its unit/);
    expect(design(1000, 0.5, 2, 25.4)[STATUS]).toMatch(/^Unlikely storm: 25\.4 in is over the largest of 12 in: look at its unit/);
    expect(design(1000, 0.5, 2, 12)[STATUS]).not.toMatch(/look at its unit/);
    const within = (least: number, largest: number) => design(1000, 0.5, 2, 2, ...new Array<null>(13).fill(null), least, largest)[STATUS];
    expect(within(2, 2)).toBe("fits");
    expect(within(2.1, 12)).toMatch(/^Unlikely storm: 2 in is under the least of 2\.1 in/);
    expect(within(0.2, 1.9)).toMatch(/^Unlikely storm: 2 in is over the largest of 1\.9 in/);
  });

  test("what is typed and not counted is said in place of fits, and after what does not fit", () => {
    const told = (area: number, says: Cell) => design(area, 0.5, 2, 1, null, 6, ...new Array<null>(13).fill(null), says)[STATUS];
    expect(told(1000, null)).toBe("fits");
    expect(told(1000, " ")).toBe("fits");
    expect(told(1000, "Units is blank. ")).toBe("Not all counted: Units is blank.");
    expect(told(50, "Units is blank.")).toMatch(/^Too little drains here: .* Not all counted: Units is blank\.$/);
    expect(told(1000, true)).toEqual(refused("What is typed for the yard and not counted must be text; it is TRUE."));
  });

  test("a metric yard is told its limits in metric", () => {
    expect(design(100, 1, 2, 25, ...new Array<null>(16).fill(null), "metric")[STATUS]).toMatch(
      /Soil too slow: the design rate of 0\.5 mm\/h is under 3\.1[78] mm\/h, the least/,
    );
  });
});

describe("yards that cannot be sized", () => {
  const never = "Does not drain: the tested rate is 0. Choose another place or ask a professional.";

  test("a tested rate of 0 is a measurement: what it leaves unknown is #N/A in words, and the rest stands", () => {
    const none = notThere(never);
    expect(design(1000, 0)).toEqual([0, 0, none, none, 950 / 12, none, none, 100, none, never]);
    expect(design(1000, 0, 2, 1, null, 6)[PONDING]).toBe(6);
  });

  test("a storm that no area can hold says so", () => {
    const site = design(1000, 0.03);
    const words =
      "No area can hold this storm: each part of the basin catches 1 in of rain itself and can hold no more than that. Pond deeper or add soil mix. Soil too slow: the design rate of 0.015 in/h is under 0.125 in/h, the least without an underdrain. Choose another place or ask a professional.";
    expect(site[STATUS]).toBe(words);
    expect(site[FLOOR]).toEqual(notThere(words));
    expect(site[PONDING]).toBeCloseTo(0.72, 10);
    expect(site[HOURS]).toEqual(notThere(words));
  });
});

describe("many yards in one call", () => {
  test("each row is its own: US beside metric, untested beside mistyped, and blank rows stay blank", () => {
    const rows = siteDesign.evaluate([
      column(1000, 92.90304, 1000, null, "x", 500),
      column(0.5, 12.7, null, null, 0.5, divisionByZero),
      2,
      1,
      null,
      null,
      null,
      null,
      3,
      48,
      ...new Array<null>(10).fill(null),
      column("us", "metric", "us", "", "us", "us"),
    ]);
    expect(rows).toHaveLength(6);
    expect(rows[0]![STATUS]).toBe("fits");
    expect(rows[2]).toEqual(new Array(10).fill(notThere("Tested rate is missing.")));
    expect(rows[3]).toEqual(new Array(10).fill(""));
    expect(rows[4]).toEqual(new Array(10).fill(refused('Contributing area must be a number; it is the text "x".')));
    expect(rows[5]).toEqual(new Array(10).fill(divisionByZero));
  });

  test("ponding left out is the deepest that drains, at most 8 in or 203.2 mm", () => {
    expect(design(1000, 0.2)[PONDING]).toBeCloseTo(4.8, 10);
    expect(design(1000, 8)[PONDING]).toBe(8);
    expect(design(93, 200, 2, 25, ...new Array<null>(16).fill(null), "metric")[PONDING]).toBeCloseTo(203.2, 10);
  });
});

describe("cautions for a yard", () => {
  const MARKED = expect.stringMatching(/^Have buried utilities marked before any digging/);

  test("always say to have utilities marked, and no more when all is usual", () => {
    expect(siteDesign.cautionsFor([1000, 1, 2, 1, null, 6])).toEqual([MARKED]);
    expect(siteDesign.cautionsFor([1000, 0])).toEqual([MARKED]);
  });

  test.each<[string, readonly Cell[], string]>([
    ["ponding over 8 in", [1500, 1, 2, 1, null, 9], "Ponding deeper than 8 in stands long and is a place to trip."],
    ["ponding over 12 in", [2500, 1, 2, 1, null, 13], "Ponding deeper than 12 in near children needs a barrier: ask locally."],
    ["steep sides", [500, 1, 2, 1, null, 6, 0, null, 2], "Sides steeper than 3 to 1 wash and slump more easily."],
    [
      "a limit over 72 h",
      [500, 1, 2, 1, null, 6, 0, null, 3, 80],
      "Water that stands for days lets mosquitoes grow: printed limits run from 12 to 72 h for water on the surface, and to 96 h for what drains below it.",
    ],
    ["no reduction", [500, 1, 1, 1, null, 6], "Nothing is taken off: tested rates are usually divided by 2 or 3, because a basin clogs."],
    [
      "drain hours typed as days",
      [500, 12, 2, 1, null, 6, 0, null, 3, 2],
      "The shortest printed limit is 12 h: drain hours are hours, so two days are 48.",
    ],
    ["a very fast soil", [500, 12.1, 2, 1, null, 6], "Faster than 12 in/h: water passes too quickly to be cleaned. Compost slows it."],
    ["a floor over 300 sq ft", [2500, 1, 2, 1, null, 6], "A floor over 300 sq ft is hard to dig level: consider two gardens."],
    [
      "a dig of 4 ft",
      [1500, 1, 2, 1, null, 6, 42],
      "A dig of 4 ft or more can cave in and needs a way out: refer it to a licensed contractor.",
    ],
  ])("speak of %s", (_, inputs, caution) => {
    expect(siteDesign.cautionsFor(inputs)).toEqual([MARKED, caution]);
  });
});
