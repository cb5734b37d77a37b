import { isCellError, type Cell, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { designRate, dropRate, holeRate, holeTest } from "../../../functions/worksheet/hole-test.ts";
import { READINGS } from "../../records/hole-tests.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { checkRule, TESTED_RATE_RULE, type RuleCheck } from "../visits/check-rule.ts";
import type { Answer } from "../basin/draft-basin.ts";
import type { Program } from "../program/read-program.ts";
import type { HoleTestEntry } from "../yard/record-yard.ts";

/** Readings one hole has room for. */
export const HOLE_READINGS = READINGS;

/** One row of SOAK.HOLETEST, in the yard's units. */
export interface HoleInterval {
  /** When it ends. */
  readonly minutes: number;
  readonly dropRate: number;
  readonly correctedRate: number;
  /** Change of the corrected rate, as a share; null for the first interval. */
  readonly change: number | null;
  readonly verdict: "steady" | "not steady" | "hole dry";
}

/** What one hole tells so far, from the same worksheet functions that stand in its row of Hole tests. */
export interface HoleTestDraft {
  readonly intervals: readonly HoleInterval[];
  readonly dropRate: Answer;
  readonly infiltrationRate: Answer;
  /** This hole's rate alone, reduced once. The yard designs with the mean of its holes. */
  readonly designRate: Answer;
  /** A reading found no water left: the hole may take more than is shown. */
  readonly emptied: boolean;
  /** The reading that a sentence speaks of, counted from 1. */
  readonly readingAtFault: number | null;
  /** The tested rate held against the Rules sheet. */
  readonly check: RuleCheck;
  readonly cautions: readonly string[];
}

export function draftHoleTest(
  entry: HoleTestEntry,
  units: UnitSystem,
  settings: Program["settings"],
  rules: Program["rules"],
): HoleTestDraft {
  const minutes = [entry.readings.map((reading) => reading.minutes)];
  const water = [entry.readings.map((reading) => reading.waterDepth)];
  const rateInputs: CellInput[] = [minutes, water, entry.holeDiameter, units];
  const drop = answer(dropRate.evaluate([minutes, water, units]));
  const infiltrationRate = answer(holeRate.evaluate(rateInputs));
  const rate = "value" in infiltrationRate ? infiltrationRate.value : null;
  return {
    intervals: holeTest.evaluate(rateInputs).flatMap(intervalOf),
    dropRate: drop,
    infiltrationRate,
    designRate: rate === null ? infiltrationRate : answer(designRate.evaluate([rate, settings.reductionFactor, null, units])),
    emptied: rate !== null && entry.readings.some(({ waterDepth }) => waterDepth === 0),
    readingAtFault: readingNamed(drop) ?? readingNamed(infiltrationRate),
    check: checkRule(TESTED_RATE_RULE, rate, rules, units),
    cautions: holeRate.cautionsFor(rateInputs),
  };
}

function intervalOf([minutes, drop, corrected, change, verdict]: readonly Cell[]): HoleInterval[] {
  if (typeof minutes !== "number" || typeof drop !== "number" || typeof corrected !== "number") return [];
  return [
    {
      minutes,
      dropRate: drop,
      correctedRate: corrected,
      change: typeof change === "number" ? change : null,
      verdict: verdict as HoleInterval["verdict"],
    },
  ];
}

function answer(rows: readonly (readonly Cell[])[]): Answer {
  const cell = rows[0]?.[0];
  if (typeof cell === "number") return { value: cell };
  return { sentence: isCellError(cell) ? cell.sentence : "A hole test needs at least two readings." };
}

function readingNamed(one: Answer): number | null {
  const named = "sentence" in one ? /^Reading (\d+)\b/.exec(one.sentence) : null;
  return named === null ? null : Number(named[1]);
}
