import { INCHES_PER_FOOT } from "../quantities.ts";
import { basinFloor, volumeToHeightCubicFeet, type BasinShape } from "./basin-shape.ts";

/**
 * Water a basin holds when it stands full to a depth.
 *
 *   V = A d + k (L + W) z d^2 + 4/3 k z^2 d^3      (cu ft; basin-shape says what is what; d in ft)
 *
 * Source  Prismoidal rule, exact for an ellipse and a rectangle whose four sides share one slope.
 * Domain  floorAreaSquareFeet >= 0, depthInches >= 0, sideSlope >= 0, lengthToWidth >= 1.
 * Limits  Those of basin-shape. The floor area is the inner, level floor; the sides go outward from it.
 */
export function basinVolumeCubicFeet(
  floorAreaSquareFeet: number,
  depthInches: number,
  sideSlope: number,
  shape: BasinShape,
  lengthToWidth: number,
): number {
  return volumeToHeightCubicFeet(basinFloor(floorAreaSquareFeet, shape, lengthToWidth), depthInches / INCHES_PER_FOOT, sideSlope);
}

/** Common practice, no source: sides 3 to 1 or flatter hold their soil and can be mown. */
export const USUAL_SIDE_SLOPE = 3;
