import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Water that runs off one area in one storm, by a runoff share.
 *
 *   V = share x A x P / 12       (cu ft; A in sq ft, P in in)
 *
 * Source  Definition. The usual share of a roof or paving, 0.95, is the simple method's 0.05 + 0.9 I at I = 1
 *         (Schueler 1987, as printed in New Hampshire Code of Administrative Rules Env-Wq 1504.10).
 * Domain  areaSquareFeet >= 0, rainInches >= 0, 0 <= runoffShare <= 1.
 * Limits  Area is measured in plan, not along a pitched roof. The share is of volume, not of peak flow.
 */
export function runoffVolumeCubicFeet(areaSquareFeet: number, rainInches: number, runoffShare: number): number {
  return (runoffShare * areaSquareFeet * rainInches) / INCHES_PER_FOOT;
}

/** Simple method at 100 percent impervious. */
export const ROOF_RUNOFF_SHARE = 0.95;
