import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Area of a filter bed that passes a volume of water through its media in time (Darcy).
 *
 *   A = V df / (k (hf + df) tf)      (sq ft; V cu ft, df media depth and hf average ponding in ft, k in ft/h, tf in h)
 *
 * Any one unit of length and of time gives the same: the metric sheet uses it unchanged.
 *
 * Source  Claytor and Schueler, 1996, as in the Georgia Stormwater Management Manual, volume 2, 2001 (from memory).
 * Domain  waterCubicFeet >= 0, mediaInches > 0, mediaInchesPerHour > 0, averagePondingInches >= 0, drainHours > 0.
 * Limits  The media must be what slows the water, with a free outlet below. Average ponding is half of the deepest.
 *         The rate is that of the filter media, never of the native soil.
 */
export function filterAreaSquareFeet(
  waterCubicFeet: number,
  mediaInches: number,
  mediaInchesPerHour: number,
  averagePondingInches: number,
  drainHours: number,
): number {
  if (waterCubicFeet === 0) return 0;
  return (INCHES_PER_FOOT * waterCubicFeet) / (mediaInchesPerHour * hydraulicGradient(averagePondingInches, mediaInches) * drainHours);
}

/** (hf + df) / df: head lost in the media over its depth. */
export function hydraulicGradient(averagePondingInches: number, mediaInches: number): number {
  // Without ponding the water's own weight moves it, whatever the depth of the media.
  return averagePondingInches === 0 ? 1 : (averagePondingInches + mediaInches) / mediaInches;
}
