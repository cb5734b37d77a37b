import type { HoleInterval } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import type { Reading } from "../../../addin/actions/yard/record-yard.ts";
import type { ChartPoints } from "../../parts/time-chart.tsx";

/** The water level by time, as far as whole readings go: a half-typed one is left out, and time never runs back. */
export function levelPoints(readings: readonly Reading[]): ChartPoints {
  const times: number[] = [];
  const values: number[] = [];
  for (const { minutes: time, waterDepth } of readings) {
    if (typeof time !== "number" || typeof waterDepth !== "number" || time <= (times.at(-1) ?? -1)) continue;
    times.push(time);
    values.push(waterDepth);
  }
  return { times, values };
}

/** A step an interval, from its start to its end, which begins at the first reading. */
export function ratePoints(firstMinutes: number, intervals: readonly HoleInterval[]): ChartPoints {
  const rates = intervals.map(({ correctedRate }) => correctedRate);
  const first = rates[0];
  if (first === undefined) return { times: [], values: [] };
  return { times: [firstMinutes, ...intervals.map(({ minutes }) => minutes)], values: [first, ...rates] };
}
