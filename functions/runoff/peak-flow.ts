/**
 * Peak flow from an area by the rational method, for sizing a spout, an inlet or an overflow.
 *
 *   Q = C i A / 43,200      (cfs; C peak coefficient, i in in/h, A in sq ft: 12 in x 3,600 s, exactly)
 *
 * In acres this is the familiar Q = C i A, whose true factor of 1.0083 is taken as 1 there and not here.
 *
 * Source  Rational method; limits and worked examples: FHWA Hydraulic Engineering Circular 22, 2nd ed., 2001 (from memory).
 * Domain  areaSquareFeet >= 0, intensityInchesPerHour >= 0, 0 <= peakCoefficient <= 1.
 * Limits  A peak, not a volume: its coefficient is no runoff share. Under about 200 acres; the intensity is that of the
 *         time the farthest water takes to arrive, 5 or 10 min at the least by local rule; storms of 2 to 10 years.
 */
export function peakFlowCubicFeetPerSecond(areaSquareFeet: number, intensityInchesPerHour: number, peakCoefficient: number): number {
  return (peakCoefficient * intensityInchesPerHour * areaSquareFeet) / INCHES_AN_HOUR_PER_FOOT_A_SECOND;
}

const INCHES_AN_HOUR_PER_FOOT_A_SECOND = 43_200;

/** HEC-22 (from memory): 200 acres of 43,560 sq ft. */
export const LARGEST_RATIONAL_SQUARE_FEET = 200 * 43_560;
