import { describe, expect, test } from "vitest";
import { expectSteps, numberIn, workingOf, type Expected } from "./expect-working.ts";

describe("the basin", () => {
  // Computed by hand: 17 x 7, 18.5 x 8.5 and 20 x 10 ft; 0.5 / 6 x (119 + 4 x 157.25 + 200) = 79 cu ft.
  const levels: readonly Expected[] = [
    ["Floor length L", 17, "ft"],
    ["Floor width W", 7, "ft"],
    ["Area at the floor", 119, "sq ft"],
    ["Area at half the depth", 157.25, "sq ft"],
    ["Area at the full depth", 200, "sq ft"],
  ];

  test("a volume and a dig are followed over the areas at the floor, at half the depth and at the full depth", () => {
    expectSteps(workingOf("BASINVOLUME", 119, 6, 3, "rectangle", 17 / 7), levels);
    expectSteps(workingOf("DIGVOLUME", 119, 6, 3, 3, 12, 0, "rectangle", 17 / 7), [
      ...levels,
      ["Dig down to the finished floor and sides", 79 / 27, "cu yd"],
      ["Dig for the mulch", 50 / 27, "cu yd"],
      ["Dig for the soil mix", 119 / 27, "cu yd"],
      ["More to dig because the ground falls", 0, "cu yd"],
    ]);
  });

  test("the depth found for a volume is proved by the volume at that depth", () => {
    expectSteps(workingOf("BASINDEPTH", 79, 119, 3, "rectangle", 17 / 7), [...levels, ["Volume at that depth", 79, "cu ft"]]);
  });

  // Computed by hand: voids of 0.25 in 24 in; 6 in / 0.5 in/h.
  test("drawdown counts the water in the soil mix beside the ponding", () => {
    expectSteps(workingOf("DRAWDOWN", 6, 0.5, 24), [
      ["Water in the soil mix", 6, "in"],
      ["Hours for the ponding alone", 12, "h"],
    ]);
  });

  // Computed by hand: 0.95 x 1,000 / 12 = 79.1667 cu ft on 1.000 ft of ponding, voids and soaking: 79.1667 sq ft.
  test("a basin of 79.2 sq ft holds half of its storm by ponding, 37.5 percent in the voids and soaks in 12.5 percent", () => {
    const storm = (0.95 * 1000) / 12;
    expectSteps(workingOf("BASINAREA", 1000, 0.25, 6, 1, 0.95, 18, 0.25, 6, 0, false), [
      ["Rim area", storm, "sq ft"],
      ["Runoff", storm, "cu ft"],
      ["Rain on the basin", 0, "cu ft"],
      ["Held by ponding", storm / 2, "cu ft"],
      ["Held in the soil mix's voids", 0.375 * storm, "cu ft"],
      ["Soaked in during the storm", storm / 8, "cu ft"],
      ["All that comes", storm, "cu ft"],
      ["All that is held or soaked in", storm, "cu ft"],
    ]);
  });

  // Computed by hand: 79.1667 / (6 in - 1 in of rain on it) = 190 sq ft; 190 x 0.5 ft = 95 cu ft.
  const site: readonly Expected[] = [
    ["Design rate", 0.25, "in/h"],
    ["Deepest ponding that drains", 12, "in"],
    ["Ponding depth used", 6, "in"],
    ["Floor area", 190, "sq ft"],
    ["Rim area", 190, "sq ft"],
    ["Runoff", (0.95 * 1000) / 12, "cu ft"],
    ["Rain on the basin", 190 / 12, "cu ft"],
    ["Held by ponding", 95, "cu ft"],
    ["Held in the soil mix's voids", 0, "cu ft"],
    ["Soaked in during the storm", 0, "cu ft"],
    ["All that comes", 95, "cu ft"],
    ["All that is held or soaked in", 95, "cu ft"],
    ["Dig down to the finished floor and sides", 95 / 27, "cu yd"],
    ["Dig for the mulch", 47.5 / 27, "cu yd"],
    ["Dig for the soil mix", 0, "cu yd"],
    ["More to dig because the ground falls", 0, "cu yd"],
  ];

  test("a site design is followed from its design rate over the balance of its storm to its dig", () => {
    expectSteps(workingOf("SITEDESIGN", 1000, 0.5, 2, 1, null, 6, 0, 3, 0, 48), site);
  });

  // Computed by hand, as handbook G2: 119 sq ft of floor, 17 by 7 ft, 200 sq ft of rim, 79 cu ft at 6 in.
  test("a site design of a rectangle is followed over the same balance in its own shape", () => {
    const steps = workingOf("SITEDESIGN", ((79 - 200 / 12) * 12) / 0.95, 0.5, 2, 1, null, 6, 0, 3, 3, 48, "rectangle", 17 / 7);
    expect(numberIn(steps, "Floor area")).toBeCloseTo(119, 9);
    expect(numberIn(steps, "Rain on the basin")).toBeCloseTo(200 / 12, 9);
    expect(numberIn(steps, "Held by ponding")).toBeCloseTo(79, 9);
    expect(numberIn(steps, "Dig down to the finished floor and sides")).toBeCloseTo(79 / 27, 9);
    expect(numberIn(steps, "Dig for the mulch")).toBeCloseTo(50 / 27, 9);
  });

  // Computed by hand: 12 in of media add 3 in of water: 79.1667 / (9 in - 1 in) = 118.75 sq ft.
  test("media under the floor holds a quarter of its depth and is dug besides", () => {
    const steps = workingOf("SITEDESIGN", 1000, 0.5, 2, 1, null, 6, 12, 3, 0, 48);
    expect(numberIn(steps, "Floor area")).toBeCloseTo(118.75, 9);
    expect(numberIn(steps, "Held in the soil mix's voids")).toBeCloseTo(118.75 / 4, 9);
    expect(numberIn(steps, "Dig for the soil mix")).toBeCloseTo(118.75 / 27, 9);
  });

  test("a site that never drains is followed no further than its ponding", () => {
    expectSteps(workingOf("SITEDESIGN", 1000, 0), [
      ["Design rate", 0, "in/h"],
      ["Deepest ponding that drains", 0, "in"],
      ["Ponding depth used", 0, "in"],
    ]);
  });

  test("the size factor of a silty soil and 6 in is 0.25, as the manual of 2003 prints it", () => {
    expectSteps(workingOf("FACTORAREA", 750, "silty", 6), [["Size factor F", 0.25]]);
  });

  // Computed by hand: (3 in + 60 in) / 60 in.
  test("ponding of 3 in over 60 in of media drives the water with a gradient of 1.05", () => {
    expectSteps(workingOf("FILTERAREA", 8102, 60, 0.25, 3, 48), [["Hydraulic gradient (hf + df) / df", 1.05]]);
  });

  test("an outline of eight widths is computed by Simpson's rule over seven of them, one of three over all", () => {
    expectSteps(workingOf("WIDTHSAREA", [[2], [3.2], [4], [3.5], [5], [4.5], [6], [7]], 9), [
      ["Widths used n", 8],
      ["Widths by Simpson's rule", 7],
      // Besavilla, Surveying, page 5-177 (read), printed to 0.01.
      ["Area by Simpson's rule", 212.4, "sq ft"],
    ]);
    expectSteps(workingOf("WIDTHSAREA", [[0], [4], [0], [null]], 9), [
      ["Widths used n", 3],
      ["Widths by Simpson's rule", 3],
      ["Area by Simpson's rule", 48, "sq ft"],
    ]);
  });
});

