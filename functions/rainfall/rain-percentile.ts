/**
 * The depth that a percent of the counted rains do not exceed.
 *
 *   sort the n counted rains; place p/100 x (n - 1) from the smallest, straight between two of them      (in)
 *
 * This is the inclusive percentile, a spreadsheet's PERCENTILE.INC. A rain counts when it is deeper than the smallest
 * counted. Rains and limit are compared as they come, so a gauge of 0.01 in whose 0.10 in is stored as 2.5 mm is
 * filtered alike in both units: 0.10 in does not count, 0.11 in (2.8 mm) does.
 *
 * Source  Utah Division of Water Quality, 2016: the depth that 90 percent of the rains left after small ones are dropped
 *         do not exceed. Small is 0.1 in or less: US EPA 841-B-09-001, 2009 (from memory).
 * Domain  rainInches >= 0, 0 <= percent <= 100, smallestCountedInches >= 0. Undefined when no rain counts.
 * Limits  Days and events give different answers, by 1.5 times and more: say which the series holds. Leave snow out.
 *         Not the depth that captures that percent of the yearly volume. 20 to 30 years of record are advised (from memory).
 */
export function rainPercentileInches(rainInches: readonly number[], percent: number, smallestCountedInches: number): number | undefined {
  const between = percentilePlace(rainInches, percent, smallestCountedInches);
  return between && between.belowInches + (between.place % 1) * (between.aboveInches - between.belowInches);
}

/** Where the percentile stands among the counted rains; undefined when none counts. */
export function percentilePlace(
  rainInches: readonly number[],
  percent: number,
  smallestCountedInches: number,
): PercentilePlace | undefined {
  const sorted = countedRains(rainInches, smallestCountedInches).sort((a, b) => a - b);
  const place = (percent / 100) * (sorted.length - 1);
  const [belowInches, aboveInches = belowInches] = sorted.slice(Math.floor(place));
  if (belowInches === undefined || aboveInches === undefined) return undefined;
  return { counted: sorted.length, place, belowInches, aboveInches };
}

export interface PercentilePlace {
  readonly counted: number;
  /** From the smallest, which is 0. */
  readonly place: number;
  readonly belowInches: number;
  /** The same as below where the place is the largest rain. */
  readonly aboveInches: number;
}

export function countedRains(rainInches: readonly number[], smallestCountedInches: number): number[] {
  return rainInches.filter((depth) => depth > smallestCountedInches);
}

/** US EPA 841-B-09-001 (from memory): rains no deeper make no runoff. */
export const SMALLEST_COUNTED_INCHES = 0.1;

/** Utah Division of Water Quality, 2016. Federal projects are held to the 95th (US EPA 841-B-09-001, from memory). */
export const USUAL_PERCENT = 90;

/** Common practice, no source: a percentile with fewer rains above it rests on chance. */
export const LEAST_RAINS_ABOVE = 10;
