/**
 * Width of a level spillway that passes a flow at a given head.
 *
 *   L = Q / (C H^1.5)      (ft; Q cfs, H head over the sill in ft, C weir coefficient in US units)
 *
 * A coefficient in metric units is 0.552 of the same in US units, the square root of 0.3048.
 *
 * Source  Broad-crested weir, San Diego State University, CIVE 530 (read); coefficients of low, narrow crests FHWA HEC-22,
 *         2nd ed. (from memory). 2.6 for a notch of stone or sod: common practice, no source.
 * Domain  cubicFeetPerSecond >= 0, headFeet > 0, coefficient > 0.
 * Limits  Free fall beyond the sill, no loss at the ends, slow water above it.
 */
export function overflowWidthFeet(cubicFeetPerSecond: number, headFeet: number, coefficient: number): number {
  if (cubicFeetPerSecond === 0) return 0;
  return cubicFeetPerSecond / flowOverEachFoot(headFeet, coefficient);
}

/** In cfs for each foot of the sill. */
export function flowOverEachFoot(headFeet: number, coefficient: number): number {
  return coefficient * headFeet ** 1.5;
}

/** Common practice, no source: a spillway of stone or sod. */
export const USUAL_WEIR_COEFFICIENT = 2.6;

/** FHWA HEC-22 (from memory): from a broad sill at a low head to a crest of 0.5 ft at a head of 1 ft, the highest printed. */
export const WEIR_COEFFICIENTS = { least: 2.3, most: 3.32 } as const;

/** FHWA HEC-22 (from memory): the table's highest head. */
export const HIGHEST_PRINTED_HEAD_FEET = 1;
