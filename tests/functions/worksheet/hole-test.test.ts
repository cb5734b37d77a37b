import { describe, expect, test } from "vitest";
import { designRate, dropRate, holeRate, holeTest } from "../../../functions/worksheet/hole-test.ts";
import { cellOf, column, divisionByZero, notThere, refused, row } from "./sample-functions.ts";

const NOT_STEADY =
  "Not steady yet: the last two rates differ by more than 10 percent. Keep reading; the rate shown is of the last interval.";
const ONE_INTERVAL = "One interval cannot show that the rate is steady: keep reading until two in a row agree within 10 percent.";
const RAN_DRY =
  "The hole ran dry: readings after that are not used, and the rate may be higher than shown. Fill deeper or read more often.";

// Riverside County, Design Handbook for Low Impact Development, 2011, appendix A (from memory): 0.37 in/h.
const riverside = { minutes: column(0, 10), depths: column(47.75, 46.25) };
const steady = { minutes: column(0, 30, 60, 90), depths: column(12, 9, 7.5, 6.3) };

describe("HOLERATE and DROPRATE", () => {
  test("the Riverside example infiltrates at 0.37 in/h while its level drops at 9 in/h", () => {
    expect(cellOf(holeRate, riverside.minutes, riverside.depths, 8)).toBeCloseTo(0.37, 2);
    expect(cellOf(holeRate, riverside.minutes, riverside.depths, 8)).toBeCloseTo(0.36738, 5);
    expect(cellOf(dropRate, riverside.minutes, riverside.depths)).toBeCloseTo(9, 10);
  });

  test("the same hole in millimetres infiltrates at 9.33 mm/h", () => {
    expect(cellOf(holeRate, riverside.minutes, column(47.75 * 25.4, 46.25 * 25.4), 8 * 25.4, "metric")).toBeCloseTo(0.36738 * 25.4, 3);
  });

  test("readings may stand in rows, with room left for more", () => {
    const rate = cellOf(holeRate, steady.minutes, steady.depths, 8);
    expect(cellOf(holeRate, row(0, 30, 60, 90, null, ""), row(12, 9, 7.5, 6.3, "", null), 8)).toBe(rate);
    expect(cellOf(holeRate, column(0, 30, 60, 90, null), steady.depths, 8)).toBe(rate);
  });

  test("water that does not move infiltrates at 0", () => {
    expect(cellOf(holeRate, column(0, 60, 120), column(6, 6, 6), 8)).toBe(0);
    expect(cellOf(dropRate, column(0, 60, 120), column(6, 6, 6))).toBe(0);
  });

  test("readings of a dry hole are not taken for a rate of 0", () => {
    const emptied = cellOf(dropRate, column(0, 10, 20), column(4, 2, 0));
    expect(cellOf(dropRate, column(0, 10, 20, 30, 40), column(4, 2, 0, 0, 0))).toBe(emptied);
    expect(cellOf(holeRate, column(0, 10, 20, 30, 40), column(4, 2, 0, 0, 0), 8)).toBe(
      cellOf(holeRate, column(0, 10, 20), column(4, 2, 0), 8),
    );
  });
});

