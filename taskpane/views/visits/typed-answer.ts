import { dayNumberOf, minutesOf } from "../../../addin/actions/dates.ts";
import type { StepAnswer } from "../../../addin/actions/visits/record-answer.ts";
import type { StepStanding } from "../../../addin/actions/visits/stage-standing.ts";
import { isRefused, readTypedNumber, type NumberRule, type TypedNumber } from "../../parts/typed-number.ts";
import { visitsText as words } from "./text.ts";

type DateAnswer = Extract<StepStanding["step"]["answer"], { readonly kind: "date" }>;

/** An answer as typed, whatever the step asks for; the fields that do not apply stay blank. */
export interface TypedAnswer {
  readonly value: string;
  /** Hour of a day, as "07:00". */
  readonly hour: string;
  readonly none: boolean;
  readonly later: boolean;
  readonly drop: string;
  readonly run: string;
  readonly says: string | null;
  readonly note: string;
  readonly link: string;
}

export const BLANK_ANSWER: TypedAnswer = {
  value: "",
  hour: "",
  none: false,
  later: false,
  drop: "",
  run: "",
  says: null,
  note: "",
  link: "",
};

/** The sentence for each field that keeps the answer from being written. */
export interface AnswerFaults {
  readonly value?: string;
  readonly hour?: string;
  readonly drop?: string;
  readonly run?: string;
  readonly says?: string;
}

export type ReadAnswer = { readonly answer: StepAnswer } | { readonly faults: AnswerFaults };

/** Reads a typed answer for writing. Nothing typed is a fault in words, so that no blank ever becomes a verdict. */
export function readAnswer({ answer: asked }: StepStanding["step"], typed: TypedAnswer, by: string): ReadAnswer {
  const link = typed.link.trim();
  const common = { note: typed.note.trim(), by: by.trim(), ...(link === "" ? {} : { link }) };
  const text = typed.value.trim();
  switch (asked.kind) {
    case "measured": {
      if (typed.none) return { answer: { kind: "none", ...common } };
      if (typed.later) return { answer: { kind: "later", ...common } };
      const value = needed(typed.value, { label: words.distance[asked.quantity], atLeast: 0 });
      return isRefused(value) ? { faults: { value: value.sentence } } : { answer: { kind: "measured", value: value.value, ...common } };
    }
    case "number": {
      const { atLeast, atMost } = asked;
      const value = needed(typed.value, {
        label: words.number,
        ...(atLeast === undefined ? {} : { atLeast }),
        ...(atMost === undefined ? {} : { atMost }),
      });
      return isRefused(value) ? { faults: { value: value.sentence } } : { answer: { kind: "number", value: value.value, ...common } };
    }
    case "slope": {
      const drop = needed(typed.drop, { label: words.drop, atLeast: 0 });
      const run = needed(typed.run, { label: words.run, moreThan: 0 });
      if (isRefused(drop) || isRefused(run)) {
        return { faults: { ...(isRefused(drop) ? { drop: drop.sentence } : {}), ...(isRefused(run) ? { run: run.sentence } : {}) } };
      }
      return { answer: { kind: "slope", drop: drop.value, run: run.value, ...common } };
    }
    case "text":
      return text === "" ? { faults: { value: words.missing(words.answer) } } : { answer: { kind: "text", text, ...common } };
    case "date": {
      if (text === "") return { faults: { value: words.missing(words.date) } };
      const date = dayNumberOf(text);
      if (date === null) return { faults: { value: words.noDay(text.slice(0, 40)) } };
      const hour = readHour(typed.hour.trim(), asked.hour);
      return "fault" in hour ? { faults: { hour: hour.fault } } : { answer: { kind: "date", date, ...hour, ...common } };
    }
    case "chosen":
      return typed.says === null ? { faults: { says: words.chooseFirst } } : { answer: { kind: "chosen", says: typed.says, ...common } };
  }
}

function readHour(hour: string, asked: DateAnswer["hour"]): { readonly minutes?: number } | { readonly fault: string } {
  if (asked === undefined) return {};
  if (hour === "") return asked === "asked" ? { fault: words.hourMissing } : {};
  const minutes = minutesOf(hour);
  return minutes === null ? { fault: words.noHour(hour.slice(0, 40)) } : { minutes };
}

function needed(text: string, rule: NumberRule): Exclude<TypedNumber, { value: number | null }> | { readonly value: number } {
  const read = readTypedNumber(text, rule);
  if (isRefused(read)) return read;
  return read.value === null ? { sentence: words.missing(rule.label) } : { value: read.value };
}
