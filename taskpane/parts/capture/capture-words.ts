import { SHARE_AT_END, type CaptureCurve, type CapturedYears, type YearsOfRain } from "../../../addin/actions/basin/capture-curve.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { shown } from "../numbers.ts";
import { columnWords, numberWords, quantityWords } from "../quantity-words.ts";
import { text } from "../../text.ts";
import type { ChartMark, ChartPoints } from "../time-chart.tsx";
import { captureText } from "./text.ts";

const words = captureText;

export interface CaptureFact {
  readonly label: string;
  readonly says: string;
}

/** A part that was lost never rounds to all of it. */
export function shareWords({ capturedShare, overflowAYear }: CapturedYears): string {
  return `${shown(overflowAYear > 0 ? Math.min(capturedShare * 100, 99.9) : 100, 1)} %`;
}

function pointWords(point: CapturedYears, units: UnitSystem): string {
  return words.facts.point(quantityWords("area", point.area, units), shareWords(point));
}

function timesWords({ overflowsAYear }: CapturedYears): string {
  return words.times(shown(overflowsAYear, 1));
}

export function yearsWords({ years }: YearsOfRain): string {
  return words.years(shown(years, 1));
}

/** The curve's key points in words: the chart shows no more than these and the table. */
export function captureFacts({ drafted, knee }: CaptureCurve, rain: YearsOfRain, units: UnitSystem): readonly CaptureFact[] {
  const yearly = text.rainAYear[units === "us" ? "in" : "mm"](numberWords("depth", fromUs("depth", rain.rainInchesAYear, units), units));
  return [
    {
      label: words.facts.rain,
      says: words.facts.rainWords(yearsWords(rain), yearly, quantityWords("hours", rain.record.stepHours, units)),
    },
    { label: words.facts.drafted, says: pointWords(drafted, units) },
    { label: words.facts.knee, says: knee === null ? words.facts.noKnee : pointWords(knee, units) },
    {
      label: words.facts.overflow,
      says: words.facts.overflowWords(timesWords(drafted), quantityWords("waterVolume", drafted.overflowAYear, units)),
    },
    { label: words.facts.longest, says: quantityWords("hours", drafted.longestPondingHours, units) },
  ];
}

export function captureSentence({ drafted, knee }: CaptureCurve, units: UnitSystem): string {
  return words.sentence(pointWords(drafted, units), knee === null ? words.facts.noKnee : pointWords(knee, units));
}

export function triedWords(tried: CapturedYears, units: UnitSystem): string {
  return words.tryAnswer(
    quantityWords("area", tried.area, units),
    shareWords(tried),
    timesWords(tried),
    quantityWords("hours", tried.longestPondingHours, units),
  );
}

export function basisWords({ endsAt }: CaptureCurve): string {
  return words.basis(words.ends[endsAt](`${shown(SHARE_AT_END * 100, 0)} %`));
}

export function capturePoints({ points, further }: CaptureCurve): ChartPoints {
  const all = [...points, ...further];
  return { times: all.map(({ area }) => area), values: all.map(percentOf) };
}

/** The area tried is marked once one is. */
export function captureMarks({ drafted, knee }: CaptureCurve, tried: CapturedYears | null): readonly ChartMark[] {
  const at = (point: CapturedYears) => ({ time: point.area, value: percentOf(point) });
  return [
    ...(tried === null ? [] : [{ ...at(tried), shape: "square" as const, letter: words.marks.tried }]),
    ...(knee === null ? [] : [{ ...at(knee), shape: "diamond" as const, letter: words.marks.knee }]),
    { ...at(drafted), shape: "circle", letter: words.marks.drafted },
  ];
}

function percentOf({ capturedShare }: CapturedYears): number {
  return capturedShare * 100;
}

export function lastArea({ points, further }: CaptureCurve): number {
  return (further.at(-1) ?? points.at(-1))?.area ?? 0;
}

const ROWS_OF_TABLE = 10;

/** Every sixth point of the curve: ten rows, evenly apart, from the first that is a garden. */
export function captureRows({ points }: CaptureCurve, units: UnitSystem): readonly (readonly [area: string, percent: string])[] {
  const every = Math.max(1, Math.floor((points.length - 1) / ROWS_OF_TABLE));
  return points
    .filter((_, index) => index > 0 && index % every === 0)
    .map((point) => [columnWords("area", point.area, units), columnWords("percent", percentOf(point), units)]);
}
