import { largestOf } from "../../../functions/extremes.ts";
import { dayNumberOf, isoDate } from "../../../addin/actions/dates.ts";
import { HOLE_READINGS } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import { readingsOf, type HoleTestEntry, type Reading } from "../../../addin/actions/yard/record-yard.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { asTyped, isRefused, readTypedNumber, type NumberRule } from "../../parts/typed-number.ts";
import { holeTestText } from "./text.ts";

export type HoleTestRow = Yard["holeTests"][number];

/** Up from the hole's floor, as the sheet keeps it, or down from a mark beside the hole, as many field sheets do. */
export type Measured = "up" | "down";

export interface TypedReading {
  readonly minutes: string;
  /** As typed, measured the draft's way. */
  readonly water: string;
}

/** The form as typed: plain text throughout, so that nothing is lost or guessed before it is right. */
export interface HoleDraft {
  readonly hole: string;
  /** "2026-05-04", or "". */
  readonly date: string;
  readonly tester: string;
  readonly soaked: "yes" | "no" | null;
  readonly holeDepth: string;
  readonly holeDiameter: string;
  readonly measured: Measured;
  /** Height of the mark above the hole's floor; blank: the hole's depth. */
  readonly mark: string;
  readonly readings: readonly TypedReading[];
  /** Typed at the timer and not added as a reading yet. */
  readonly waterNow: string;
}

export const NO_READING: TypedReading = { minutes: "", water: "" };

export function newHole(yard: Yard, measured: Measured, day: number): HoleDraft {
  return {
    hole: nextHoleName(yard.holeTests.map(({ record }) => record.hole)),
    date: isoDate(day),
    tester: yard.holeTests.at(-1)?.record.tester ?? "",
    soaked: null,
    holeDepth: "",
    holeDiameter: "",
    measured,
    mark: "",
    readings: [],
    waterNow: "",
  };
}

/** The first of "1", "2", "3" … that no hole of the yard bears. */
export function nextHoleName(taken: readonly (string | null)[]): string {
  let number = taken.length + 1;
  while (taken.includes(String(number))) number += 1;
  return String(number);
}

/** The row as the sheet holds it, shown in the way of measuring the person works in where the hole's depth is known. */
export function holeAsTyped(row: HoleTestRow, measured: Measured): HoleDraft {
  const { cells } = row;
  const { soaked } = row.record;
  const up: HoleDraft = {
    hole: asTyped(cells.hole),
    date: row.record.date === null ? "" : isoDate(row.record.date),
    tester: asTyped(cells.tester),
    soaked: soaked === "yes" || soaked === "no" ? soaked : null,
    holeDepth: asTyped(cells.holeDepth),
    holeDiameter: asTyped(cells.holeDiameter),
    measured: "up",
    mark: "",
    readings: readingsOf(row).map(({ minutes, waterDepth }) => ({ minutes: asTyped(minutes), water: asTyped(waterDepth) })),
    waterNow: "",
  };
  return measured === "down" ? (remeasured(up, "down") ?? up) : up;
}

/** The same hole measured the other way, or null where readings are there and the mark's height is not. */
export function remeasured(draft: HoleDraft, measured: Measured): HoleDraft | null {
  if (draft.measured === measured) return draft;
  const mark = markHeight(draft);
  if (mark === null) return draft.readings.every(({ water }) => water.trim() === "") ? { ...draft, measured } : null;
  const readings = draft.readings.map((reading) => {
    const typed = readTypedNumber(reading.water, { label: "" });
    // What is no number stays as typed, and its own sentence speaks of it.
    return isRefused(typed) || typed.value === null ? reading : { ...reading, water: asTyped(fromMark(mark, typed.value)) };
  });
  return { ...draft, measured, readings };
}

/** Height of the mark over the hole's floor, or null while it is not known. */
export function markHeight(draft: HoleDraft): number | null {
  const typed = readTypedNumber(draft.mark.trim() === "" ? draft.holeDepth : draft.mark, { label: "", moreThan: 0 });
  return isRefused(typed) ? null : typed.value;
}

