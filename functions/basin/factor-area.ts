import { largestOf, smallestOf } from "../extremes.ts";
import { farFactors, nearFactors, type FactorSoil, type SizeFactor } from "../published/wisconsin-size-factors.ts";

/**
 * Garden area by the published size factors.
 *
 *   A = F x contributing area      (sq ft; F by soil and ponding depth within 30 ft of the downspout, by soil alone beyond)
 *
 * The depths are printed in bands, 3 to 5, 6 to 7 and 8 in. Between two bands the larger factor is taken, and nothing is
 * interpolated; below the first and above the last band, the factor of that band.
 *
 * Source  Wisconsin homeowner manual GWQ037, 2003, as adapted by URI and Illinois DNR: factors of 0.19, 0.15, 0.08, 0.34,
 *         0.25 and 0.32 read, the others from memory.
 * Domain  contributingSquareFeet >= 0, pondingInches > 0.
 * Limits  An older manual, not current state guidance. Midwest and East, to catch most of the roof's water; gardens 4 to
 *         8 in deep. Over 30 ft away the contributing area is the roof and the lawn uphill.
 */
export function factorAreaSquareFeet(contributingSquareFeet: number, factor: SizeFactor): number {
  return factor.factor * contributingSquareFeet;
}

export function sizeFactor(soil: FactorSoil, pondingInches: number, isFar: boolean): SizeFactor {
  return isFar ? farFactors.values[soil] : depthBand(pondingInches).factors[soil];
}

/** Where a ponding depth stands among the printed bands. */
export function depthFit(pondingInches: number): DepthFit {
  const bands = nearFactors.values;
  if (pondingInches < smallestOf(bands.map(({ fromInches }) => fromInches)) * (1 - HAIR)) return "shallower";
  if (pondingInches > largestOf(bands.map(({ toInches }) => toInches)) * (1 + HAIR)) return "deeper";
  return pondingInches > depthBand(pondingInches).toInches * (1 + HAIR) ? "between bands" : "in a band";
}

export type DepthFit = "in a band" | "between bands" | "shallower" | "deeper";

function depthBand(pondingInches: number): (typeof nearFactors.values)[number] {
  return nearFactors.values.reduce((shallower, next) => (pondingInches >= next.fromInches * (1 - HAIR) ? next : shallower));
}

/** A depth typed in millimeters may miss the end of a band by rounding alone. */
const HAIR = 1e-9;
