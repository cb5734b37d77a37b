import { describe, expect, test } from "vitest";
import { checkRule } from "../../../../addin/actions/visits/check-rule.ts";
import { draftHoleTest } from "../../../../addin/actions/hole-test/draft-hole-test.ts";
import type { HoleTestEntry, Reading } from "../../../../addin/actions/yard/record-yard.ts";
import { programSettings, type ProgramKey } from "../../../../addin/records/program.ts";
import { startingRules } from "../../../../addin/records/rules.ts";

const settings = Object.fromEntries(Object.entries(programSettings).map(([key, { value }]) => [key, value])) as Record<ProgramKey, number>;
const rules = startingRules.map(({ rule, comparison, limit, unit, ifNotMet, source }) => [
  rule,
  comparison,
  limit,
  unit,
  ifNotMet,
  source,
  null,
]);

function holeWith(
  readings: readonly (readonly [minutes: number | null, waterDepth: number | null])[],
  holeDiameter: number | null = 8,
): HoleTestEntry {
  return {
    hole: "A",
    date: null,
    tester: "",
    soaked: "yes",
    holeDepth: null,
    holeDiameter,
    readings: readings.map(([minutes, waterDepth]): Reading => ({ minutes, waterDepth })),
  };
}

const draftOf = (entry: HoleTestEntry, units: "us" | "metric" = "us") => draftHoleTest(entry, units, settings, rules);

function valueOf(answer: ReturnType<typeof draftOf>["infiltrationRate"]): number {
  if ("sentence" in answer) throw new Error(answer.sentence);
  return answer.value;
}

describe("one hole, drafted before it is written", () => {
  // Riverside County, LID BMP Design Handbook, 2011, appendix A example (numbers from memory): 0.37 in/h from a 9.0 in/h drop.
  test("water at 47.75 then 46.25 in after 10 min in an 8 in hole infiltrates at 0.37 in/h", () => {
    const draft = draftOf(
      holeWith([
        [0, 47.75],
        [10, 46.25],
      ]),
    );
    expect(valueOf(draft.infiltrationRate)).toBeCloseTo(0.37, 2);
    expect(valueOf(draft.dropRate)).toBeCloseTo(9, 9);
    expect(valueOf(draft.designRate)).toBeCloseTo(valueOf(draft.infiltrationRate) / 2, 12);
    expect(draft.check).toEqual({ rule: "Tested infiltration rate", verdict: "pass", sentence: null });
  });

  test("the same hole in millimetres gives the same rate in mm/h", () => {
    const metric = draftOf(
      holeWith(
        [
          [0, 47.75 * 25.4],
          [10, 46.25 * 25.4],
        ],
        8 * 25.4,
      ),
      "metric",
    );
    expect(valueOf(metric.infiltrationRate)).toBeCloseTo(
      25.4 *
        valueOf(
          draftOf(
            holeWith([
              [0, 47.75],
              [10, 46.25],
            ]),
          ).infiltrationRate,
        ),
      9,
    );
  });

  test("each interval has its change from the one before, and the first has none", () => {
    const { intervals } = draftOf(
      holeWith([
        [0, 10],
        [10, 9],
        [20, 8.1],
        [30, 7.29],
      ]),
    );
    expect(intervals.map(({ minutes }) => minutes)).toEqual([10, 20, 30]);
    expect(intervals[0]?.change).toBeNull();
    expect(intervals[2]?.change).toBeCloseTo(
      (intervals[2]!.correctedRate - intervals[1]!.correctedRate) / Math.max(intervals[1]!.correctedRate, intervals[2]!.correctedRate),
      12,
    );
  });

  test.each([
    [
      "Reading 2 has a time but no water depth.",
      [
        [0, 9],
        [10, null],
        [20, 8],
      ],
      2,
    ],
    [
      "Reading 3 is not later than reading 2.",
      [
        [0, 9],
        [10, 8],
        [10, 7],
      ],
      3,
    ],
    [
      "Reading 3 stands higher than reading 2: water was added. Start a new series after refilling.",
      [
        [0, 9],
        [10, 8],
        [20, 8.5],
      ],
      3,
    ],
  ] as const)("says: %s", (sentence, readings, reading) => {
    const draft = draftOf(holeWith(readings));
    expect(draft.infiltrationRate).toEqual({ sentence });
    expect(draft.dropRate).toEqual({ sentence });
    expect(draft.readingAtFault).toBe(reading);
    expect(draft.intervals).toEqual([]);
    expect(draft.check.verdict).toBe("not measured");
  });

  test("no reading and one reading are too few", () => {
    expect(draftOf(holeWith([])).dropRate).toEqual({ sentence: "A hole test needs at least two readings." });
    expect(draftOf(holeWith([[0, 9]])).infiltrationRate).toEqual({ sentence: "A hole test needs at least two readings." });
    expect(draftOf(holeWith([[0, 9]])).readingAtFault).toBeNull();
  });

  test("without a diameter the drop is known and the infiltration rate is not", () => {
    const draft = draftOf(
      holeWith(
        [
          [0, 9],
          [10, 8],
        ],
        null,
      ),
    );
    expect(valueOf(draft.dropRate)).toBeCloseTo(6, 9);
    expect(draft.infiltrationRate).toEqual({ sentence: "Hole diameter is missing." });
    expect(draft.designRate).toEqual({ sentence: "Hole diameter is missing." });
  });

  test("a hole that emptied says so and cautions that it may be faster", () => {
    const draft = draftOf(
      holeWith([
        [0, 6],
        [10, 2],
        [20, 0],
        [30, 0],
      ]),
    );
    expect(draft.intervals.at(-1)?.verdict).toBe("hole dry");
    expect(draft.cautions.some((caution) => caution.startsWith("The hole ran dry"))).toBe(true);
  });

  test("a 2 in hole is asked whether its radius was typed", () => {
    expect(
      draftOf(
        holeWith(
          [
            [0, 9],
            [10, 8],
          ],
          2,
        ),
      ).cautions.some((caution) => caution.includes("not its radius")),
    ).toBe(true);
  });
});

describe("against the Rules sheet", () => {
  test("a tested rate under 0.25 in/h is referred, and so is the same rate in mm/h", () => {
    expect(checkRule("Tested infiltration rate", 0.2, rules, "us").verdict).toBe("refer");
    expect(checkRule("Tested infiltration rate", 0.2 * 25.4, rules, "metric").verdict).toBe("refer");
    expect(checkRule("Tested infiltration rate", 0.3 * 25.4, rules, "metric").verdict).toBe("pass");
  });

  test("no value is not measured, never a pass", () => {
    expect(checkRule("Drawdown", null, rules, "us").verdict).toBe("not measured");
  });

  test("a rule that somebody renamed is said, with the nearest names", () => {
    const { verdict, sentence } = checkRule("Drawdon", 20, rules, "us");
    expect(verdict).toBe("not measured");
    expect(sentence).toContain("Drawdown");
  });
});
