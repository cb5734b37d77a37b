import { agree, changeShare, holeIntervals, type HoleReading } from "./drop-rate.ts";
import { wallCorrectedInchesPerHour } from "./hole-rate.ts";

/**
 * A hole test interval by interval: the drop, the rate corrected for the wall, and whether it has settled.
 *
 *   change = (f - f before) / larger of the two       (share; f is the wall-corrected rate)
 *   steady when the change is 10 percent or less
 *
 * Source  Those of drop-rate and hole-rate.
 * Domain  At least two readings, minutes rising, depths falling or equal, the first depth above 0; diameterInches > 0.
 * Limits  Those of hole-rate. An interval that starts in a dry hole has no rate to judge.
 */
export function holeTestIntervals(readings: readonly HoleReading[], diameterInches: number): readonly HoleTestInterval[] {
  let before: number | undefined;
  return holeIntervals(readings).map(({ from, to, dropInchesPerHour }) => {
    const rate = wallCorrectedInchesPerHour(from, to, diameterInches);
    const change = before === undefined ? undefined : changeShare(before, rate);
    const verdict = verdictOf(from, before, rate);
    before = rate;
    return { minutes: to.minutes, dropInchesPerHour, rateInchesPerHour: rate, change, verdict };
  });
}

export interface HoleTestInterval {
  /** When the interval ends. */
  readonly minutes: number;
  readonly dropInchesPerHour: number;
  readonly rateInchesPerHour: number;
  /** Undefined for the first interval, which has none before it. */
  readonly change: number | undefined;
  readonly verdict: HoleTestVerdict;
}

export type HoleTestVerdict = "steady" | "not steady" | "hole dry";

function verdictOf(from: HoleReading, before: number | undefined, rate: number): HoleTestVerdict {
  if (from.waterDepthInches === 0) return "hole dry";
  return before !== undefined && agree(before, rate) ? "steady" : "not steady";
}
