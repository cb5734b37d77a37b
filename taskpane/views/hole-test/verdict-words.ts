import type { HoleTestDraft } from "../../../addin/actions/hole-test/draft-hole-test.ts";
import { toUs, type UnitSystem } from "../../../functions/quantities.ts";
import { FAST_DROP_INCHES, holeTestText, SLOW_DROP_INCHES } from "./text.ts";

/** Whether to read on, from the last interval; null while there is none. */
export function steadinessWords({ intervals, emptied }: HoleTestDraft): string | null {
  const { verdict } = holeTestText;
  if (emptied) return verdict.emptied;
  const last = intervals.at(-1);
  if (last === undefined) return null;
  if (last.change === null) return verdict.oneInterval;
  return last.verdict === "steady" ? verdict.steady(last.change) : verdict.keepGoing(last.change);
}

/** What the drop means for the planting, in the homeowner's words. */
export function homeownerWords(dropRate: number, units: UnitSystem): string {
  return holeTestText.verdict.homeowner(dropRate, plantWords(dropRate, units), units);
}

/** Which plants a soil of this drop suits. */
export function plantWords(dropRate: number, units: UnitSystem): string {
  const dropInches = toUs("rate", dropRate, units);
  const { verdict } = holeTestText;
  return dropInches >= FAST_DROP_INCHES
    ? verdict.fast(units)
    : dropInches <= SLOW_DROP_INCHES
      ? verdict.slow(units)
      : verdict.between(units);
}
