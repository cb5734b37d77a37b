import { FILL, type BasinShape } from "./basin-shape.ts";

/**
 * Area of a basin floor from the two lengths measured across its middle.
 *
 *   A = k L W      (k = pi / 4 for an ellipse, 1 for a rectangle; L and W in any one unit of length, A in its square)
 *
 * Source  Geometry.
 * Domain  lengthAcross >= 0, widthAcross >= 0.
 * Limits  A floor that is neither is measured by widths at equal steps.
 */
export function floorAreaOf(lengthAcross: number, widthAcross: number, shape: BasinShape): number {
  return FILL[shape] * lengthAcross * widthAcross;
}
