import { CUBIC_FEET_PER_CUBIC_YARD, INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Material for a layer of even depth: mulch, stone, compost.
 *
 *   V = A d / 324 x (1 + waste share)      (cu yd; A in sq ft, d in in)
 *
 * Source  Definition: 1 cu yd is 27 cu ft, and covers 324 sq ft an inch deep.
 * Domain  areaSquareFeet >= 0, depthInches >= 0, 0 <= wasteShare <= 1.
 * Limits  Volume as it lies; material that packs or settles needs more.
 */
export function layerVolumeCubicYards(areaSquareFeet: number, depthInches: number, wasteShare: number): number {
  return ((areaSquareFeet * depthInches) / (INCHES_PER_FOOT * CUBIC_FEET_PER_CUBIC_YARD)) * (1 + wasteShare);
}

/** Common practice, no source: 5 to 15 percent is added for waste. */
export const MOST_USUAL_WASTE_SHARE = 0.3;
