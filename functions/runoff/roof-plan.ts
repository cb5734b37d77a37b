/**
 * Length of a roof's slope as seen from above, which is what rain falls on.
 *
 *   plan length = sloped length x cos(atan(rise / run))      (rise and run in one unit; lengths in any one unit)
 *
 * A steeper roof over the same walls is longer along its slope and no longer in plan: pitch adds no water.
 *
 * Source  Definition; multipliers from plan to slope by pitch: a roofing estimator's help page (read).
 * Domain  slopedLength >= 0, rise >= 0, run > 0.
 * Limits  Rain that falls straight down; one plane of one pitch, measured up the slope, square to the eave.
 */
export function planLength(slopedLength: number, rise: number, run: number): number {
  return slopedLength * (run / Math.hypot(rise, run));
}
