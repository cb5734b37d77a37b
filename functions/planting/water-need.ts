import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Water that a planting takes in a week, rain included.
 *
 *   V = A d / 12            (cu ft; A sq ft, d in)
 *   gallons = V x 1728 / 231
 *
 * Source  Definition; a US gallon is 231 cu in. An inch a week in the first season: common practice, no source.
 * Domain  areaSquareFeet >= 0, depthInches >= 0.
 * Limits  First season. Take off the week's rain; a hot or windy week takes more.
 */
export function waterGallons(areaSquareFeet: number, depthInches: number): number {
  return waterCubicFeet(areaSquareFeet, depthInches) * GALLONS_PER_CUBIC_FOOT;
}

export function waterCubicFeet(areaSquareFeet: number, depthInches: number): number {
  return (areaSquareFeet * depthInches) / INCHES_PER_FOOT;
}

export const GALLONS_PER_CUBIC_FOOT = 1728 / 231;

/** Common practice, no source. */
export const USUAL_WEEKLY_INCHES = 1;

/** Common practice, no source: even in heat no planting is given more. */
export const MOST_USUAL_WEEKLY_INCHES = 3;