/** Water depth from a reading taken down from the mark, or the other way round: one takes the other from the mark's height. */
export function fromMark(markHeight: number, reading: number): number {
  // Twelve digits drop what binary fractions add: 18 - 12.1 is 5.9.
  return Number((markHeight - reading).toPrecision(12));
}

/** What is wrong with one field: "holeDepth", "holeDiameter", "mark", or a reading's minutes or water. */
export type HoleFault =
  | { readonly field: "holeDepth" | "holeDiameter" | "mark"; readonly sentence: string }
  | { readonly field: "minutes" | "water"; readonly reading: number; readonly sentence: string };

export interface HoleAsRead {
  /** What the sheet is to hold; a field at fault is blank in it. */
  readonly entry: HoleTestEntry;
  readonly faults: readonly HoleFault[];
}

export function readHole(draft: HoleDraft): HoleAsRead {
  const faults: HoleFault[] = [];
  const numberOf = (typed: string, rule: NumberRule, at: (sentence: string) => HoleFault): number | null => {
    const read = readTypedNumber(typed, rule);
    if (!isRefused(read)) return read.value;
    faults.push(at(read.sentence));
    return null;
  };
  const holeDepth = numberOf(draft.holeDepth, { label: holeTestText.fields.holeDepth, moreThan: 0 }, (sentence) => ({
    field: "holeDepth",
    sentence,
  }));
  const holeDiameter = numberOf(draft.holeDiameter, { label: holeTestText.fields.holeDiameter, moreThan: 0 }, (sentence) => ({
    field: "holeDiameter",
    sentence,
  }));
  const mark =
    numberOf(draft.mark, { label: holeTestText.fields.mark, moreThan: 0 }, (sentence) => ({ field: "mark", sentence })) ?? holeDepth;
  const down = draft.measured === "down";
  if (down && mark === null && draft.readings.some(({ water }) => water.trim() !== ""))
    faults.push({ field: "mark", sentence: holeTestText.markMissing });

  const readings = draft.readings.map((typed, index): Reading => {
    const reading = index + 1;
    const minutes = numberOf(typed.minutes, { label: holeTestText.fields.minutesOf(reading), atLeast: 0 }, (sentence) => ({
      field: "minutes",
      reading,
      sentence,
    }));
    const label = down ? holeTestText.fields.downOf(reading) : holeTestText.fields.waterOf(reading);
    const water = numberOf(typed.water, { label, atLeast: 0 }, (sentence) => ({ field: "water", reading, sentence }));
    if (!down || water === null) return { minutes, waterDepth: water };
    if (mark === null) return { minutes, waterDepth: null };
    const waterDepth = fromMark(mark, water);
    if (waterDepth >= 0) return { minutes, waterDepth };
    faults.push({ field: "water", reading, sentence: holeTestText.belowFloor(reading) });
    return { minutes, waterDepth: null };
  });

  const { hole, tester, soaked } = draft;
  return {
    entry: {
      hole: hole.trim(),
      date: dayNumberOf(draft.date),
      tester: tester.trim(),
      soaked,
      holeDepth,
      holeDiameter,
      readings: withoutTrailingBlanks(readings),
    },
    faults,
  };
}

function withoutTrailingBlanks(readings: readonly Reading[]): readonly Reading[] {
  const last = readings.findLastIndex(({ minutes, waterDepth }) => minutes !== null || waterDepth !== null);
  return readings.slice(0, last + 1);
}

/** The last time a reading was taken, or null; what is no number does not count. */
export function lastReadingMinutes(draft: HoleDraft): number | null {
  const times = draft.readings.flatMap(({ minutes }) => {
    const typed = readTypedNumber(minutes, { label: "", atLeast: 0 });
    return isRefused(typed) || typed.value === null ? [] : [typed.value];
  });
  return times.length === 0 ? null : largestOf(times);
}

export function hasRoom(draft: HoleDraft): boolean {
  return draft.readings.length < HOLE_READINGS;
}