describe("water over time", () => {
  // Computed by hand: 0.05 + 0.009 x 30 = 0.32; 40 in x 0.9 x 0.32 = 11.52 in on 10 acres; phosphorus 0.26 mg/L.
  test("30 percent impervious gives a runoff coefficient of 0.32 and 11.52 in of runoff a year", () => {
    expectSteps(workingOf("POLLUTANTLOAD", 435_600, 40, 30, "TP"), [
      ["Runoff coefficient Rv", 0.32],
      ["Runoff in a year", (435_600 * 11.52) / 12, "cu ft"],
      ["Concentration C", 0.26, "mg/L"],
    ]);
  });

  // Computed by hand: 87.5 cu ft come to 100 sq ft of floor that lets 4.1667 cu ft an hour go; all of it soaks in.
  test("a routed storm shows what the basin can hold and where its water went", () => {
    expectSteps(workingOf("STORMROUTE", [[1]], 360, 1000, 0.95, 100, 6, 0.5, 24, 0.25, 0), [
      ["Rim area", 100, "sq ft"],
      ["Held in the soil mix's voids", 50, "cu ft"],
      ["Held when full", 100, "cu ft"],
      ["Drawn in an hour", 50 / 12, "cu ft"],
      ["Inflow of the storm", 87.5, "cu ft"],
      ["Soaked in", 87.5, "cu ft"],
      ["Overflow", 0, "cu ft"],
      ["Still stored", 0, "cu ft"],
    ]);
  });

  test("no rain in a storm brings no water", () => {
    expect(
      workingOf("STORMROUTE", [[0]], 360, 1000, 0.95, 100, 6, 0.5)
        .slice(4)
        .map(({ value }) => value),
    ).toEqual([0, 0, 0, 0]);
  });

  // Computed by hand: 350 cu ft in the first quarter, 2,191.5 h x 0.08333 cu ft soak in, 50 stay and soak in later, the rest spills.
  test("a record shows what came and where it went", () => {
    const soaked = (2191.5 * 0.01 * 100) / 12 + 50;
    expectSteps(workingOf("LONGTERM", [[4], [0], [0], [0]], 2191.5, 1000, 0.95, 100, 6, 0.01, 0, 0.25, 0), [
      ["Rim area", 100, "sq ft"],
      ["Held in the soil mix's voids", 0, "cu ft"],
      ["Held when full", 50, "cu ft"],
      ["Drawn in an hour", 1 / 12, "cu ft"],
      ["Years of record", 1],
      ["Runoff of the record", 3800 / 12, "cu ft"],
      ["Rain on the basin", 400 / 12, "cu ft"],
      ["Soaked in", soaked, "cu ft"],
      ["Evapotranspiration", 0, "cu ft"],
      ["Overflow", 350 - soaked, "cu ft"],
      ["Still stored", 0, "cu ft"],
      ["All that came", 350, "cu ft"],
      ["All that left or is stored", 350, "cu ft"],
    ]);
  });

  // Computed by hand: 1.2 in on 1,000 sq ft of roof and as much floor is 200 cu ft; the floor soaks in 1.2 in of it in a day.
  test("the floor found for half of the water is proved by what it captures", () => {
    expectSteps(
      workingOf("AREAFORCAPTURE", 0.5, [[1.2], [0]], 24, 1000, 1, 0, 0.05),
      [
        ["Years of record", 2 / 365.25],
        ["Runoff of the record", 100, "cu ft"],
        ["Rain on the basin", 100, "cu ft"],
        ["Soaked in", 100, "cu ft"],
        ["Evapotranspiration", 0, "cu ft"],
        ["Overflow", 100, "cu ft"],
        ["Still stored", 0, "cu ft"],
        ["All that came", 200, "cu ft"],
        ["All that left or is stored", 200, "cu ft"],
        ["Captured share", 0.5],
      ],
      1e-6,
    );
  });

  test("where no water comes there is no captured share", () => {
    expect(workingOf("AREAFORCAPTURE", 0.5, [[1.2]], 24, 1000, 0, 0, 0.05).map(({ label }) => label)).not.toContain("Captured share");
  });
});

