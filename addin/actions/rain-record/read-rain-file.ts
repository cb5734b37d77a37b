import { MOST_READINGS } from "../../records/rain-record.ts";
import type { DateOrder } from "./moment-reading.ts";
import { readReadings, type LeftOut, type ReadReadings } from "./rain-readings.ts";
import {
  dailyTotals,
  offTheStep,
  oneATime,
  usualStepMinutes,
  withoutBreaks,
  type Clash,
  type RainSeries,
  type Repeated,
} from "./rain-series.ts";
import { unitInHeading, type DepthUnit, type RainColumns, type RainTable } from "./rain-table.ts";
import { clockChanges, inStandardTime, type ClockChange } from "./summer-time.ts";
import { unlikely, type Unlikely } from "./unlikely-rain.ts";

type BlankOrDry = "blank" | "dry";

/** What only a person can say of a file; null while nobody has. */
export interface RainChoices {
  readonly columns: RainColumns;
  readonly unit: DepthUnit | null;
  readonly dateOrder: DateOrder | null;
  /** Whether a time says when its step began or when it ended. */
  readonly timesSay: "began" | "ended";
  /** Null: as the readings look. */
  readonly clock: "standard" | "summer" | null;
  readonly repeated: Repeated | null;
  /** What a line without a depth becomes. */
  readonly notMeasured: BlankOrDry | null;
  /** What a step without a line becomes. */
  readonly noReading: BlankOrDry | null;
  readonly kept: "every step" | "daily totals";
}

export type Question = "columns" | "unit" | "dateOrder" | "repeated" | "notMeasured" | "noReading";

export type RainRefusal =
  | { readonly kind: "no dates" }
  | { readonly kind: "one reading" }
  | { readonly kind: "both orders" }
  | { readonly kind: "off the step"; readonly stepMinutes: number; readonly lines: readonly number[]; readonly count: number }
  | { readonly kind: "too long"; readonly readings: number; readonly most: number; readonly daysWouldFit: boolean };

/** Everything there is to say about a file before any of it is written. */
export interface RainFile {
  readonly lines: number;
  readonly depthColumn: number | null;
  /** From the first reading to the last. */
  readonly steps: number;
  readonly read: ReadReadings | null;
  readonly unit: DepthUnit | null;
  readonly unitFrom: "heading" | "person" | null;
  readonly stepMinutes: number | null;
  readonly clockChanges: readonly ClockChange[];
  readonly isSummerTime: boolean;
  readonly again: number;
  readonly clashes: readonly Clash[];
  readonly notMeasured: number;
  readonly stepsWithoutReading: number;
  readonly unlikely: readonly Unlikely[];
  /** What a person has to answer, those answered included; only these are asked. */
  readonly asks: readonly Question[];
  readonly open: readonly Question[];
  readonly refusal: RainRefusal | null;
  /** As it would be written; null while a question is open or something is refused. */
  readonly series: RainSeries | null;
}

export const NOTHING_CHOSEN: Omit<RainChoices, "columns"> = {
  unit: null,
  dateOrder: null,
  timesSay: "began",
  clock: null,
  repeated: null,
  notMeasured: null,
  noReading: null,
  kept: "every step",
};

export function readRainFile(table: RainTable, choices: RainChoices): RainFile {
  const { columns } = choices;
  const unitWritten = columns.depth === null ? null : unitInHeading(table.headings[columns.depth] ?? "");
  const nothing: RainFile = {
    lines: table.rows.length,
    depthColumn: columns.depth,
    steps: 0,
    read: null,
    unit: null,
    unitFrom: null,
    stepMinutes: null,
    clockChanges: [],
    isSummerTime: false,
    again: 0,
    clashes: [],
    notMeasured: 0,
    stepsWithoutReading: 0,
    unlikely: [],
    asks: [],
    open: [],
    refusal: null,
    series: null,
  };
  if (columns.date === null || columns.depth === null) return { ...nothing, asks: ["columns"], open: ["columns"] };
  const read = readReadings(table, columns, choices.dateOrder);
  const unit = choices.unit ?? unitWritten;
  const start: RainFile = {
    ...nothing,
    read,
    unit,
    unitFrom: choices.unit === null ? (unitWritten === null ? null : "heading") : "person",
  };
  if (read.dateOrder === "both") return { ...start, refusal: { kind: "both orders" } };
  if (2 * read.readings.length <= table.rows.length) return { ...start, refusal: { kind: "no dates" } };
  // Days in a wrong order have gaps that are none: until it is known, nothing else can be asked.
  if (read.dateOrder === "open" && choices.dateOrder === null) return { ...start, asks: ["dateOrder"], open: ["dateOrder"] };
  return withSeries(start, read, choices);
}

