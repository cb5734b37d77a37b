/**
 * A level pad on a slope whose cut, compacted, just fills its downhill side.
 *
 *   x    = B / (1 + sqrt(c))      width in cut, from the uphill edge   (ft; B width down the slope, c compacted per in place)
 *   cut  = S x^2 / 2              in place, per foot across the slope  (cu ft; S slope as a fraction)
 *   fill = S (B - x)^2 / 2        compacted, likewise
 *
 * Source  Geometry of the two wedges, set equal by c x cut = fill.
 * Domain  widthFeet >= 0, slope >= 0, 0 < compactedPerInPlace <= 1.
 * Limits  An even slope, level across; vertical edges.
 */
export function levelPad(widthFeet: number, slope: number, compactedPerInPlace: number): LevelPad {
  const cutWidthFeet = widthFeet / (1 + Math.sqrt(compactedPerInPlace));
  return {
    cutWidthFeet,
    cutSquareFeet: (slope * cutWidthFeet ** 2) / 2,
    fillSquareFeet: (slope * (widthFeet - cutWidthFeet) ** 2) / 2,
  };
}

export interface LevelPad {
  readonly cutWidthFeet: number;
  /** Per foot across the slope. */
  readonly cutSquareFeet: number;
  readonly fillSquareFeet: number;
}