describe("digging and soil", () => {
  // FM 5-434, table 1-1 (read in transcription): clay swells to 1.43 and packs to 0.90.
  test("loose clay goes to compacted clay by way of its volume in place", () => {
    expectSteps(workingOf("SOILSTATE", 6, "loose", "compacted", "clay"), [
      ["Factor from", 1.43],
      ["Volume in place", 6 / 1.43, "cu yd"],
      ["Factor to", 0.9],
    ]);
    expectSteps(workingOf("SOILSTATE", 6, "in place", "loose", "clay"), [
      ["Factor from", 1],
      ["Volume in place", 6, "cu yd"],
      ["Factor to", 1.43],
    ]);
  });

  // Computed by hand: upright sides, 10 x 20 x 0.5 ft; a crest of 1 ft around them, 6 in high: 12 x 22 - 10 x 20 sq ft; loam packs to 0.90.
  test("on level ground the cut is the pond, and the berm goes all around", () => {
    const berm = (0.5 * (12 * 22 - 10 * 20)) / 27;
    expectSteps(workingOf("CUTFILL", 10, 20, 6, 0, 0, 0, 0, "rectangle", 1, 0, 6, "loam"), [
      ["Width in cut x", 20 / (1 + Math.sqrt(0.9)), "ft"],
      ["Ground over full water uphill S x", 0, "ft"],
      ["Dig at the floor's uphill edge", 0.5, "ft"],
      ["Dig down to the finished floor and sides", (10 * 20 * 0.5) / 27, "cu yd"],
      ["Dig for the mulch", 0, "cu yd"],
      ["Dig for the soil mix", 0, "cu yd"],
      ["More to dig because the ground falls", 0, "cu yd"],
      ["All fill as it lay in place", berm / 0.9, "cu yd"],
    ]);
  });

  // Computed by hand: x = 10 / (1 + sqrt 0.9); wedges of S x^2 / 2 and S (10 - x)^2 / 2 a foot, times 10 ft / 27.
  test("on a slope a level pad's cut, compacted, just fills its downhill side", () => {
    const x = 10 / (1 + Math.sqrt(0.9));
    const cut = (0.06 * x ** 2 * 10) / 2 / 27;
    const fill = (0.06 * (10 - x) ** 2 * 10) / 2 / 27;
    expectSteps(workingOf("CUTFILL", 10, 10, 0, 6, 0, 0, 0, "rectangle", 0, 0, 0, "loam"), [
      ["Width in cut x", x, "ft"],
      ["Ground over full water uphill S x", 0.06 * x, "ft"],
      ["Dig at the floor's uphill edge", 0.06 * x, "ft"],
      ["Dig down to the finished floor and sides", 0, "cu yd"],
      ["Dig for the mulch", 0, "cu yd"],
      ["Dig for the soil mix", 0, "cu yd"],
      ["More to dig because the ground falls", cut, "cu yd"],
      ["All fill as it lay in place", fill / 0.9, "cu yd"],
    ]);
  });

  // TM 9-2320-366-10-1, table 2-15 (read): 5.19 cu yd of dry earth weigh 10,510 lb. 10 / 5.19 and 10.125 / 5.255 are both 1.93.
  test("loads are counted by volume, and by weight where there is a limit", () => {
    const weight = (10 * 75 * 27) / 2000;
    expectSteps(workingOf("TRUCKLOADS", 10, 5.19, 10_510 / 2000, "dry earth"), [
      ["Loads by volume", 2],
      ["Weight W", weight, "tons"],
      ["Loads by weight", 2],
    ]);
    expectSteps(workingOf("TRUCKLOADS", 10, 5.19, null, "dry earth"), [
      ["Loads by volume", 2],
      ["Weight W", weight, "tons"],
    ]);
  });

  // Planning Planet wiki, pits by hand (read); 0.764554857984 cu m in a cu yd.
  test("6 cu yd of firm soil take one laborer 10.67 h", () => {
    expectSteps(workingOf("DIGHOURS", 6, "firm", 6), [
      ["Output of one laborer", 0.43, "cu m/h"],
      ["Hours of one laborer", (6 * 0.764554857984) / 0.43, "h"],
    ]);
  });

  // Computed by hand: 2 / 0.85.
  test("a mix of 2 cu yd in place is 2.353 cu yd loose, by the recipe's shares", () => {
    expectSteps(workingOf("SOILMIX", 2, "fast soil"), [
      ["Loose volume", 2 / 0.85, "cu yd"],
      ["Share of native soil", 0.65],
      ["Share of compost", 0.35],
    ]);
  });

  // Computed by hand: 2,000 x 8 / (2,000 x 8 + 600 x 45).
  test("a soil 8 percent short of its target takes 37 percent of compost", () => {
    expectSteps(workingOf("COMPOSTDEPTH", 8, 2, 10, 55, 2000, 600), [
      ["Organic matter lacking T - S", 8, "%"],
      ["Compost as a share of the depth", 16_000 / 43_000],
    ]);
  });

  // Computed by hand: (60 - 20) / (95 - 60) = 1.143; 1.143 / 2.143 = 0.533.
  test("a soil of 20 percent sand takes 1.14 of its volume in sand, 53 percent of the mix", () => {
    expectSteps(workingOf("SANDTOADD", 3, 20, 95, 60), [
      ["Sand for each unit of native soil", 40 / 35],
      ["Added sand as a share of the mix", 40 / 75],
    ]);
  });

  test("bags are counted before they are rounded up, in either unit", () => {
    expectSteps(workingOf("BAGS", 1.852, 2), [
      ["Material", 1.852 * 27, "cu ft"],
      ["Bags before rounding up", 1.852 * 13.5],
    ]);
    expectSteps(workingOf("BAGS", 1.03, 50, "metric"), [
      ["Material", 1.03, "m³"],
      ["Bags before rounding up", 20.6],
    ]);
  });

  test("dry earth is weighed at 75 lb a cubic foot", () => {
    expectSteps(workingOf("MATERIALWEIGHT", 5.19, "dry earth"), [["Density", 75, "lb per cu ft"]]);
    expectSteps(workingOf("MATERIALWEIGHT", 5.19, "compost"), [["Density", 1000 / 27, "lb per cu ft"]]);
  });
});

