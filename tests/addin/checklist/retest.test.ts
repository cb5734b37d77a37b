import { describe, expect, test } from "vitest";
import { retestReasons, type RetestFacts, type TestedHole } from "../../../addin/checklist/retest.ts";

const sound = (name: string): TestedHole => ({ name, soaked: true, steady: true });
const settled: RetestFacts = {
  holes: [sound("1"), sound("2")],
  spread: 1.5,
  widestSpread: 3,
  longPondings: 0,
  soilDiffers: false,
  regraded: false,
};

/** Triggers as programs use them; common practice, no source. */
describe("when a soil is tested again", () => {
  test("two soaked, steady holes that agree are enough", () => {
    expect(retestReasons(settled)).toEqual([]);
  });

  test("no hole is a first test to make, not a test to repeat", () => {
    expect(retestReasons({ ...settled, holes: [], spread: null, longPondings: 2, soilDiffers: true, regraded: true })).toEqual([]);
  });

  test.each([
    ["a single hole", { holes: [sound("1")], spread: null }, "Only one hole was tested: test at least two."],
    [
      "a hole that was not soaked",
      { holes: [sound("1"), { ...sound("2"), soaked: false }] },
      "Hole 2: not soaked first, so the rate may be too high.",
    ],
    [
      "a hole whose soaking nobody recorded",
      { holes: [sound("1"), { ...sound("2"), soaked: null }] },
      "Hole 2: not recorded whether the soil was soaked first.",
    ],
    [
      "a rate that had not settled",
      { holes: [sound("1"), { ...sound("2"), steady: false }] },
      "Hole 2: the rate had not settled at the last reading.",
    ],
    ["readings that give no rate", { holes: [sound("1"), { ...sound("2"), steady: null }] }, "Hole 2: the readings give no rate."],
    ["a spread over three", { spread: 3.01 }, "The highest rate is more than 3 times the lowest: the yard may hold two soils."],
    ["water standing over 48 h twice", { longPondings: 2 }, "Water stood more than 48 hours after a storm, 2 times."],
    ["another soil at the dig", { soilDiffers: true }, "The dig met another soil than the test hole."],
    ["ground that was moved", { regraded: true }, "The ground was graded, built on or driven over since the test."],
  ] as const)("%s is a reason", (_, changed: Partial<RetestFacts>, reason) => {
    expect(retestReasons({ ...settled, ...changed })).toEqual([reason]);
  });

  test("a spread of exactly three, and water standing over 48 h once, are none", () => {
    expect(retestReasons({ ...settled, spread: 3, longPondings: 1 })).toEqual([]);
  });

  test("several holes of one fault are named together", () => {
    const holes = ["A", "B", "C"].map((name): TestedHole => ({ ...sound(name), soaked: name === "B" }));
    expect(retestReasons({ ...settled, holes })).toEqual(["Holes A, C: not soaked first, so the rate may be too high."]);
  });
});
