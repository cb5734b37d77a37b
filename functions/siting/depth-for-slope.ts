import { largestOf } from "../extremes.ts";
import { slopeBands } from "../published/wisconsin-size-factors.ts";

/**
 * Ponding depth that suits the slope of the ground.
 *
 *   under 4 percent   3 to 5 in
 *   5 to 7 percent    6 to 7 in
 *   8 to 12 percent   8 in
 *   above             another place
 *
 * On steeper ground a level floor has to be cut deeper into the hill. Between the bands nothing is printed: the shallower
 * ponding is taken, which needs the larger garden.
 *
 * Source  Wisconsin homeowner manual GWQ037, 2003, depth by slope, as adapted by URI (read).
 * Domain  groundSlopePercent >= 0.
 * Limits  Ponding must drain in time as well: see deepest-ponding. Undefined where the ground is too steep.
 */
export function pondingForSlope(groundSlopePercent: number): SlopePonding | undefined {
  const bands = slopeBands.values;
  const steepest = largestOf(bands.map(({ toPercent }) => toPercent));
  if (groundSlopePercent > steepest * (1 + HAIR)) return undefined;
  const band = bands.reduce((flatter, next) => (groundSlopePercent >= next.fromPercent * (1 - HAIR) ? next : flatter));
  const { toPercent, endExcluded, shallowestInches, deepestInches } = band;
  const isBetweenBands = groundSlopePercent > toPercent * (1 + HAIR) || (endExcluded && groundSlopePercent >= toPercent * (1 - HAIR));
  return { shallowestInches, deepestInches, isBetweenBands };
}

export interface SlopePonding {
  readonly shallowestInches: number;
  readonly deepestInches: number;
  /** The slope falls in a gap of the table. */
  readonly isBetweenBands: boolean;
}

/** A slope worked out from a drop and a run may miss the end of a band by rounding alone. */
const HAIR = 1e-9;
