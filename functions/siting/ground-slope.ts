/**
 * Ground slope from a level string between two stakes.
 *
 *   slope = 100 x drop / run      (percent; drop and run in the same unit)
 *
 * Source  Definition; stakes and a level string as in the Wisconsin homeowner manual GWQ037, as adapted by URI (read).
 * Domain  drop >= 0, run > 0.
 * Limits  The average between the stakes: read a second pair where the ground bends.
 */
export function groundSlopePercent(drop: number, run: number): number {
  return (100 * drop) / run;
}

/** Wisconsin homeowner manual GWQ037, as adapted by URI (read): above this, another place. */
export const STEEPEST_PUBLISHED_PERCENT = 12;
