import { dayNumberOf, isoDate } from "../../../addin/actions/dates.ts";
import { askedAt, findingOfReading, type AskedStep, type LookKind } from "../../../addin/actions/care/asked-at-look.ts";
import type { LookAnswer, LookEntry } from "../../../addin/actions/care/record-look.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { shownUnit } from "../../parts/numbers.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { careText } from "./text.ts";

type Step = AskedStep["step"];
type Measure = NonNullable<AskedStep["measure"]>;

/** What was seen at one step, as typed. */
export interface TypedStep {
  readonly verdict: LookAnswer["verdict"];
  readonly reading: string;
  readonly note: string;
  readonly repairBy: string;
}

export interface TypedLook {
  readonly done: string;
  readonly note: string;
  /** By step id. */
  readonly steps: readonly (readonly [stepId: string, TypedStep])[];
}

export const BLANK_STEP: TypedStep = { verdict: null, reading: "", note: "", repairBy: "" };

export function blankLook(today: number): TypedLook {
  return { done: isoDate(today), note: "", steps: [] };
}

export function typedStep(typed: TypedLook, step: Step): TypedStep {
  return typed.steps.find(([id]) => id === step.id)?.[1] ?? BLANK_STEP;
}

export function withStep(typed: TypedLook, step: Step, changed: Partial<TypedStep>): TypedLook {
  const others = typed.steps.filter(([id]) => id !== step.id);
  return { ...typed, steps: [...others, [step.id, { ...typedStep(typed, step), ...changed }]] };
}

/** A reading decides the verdict as it is typed, so that nobody has to look the trigger up. */
export function withReading(typed: TypedLook, step: Step, measure: Measure, reading: string, units: UnitSystem): TypedLook {
  const read = readTypedNumber(reading, { label: measure.label });
  const value = isRefused(read) ? null : read.value;
  const finding = value === null ? null : findingOfReading(measure, value, units);
  return withStep(typed, step, finding === null ? { reading } : { reading, verdict: finding });
}

export interface LookFaults {
  readonly done?: string;
  readonly steps: ReadonlyMap<string, string>;
}

export type ReadLook = { readonly entry: LookEntry } | { readonly faults: LookFaults };

/** Every step is answered or said to be not seen: a blank is never a pass. */
export function readLook(kind: LookKind, typed: TypedLook, by: string, units: UnitSystem): ReadLook {
  const asked = askedAt(kind);
  const done = dayNumberOf(typed.done);
  const faults = new Map<string, string>();
  const repairDays = new Map<string, number>();
  const answers = asked.steps.flatMap(({ step, measure }): LookAnswer[] => {
    const seen = typedStep(typed, step);
    const read = readStep(step, measure, seen, units);
    if (read !== null && "fault" in read) {
      faults.set(step.id, read.fault);
      return [];
    }
    if (seen.verdict === "fail" && seen.repairBy !== "") {
      const day = dayNumberOf(seen.repairBy);
      if (day === null) faults.set(step.id, careText.look.repairByMissing);
      else repairDays.set(step.id, day);
    }
    return read === null ? [] : [{ step, ...read, note: seen.note.trim() }];
  });
  if (done === null) return { faults: { done: careText.look.doneMissing, steps: faults } };
  if (faults.size > 0) return { faults: { steps: faults } };
  return { entry: { done, by: by.trim(), note: typed.note.trim(), answers: [...dayAnswer(asked.begins, done), ...answers], repairDays } };
}

type ReadStep = Pick<LookAnswer, "answer" | "unit" | "verdict"> | { readonly fault: string } | null;

function readStep(step: Step, measure: AskedStep["measure"], seen: TypedStep, units: UnitSystem): ReadStep {
  const { answer } = step;
  if (answer.kind === "chosen") {
    const reading = measure === null ? null : readTypedNumber(seen.reading, { label: measure.label, atLeast: 0 });
    if (reading !== null && isRefused(reading)) return { fault: reading.sentence };
    if (seen.verdict === null) return { fault: careText.look.chooseFirst };
    const value = reading?.value ?? null;
    if (measure !== null && value !== null && seen.verdict !== "not measured")
      return { answer: value, unit: shownUnit(measure.kind, units), verdict: seen.verdict };
    const says = answer.options.find(({ verdict }) => verdict === seen.verdict)?.says ?? careText.look.notSeen;
    return { answer: says, unit: null, verdict: seen.verdict };
  }
  if (answer.kind === "number") {
    const read = readTypedNumber(seen.reading, { label: step.title, required: step.optional !== true, ...limitsOf(answer) });
    if (isRefused(read)) return { fault: read.sentence };
    return read.value === null ? null : { answer: read.value, unit: answer.unit[units], verdict: null };
  }
  const text = seen.reading.trim();
  if (text !== "") return { answer: text, unit: null, verdict: null };
  return step.optional === true ? null : { fault: careText.look.missing(step.title) };
}

function limitsOf({ atLeast, atMost }: { readonly atLeast?: number; readonly atMost?: number }) {
  return { ...(atLeast === undefined ? {} : { atLeast }), ...(atMost === undefined ? {} : { atMost }) };
}

/** The answer that begins the stage anew, where its look has one. */
function dayAnswer(step: Step | null, done: number): readonly LookAnswer[] {
  return step === null ? [] : [{ step, answer: isoDate(done), unit: null, verdict: null, note: "" }];
}
