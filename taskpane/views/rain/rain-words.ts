import type { LeftOut } from "../../../addin/actions/rain-record/rain-readings.ts";
import { canBeDays, firstLines, type RainFile, type RainRefusal } from "../../../addin/actions/rain-record/read-rain-file.ts";
import type { RainSeries } from "../../../addin/actions/rain-record/rain-series.ts";
import type { RainTable } from "../../../addin/actions/rain-record/rain-table.ts";
import type { Unlikely } from "../../../addin/actions/rain-record/unlikely-rain.ts";
import { isoDate } from "../../../addin/actions/dates.ts";
import { yearsOf } from "../../../functions/long-term/long-term-balance.ts";
import { shown } from "../../parts/numbers.ts";
import { text } from "../../text.ts";
import { rainText } from "./text.ts";

const DAY_MINUTES = 1440;
const words = rainText.found;

/** "2026-05-04", and "13:00" where the step is shorter than a day. */
export function momentWords(minutes: number, stepMinutes: number | null): string {
  const rounded = Math.round(minutes);
  const ofDay = rounded - Math.floor(rounded / DAY_MINUTES) * DAY_MINUTES;
  const two = (part: number) => String(part).padStart(2, "0");
  const day = isoDate(Math.floor(rounded / DAY_MINUTES));
  return stepMinutes !== null && stepMinutes >= DAY_MINUTES && ofDay === 0
    ? day
    : `${day} ${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

export function stepName(stepMinutes: number): string {
  if (stepMinutes === DAY_MINUTES) return rainText.stepNames.day;
  return stepMinutes === 60 ? rainText.stepNames.hour : rainText.stepNames.minutes(shown(stepMinutes, 2));
}

/** Hours and their unit, "24 h". */
export function stepHoursWords(stepMinutes: number): string {
  return `${shown(stepMinutes / 60, 4)} h`;
}

/** Gauges are read to a hundredth of an inch and to a tenth of a millimetre. */
export function depthWords(depth: number, unit: "in" | "mm"): string {
  return shown(depth, unit === "mm" ? 1 : 2);
}

/** Rain in a year of what was measured; null where that is less than most of a year, whose seasons differ. */
export function yearlyOf(depths: readonly (number | null)[], stepMinutes: number, total: number): number | null {
  const measured = depths.reduce<number>((count, depth) => count + (depth === null ? 0 : 1), 0);
  const years = yearsOf(measured, stepMinutes / 60);
  return years < LEAST_YEARS ? null : total / years;
}

const LEAST_YEARS = 0.95;

/** Everything that was found, a sentence each, the series first. */
export function findings(table: RainTable, file: RainFile): readonly string[] {
  const { read } = file;
  return [
    words.lines(file.lines),
    ...(table.hasHeadings ? [] : [words.noHeadings]),
    ...(file.series === null ? [] : seriesWords(file.series)),
    ...(file.unitFrom === "heading" && file.unit !== null ? [words.unitRead(file.unit, headingOfDepth(table, file))] : []),
    ...(read === null ? [] : readWords(file)),
  ];
}

function headingOfDepth(table: RainTable, { depthColumn }: RainFile): string {
  return depthColumn === null ? "" : (table.headings[depthColumn] ?? "");
}

export function seriesWords({ depths, stepMinutes, beganMinutes, unit }: RainSeries): readonly string[] {
  let [total, largest] = [0, 0];
  for (const depth of depths) {
    total += depth ?? 0;
    if (depth !== null && depth > largest) largest = depth;
  }
  const last = beganMinutes + (depths.length - 1) * stepMinutes;
  const yearly = yearlyOf(depths, stepMinutes, total);
  return [
    words.series(depths.length, stepName(stepMinutes), momentWords(beganMinutes, stepMinutes), momentWords(last, stepMinutes)),
    words.total(`${depthWords(total, unit)} ${unit}`, `${depthWords(largest, unit)} ${unit}`),
    ...(yearly === null ? [] : [words.yearly(text.rainAYear[unit](depthWords(yearly, unit)))]),
  ];
}

function readWords(file: RainFile): readonly string[] {
  const { read, stepMinutes } = file;
  if (read === null) return [];
  const step = stepMinutes === null ? rainText.stepNames.other : stepName(stepMinutes);
  const kinds = (kind: "skipped" | "doubled") => file.clockChanges.filter((change) => change.kind === kind).length;
  return [
    ...(read.hasOpenDates && read.dateOrder !== "open" && read.dateOrder !== "both"
      ? [words.dateOrder(read.dateOrder === "day first" ? "day" : "month")]
      : []),
    ...(read.wasSorted ? [] : [words.sorted]),
    ...(read.decimalMark === "," ? [words.comma] : []),
    ...(read.standardOffsetMinutes === null ? [] : [words.offsets(offsetWords(read.standardOffsetMinutes))]),
    ...(read.traces > 0 ? [words.traces(read.traces)] : []),
    ...[...read.codes].map(([code, count]) => words.codes(count, code.slice(0, 20))),
    ...someOf(read.badDepths, words.badDepths),
    ...someOf(read.tooWide, words.tooWide),
    ...someOf(read.badDates, words.badDates),
    ...(file.again > 0 ? [words.again(file.again)] : []),
    ...(file.clashes.length > 0
      ? [
          words.clashes(
            file.clashes.length,
            file.clashes
              .slice(0, 3)
              .map(({ minutes, depths }) => words.clash(momentWords(minutes, stepMinutes), depths.join(", ")))
              .join("; "),
          ),
        ]
      : []),
    ...(file.stepsWithoutReading > 0 ? [words.noReading(file.stepsWithoutReading, step)] : []),
    ...(file.clockChanges.length > 0
      ? [file.isSummerTime ? words.clockSummer(kinds("skipped"), kinds("doubled")) : words.clockStandard]
      : []),
  ];
}

function someOf(leftOut: readonly LeftOut[], sentence: (count: number, some: string) => string): readonly string[] {
  if (leftOut.length === 0) return [];
  const some = firstLines(leftOut).map(({ line, words: there }) => words.line(line, there.slice(0, 30)));
  return [sentence(leftOut.length, `${some.join(", ")}${leftOut.length > some.length ? " …" : ""}`)];
}

function offsetWords(minutes: number): string {
  const two = (part: number) => String(part).padStart(2, "0");
  return `${minutes < 0 ? "−" : "+"}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
}

