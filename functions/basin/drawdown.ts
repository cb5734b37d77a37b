import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Hours from a full basin to an empty one.
 *
 *   t = (ponding + void share x media depth) / f      (h; depths in in, f in in/h)
 *
 * Source  Definition. Void share of a bioretention soil, 0.20 to 0.25: common practice, no source.
 * Domain  pondingInches >= 0, designInchesPerHour > 0, mediaInches >= 0, 0 <= voidShare <= 1.
 * Limits  Counts from the moment the basin stands full, through the floor alone.
 */
export function drawdownHours(pondingInches: number, designInchesPerHour: number, mediaInches: number, voidShare: number): number {
  return (pondingInches + mediaWaterInches(mediaInches, voidShare)) / designInchesPerHour;
}

/** Water in the voids of the media, as a depth over the floor. */
export function mediaWaterInches(mediaInches: number, voidShare: number): number {
  return voidShare * mediaInches;
}

export function mediaWaterCubicFeet(floorSquareFeet: number, mediaInches: number, voidShare: number): number {
  return (mediaWaterInches(mediaInches, voidShare) * floorSquareFeet) / INCHES_PER_FOOT;
}

/** Rawls, Brakensiek and Saxton, 1982: the most effective porosity of any class of soil they print is 0.50 (clay loam, 0.501). */
export const MOST_PRINTED_VOID_SHARE = 0.5;

/** Common practice, no source: what water can fill and leave in a bioretention soil. */
export const USUAL_VOID_SHARE = 0.25;