describe("readings that cannot be right", () => {
  test.each([
    ["a time without a depth", column(0, 10, 20, 30), column(12, 11, 10, null), notThere("Reading 4 has a time but no water depth.")],
    ["a depth without a time", column(0, null, 20), column(12, 11, 10), notThere("Reading 2 has a water depth but no time.")],
    ["more times than depths", column(0, 10, 20), column(12, 11), notThere("Reading 3 has a time but no water depth.")],
    ["a time before the last", column(0, 20, 10), column(12, 11, 10), refused("Reading 3 is not later than reading 2.")],
    ["a time twice", column(0, 10, 10), column(12, 11, 10), refused("Reading 3 is not later than reading 2.")],
    [
      "rising water",
      column(0, 10, 20),
      column(12, 10, 11),
      refused("Reading 3 stands higher than reading 2: water was added. Start a new series after refilling."),
    ],
    [
      "rising water after a blank row",
      column(0, null, 20),
      column(10, null, 11),
      refused("Reading 3 stands higher than reading 1: water was added. Start a new series after refilling."),
    ],
    ["an empty hole", column(0, 10), column(0, 0), refused("Reading 1 finds no water: fill the hole before the first reading.")],
    ["one reading", column(0), column(12), notThere("A hole test needs at least two readings.")],
    ["text", column(0, "ten"), column(12, 11), refused('Time in minutes 2 must be a number; it is the text "ten".')],
    ["a negative depth", column(0, 10), column(12, -1), refused("Water depth 2 must be 0 or more.")],
    ["an error", column(0, 10), column(12, divisionByZero), divisionByZero],
    ["no depths", column(0, 10), column(null, null), notThere("Water depth is missing.")],
    ["nothing", column(null, null), column(null, null), ""],
  ])("%s is said in words", (what, minutes, depths, answer) => {
    expect(cellOf(dropRate, minutes, depths)).toEqual(answer);
    expect(cellOf(holeRate, minutes, depths, what === "nothing" ? null : 8)).toEqual(answer);
    expect(cellOf(holeTest, minutes, depths, what === "nothing" ? null : 8)).toEqual(answer);
    expect(holeTest.cautionsFor([minutes, depths, 8])).toEqual([]);
    expect(dropRate.cautionsFor([minutes, depths])).toEqual([]);
  });

  test("a hole without width is refused, and a narrow one is taken for a radius", () => {
    expect(cellOf(holeRate, riverside.minutes, riverside.depths, 0)).toEqual(refused("Hole diameter must be more than 0."));
    expect(holeRate.cautionsFor([steady.minutes, steady.depths, 2.9])).toContain(
      "A hole under 3 in across is unusual: give its diameter, not its radius.",
    );
    expect(holeRate.cautionsFor([steady.minutes, column(120, 90, 75, 63), 70, "metric"])).toContain(
      "A hole under 76.2 mm across is unusual: give its diameter, not its radius.",
    );
    expect(holeRate.cautionsFor([steady.minutes, steady.depths, 3])).toEqual([]);
  });
});

describe("cautions while a test runs", () => {
  test("one interval cannot be steady, two that differ are not, and two that agree are", () => {
    expect(holeRate.cautionsFor([riverside.minutes, riverside.depths, 8])).toEqual([ONE_INTERVAL]);
    expect(holeRate.cautionsFor([column(0, 30, 60), column(12, 9, 7.5), 8])).toEqual([NOT_STEADY]);
    expect(holeTest.cautionsFor([column(0, 30, 60), column(12, 9, 7.5), 8])).toEqual([NOT_STEADY]);
    expect(holeRate.cautionsFor([steady.minutes, steady.depths, 8])).toEqual([]);
  });

  test("a drop that slows only because less wall is wet is steady for HOLERATE and not for DROPRATE", () => {
    const level = (minutes: number) => ((2 * 12 + 4) * Math.exp(-minutes / 60) - 4) / 2;
    const times = [0, 15, 30, 45];
    const readings = [column(...times), column(...times.map(level))] as const;
    expect(holeRate.cautionsFor([...readings, 8])).toEqual([]);
    expect(dropRate.cautionsFor([...readings])).toEqual([NOT_STEADY]);
  });

  test("a hole that runs dry is said to", () => {
    expect(holeRate.cautionsFor([column(0, 10, 20, 30), column(4, 2, 0, 0), 8])).toContain(RAN_DRY);
    expect(dropRate.cautionsFor([column(0, 10, 20), column(4, 2, 0)])).toContain(RAN_DRY);
  });
});

