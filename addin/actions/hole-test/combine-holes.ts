import { largestOf, smallestOf } from "../../../functions/extremes.ts";
import { WIDE_SPREAD_RATIO } from "../../../functions/infiltration/design-rate.ts";
import { isCellError, type Cell } from "../../../functions/worksheet/calling/cell.ts";
import { drawdown } from "../../../functions/worksheet/basin.ts";
import { designRate, holeRate } from "../../../functions/worksheet/hole-test.ts";
import { decisionOn } from "../../checklist/decisions.ts";
import { faultsOfHoles, LONGEST_PONDING_HOURS, retestReasons, type RetestFacts } from "../../checklist/retest.ts";
import type { HoleTestRow } from "../../records/hole-tests.ts";
import type { Answer } from "../basin/draft-basin.ts";
import { draftHoleTest, type HoleInterval } from "./draft-hole-test.ts";
import type { Program, Yard } from "../program/read-program.ts";
import { shallowHoles } from "./planned-dig.ts";
import { longPondingDays } from "../care/record-look.ts";
import { readingsOf, type HoleTestEntry } from "../yard/record-yard.ts";

/** Water that stands longer is a reason to test again. */
export const PONDING_LIMIT_HOURS = LONGEST_PONDING_HOURS;

/** One hole among the yard's, in the yard's units. */
export interface CombinedHole {
  readonly row: number;
  readonly name: string;
  readonly soaked: boolean | null;
  readonly rate: Answer;
  readonly dropRate: Answer;
  /** SOAK.HOLETEST's answer for the last interval that had water; null where it gives none. */
  readonly steady: boolean | null;
  /** The last reading found no water. */
  readonly emptied: boolean;
}

export interface Spread {
  readonly highest: number;
  readonly lowest: number;
  /** Null where the lowest is 0. */
  readonly ratio: number | null;
}

/** What the holes of a yard say together, from the same worksheet functions as the Design sheet. */
export interface CombinedHoles {
  readonly holes: readonly CombinedHole[];
  /** "not tested": no hole. "no rate": holes, and a rate that cannot be told. Never a rate of 0 for want of a test. */
  readonly standing: "not tested" | "no rate" | "tested";
  /** The rates that are known, in the order of the holes. */
  readonly rates: readonly number[];
  readonly spread: Spread | null;
  /** Geometric mean of the rates. */
  readonly testedRate: Answer;
  readonly reductionFactor: number;
  /** The mean, reduced once. */
  readonly designRate: Answer;
  /** Of the combination: a wide spread, a hole that took no water, one that ends above the bottom of the dig. */
  readonly cautions: readonly string[];
  /** What is wrong with which hole. */
  readonly faults: readonly string[];
  readonly retest: readonly string[];
  /** Hours until the standing water of a full basin is gone; null while there is no basin that fits. */
  readonly ponding: { readonly depth: number; readonly hours: number } | null;
}

export function combineHoles(program: Program, yard: Yard): CombinedHoles {
  const { units } = yard;
  const { reductionFactor } = program.settings;
  const holes = yard.holeTests.map((row) => combinedHole(row, program, yard));
  const cells = yard.holeTests.map((row): Cell[] => [rateCell(row, yard)]);
  const rates = cells.flat().filter((cell) => typeof cell === "number");
  const combined = (factor: number) => answerOf(cells.length === 0 ? null : designRate.evaluate([cells, factor, null, units])[0]?.[0]);
  const testedRate = combined(1);
  const reduced = combined(reductionFactor);
  const spread = spreadOf(rates);
  const facts = retestFacts(yard, holes, spread);
  return {
    holes,
    standing: holes.length === 0 ? "not tested" : "value" in testedRate ? "tested" : "no rate",
    rates,
    spread,
    testedRate,
    reductionFactor,
    designRate: reduced,
    cautions: cells.length === 0 ? [] : [...designRate.cautionsFor([cells, reductionFactor, null, units]), ...shallowHoles(program, yard)],
    faults: faultsOfHoles(facts.holes),
    retest: retestReasons(facts),
    ponding: pondingOf(yard, reduced),
  };
}

