/**
 * Depth of compost that brings a soil to a target of organic matter.
 *
 *   CR = D Ds (T - S) / (Ds (T - S) + Dc (C - T))      (in; D finished depth of the mixture, which holds CR of compost)
 *
 *   Ds and Dc dry bulk densities of soil and compost in one unit; S, T and C percent organic matter by dry weight of the
 *   soil, the target and the compost. 0 when the soil already has it.
 *
 * Source  Balance of dry mass, computed by hand from the definition; the same quantities as in Building Soil, 2016, whose
 *         printed form is from memory.
 * Domain  depthInches >= 0, densities > 0, 0 <= percents <= 100, and compostPercent > targetPercent where some is needed.
 * Limits  No settling: loose compost and soil settle together as they are mixed and watered.
 */
export function compostDepthInches(depthInches: number, organic: OrganicPercents, soilDensity: number, compostDensity: number): number {
  return depthInches * compostShare(organic, soilDensity, compostDensity);
}

/** Compost as a share of the mixture's depth. */
export function compostShare(organic: OrganicPercents, soilDensity: number, compostDensity: number): number {
  const shortPercent = organicShortPercent(organic);
  if (shortPercent <= 0) return 0;
  const fromSoil = soilDensity * shortPercent;
  const fromCompost = compostDensity * (organic.compostPercent - organic.targetPercent);
  return fromSoil / (fromSoil + fromCompost);
}

/** What the soil lacks of the target; below 0 where it has more. */
export function organicShortPercent({ soilPercent, targetPercent }: OrganicPercents): number {
  return targetPercent - soilPercent;
}

/** Percent organic matter by dry weight. */
export interface OrganicPercents {
  readonly soilPercent: number;
  readonly targetPercent: number;
  readonly compostPercent: number;
}

/** Older Everett manual (read): the richest published target, for planting beds. */
export const RICHEST_PUBLISHED_TARGET_PERCENT = 10;