export function unlikelyWords(doubt: Unlikely): string {
  const { unlikely } = rainText;
  if (doubt.kind === "looks like mm") return unlikely[doubt.kind](shown(doubt.yearlyInches, 0));
  if (doubt.kind === "looks like inches") return unlikely[doubt.kind](shown(doubt.yearlyMillimetres, 1));
  return unlikely[doubt.kind](
    `${depthWords(doubt.largest, doubt.unit)} ${doubt.unit}`,
    doubt.within,
    `${depthWords(doubt.most, doubt.unit)} ${doubt.unit}`,
  );
}

export function refusalWords(refused: RainRefusal): string {
  const { refusal } = rainText;
  if (refused.kind === "off the step")
    return refusal["off the step"](refused.count, stepHoursWords(refused.stepMinutes), refused.lines.join(", "));
  if (refused.kind === "too long")
    return `${refusal["too long"](refused.readings, refused.most)}${refused.daysWouldFit ? ` ${refusal.days}` : ""}`;
  return refusal[refused.kind];
}

/** How many rows the series has, and how many its days would have; null where it has no shorter form. */
export function rowsAsDays(file: RainFile): { readonly steps: number; readonly days: number } | null {
  const { stepMinutes, steps } = file;
  if (stepMinutes === null || !canBeDays(stepMinutes)) return null;
  return { steps, days: Math.floor((steps * stepMinutes) / DAY_MINUTES) };
}