/** The facts that retestReasons judges, for whoever shows the whole program. */
export function retestFactsOf(program: Program, yard: Yard): RetestFacts {
  const { holes, spread } = combineHoles(program, yard);
  return retestFacts(yard, holes, spread);
}

/** What the sheet holds of one hole, as the form writes it. */
export function entryOf(row: HoleTestRow): HoleTestEntry {
  const { cells, record } = row;
  return {
    hole: nameOf(row),
    date: record.date,
    tester: record.tester ?? "",
    soaked: record.soaked === "yes" || record.soaked === "no" ? record.soaked : null,
    holeDepth: cells.holeDepth,
    holeDiameter: cells.holeDiameter,
    readings: readingsOf(row),
  };
}

function combinedHole(row: HoleTestRow, program: Program, { units }: Yard): CombinedHole {
  const entry = entryOf(row);
  const test = draftHoleTest(entry, units, program.settings, program.rules);
  return {
    row: row.row,
    name: nameOf(row),
    soaked: entry.soaked === null ? null : entry.soaked === "yes",
    rate: test.infiltrationRate,
    dropRate: test.dropRate,
    steady: lastWithWater(test.intervals),
    emptied: test.emptied,
  };
}

function lastWithWater(intervals: readonly HoleInterval[]): boolean | null {
  const last = intervals.findLast(({ verdict }) => verdict !== "hole dry");
  return last === undefined ? null : last.verdict === "steady";
}

/** The very cell that the hole's row computes, an error included, so that the pane and Design combine the same. */
function rateCell(row: HoleTestRow, { units }: Yard): Cell {
  const readings = readingsOf(row);
  const column = (key: "minutes" | "waterDepth"): Cell[][] => [readings.map((reading) => reading[key])];
  return holeRate.evaluate([column("minutes"), column("waterDepth"), row.cells.holeDiameter, units])[0]?.[0] ?? null;
}

function spreadOf(rates: readonly number[]): Spread | null {
  if (rates.length < 2) return null;
  const highest = largestOf(rates);
  const lowest = smallestOf(rates);
  return { highest, lowest, ratio: lowest === 0 ? null : highest / lowest };
}

function retestFacts(yard: Yard, holes: readonly CombinedHole[], spread: Spread | null): RetestFacts {
  const since = largestOf([0, ...yard.holeTests.map(({ record }) => record.date ?? 0)]);
  const after = (date: number | null) => date !== null && date > since;
  const refers = (step: string) => {
    const answer = yard.answers.get(step)?.record;
    const speaksForIt = answer?.verdict === "watch" || (answer?.verdict === "refer" && decisionOn(step, yard.visits) === null);
    return speaksForIt && after(answer.date);
  };
  return {
    holes: holes.map(({ name, soaked, steady, rate }) => ({ name, soaked, steady: "value" in rate ? steady : null })),
    spread: spread?.ratio ?? null,
    widestSpread: WIDE_SPREAD_RATIO,
    longPondings: longPondingDays(yard).size,
    soilDiffers: refers("soil-as-tested"),
    regraded: refers("year-regraded"),
  };
}

function pondingOf({ design, units }: Yard, rate: Answer): CombinedHoles["ponding"] {
  const { pondingDepth, status } = design;
  if (status !== "fits" || typeof pondingDepth !== "number" || !("value" in rate)) return null;
  const hours = drawdown.evaluate([pondingDepth, rate.value, null, null, units])[0]?.[0];
  return typeof hours === "number" ? { depth: pondingDepth, hours } : null;
}

function nameOf({ record, row }: HoleTestRow): string {
  return record.hole ?? `in row ${row + 1}`;
}

function answerOf(cell: Cell | undefined): Answer {
  if (typeof cell === "number") return { value: cell };
  return { sentence: isCellError(cell) ? cell.sentence : "No hole gives a rate yet." };
}
