import { isCellError } from "../../functions/worksheet/cell.ts";
import type { Cell, CellInput } from "../../functions/worksheet/cell.ts";
import { rulesNamed } from "../../functions/worksheet/site-rules.ts";
import { siteCheck } from "../../functions/worksheet/siting.ts";
import { speakers } from "../../functions/worksheet/speaker.ts";
import type { NumberKind } from "../../functions/quantities.ts";
import { screeningVisit } from "../checklist/screening-visit.ts";
import { stageVerdict } from "../checklist/stage.ts";
import type { Stage, Step } from "../checklist/stage.ts";
import type { UnitSystem } from "../records/site-terms.ts";
import { verdictOf } from "../records/visits.ts";
import type { Verdict, VisitAnswerRow } from "../records/visits.ts";
import { isErrorCode } from "../workbook/workbook.ts";
import type { CellValue } from "../workbook/workbook.ts";
import type { Program, Yard } from "./read-program.ts";

/** A visit stage as it stands for one yard. */
export interface StageStanding {
  readonly stage: Stage;
  readonly verdict: Verdict;
  readonly steps: readonly StepStanding[];
}

export interface StepStanding {
  readonly step: Step;
  /** The newest answer, or null when the step was never answered. */
  readonly answer: VisitAnswerRow | null;
  readonly verdict: Verdict;
  /** The limits of the Rules sheet that bear on the answer, in the order of the sheet. */
  readonly rules: readonly RuleInForce[];
  /** Why an answer cannot be judged, when it cannot. */
  readonly fault: string | null;
}

export interface RuleInForce {
  readonly comparison: "at least" | "at most";
  /** In the yard's units, rounded so that what is printed still holds: "10 ft", "3.05 m", "12 %". */
  readonly limit: string;
  readonly ifNotMet: "refer" | "stop";
}

export function screeningOf(program: Program, yard: Yard): StageStanding {
  const rules = program.rules.map((row) => row.map(asCell));
  const steps = screeningVisit.steps.map((step) => standingOf(rules, yard, step));
  return { stage: screeningVisit, steps, verdict: stageVerdict(steps.map(({ verdict }) => verdict)) };
}

function standingOf(rules: readonly (readonly Cell[])[], yard: Yard, step: Step): StepStanding {
  const answer = yard.answers.get(step.id) ?? null;
  const verdict = answer === null ? "not measured" : verdictOf(answer);
  const named = "rule" in step.answer ? rulesNamed(step.answer.rule, rules) : null;
  if (named === null) return { step, answer, verdict, rules: [], fault: null };
  if (isCellError(named)) return { step, answer, verdict, rules: [], fault: named.sentence };
  const inForce = named.rules.map(({ comparison, limit, ifNotMet }): RuleInForce => ({ comparison, limit: limitIn(yard.units, named.kind, limit, comparison), ifNotMet }));
  return { step, answer, verdict, rules: inForce, fault: answer === null ? null : faultOf(rules, yard, answer) };
}

/** The sentence behind a verdict cell that shows an error. */
function faultOf(rules: readonly (readonly Cell[])[], yard: Yard, { cells }: VisitAnswerRow): string | null {
  if (!isErrorCode(cells.verdict)) return null;
  const inputs: CellInput[] = [asCell(cells.rule), asCell(cells.answer), rules, yard.units];
  const verdict = siteCheck.evaluate(inputs)[0]?.[0];
  return isCellError(verdict) && verdict.sentence !== "" ? verdict.sentence : null;
}

function limitIn(units: UnitSystem, kind: NumberKind, limit: number, comparison: RuleInForce["comparison"]): string {
  if (kind === "hours") return speakers[units].hours(limit);
  const words = speakers[units].say(kind, limit, comparison === "at least" ? "up" : "down");
  return kind === "percent" ? `${words} %` : words;
}

function asCell(value: CellValue): Cell {
  return isErrorCode(value) ? { code: value, sentence: "" } : value;
}
