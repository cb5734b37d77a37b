import { holeIntervals, joined, steadyRunStart, type HoleInterval, type HoleReading } from "./drop-rate.ts";

/**
 * Infiltration rate from a falling level in a round test hole, over the last steady readings.
 *
 *   f = r / (2 dt) x ln[(2 H1 + r) / (2 H2 + r)]      (in/h; H and r in in, dt in h, r = diameter / 2)
 *
 * Water leaves through the floor and the wetted wall alike; f is what passes each unit of wetted area.
 * The last steady run is that of drop-rate, judged on f: as the level falls less wall is wet, so the drop slows
 * even where the soil takes water at one rate.
 *
 * Source  Porchet's method, logarithmic form; the same as the inverted auger hole, ILRI Publication 16, 1994,
 *         chapter 12 (from memory), with 1.15 written out as ln 10 / 2. Riverside County (California), Design Handbook
 *         for Low Impact Development Best Management Practices, 2011, appendix A, prints the linear form, which averages the two
 *         depths and agrees closely when the drop is small beside the depth.
 * Domain  That of drop-rate; diameterInches > 0.
 * Limits  A round hole, one rate for floor and wall, no suction: fill the hole and let it soak first.
 */
export function holeRateInchesPerHour(readings: readonly HoleReading[], diameterInches: number): number {
  const { from, to } = joined(steadyRateRun(readings, diameterInches));
  return wallCorrectedInchesPerHour(from, to, diameterInches);
}

/** The intervals of the last steady run, judged on the wall-corrected rate. */
export function steadyRateRun(readings: readonly HoleReading[], diameterInches: number): readonly HoleInterval[] {
  const intervals = holeIntervals(readings);
  return intervals.slice(steadyRunStart(intervals.map(({ from, to }) => wallCorrectedInchesPerHour(from, to, diameterInches))));
}

/** Porchet between two readings, whichever they are. */
export function wallCorrectedInchesPerHour(from: HoleReading, to: HoleReading, diameterInches: number): number {
  const radius = radiusInches(diameterInches);
  const hours = (to.minutes - from.minutes) / 60;
  const drop = from.waterDepthInches - to.waterDepthInches;
  // log1p of the drop keeps a small drop in a deep hole exact.
  return (radius / (2 * hours)) * Math.log1p((2 * drop) / (2 * to.waterDepthInches + radius));
}

export function radiusInches(diameterInches: number): number {
  return diameterInches / 2;
}

/** Common practice, no source: a hole is dug 6 to 12 in wide, so a diameter under this is likely to be a radius. */
export const LEAST_LIKELY_DIAMETER_INCHES = 3;

/** Common practice, no source: test holes are 4 to 12 in across, and no wider than a spade digs. */
export const MOST_LIKELY_DIAMETER_INCHES = 36;
