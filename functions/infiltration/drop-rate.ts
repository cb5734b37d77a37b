/**
 * How fast the water level falls in a test hole, over the last steady readings.
 *
 *   drop rate of an interval = (H before - H after) / minutes x 60                     (in/h)
 *   steady drop rate         = the same over the last steady run of intervals together (in/h)
 *
 * The last steady run is the longest run of intervals, ending with the last, whose rates all agree within 10 percent
 * of the largest of them. It is the last interval alone when that one does not agree with the one before it.
 *
 * Source  Definition. Agreement within 10 percent: Sustainable Technologies Evaluation Program (Ontario), wiki page
 *         "Percolation test": repeat until the last two fall times differ by 10 percent or less. Its further bound
 *         of 2 minutes is for fall times between two marks and has no counterpart in timed readings.
 * Domain  At least two readings, minutes rising, depths falling or equal, the first depth above 0.
 *         Readings after the hole is dry tell nothing: leave them out (readingsWithWater).
 * Limits  The drop is not the infiltration rate: water leaves through the wall as well. See hole-rate.
 */
export function dropRateInchesPerHour(readings: readonly HoleReading[]): number {
  const intervals = holeIntervals(readings);
  const run = intervals.slice(steadyRunStart(intervals.map((interval) => interval.dropInchesPerHour)));
  return dropInchesPerHour(span(run));
}

/** One look at the water: minutes since the start and the water's depth above the hole's floor. */
export interface HoleReading {
  readonly minutes: number;
  readonly waterDepthInches: number;
}

/** Two readings in a row and the drop between them. */
export interface HoleInterval {
  readonly from: HoleReading;
  readonly to: HoleReading;
  readonly dropInchesPerHour: number;
}

export function holeIntervals(readings: readonly HoleReading[]): readonly HoleInterval[] {
  return readings.slice(1).map((to, index) => {
    const from = readings[index]!;
    return { from, to, dropInchesPerHour: dropInchesPerHour({ from, to }) };
  });
}

/** The readings up to the first that finds the hole dry, that one included. */
export function readingsWithWater(readings: readonly HoleReading[]): readonly HoleReading[] {
  const dry = readings.findIndex((reading) => reading.waterDepthInches === 0);
  return dry < 0 ? readings : readings.slice(0, dry + 1);
}

/** First reading of the first interval to last reading of the last. */
export function span(intervals: readonly HoleInterval[]): { readonly from: HoleReading; readonly to: HoleReading } {
  return { from: intervals[0]!.from, to: intervals[intervals.length - 1]!.to };
}

/** Where the last steady run of rates begins. */
export function steadyRunStart(rates: readonly number[]): number {
  let start = rates.length - 1;
  let least = rates[start]!;
  let largest = least;
  while (start > 0) {
    const earlier = rates[start - 1]!;
    least = Math.min(least, earlier);
    largest = Math.max(largest, earlier);
    if (!agree(largest, least)) break;
    start -= 1;
  }
  return start;
}

/** Change from the rate before, as a share of the larger of the two: 0 when both are 0. */
export function changeShare(before: number, after: number): number {
  return before === after ? 0 : (after - before) / Math.max(before, after);
}

/** Two rates agree when the smaller is within 10 percent of the larger. */
export function agree(one: number, other: number): boolean {
  // The hair on top keeps a difference of exactly 10 percent steady in metric readings too.
  return Math.abs(changeShare(one, other)) <= STEADY_SHARE + 1e-9;
}

export const STEADY_SHARE = 0.1;

function dropInchesPerHour({ from, to }: { readonly from: HoleReading; readonly to: HoleReading }): number {
  return ((from.waterDepthInches - to.waterDepthInches) / (to.minutes - from.minutes)) * MINUTES_PER_HOUR;
}

const MINUTES_PER_HOUR = 60;