describe("inlet, overflow and planting", () => {
  test("a head of 0.2 ft passes 0.2325 cfs over each foot of sill, whichever unit the coefficient is in", () => {
    expectSteps(workingOf("OVERFLOWWIDTH", 0.132, 0.2), [
      ["Weir coefficient C", 2.6, "in US units"],
      ["Flow over each foot of sill C H^1.5", 2.6 * 0.2 ** 1.5, "cfs/ft"],
    ]);
    expectSteps(workingOf("OVERFLOWWIDTH", 0.132, 0.2, 3), [
      ["Weir coefficient C", 3, "in US units"],
      ["Flow over each foot of sill C H^1.5", 3 * 0.2 ** 1.5, "cfs/ft"],
    ]);
    expectSteps(workingOf("OVERFLOWWIDTH", 3.7, 0.0762, 1.44, "metric").slice(0, 1), [
      ["Weir coefficient C", 1.44 / Math.sqrt(0.3048), "in US units"],
    ]);
  });

  test("a 4 in pipe has 0.0873 sq ft of water and a hydraulic radius of an inch", () => {
    expectSteps(workingOf("PIPEFLOW", 4, 1), [
      ["Area of the pipe A", Math.PI / 36, "sq ft"],
      ["Hydraulic radius R", 1 / 12, "ft"],
    ]);
  });

  // HEC-14, 3rd ed., equation 10.4 (read): g = 32.2 ft/s^2; a tailwater not known counts as 0.4 of the diameter.
  test("an apron's stone is followed over its tailwater and its flow term", () => {
    expectSteps(workingOf("STONESIZE", 1, 12), [
      ["Tailwater over diameter TW / D", 0.4],
      ["Flow term (Q / sqrt(g))^(4/3)", 32.2 ** (-2 / 3), "in US units"],
    ]);
    expectSteps(workingOf("STONESIZE", 8, 12, 6), [
      ["Tailwater over diameter TW / D", 0.5],
      ["Flow term (Q / sqrt(g))^(4/3)", 16 * 32.2 ** (-2 / 3), "in US units"],
    ]);
  });

  // Nursery spacing chart (read): 44 plants on 100 sq ft at 18 in.
  test("100 sq ft hold 44.4 plants 18 in apart on squares", () => {
    expectSteps(workingOf("PLANTCOUNT", 100, 1.5, "square"), [["Plants before rounding up", 100 / 2.25]]);
  });

  // Computed by hand: a 17 by 7 ft floor, a 20 by 10 ft rim, a 22 by 12 ft outer edge.
  test("planting zones are followed over the areas inside the rim and inside the berm's outer edge", () => {
    expectSteps(workingOf("ZONEAREAS", 119, 6, 3, 1, "rectangle", 17 / 7), [
      ["Floor length L", 17, "ft"],
      ["Floor width W", 7, "ft"],
      ["Sides reach outward z d", 1.5, "ft"],
      ["Area inside the rim", 200, "sq ft"],
      ["Area inside the berm's outer edge", 264, "sq ft"],
    ]);
  });

  test("a mix shows the area of each kind, and a row not typed yet has none", () => {
    expectSteps(workingOf("PLANTMIX", 200, [[1], [null], [2]], [[0.5], [null], [0.3]], "square"), [
      ["Kind 1, area", 100, "sq ft"],
      ["Kind 3, area", 60, "sq ft"],
      ["Share of the area planted", 0.8],
    ]);
  });

  test("an inch a week on 150 sq ft is 12.5 cu ft", () => {
    expectSteps(workingOf("WATERNEED", 150, 1), [["Volume V", 12.5, "cu ft"]]);
  });
});

describe("money", () => {
  const prices = [["compost", 32, "cu yd", 0.5, 2, 60, 46_000]];

  test("an order shows what is bought, its price and its delivery; an order of nothing shows none", () => {
    expectSteps(workingOf("PRICED", 10.3, "compost", prices), [
      ["Bought", 10.5],
      ["Unit price", 32],
      ["Delivery", 60],
    ]);
    expect(workingOf("PRICED", 0, "compost", prices)).toEqual([]);
  });

  test("80 sq ft at $41 earn $3,280 before the cap", () => {
    expectSteps(workingOf("COSTSHARE", "per area", 80, 41, 3000, 50), [["Before the cap", 3280]]);
  });
});
