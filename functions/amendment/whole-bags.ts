import { wholePackages } from "../cost/whole-packages.ts";
import { CUBIC_FEET_PER_CUBIC_YARD } from "../quantities.ts";

/**
 * Whole bags that hold a volume of material.
 *
 *   n = 27 V / bag size, rounded up      (V cu yd, bag size cu ft)
 *
 * Source  Definition; 27 cu ft in a cu yd. Usual bags, mulch 2, topsoil 1.5, compost 1 and sand 0.5 cu ft: common practice,
 *         no source.
 * Domain  cubicYards >= 0, bagCubicFeet > 0.
 * Limits  Volume as packed; what packs or settles needs more.
 */
export function wholeBags(cubicYards: number, bagCubicFeet: number): number {
  return wholePackages(materialCubicFeet(cubicYards), bagCubicFeet);
}

export function materialCubicFeet(cubicYards: number): number {
  return CUBIC_FEET_PER_CUBIC_YARD * cubicYards;
}

/** Common practice, no source: bags hold 0.5 to 3 cu ft or 15 to 85 L, so in neither unit is a bag larger. */
export const LARGEST_BAG_IN_ANY_UNIT = 100;
