import { dayNumberOf, isoDate } from "../../addin/actions/dates.ts";
import type { LookAnswer, LookEntry } from "../../addin/actions/record-look.ts";
import { findingOf, inspectionMeasures } from "../../addin/checklist/inspection-measures.ts";
import type { InspectionMeasure } from "../../addin/checklist/inspection-measures.ts";
import { itemOfStep, lookOf } from "../../addin/checklist/looks.ts";
import type { Step } from "../../addin/checklist/stage.ts";
import type { FollowUpKind } from "../../addin/records/follow-ups.ts";
import type { Verdict } from "../../addin/records/visits.ts";
import type { UnitSystem } from "../../functions/quantities.ts";
import { shownUnit } from "../numbers.ts";
import { isRefused, readTypedNumber } from "../typed-number.ts";
import { careText } from "./text.ts";

/** What was seen at one step, as typed. */
export interface TypedStep {
  readonly verdict: Verdict | null;
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

/** The steps that a person answers: the day of the look is asked once, above them. */
export function stepsOfLook(kind: FollowUpKind): readonly Step[] {
  const look = lookOf(kind);
  return "stage" in look ? look.stage.steps.filter(({ id }) => id !== look.stage.beginsWith) : [look.step];
}

export function measureOf(kind: FollowUpKind, step: Step): InspectionMeasure | null {
  const look = lookOf(kind);
  const item = "stage" in look ? itemOfStep(look.stage, step) : null;
  return inspectionMeasures.find((measure) => measure.item === item?.id) ?? null;
}

/** A reading decides the verdict as it is typed, so that nobody has to look the trigger up. */
export function withReading(typed: TypedLook, step: Step, measure: InspectionMeasure, reading: string, units: UnitSystem): TypedLook {
  const read = readTypedNumber(reading, { label: measure.label });
  const value = isRefused(read) ? null : read.value;
  const finding = value === null ? null : findingOf(measure, value, units);
  return withStep(typed, step, finding === null ? { reading } : { reading, verdict: finding });
}

/** The day by which a failed step is put right, as typed or two weeks on. */
export interface LookFaults {
  readonly done?: string;
  readonly steps: ReadonlyMap<string, string>;
}

export type ReadLook = { readonly entry: LookEntry } | { readonly faults: LookFaults };

/** Every step is answered or said to be not seen: a blank is never a pass. */
export function readLook(kind: FollowUpKind, typed: TypedLook, by: string, units: UnitSystem): ReadLook {
  const done = dayNumberOf(typed.done);
  const faults = new Map<string, string>();
  const repairDays = new Map<string, number>();
  const answers = stepsOfLook(kind).flatMap((step): LookAnswer[] => {
    const seen = typedStep(typed, step);
    const read = readStep(kind, step, seen, units);
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
  return { entry: { done, by: by.trim(), note: typed.note.trim(), answers: [...dayAnswer(kind, done), ...answers], repairDays } };
}

type ReadStep = Pick<LookAnswer, "answer" | "unit" | "verdict"> | { readonly fault: string } | null;

function readStep(kind: FollowUpKind, step: Step, seen: TypedStep, units: UnitSystem): ReadStep {
  const { answer } = step;
  if (answer.kind === "chosen") {
    const measure = measureOf(kind, step);
    const reading = measure === null ? null : readTypedNumber(seen.reading, { label: measure.label, atLeast: 0 });
    if (reading !== null && isRefused(reading)) return { fault: reading.sentence };
    if (seen.verdict === null) return { fault: careText.look.chooseFirst };
    const value = reading?.value ?? null;
    if (measure !== null && value !== null && seen.verdict !== "not measured") return { answer: value, unit: shownUnit(measure.kind, units), verdict: seen.verdict };
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
function dayAnswer(kind: FollowUpKind, done: number): readonly LookAnswer[] {
  const look = lookOf(kind);
  if (!("stage" in look)) return [];
  const step = look.stage.steps.find(({ id }) => id === look.stage.beginsWith);
  return step === undefined ? [] : [{ step, answer: isoDate(done), unit: null, verdict: null, note: "" }];
}
