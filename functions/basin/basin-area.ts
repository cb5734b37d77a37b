import { INCHES_PER_FOOT } from "../quantities.ts";
import { FILL, USUAL_OUTLINE, type BasinOutline } from "./basin-shape.ts";

/**
 * Floor area of the basin that just holds a storm, or the least floor where that holds it as well.
 *
 *   runoff + rain on the basin = ponding + water in the media + water soaked in during the storm
 *
 *   R + P Arim = V(d) + A (n m + f T)      (cu ft; depths in ft, areas in sq ft)
 *
 *   R runoff that comes to it, P storm, Arim the water's surface when full, V(d) the ponding volume of the floor's
 *   outline (basin-shape), an ellipse twice as long as wide unless another is given, A the floor area, m and n depth and
 *   void share of the media, f design rate, T storm hours credited. With A = k r W^2, r length to width, this is a
 *   quadratic in the floor's width W.
 *
 * Source  Water balance of one storm; with vertical sides, no rain on the basin and R = i D Ai it is the published
 *         Ap = i D Ai / (d' + f D), Sustainable Technologies Evaluation Program (Ontario), wiki page on infiltration.
 *         Sides as in basin-volume.
 * Domain  Volumes, depths, rates and hours >= 0, shares 0 to 1.
 * Limits  One storm that fills the basin once, level floor. Undefined when each square foot of basin catches at least
 *         as much rain as it can hold: no size will do. The least floor, 0 unless another is given, where the sides do the rest.
 */
export function basinFloorSquareFeet(storm: BasinStorm, leastSquareFeet = 0): number | undefined {
  const { shape, lengthToWidth } = storm.outline ?? USUAL_OUTLINE;
  const fill = FILL[shape];
  const depth = storm.pondingInches / INCHES_PER_FOOT;
  const reach = storm.sideSlope * depth;
  const rain = storm.rainOnBasinCounted ? storm.stormInches / INCHES_PER_FOOT : 0;
  const underFloor = (storm.voidShare * storm.mediaInches + storm.designInchesPerHour * storm.stormHours) / INCHES_PER_FOOT;
  const runoff = storm.runoffCubicFeet;

  // A yard that sends nothing needs no basin, whatever falls on one.
  if (runoff === 0) return leastSquareFeet;
  const heldPerArea = depth + underFloor - rain;
  if (heldPerArea <= 0) return undefined;
  // fill x [ratio x held W^2 + (ratio + 1) reach (depth - 2 rain) W + 4 reach^2 (depth / 3 - rain)] = runoff
  const square = fill * lengthToWidth * heldPerArea;
  const linear = fill * (lengthToWidth + 1) * reach * (depth - 2 * rain);
  const short = runoff - fill * 4 * reach ** 2 * (depth / 3 - rain);
  const leastWidth = Math.sqrt(leastSquareFeet / (fill * lengthToWidth));
  if (leastWidth * (square * leastWidth + linear) >= short) return leastSquareFeet;
  const width = positiveRoot(square, linear, short);
  return fill * lengthToWidth * width ** 2;
}

export interface BasinStorm {
  /** From all that drains to it. */
  readonly runoffCubicFeet: number;
  readonly designInchesPerHour: number;
  readonly pondingInches: number;
  readonly stormInches: number;
  readonly mediaInches: number;
  readonly voidShare: number;
  /** Hours of soaking during the storm that count; 0 gives no credit. */
  readonly stormHours: number;
  readonly sideSlope: number;
  readonly rainOnBasinCounted: boolean;
  readonly outline?: BasinOutline;
}

/** A design storm is a day long at most, as the 24-hour curves of the Soil Conservation Service are: more hours were minutes. */
export const LONGEST_STORM_HOURS = 24;

/** Common practice, no source: most rains in most places are no deeper. */
export const USUAL_STORM_INCHES = 1;

/** University of Wisconsin Extension, rain garden pages (read): larger is harder to dig and to level. */
export const LARGEST_USUAL_FLOOR_SQUARE_FEET = 300;

/** The larger x of square x^2 + linear x = short, where square is above 0 and x is. */
function positiveRoot(square: number, linear: number, short: number): number {
  const root = Math.sqrt(linear ** 2 + 4 * square * short);
  // Two forms of one answer: each is taken where it adds, so that nothing cancels.
  return linear >= 0 ? (2 * short) / (root + linear) : (root - linear) / (2 * square);
}