describe("HOLETEST", () => {
  test("has a row for each interval, with words where there is no number", () => {
    const [first, second, third] = holeTest.evaluate([steady.minutes, steady.depths, 8]);
    expect(first).toEqual([30, 6, expect.closeTo(4 * Math.log(28 / 22), 10), "first interval", "not steady"]);
    expect(second![0]).toBe(60);
    expect(second![4]).toBe("not steady");
    expect(third![4]).toBe("steady");
    expect(third![3]).toBeCloseTo((third![2] as number) / (second![2] as number) - 1, 10);
  });

  test("says hole dry after the reading that found it so", () => {
    const rows = holeTest.evaluate([column(0, 10, 20, 30), column(4, 2, 0, 0), 8]);
    expect(rows.map((cells) => cells[4])).toEqual(["not steady", "not steady", "hole dry"]);
  });

  test("takes one diameter for the whole hole", () => {
    expect(cellOf(holeTest, steady.minutes, steady.depths, column(8, 10))).toEqual(
      refused("Hole diameter must be a single cell; it is 2 rows by 1 column."),
    );
  });
});

describe("a hole that no soil explains", () => {
  // By hand: 4 / (2 / 6) x ln (28 / 5) is 20.67 in/h.
  const fast = [column(0, 10), column(12, 0.5), 8] as const;

  test("is asked about: a rate over 20 in/h, and a diameter typed in millimeters", () => {
    expect(holeRate.cautionsFor(fast)).toContainEqual(expect.stringContaining("more than 20 in/h"));
    expect(holeTest.cautionsFor([column(0, 10), column(12, 2), 203])).toContain(
      "A hole over 36 in across is unusual: the diameter is in inches.",
    );
    expect(holeRate.cautionsFor([column(0, 10), column(0.5, 0), 2000, "metric"])).toContainEqual(
      expect.stringContaining("the diameter is in mm"),
    );
    expect(holeRate.cautionsFor([column(10), column(12), 8])).toEqual([]);
  });
});

describe("DESIGNRATE", () => {
  // Minnesota Stormwater Manual (read): field rate divided by 2. The means are computed by hand.
  test("tested rates are averaged and halved, blanks not counted", () => {
    expect(cellOf(designRate, 1)).toBe(0.5);
    expect(cellOf(designRate, column(4, null, 1, "", 0.25))).toBeCloseTo(0.5, 12);
    expect(cellOf(designRate, column(2, 8), 3, "median")).toBeCloseTo(5 / 3, 12);
    expect(cellOf(designRate, column(2, 8), 1, "lowest")).toBe(2);
    expect(cellOf(designRate, column(25.4, 25.4), null, null, "metric")).toBeCloseTo(12.7, 12);
  });

  test("a hole that takes no water makes the geometric mean 0, with a caution", () => {
    expect(cellOf(designRate, column(3, 0))).toBe(0);
    expect(designRate.cautionsFor([column(3, 0)])).toEqual(["A hole took no water at all: check it before relying on the others."]);
  });

  test("no rates at all is not yet an answer, and a factor under 1 is none", () => {
    expect(cellOf(designRate, column(null, ""))).toBe("");
    expect(cellOf(designRate, column(1, "fast"))).toEqual(refused('Tested rate 2 must be a number; it is the text "fast".'));
    expect(cellOf(designRate, 1, 0.5)).toEqual(refused("Reduction factor must be 1 or more."));
    expect(cellOf(designRate, 1, 2, "mean")).toEqual(refused('Take must be "geometric mean", "median" or "lowest"; it is "mean".'));
  });

  test("it cautions when nothing is taken off and when the rates are far apart", () => {
    expect(designRate.cautionsFor([1, 1])).toEqual([
      "Nothing is taken off: tested rates are usually divided by 2 or 3, because a basin clogs.",
    ]);
    expect(designRate.cautionsFor([column(1, 3.1)])).toEqual([
      "The highest tested rate is more than 3 times the lowest: the yard may hold two soils. Test again between the holes, or take the lowest.",
    ]);
    expect(designRate.cautionsFor([column(1, 3)])).toEqual([]);
    // 20 in/h begins the fastest class of soils that the Soil Conservation Service prints.
    expect(designRate.cautionsFor([column(12, 20)])).toEqual([]);
    expect(designRate.cautionsFor([column(12, 25)])).toEqual([
      "Hardly any soil takes more than 20 in/h: check the units and the readings, and look for gravel, a burrow or a pipe's bed.",
    ]);
  });
});
