import type { RainReading } from "./rain-readings.ts";
import type { DepthUnit } from "./rain-table.ts";

/** Rain step by step without a break, as LONGTERM reads it. */
export interface RainSeries {
  readonly unit: DepthUnit;
  readonly stepMinutes: number;
  /** When the first step began, in minutes since day 0. */
  readonly beganMinutes: number;
  /** Null where nothing was measured. */
  readonly depths: readonly (number | null)[];
  /** What is to be said of a step beside its depth, by its place. */
  readonly remarks: ReadonlyMap<number, Remark>;
}

export type Remark = "trace" | "not measured" | "no reading" | "taken as dry";

/** What became of two readings of one time that differ. */
export type Repeated = "first" | "last" | "sum";

/** Two lines of one time with different depths. */
export interface Clash {
  readonly minutes: number;
  readonly depths: readonly number[];
}

export interface OneATime {
  readonly readings: readonly RainReading[];
  /** Lines that say the same once more, or that say nothing beside one that does. */
  readonly again: number;
  readonly clashes: readonly Clash[];
}

/** One reading a time. The same depth twice is one reading; where depths differ, as the person chose. */
export function oneATime(sorted: readonly RainReading[], repeated: Repeated): OneATime {
  const readings: RainReading[] = [];
  const clashes: Clash[] = [];
  let again = 0;
  for (let start = 0; start < sorted.length; ) {
    let end = start + 1;
    while (sorted[end]?.minutes === sorted[start]?.minutes) end += 1;
    const alike = sorted.slice(start, end);
    const measured = alike.filter(({ depth }) => depth !== null);
    const depths = [...new Set(measured.map(({ depth }) => depth ?? 0))];
    const kept = repeated === "last" ? measured.at(-1) : measured[0];
    const [first] = alike;
    if (first !== undefined)
      readings.push(
        depths.length > 1 && repeated === "sum"
          ? { ...first, depth: depths.length === 0 ? null : sum(measured.map(({ depth }) => depth ?? 0)), isTrace: false }
          : (kept ?? first),
      );
    if (depths.length > 1) clashes.push({ minutes: first?.minutes ?? 0, depths });
    else again += alike.length - 1;
    start = end;
  }
  return { readings, again, clashes };
}

/** Numbers of a gauge are short decimals: their sum is kept as short. */
function sum(depths: readonly number[]): number {
  return Number(depths.reduce((total, depth) => total + depth, 0).toFixed(6));
}

/** The distance that most readings keep from the one before; null where there is only one. */
export function usualStepMinutes(sorted: readonly RainReading[]): number | null {
  const counts = new Map<number, number>();
  sorted.forEach(({ minutes }, index) => {
    const distance = index === 0 ? 0 : minutes - (sorted[index - 1]?.minutes ?? minutes);
    if (distance > 0) counts.set(distance, (counts.get(distance) ?? 0) + 1);
  });
  let usual: number | null = null;
  for (const [distance, count] of counts) if (usual === null || count > (counts.get(usual) ?? 0)) usual = distance;
  return usual;
}

/** Readings that do not begin a whole number of steps after the first. */
export function offTheStep(sorted: readonly RainReading[], stepMinutes: number): readonly RainReading[] {
  const began = sorted[0]?.minutes ?? 0;
  return sorted.filter(({ minutes }) => Math.abs((minutes - began) / stepMinutes - Math.round((minutes - began) / stepMinutes)) > 1e-9);
}

/** Every step from the first reading to the last. What was not measured, and what has no reading, is blank or dry as told. */
export function withoutBreaks(
  readings: readonly RainReading[],
  unit: DepthUnit,
  stepMinutes: number,
  dry: { readonly notMeasured: boolean; readonly noReading: boolean },
): RainSeries {
  const beganMinutes = readings[0]?.minutes ?? 0;
  const placeOf = (minutes: number) => Math.round((minutes - beganMinutes) / stepMinutes);
  const depths = new Array<number | null>(placeOf(readings.at(-1)?.minutes ?? beganMinutes) + 1).fill(dry.noReading ? 0 : null);
  const remarks = new Map<number, Remark>();
  let next = 0;
  for (const { minutes, depth, isTrace } of readings) {
    const place = placeOf(minutes);
    for (; next < place; next += 1) remarks.set(next, dry.noReading ? "taken as dry" : "no reading");
    next = place + 1;
    depths[place] = depth ?? (dry.notMeasured ? 0 : null);
    if (depth === null) remarks.set(place, dry.notMeasured ? "taken as dry" : "not measured");
    else if (isTrace) remarks.set(place, "trace");
  }
  return { unit, stepMinutes, beganMinutes, depths, remarks };
}

const DAY_MINUTES = 1440;

/** Calendar days from a series of shorter steps; a day with a step that is blank is blank, and days not whole at either end are left off. */
export function dailyTotals({ unit, stepMinutes, beganMinutes, depths }: RainSeries): RainSeries {
  const stepsADay = DAY_MINUTES / stepMinutes;
  const toMidnight = Math.ceil((Math.ceil(beganMinutes / DAY_MINUTES) * DAY_MINUTES - beganMinutes) / stepMinutes);
  const days = Math.max(0, Math.floor((depths.length - toMidnight) / stepsADay));
  const remarks = new Map<number, Remark>();
  const totals = Array.from({ length: days }, (_, day) => {
    const steps = depths.slice(toMidnight + day * stepsADay, toMidnight + (day + 1) * stepsADay);
    const measured = steps.filter((depth) => depth !== null);
    if (measured.length === steps.length) return sum(measured);
    remarks.set(day, "not measured");
    return null;
  });
  return { unit, stepMinutes: DAY_MINUTES, beganMinutes: beganMinutes + toMidnight * stepMinutes, depths: totals, remarks };
}
