import { describe, expect, test } from "vitest";
import { draftHoleTest } from "../../../../addin/actions/hole-test/draft-hole-test.ts";
import { homeownerWords, steadinessWords } from "../../../../taskpane/views/hole-test/verdict-words.ts";
import { settings } from "../basin/basin-examples.ts";

function holeOf(...water: readonly number[]) {
  const readings = water.map((waterDepth, index) => ({ minutes: 10 * index, waterDepth }));
  return draftHoleTest({ hole: "A", date: null, tester: "", soaked: null, holeDepth: null, holeDiameter: 8, readings }, "us", settings, []);
}

describe("whether to read on", () => {
  test("one interval cannot show that the rate is steady", () => {
    expect(steadinessWords(holeOf(9, 8))).toBe("Keep going: one interval cannot show that the rate is steady.");
  });

  test("equal corrected rates are steady", () => {
    // Porchet at one rate f in an 8 in hole (r = 4): H + r/2 shrinks by the same factor each interval.
    const levels = [0, 1, 2, 3].map((interval) => 11 * 0.9 ** interval - 2);
    expect(steadinessWords(holeOf(...levels))).toBe("Steady: the last two rates differ by 0 %.");
  });

  test("a rate that falls by 18 % in an interval needs further readings", () => {
    const first = 11 * 0.9;
    const second = first * 0.9 ** 0.82;
    expect(steadinessWords(holeOf(9, first - 2, second - 2))).toBe(
      "Keep going: the last two rates differ by 18 %, and 10 % or less is steady.",
    );
  });

  test("an empty hole has told all it can", () => {
    expect(steadinessWords(holeOf(6, 2, 0))).toMatch(/^The hole emptied\./);
  });

  test("nothing is said before there is an interval", () => {
    expect(steadinessWords(holeOf(9))).toBeNull();
  });
});

describe("what the homeowner is told", () => {
  test.each([
    [8, "us", "a wide choice of plants"],
    [2, "us", "plants that bear standing water"],
    [4, "us", "between slow, about 2 in, and fast, about 8 in"],
    [203.2, "metric", "a wide choice of plants"],
    [100, "metric", "between slow, about 51 mm, and fast, about 203 mm"],
  ] as const)("a drop of %d (%s) in an hour: %s", (drop, units, meaning) => {
    expect(homeownerWords(drop, units)).toContain(meaning);
  });
});
