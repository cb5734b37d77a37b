import type { StepPlace } from "./stage.ts";

/** One thing that keeps a stage from being begun, and what to do about it. */
export interface Refusal {
  /** Kept in the workbook by an override: never renamed once released. */
  readonly id: string;
  readonly sentence: string;
  /** The step whose answer is the reason: an override given before that answer says nothing about it. */
  readonly step?: string;
  /** Why nobody may override it; null where a name and a reason may. */
  readonly neverOverridden: string | null;
  /** Where it is put right, when that is a step. */
  readonly at?: StepPlace;
}

/** One that a person may answer for with a name and a reason. */
export function refusal(id: string, sentence: string, step?: string, at?: StepPlace): Refusal {
  return { id, sentence, neverOverridden: null, ...(step === undefined ? {} : { step }), ...(at === undefined ? {} : { at }) };
}
