import type { Verdict, VisitAnswerRow } from "../records/visits.ts";
import { verdictOfStep } from "./answers.ts";
import { decisionOn, overriding, type Decision, type Settlement } from "./decisions.ts";
import type { Step } from "./stage.ts";

/** What an answer is judged by, beside itself. */
export interface JudgedBy {
  /** Every answer on record, the oldest first. */
  readonly visits: readonly VisitAnswerRow[];
  /** What other sheets hold against an answer that would pass, as a sentence by step id. */
  readonly contradictions: ReadonlyMap<string, string>;
}

/** How a step stands once everything that bears on it is heard. */
export interface StepVerdict {
  /** What is found, a decision heard and an override not. */
  readonly found: Verdict;
  /** What the finding comes to: a stop that somebody answered for by name holds nothing up. */
  readonly verdict: Verdict;
  readonly decision: Decision | null;
  readonly override: Settlement | null;
  /** Why the answer does not count, though it is there. */
  readonly contradiction: string | null;
}

/** An answer that other sheets contradict is not measured, whatever it says. What refers is what was decided on it. */
export function judged(step: Step, answer: VisitAnswerRow | null, { visits, contradictions }: JudgedBy): StepVerdict {
  const contradiction = answer === null ? null : (contradictions.get(step.id) ?? null);
  const said = contradiction === null ? verdictOfStep(step, answer) : "not measured";
  const decision = said === "refer" ? decisionOn(step.id, visits) : null;
  const found = decision?.verdict ?? said;
  const override = found === "stop" ? overriding(step.id, visits) : null;
  return { found, verdict: override === null ? found : "pass", decision, override, contradiction };
}
