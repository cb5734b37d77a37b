import { fromUs, toUs } from "../quantities.ts";
import { runoffVolumeCubicFeet } from "./runoff-volume.ts";

/**
 * Pollutant that a year's storm runoff carries off an area, by the simple method.
 *
 *   Rv = 0.05 + 0.009 I                       share of the rain that runs off (I percent impervious)
 *   R  = P Pj Rv                              runoff of a year                (in)
 *   L  = R / 12 x A x C, mg in 1 L, to lb     load of a year                  (lb; A in sq ft, C in mg/L)
 *
 * The conversion is exact where print rounds it: 0.2266 lb per acre-inch and mg/L, printed as 0.226 and as 0.227.
 *
 * Source  Schueler 1987, as printed in the New York State Stormwater Management Design Manual, appendix A, and in
 *         New Hampshire Code of Administrative Rules Env-Wq 1504.10.
 * Domain  Area, rain and concentration >= 0, 0 <= imperviousPercent <= 100, 0 <= runoffStormShare <= 1.
 * Limits  Areas under about a square mile, whole years, storm runoff without base flow. Where small rains were already
 *         left out of the yearly rain, the share of storms that run off is 1. The regression scatters widely.
 */
export function yearlyLoadPounds(
  areaSquareFeet: number,
  yearlyRainInches: number,
  imperviousPercent: number,
  milligramsPerLitre: number,
  runoffStormShare: number,
): number {
  const runoffCubicFeet = yearlyRunoffCubicFeet(areaSquareFeet, yearlyRainInches, imperviousPercent, runoffStormShare);
  // 1 mg/L is 1 g in a cubic metre.
  const kilograms = (fromUs("waterVolume", runoffCubicFeet, "metric") * milligramsPerLitre) / 1000;
  return toUs("load", kilograms, "metric");
}

/** R over the area, as a volume. */
export function yearlyRunoffCubicFeet(
  areaSquareFeet: number,
  yearlyRainInches: number,
  imperviousPercent: number,
  runoffStormShare: number,
): number {
  return runoffVolumeCubicFeet(areaSquareFeet, yearlyRainInches * runoffStormShare, runoffCoefficient(imperviousPercent));
}

/** Share of a year's rain that runs off an area of so many percent impervious. */
export function runoffCoefficient(imperviousPercent: number): number {
  return 0.05 + 0.009 * imperviousPercent;
}

/** New York State manual, appendix A: one storm in ten runs off nothing. */
export const USUAL_RUNOFF_STORM_SHARE = 0.9;

/** Minnesota Stormwater Manual, page "Simple Method": about a square mile. */
export const LARGEST_SIMPLE_METHOD_SQUARE_FEET = 5280 ** 2;
