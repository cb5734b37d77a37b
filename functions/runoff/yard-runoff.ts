import { INCHES_PER_FOOT } from "../quantities.ts";
import { runoffDepthInches } from "./runoff-depth.ts";

/**
 * Water one storm sends to the garden from a yard of several surfaces, weighted surface by surface.
 *
 *   V = sum of share x A x Q(P, CN) / 12      (cu ft; A in sq ft, P and Q in in)
 *
 * Runoff is worked out for each surface and then added, never from an averaged curve number: in a garden's storms runoff
 * rises ever faster with the curve number, so for a roof beside a lawn the average hides nearly all of a small storm's.
 *
 * Source  USDA Natural Resources Conservation Service, National Engineering Handbook, part 630, chapter 10
 *         (from memory): weighted runoff where curve numbers differ greatly; Q by TR-55 equation 2-3.
 * Domain  rainInches >= 0; for each surface area >= 0, 0 < curveNumber <= 100, 0 <= share <= 1.
 * Limits  Those of the curve number method; every surface gets the same rain and none flows over another.
 */
export function yardRunoffCubicFeet(rainInches: number, surfaces: readonly YardSurface[]): number {
  let inchesTimesSquareFeet = 0;
  for (const surface of surfaces) {
    inchesTimesSquareFeet += surface.shareDrainingHere * surface.areaSquareFeet * runoffDepthInches(rainInches, surface.curveNumber);
  }
  return inchesTimesSquareFeet / INCHES_PER_FOOT;
}

export interface YardSurface {
  readonly curveNumber: number;
  readonly areaSquareFeet: number;
  /** How much of the surface drains to this garden, 0 to 1. */
  readonly shareDrainingHere: number;
}
