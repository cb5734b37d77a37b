import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Median stone size of an apron at a pipe's outlet.
 *
 *   D50 = 0.2 D (Q / (sqrt(g) D^2.5))^(4/3) (D / TW)      (ft; Q cfs, D pipe diameter and TW tailwater depth in ft)
 *
 * Tailwater counts as no less than 0.4 D and no more than D; 0.4 D where it is unknown.
 *
 * Source  FHWA, HEC-14, 3rd ed., equation 10.4, after Fletcher and Grace 1972 (read); g = 32.2 ft/s^2 as there.
 * Domain  cubicFeetPerSecond >= 0, diameterInches > 0, tailwaterInches >= 0 where it is known.
 * Limits  Where the pipe runs steep and only part full (supercritical) HEC-14 puts (D + normal depth) / 2 for D, which asks
 *         for larger stone than this.
 */
export function medianStoneInches(cubicFeetPerSecond: number, diameterInches: number, tailwaterInches: number | undefined): number {
  if (cubicFeetPerSecond === 0) return 0;
  // D x (D^-2.5)^(4/3) is D^(-7/3): one power of the diameter, which nothing can cancel.
  const flowTerm = stoneFlowTerm(cubicFeetPerSecond);
  const diameterTerm = Math.cbrt(diameterInches / INCHES_PER_FOOT) ** 7;
  return (INCHES_PER_FOOT * 0.2 * flowTerm) / diameterTerm / countedTailwater(diameterInches, tailwaterInches);
}

/** (Q / sqrt(g))^(4/3), the part of the equation that grows with the flow. */
export function stoneFlowTerm(cubicFeetPerSecond: number): number {
  return Math.cbrt(cubicFeetPerSecond / Math.sqrt(GRAVITY_FEET_PER_SECOND_SQUARED)) ** 4;
}

/** Tailwater as a share of the diameter, as the equation counts it. */
export function countedTailwater(diameterInches: number, tailwaterInches: number | undefined): number {
  const { least, most } = TAILWATER_SHARES;
  if (tailwaterInches === undefined || tailwaterInches <= least * diameterInches) return least;
  return Math.min(tailwaterInches / diameterInches, most);
}

export const TAILWATER_SHARES = { least: 0.4, most: 1 } as const;

const GRAVITY_FEET_PER_SECOND_SQUARED = 32.2;

/** Common practice, no source: river stone of 2 to 4 in is laid at a downspout, whatever the flow. */
export const LEAST_USUAL_STONE_INCHES = 2;