function withSeries(start: RainFile, read: ReadReadings, choices: RainChoices): RainFile {
  const usual = read.hasTimes ? usualStepMinutes(read.readings) : DAY_MINUTES;
  if (usual === null) return { ...start, refusal: { kind: "one reading" } };
  const changes = read.standardOffsetMinutes === null ? clockChanges(read.readings, usual) : [];
  const isSummerTime = changes.length > 0 && choices.clock !== "standard";
  const { readings, again, clashes } = oneATime(
    isSummerTime ? inStandardTime(read.readings, changes) : read.readings,
    choices.repeated ?? "first",
  );
  const shifted = choices.timesSay === "began" ? readings : readings.map((reading) => ({ ...reading, minutes: reading.minutes - usual }));
  const off = offTheStep(shifted, usual);
  const notMeasured = shifted.filter(({ depth }) => depth === null).length;
  const steps = Math.round(((shifted.at(-1)?.minutes ?? 0) - (shifted[0]?.minutes ?? 0)) / usual) + 1;
  const found: RainFile = {
    ...start,
    stepMinutes: usual,
    clockChanges: changes,
    isSummerTime,
    steps,
    again,
    clashes,
    notMeasured,
    stepsWithoutReading: off.length > 0 ? 0 : steps - shifted.length,
  };
  const asks = questionsOf(found, read);
  const open = asks.filter((question) => answerTo(question, choices, found) === null);
  const refusal = off.length > 0 ? offRefusal(off, usual) : lengthRefusal(steps, usual, choices);
  if (refusal !== null || found.unit === null) return { ...found, asks, open, refusal };
  const every = withoutBreaks(shifted, found.unit, usual, {
    notMeasured: choices.notMeasured === "dry",
    noReading: choices.noReading === "dry",
  });
  const series = choices.kept === "daily totals" && canBeDays(usual) ? dailyTotals(every) : every;
  return { ...found, asks, open, refusal, unlikely: unlikely(every), series: open.length === 0 ? series : null };
}

const DAY_MINUTES = 1440;

function questionsOf(file: RainFile, read: ReadReadings): readonly Question[] {
  return [
    ...(file.unitFrom === "heading" ? [] : (["unit"] as const)),
    ...(read.dateOrder === "open" ? (["dateOrder"] as const) : []),
    ...(file.clashes.length > 0 ? (["repeated"] as const) : []),
    ...(file.notMeasured > 0 ? (["notMeasured"] as const) : []),
    ...(file.stepsWithoutReading > 0 ? (["noReading"] as const) : []),
  ];
}

function answerTo(question: Question, choices: RainChoices, { unit }: RainFile): unknown {
  if (question === "columns") return null;
  return question === "unit" ? unit : choices[question];
}

const LINES_NAMED = 5;

function offRefusal(off: readonly { readonly line: number }[], stepMinutes: number): RainRefusal {
  return { kind: "off the step", stepMinutes, count: off.length, lines: off.slice(0, LINES_NAMED).map(({ line }) => line) };
}

/** Whether steps can be added up to whole days. */
export function canBeDays(stepMinutes: number): boolean {
  return stepMinutes < DAY_MINUTES && DAY_MINUTES % stepMinutes === 0;
}

function lengthRefusal(steps: number, stepMinutes: number, { kept }: RainChoices): RainRefusal | null {
  const days = Math.ceil((steps * stepMinutes) / DAY_MINUTES);
  const readings = kept === "daily totals" && canBeDays(stepMinutes) ? days : steps;
  return readings <= MOST_READINGS
    ? null
    : { kind: "too long", readings, most: MOST_READINGS, daysWouldFit: canBeDays(stepMinutes) && days <= MOST_READINGS };
}

/** For sentences that name a few of many lines. */
export function firstLines(leftOut: readonly LeftOut[]): readonly LeftOut[] {
  return leftOut.slice(0, LINES_NAMED);
}
