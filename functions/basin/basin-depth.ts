import { INCHES_PER_FOOT } from "../quantities.ts";
import { basinFloor, volumeTerms, type BasinShape } from "./basin-shape.ts";

/**
 * The depth of water at which a basin holds a volume: basin-volume turned around.
 *
 *   V = A d + k (L + W) z d^2 + 4/3 k z^2 d^3, solved for d      (d in ft, given back in in)
 *
 * Source  Prismoidal rule as in basin-volume; solved by Newton's method.
 * Domain  volumeCubicFeet >= 0, floorAreaSquareFeet > 0, sideSlope >= 0, lengthToWidth >= 1.
 * Limits  Those of basin-volume.
 */
export function basinDepthInches(
  volumeCubicFeet: number,
  floorAreaSquareFeet: number,
  sideSlope: number,
  shape: BasinShape,
  lengthToWidth: number,
): number {
  if (volumeCubicFeet === 0) return 0;
  const { linear, square, cube } = volumeTerms(basinFloor(floorAreaSquareFeet, shape, lengthToWidth), sideSlope);
  // Each term alone bounds the depth from above. The volume curves upward, so from there every step
  // comes down toward the answer and none passes it: the search ends where rounding stops it.
  let depthFeet = Math.min(volumeCubicFeet / linear, Math.sqrt(volumeCubicFeet / square), Math.cbrt(volumeCubicFeet / cube));
  for (;;) {
    const over = depthFeet * (linear + depthFeet * (square + depthFeet * cube)) - volumeCubicFeet;
    const next = depthFeet - over / (linear + depthFeet * (2 * square + depthFeet * 3 * cube));
    if (!(next < depthFeet)) return INCHES_PER_FOOT * depthFeet;
    depthFeet = next;
  }
}
