/** The functions that answer every yard from one list of all yards' rows. */
import { describe, expect, test } from "vitest";
import { siteRate } from "../../../functions/worksheet/site-rate.ts";
import { siteRunoff } from "../../../functions/worksheet/site-runoff.ts";
import { siteTakeoff } from "../../../functions/worksheet/takeoff.ts";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { column, notThere, refused } from "./sample-functions.ts";

const ids = (...cells: Cell[]) => column(...cells);

describe("SITERUNOFF", () => {
  const list: readonly CellInput[] = [
    ids("Site ID", "Y-001", 12, "__proto__", "Y-001", "Y-900", " Y-001 ", ""),
    ids("Cover", "roof", "roof", "paving", "good lawn", "swamp", null, "roof"),
    ids("Area", 1000, 600, 300, 3000, "much", 100, 50),
    ids("Share", null, 0.5, 1, 1, 7, 1, 1),
  ];
  const yards = (siteIds: readonly Cell[], groups: Cell = "B", storm: Cell = 1, units: Cell = "us") =>
    siteRunoff.evaluate([ids(...siteIds), storm, groups, ...list, units]);

  test("each yard is answered from its own rows, whatever its ID is made of", () => {
    const [first, number, odd, blank, twice] = yards(["Y-001", "12", "__proto__", "", "Y-001"]);
    expect(first?.slice(0, 2)).toEqual([4100, 1000]);
    // A lawn of curve number 61 sends nothing of 1 in: 0.2 x S is 1.28 in. 0.95 x 1,100 / 12.
    expect(first?.[2]).toBeCloseTo(87.0833, 4);
    expect(first?.[3]).toBe(
      "0.95 of the storm off roof and paving; other ground by curve number, soil group B; 1 without a cover taken as roof",
    );
    expect(number).toEqual([300, 300, (0.95 * 300) / 12, "0.95 of the storm off roof and paving"]);
    expect(odd?.[0]).toBe(300);
    expect(blank).toEqual(expect.arrayContaining([notThere("Site ID is missing.")]));
    expect(twice).toEqual(first);
  });

  test("a row with neither ID nor storm is blank, and a yard without surfaces is not an error", () => {
    expect(siteRunoff.evaluate([ids("", "Y-077"), ids("", 1), "B", ...list])).toEqual([
      ["", "", "", ""],
      ["", "", "", ""],
    ]);
  });

  test("without a soil group D is taken, and said", () => {
    expect(yards(["Y-001"], null, 4)[0]?.[3]).toContain("soil group D assumed");
    expect(yards(["Y-001"], null, 4)[0]?.[2]).toBe((yards(["Y-001"], "D", 4)[0] ?? [])[2]);
  });

  test("lawn alone goes by curve number alone", () => {
    expect(siteRunoff.evaluate(["A", 4, "B", ids("A"), ids("good lawn"), ids(500)])[0]?.[3]).toBe(
      "other ground by curve number, soil group B",
    );
  });

  test("works a surface without a cover and a yard without a soil group out as the worst of them", () => {
    // 0.95 x 100 x 2 / 12 = 15.83; good lawn on group D, curve number 80: S 2.5 in, Q (2 - 0.5)^2 / (2 + 2) = 0.5625 in, x 500 / 12 = 23.44.
    const [bare, lawn] = siteRunoff.workingFor(["A", 2, null, ids("A", "A"), ids(null, "good lawn"), ids(100, 500)]);
    expect(bare).toMatchObject({ label: "Surface 1, no cover, runoff", unit: "cu ft", value: expect.closeTo(15.83, 2) });
    expect(lawn).toMatchObject({ label: "Surface 2, good lawn, runoff", value: expect.closeTo(23.44, 2) });
  });

  test("a metric yard's surfaces are in m² and its storm in mm: 100 m² of roof in 25.4 mm are 2.413 m³", () => {
    const row = siteRunoff.evaluate(["A", 25.4, "B", ids("A"), ids("roof"), ids(100), null, "metric"])[0];
    expect(row?.[0]).toBeCloseTo(100, 9);
    expect(row?.[2]).toBeCloseTo(2.413, 9);
  });

  test("what is wrong on one yard's rows is said there, and no other yard is touched", () => {
    const [wrong, right] = yards(["Y-900", "Y-001"]);
    expect(wrong?.[0]).toMatchObject({ sentence: expect.stringMatching(/^Cover of surface 1 "swamp" is not in its list/) });
    expect(right?.[0]).toBe(4100);
    const alone = (cover: Cell, area: Cell, share: Cell) =>
      siteRunoff.evaluate(["A", 1, "B", ids("A"), ids(cover), ids(area), ids(share)])[0]?.[0];
    expect(alone("roof", null, 1)).toEqual(notThere("Area of surface 1 is missing."));
    expect(alone("roof", -5, 1)).toEqual(refused("Area of surface 1 must be 0 or more."));
    expect(alone("roof", 5, 2)).toMatchObject({ sentence: expect.stringMatching(/^Share draining here of surface 1 must be/) });
    expect(alone("roof", { code: "#REF!", sentence: "" }, 1)).toMatchObject({ code: "#REF!" });
    expect(alone(null, null, 1)).toBe("");
  });

  test("columns of the list that are not as long as each other are refused in words", () => {
    const short = (place: number) =>
      siteRunoff.evaluate([
        "A",
        1,
        "B",
        ids("A", "B"),
        ...[ids("roof", "roof"), ids(1, 1), ids(1, 1)].map((full, at) => (at === place ? ids(1) : full)),
      ])[0]?.[0];
    expect(short(0)).toMatchObject({ sentence: "Site IDs of the surfaces has 2 rows and Covers has 1: take both over the same rows." });
    expect(short(1)).toMatchObject({ sentence: expect.stringContaining("and Areas has 1") });
    expect(short(2)).toMatchObject({ sentence: expect.stringContaining("and Shares draining here has 1") });
  });

  test("the working shows each surface of the yard, and nothing where one is wrong", () => {
    expect(siteRunoff.workingFor(["Y-001", 1, "B", ...list]).map(({ label }) => label)).toEqual([
      "Surface 1, roof, runoff",
      "Surface 2, good lawn, runoff",
      "Surface 3, no cover, runoff",
    ]);
    expect(siteRunoff.workingFor(["Y-900", 1, "B", ...list])).toEqual([]);
  });

  test("time grows with the rows, not with yards times surfaces: ten times both take less than forty times as long", () => {
    const measure = (count: number) => {
      const names = Array.from({ length: count }, (_, place) => `Y-${place}`);
      const surfaces = names.flatMap((name) => [name, name, name]);
      const inputs = (): CellInput[] => [
        ids(...names),
        1,
        "B",
        ids(...surfaces),
        ids(...surfaces.map(() => "roof")),
        ids(...surfaces.map(() => 500)),
        null,
      ];
      const times = Array.from({ length: 5 }, () => {
        const given = inputs();
        const start = performance.now();
        siteRunoff.evaluate(given);
        return performance.now() - start;
      });
      return Math.min(...times);
    };
    measure(300);
    expect(measure(3000)).toBeLessThan(40 * Math.max(measure(300), 0.2));
  });
});

