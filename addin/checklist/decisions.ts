import { plainKey } from "../../functions/worksheet/calling/typed-words.ts";
import { isBlank } from "../records/sheet.ts";
import type { Verdict, VisitAnswerRow } from "../records/visits.ts";
import { overrideOf } from "./overrides.ts";
import { refusal, type Refusal } from "./refusal.ts";
import type { ChosenOption, StepPlace } from "./stage.ts";

/** Who settled a finding that would hold a stage up, and in which words. */
export interface Settlement {
  readonly by: string;
  readonly date: number | null;
  readonly words: string;
}

/** What somebody who may decide said about a finding that refers. */
export interface Decision extends Settlement {
  readonly date: number;
  readonly says: string;
  /** What was decided: the condition, the distance allowed, the work asked for. */
  readonly what: string;
  /** The letter, permit, e-mail or note on which it stands. */
  readonly paper: string;
  readonly verdict: Verdict;
  readonly row: VisitAnswerRow;
}

/** How a decision may come out. */
export const DECISIONS = [
  { says: "Go on", verdict: "pass" },
  { says: "Go on, on conditions", verdict: "pass" },
  { says: "Not here", verdict: "stop" },
] as const satisfies readonly ChosenOption[];

export function decisionStep(stepId: string): string {
  return `${DECISION_PREFIX}${stepId}`;
}

/**
 * The decision in force on a step, or null. The newest one counts. One that lacks who, what, when or the paper is none,
 * and one that is older than the answer it was given on is none: another finding is another question.
 */
export function decisionOn(stepId: string, visits: readonly VisitAnswerRow[]): Decision | null {
  const place = visits.findLastIndex(({ record }) => record.step === decisionStep(stepId) && !isBlank(record.answer));
  const row = visits[place];
  if (row === undefined) return null;
  const { answer, by, note, date, link } = row.record;
  const option = DECISIONS.find(({ says }) => plainKey(says) === plainKey(String(answer)));
  if (option === undefined || by === null || note === null || date === null || link === null) return null;
  if (visits.findLastIndex(({ record }) => record.step === stepId && !isBlank(record.answer)) > place) return null;
  return { by, date, words: `${option.says}: ${note} (${link})`, says: option.says, what: note, paper: link, verdict: option.verdict, row };
}

/** The override by which a stop no longer holds its stage up. */
export function overriding(stepId: string, visits: readonly VisitAnswerRow[]): Settlement | null {
  const override = overrideOf(refusal(stopId(stepId), "", stepId), visits);
  return override === null ? null : { by: override.by, date: override.date, words: override.reason };
}

/** A stop stands in the way of every later stage until it is answered anew, or somebody answers for it by name. */
export function stopRefusal(at: StepPlace, sentence: string): Refusal {
  return refusal(stopId(at.step), sentence, at.step, at);
}

/** A finding that refers waits for whoever may decide, and for nobody else. */
export function referRefusal(at: StepPlace, sentence: string): Refusal {
  return { ...refusal(`refer: ${at.step}`, sentence, at.step, at), neverOverridden: DECIDED_AT_STEP };
}

export const DECIDED_AT_STEP = "It is settled at its step: write down who decided, what, when, and on what paper.";

function stopId(stepId: string): string {
  return `stop: ${stepId}`;
}

const DECISION_PREFIX = "decision: ";
