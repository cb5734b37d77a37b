import type { StepAnswer } from "../../addin/actions/record-yard.ts";
import type { StepStanding } from "../../addin/actions/screen-yard.ts";
import { isRefused, readTypedNumber } from "../typed-number.ts";
import type { TypedNumber } from "../typed-number.ts";
import { screeningText } from "./text.ts";

/** An answer as typed, whatever the step asks for; the fields that do not apply stay blank. */
export interface TypedAnswer {
  readonly value: string;
  readonly none: boolean;
  readonly drop: string;
  readonly run: string;
  readonly says: string | null;
  readonly note: string;
}

export const BLANK_ANSWER: TypedAnswer = { value: "", none: false, drop: "", run: "", says: null, note: "" };

/** The sentence for each field that keeps the answer from being written. */
export interface AnswerFaults {
  readonly value?: string;
  readonly drop?: string;
  readonly run?: string;
  readonly says?: string;
}

export type ReadAnswer = { readonly answer: StepAnswer } | { readonly faults: AnswerFaults };

/** Reads a typed answer for writing. Nothing typed is a fault in words, so that no blank ever becomes a verdict. */
export function readAnswer({ answer: asked }: StepStanding["step"], typed: TypedAnswer, by: string): ReadAnswer {
  const common = { note: typed.note.trim(), by: by.trim() };
  switch (asked.kind) {
    case "measured": {
      if (typed.none) return { answer: { kind: "none", ...common } };
      const value = needed(typed.value, screeningText.distance[asked.quantity], { atLeast: 0 });
      return isRefused(value) ? { faults: { value: value.sentence } } : { answer: { kind: "measured", value: value.value, ...common } };
    }
    case "slope": {
      const drop = needed(typed.drop, screeningText.drop, { atLeast: 0 });
      const run = needed(typed.run, screeningText.run, { moreThan: 0 });
      if (isRefused(drop) || isRefused(run)) {
        return { faults: { ...(isRefused(drop) ? { drop: drop.sentence } : {}), ...(isRefused(run) ? { run: run.sentence } : {}) } };
      }
      return { answer: { kind: "slope", drop: drop.value, run: run.value, ...common } };
    }
    case "chosen":
      return typed.says === null ? { faults: { says: screeningText.chooseFirst } } : { answer: { kind: "chosen", says: typed.says, ...common } };
  }
}

function needed(text: string, label: string, limits: { atLeast?: number; moreThan?: number }): Exclude<TypedNumber, { value: number | null }> | { readonly value: number } {
  const read = readTypedNumber(text, { label, ...limits });
  if (isRefused(read)) return read;
  return read.value === null ? { sentence: screeningText.missing(label) } : { value: read.value };
}