describe("SITERATE", () => {
  // Riverside County LID handbook, appendix A: 47.75 to 46.25 in within 10 minutes in an 8 in hole is 0.37 in/h.
  const times = [
    ["Minutes 1", "Minutes 2"],
    [0, 10],
    [0, 10],
    [0, 10],
    [null, null],
    [0, 5],
    [null, null],
  ];
  const depths = [
    ["Water 1", "Water 2"],
    [47.75, 46.25],
    [47.75, 47.75],
    [9, 8],
    [null, null],
    [6, 7],
    [null, null],
  ];
  const list: readonly CellInput[] = [
    ids("Site ID", "Y-001", "Y-002", "Y-001", "Y-001", "Y-003", "Y-004"),
    times,
    depths,
    ids("Hole diameter", 8, 8, 8, 8, 8, null),
  ];
  const of = (...siteIds: Cell[]) => siteRate.evaluate([ids(...siteIds), ...list]);

  test("the printed example comes back, and a yard's rate is the geometric mean of its holes", () => {
    const single = siteRate.evaluate(["A", ids("A"), [[0, 10]], [[47.75, 46.25]], ids(8)])[0];
    expect(single?.[0]).toBe(1);
    expect(Math.abs(Number(single?.[1]) - 0.37)).toBeLessThan(0.005);
    const [row] = of("Y-001");
    expect(row?.[0]).toBe(2);
    expect(Number(row?.[1]) ** 2).toBeCloseTo(Number(row?.[2]) * Number(row?.[3]), 9);
    expect(row?.[2]).toBe(single?.[1]);
  });

  test("a hole without readings is not tested yet, and a yard without holes has no rate", () => {
    expect(of("Y-004", "Y-077")).toEqual([
      [0, "", "", ""],
      [0, "", "", ""],
    ]);
    expect(siteRate.evaluate(["Y-001"])).toEqual([[0, "", "", ""]]);
  });

  test("a hole that took no water makes the geometric mean 0", () => {
    expect(of("Y-002")).toEqual([[1, 0, 0, 0]]);
  });

  test("what is wrong with a hole is said with its number, in its own yard alone", () => {
    const [wrong, right] = of("Y-003", "Y-001");
    expect(wrong?.[1]).toMatchObject({
      sentence: "Hole 1: Reading 2 stands higher than reading 1: water was added. Start a new series after refilling.",
    });
    expect(right?.[0]).toBe(2);
    const hole = (minutes: readonly Cell[], water: readonly Cell[], across: Cell) =>
      siteRate.evaluate(["A", ids("A"), [minutes], [water], ids(across)])[0]?.[0];
    expect(hole([0, 10], [8, 7], null)).toEqual(notThere("Hole 1: Hole diameter is missing."));
    expect(hole([0, 10], [8, "low"], 8)).toMatchObject({ sentence: expect.stringMatching(/^Hole 1: Water depth 2 must be a number/) });
    expect(hole([0, 10], [8, { code: "#REF!", sentence: "" }], 8)).toEqual({ code: "#REF!", sentence: "" });
    expect(hole([0, { code: "#N/A", sentence: "" }], [8, 7], 8)).toEqual({ code: "#N/A", sentence: "" });
  });

  test("columns that are not as long as each other are refused in words", () => {
    const short = (place: number) =>
      siteRate.evaluate([
        "A",
        ids("A", "B"),
        ...[[[0], [0]], [[1], [1]], ids(8, 8)].map((full, at) => (at === place ? [[1]] : full)),
      ])[0]?.[0];
    expect(short(0)).toMatchObject({ sentence: expect.stringContaining("and Times in minutes has 1") });
    expect(short(1)).toMatchObject({ sentence: expect.stringContaining("and Water depths has 1") });
    expect(short(2)).toMatchObject({ sentence: expect.stringContaining("and Hole diameters has 1") });
  });

  test("it cautions where the holes differ threefold, and its working names each rate", () => {
    expect(siteRate.cautionsFor(["Y-001", ...list])).toHaveLength(1);
    expect(siteRate.cautionsFor(["Y-003", ...list])).toEqual([]);
    expect(siteRate.cautionsFor(["Y-002", ...list])).toEqual([]);
    expect(siteRate.workingFor(["Y-001", ...list]).map(({ label }) => label)).toEqual([
      "Hole 1, infiltration rate",
      "Hole 2, infiltration rate",
    ]);
    expect(siteRate.workingFor(["Y-003", ...list])).toEqual([]);
  });
});

describe("SITETAKEOFF", () => {
  test("without a recipe the materials are blank, and the layers are counted", () => {
    const [row] = siteTakeoff.evaluate([200, 240, 6, 12]);
    expect(row?.slice(5, 10)).toEqual(["", "", "", "", ""]);
    // 240 sq ft x 3 in / 324 sq ft an inch deep in a cubic yard; 240 / (1.5^2 sin 60 degrees) = 123.2.
    expect(row?.[10]).toBeCloseTo(2.2222, 4);
    expect(row?.[11]).toBe(124);
  });

  test("no size yet is a blank row", () => {
    expect(siteTakeoff.evaluate([ids("", null), ids("", null), ids("", null)])[0]).toEqual(new Array(12).fill(""));
  });
});
