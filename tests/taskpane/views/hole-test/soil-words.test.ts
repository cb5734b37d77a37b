import { describe, expect, test } from "vitest";
import type { CombinedHole, CombinedHoles } from "../../../../addin/actions/hole-test/combine-holes.ts";
import { chainOf, homeownerNote, spreadWords } from "../../../../taskpane/views/hole-test/soil-words.ts";

const hole = (name: string, rate: number, dropRate: number, changed: Partial<CombinedHole> = {}): CombinedHole => ({
  row: 3,
  name,
  soaked: true,
  steady: true,
  emptied: false,
  rate: { value: rate },
  dropRate: { value: dropRate },
  ...changed,
});

/** 1.6 and 0.9 in/h: geometric mean sqrt(1.44) = 1.2, halved 0.6 in/h. A basin of 6 in is empty in 6 / 0.6 = 10 h. */
const soil: CombinedHoles = {
  holes: [hole("A", 1.6, 9), hole("B", 0.9, 4.5)],
  standing: "tested",
  rates: [1.6, 0.9],
  spread: { highest: 1.6, lowest: 0.9, ratio: 1.6 / 0.9 },
  testedRate: { value: 1.2 },
  reductionFactor: 2,
  designRate: { value: 0.6 },
  cautions: [],
  faults: [],
  retest: [],
  ponding: { depth: 6, hours: 10 },
};

describe("the way from the holes to the design rate", () => {
  test("shows each hole, their geometric mean and the reduction, with units", () => {
    expect(chainOf(soil, "us").map(({ label, hint, says }) => [label, hint, says])).toEqual([
      ["Hole A", "soaked first, steady", "1.6 in/h"],
      ["Hole B", "soaked first, steady", "0.9 in/h"],
      ["Tested rate, geometric mean of 2 holes", "(1.6 × 0.9) to the power 1/2", "1.2 in/h"],
      ["Design rate", "Tested rate divided by 2, the reduction factor on Program", "0.6 in/h"],
    ]);
  });

  test("says of each hole what is not known of it", () => {
    const unsure = hole("C", 0.5, 2, { soaked: null, steady: null, rate: { sentence: "Hole diameter is missing." } });
    expect(chainOf({ ...soil, holes: [unsure] }, "us")[0]).toEqual({
      label: "Hole C",
      hint: "soaking not recorded, no rate",
      says: "Hole diameter is missing.",
      known: false,
    });
  });

  test("in a metric yard is in mm/h", () => {
    const metric = {
      ...soil,
      holes: [hole("A", 40.64, 228.6)],
      rates: [40.64],
      testedRate: { value: 40.64 },
      designRate: { value: 20.32 },
    };
    expect(chainOf(metric, "metric").map(({ says }) => says)).toEqual(["40.6 mm/h", "40.6 mm/h", "20.3 mm/h"]);
  });
});

test("a spread is told by its two ends and how many times the one is the other", () => {
  expect(spreadWords(soil, "us")).toBe("Spread: the highest rate, 1.6 in/h, is 1.8 times the lowest, 0.9 in/h.");
  expect(spreadWords({ ...soil, spread: { highest: 1.6, lowest: 0, ratio: null } }, "us")).toBe(
    "Spread: the highest rate is 1.6 in/h and the lowest 0 in/h.",
  );
  expect(spreadWords({ ...soil, spread: null }, "us")).toBeNull();
});

describe("the note for the homeowner", () => {
  test("tells the slowest hole's drop, the plants, the planned rate and when the basin is empty", () => {
    expect(homeownerNote(soil, "us")).toBe(
      "We tested your soil in 2 holes. In the slowest, the water fell 4.5 in in an hour. " +
        "That lies between slow, about 2 in, and fast, about 8 in: the wettest part wants plants that bear standing water. " +
        "Your garden is planned for 0.6 in/h, the tested rate divided by 2, because soil slows down over the years. " +
        "When it is full, 6 in deep, it should be empty about 10 hours after the rain stops. Tell us if water still stands 48 hours after a rain.",
    );
  });

  test("says nothing of an empty basin before there is one, and says when a test is to be repeated", () => {
    const note = homeownerNote({ ...soil, ponding: null, retest: ["Only one hole was tested: test at least two."] }, "us");
    expect(note).toContain("When it will be empty is known once its basin is designed. We would like to test it again.");
  });

  test.each([
    [8, "a wide choice of plants"],
    [2, "plants that bear standing water"],
  ])("of a drop of %d in an hour names %s", (drop, plants) => {
    expect(homeownerNote({ ...soil, holes: [hole("A", 1, drop)], rates: [1] }, "us")).toContain(plants);
  });

  test("is not written for a soil that is not tested", () => {
    expect(
      homeownerNote(
        { ...soil, holes: [], rates: [], standing: "not tested", testedRate: { sentence: "" }, designRate: { sentence: "" } },
        "us",
      ),
    ).toBeNull();
  });
});
