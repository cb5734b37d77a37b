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
  return joined(steadyDropRun(readings)).dropInchesPerHour;
}

/** The intervals of the last steady run, judged on the drop. */
export function steadyDropRun(readings: readonly HoleReading[]): readonly HoleInterval[] {
  const intervals = holeIntervals(readings);
  return intervals.slice(steadyRunStart(intervals.map((interval) => interval.dropInchesPerHour)));
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
  const intervals: HoleInterval[] = [];
  let from: HoleReading | undefined;
  for (const to of readings) {
    if (from !== undefined) intervals.push(intervalBetween(from, to));
    from = to;
  }
  return intervals;
}

/** The readings up to the first that finds the hole dry, that one included. */
export function readingsWithWater(readings: readonly HoleReading[]): readonly HoleReading[] {
  const dry = readings.findIndex((reading) => reading.waterDepthInches === 0);
  return dry < 0 ? readings : readings.slice(0, dry + 1);
}

/** Intervals in a row as one, from the first reading of the first to the last of the last. */
export function joined(intervals: readonly HoleInterval[]): HoleInterval {
  return intervals.reduce((whole, next) => intervalBetween(whole.from, next.to));
}

/** Where the last steady run of rates begins. */
export function steadyRunStart(rates: readonly number[]): number {
  let least = Infinity;
  let largest = -Infinity;
  for (const [place, rate] of [...rates.entries()].reverse()) {
    least = Math.min(least, rate);
    largest = Math.max(largest, rate);
    if (!agree(largest, least)) return place + 1;
  }
  return 0;
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

function intervalBetween(from: HoleReading, to: HoleReading): HoleInterval {
  const drop = from.waterDepthInches - to.waterDepthInches;
  return { from, to, dropInchesPerHour: (drop / (to.minutes - from.minutes)) * MINUTES_PER_HOUR };
}

const MINUTES_PER_HOUR = 60;
