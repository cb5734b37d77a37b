import { CUBIC_FEET_PER_CUBIC_YARD } from "../quantities.ts";

/**
 * A cone of loose earth at its angle of repose.
 *
 *   r = (3 V / (pi tan a))^(1/3)      radius          (ft; V cu ft, a resting angle)
 *   h = r tan a                       height          (ft)
 *   A = pi r^2                        ground covered  (sq ft)
 *
 * Source  Geometry, V = pi r^2 h / 3.
 * Domain  looseCubicYards >= 0, 0 < restingDegrees < 90.
 * Limits  One free-standing heap on level ground. Resting angles from memory: dry loose earth 35 to 38, moist 40 to 45,
 *         dry sand 30 to 35, wet clay 15 to 20 degrees.
 */
export function stockpileCone(looseCubicYards: number, restingDegrees: number): Stockpile {
  const steepness = Math.tan((restingDegrees * Math.PI) / 180);
  const radiusFeet = Math.cbrt((3 * CUBIC_FEET_PER_CUBIC_YARD * looseCubicYards) / (Math.PI * steepness));
  return { radiusFeet, heightFeet: radiusFeet * steepness, groundSquareFeet: Math.PI * radiusFeet ** 2 };
}

export interface Stockpile {
  readonly radiusFeet: number;
  readonly heightFeet: number;
  readonly groundSquareFeet: number;
}

/** From memory: dry loose earth rests at 35 to 38 degrees. */
export const USUAL_RESTING_DEGREES = 37;

/** From memory: wet clay at its flattest, moist earth at its steepest. */
export const RESTING_DEGREES = { least: 15, most: 45 } as const;

/** 29 CFR 1926 subpart P (from memory): spoil stays this far from the edge of a dig. */
export const SPOIL_SETBACK_FEET = 2;
