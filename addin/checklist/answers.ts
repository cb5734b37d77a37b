import { plainKey } from "../../functions/worksheet/calling/typed-words.ts";
import { isBlank } from "../records/sheet.ts";
import { verdictOf, type Verdict, type VisitAnswerRow } from "../records/visits.ts";
import { FROM_THE_START, type ChecklistDays } from "./checklist-version.ts";
import { namesIn, type Stage, type Step } from "./stage.ts";

/** The newest answer to each step of one stage that still counts, by step id. */
export type AnswersInForce = ReadonlyMap<string, VisitAnswerRow>;

/** `visits` are a yard's answers, the oldest first. Every gate asks for those of the stages before it: they are found once. */
export function answersInForce(stage: Stage, visits: readonly VisitAnswerRow[]): AnswersInForce {
  const ofYard = found.get(visits) ?? new Map<Stage, AnswersInForce>();
  found.set(visits, ofYard);
  const answers = ofYard.get(stage) ?? findAnswersInForce(stage, visits);
  ofYard.set(stage, answers);
  return answers;
}

const found = new WeakMap<readonly VisitAnswerRow[], Map<Stage, AnswersInForce>>();

function findAnswersInForce(stage: Stage, visits: readonly VisitAnswerRow[]): AnswersInForce {
  const counted = visits.slice(beginningOf(stage, visits));
  return new Map(counted.flatMap((row) => (row.record.step === null || isBlank(row.record.answer) ? [] : [[row.record.step, row]])));
}

/** Where the stage was begun anew last: at the first answer of the newest run that says the same. */
function beginningOf({ beginsWith }: Stage, visits: readonly VisitAnswerRow[]): number {
  if (beginsWith === undefined) return 0;
  const begun = visits.flatMap(({ record }, place) =>
    record.step === beginsWith && !isBlank(record.answer) ? [{ place, said: plainKey(String(record.answer)) }] : [],
  );
  const newest = begun.at(-1);
  const other = begun.findLastIndex(({ said }) => said !== newest?.said);
  return other === -1 ? 0 : (begun[other + 1]?.place ?? 0);
}

/**
 * The stage's steps as they are asked: one for each name on its list, none that the answer to another step leaves out,
 * and as optional those that a later checklist brought after the stage was finished.
 */
export function stepsOf(stage: Stage, answers: AnswersInForce, checklist: ChecklistDays = FROM_THE_START): readonly Step[] {
  const { eachOf } = stage;
  const names = eachOf === undefined ? [] : namesIn(saidAt(answers, eachOf.list) ?? "");
  const steps = stage.steps
    .filter(({ onlyIf }) => onlyIf === undefined || says(answers, onlyIf.step, onlyIf.said))
    .flatMap((step) => (step.id === eachOf?.list ? [step, ...names.map(eachOf.step)] : [step]));
  return steps.map((step) => (isSpared(step, steps, answers, checklist) ? { ...step, optional: true } : step));
}

/** Whether the stage was finished, as it was asked then, before the workbook had the checklist that brought the step. */
function isSpared({ since }: Step, steps: readonly Step[], answers: AnswersInForce, checklist: ChecklistDays): boolean {
  const from = since === undefined ? undefined : checklist.get(since);
  if (since === undefined || from === undefined) return false;
  const earlier = steps.filter((step) => (step.since ?? 1) < since && step.optional !== true);
  return (
    earlier.every(({ id }) => answers.has(id)) && [...answers.values()].every(({ record }) => record.date === null || record.date < from)
  );
}

/** The answer's text, or null where the step is not answered. */
export function saidAt(answers: AnswersInForce, stepId: string): string | null {
  const answer = answers.get(stepId)?.record.answer ?? null;
  return answer === null ? null : String(answer).trim();
}

/** Whether the step is answered with these words. */
export function says(answers: AnswersInForce, stepId: string, words: string): boolean {
  const said = saidAt(answers, stepId);
  return said !== null && plainKey(said) === plainKey(words);
}

/** A text, a date or a number that no rule judges passes once it is there; an optional step passes when it is not. */
export function verdictOfStep(step: Step, answer: VisitAnswerRow | null): Verdict {
  if (answer === null) return step.optional === true ? "pass" : "not measured";
  const { kind } = step.answer;
  return kind === "text" || kind === "date" || kind === "number" ? "pass" : verdictOf(answer);
}
