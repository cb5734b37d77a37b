import type { HoleInterval } from "../../addin/actions/draft-hole-test.ts";
import type { Reading } from "../../addin/actions/record-yard.ts";

/** Two columns of one length, as the chart library takes them. */
export interface ChartPoints {
  readonly minutes: readonly number[];
  readonly values: readonly number[];
}

/** The water level by time, as far as whole readings go: a half-typed one is left out, and time never runs back. */
export function levelPoints(readings: readonly Reading[]): ChartPoints {
  const minutes: number[] = [];
  const values: number[] = [];
  for (const { minutes: time, waterDepth } of readings) {
    if (typeof time !== "number" || typeof waterDepth !== "number" || time <= (minutes.at(-1) ?? -1)) continue;
    minutes.push(time);
    values.push(waterDepth);
  }
  return { minutes, values };
}

/** A step an interval, from its start to its end, which begins at the first reading. */
export function ratePoints(firstMinutes: number, intervals: readonly HoleInterval[]): ChartPoints {
  const rates = intervals.map(({ correctedRate }) => correctedRate);
  const first = rates[0];
  if (first === undefined) return { minutes: [], values: [] };
  return { minutes: [firstMinutes, ...intervals.map(({ minutes }) => minutes)], values: [first, ...rates] };
}
