import { CUBIC_FEET_PER_CUBIC_YARD } from "../quantities.ts";
import { basinVolumeCubicFeet } from "../basin/basin-volume.ts";
import type { BasinShape } from "../basin/basin-shape.ts";

/**
 * Earth to dig for a basin, measured in place.
 *
 *   V = volume of the basin to the depth below grade / 27      (cu yd; basin-volume in cu ft)
 *
 * Source  Prismoidal rule as in basin-volume; 27 cu ft in a cu yd.
 * Domain  That of basin-volume.
 * Limits  Level ground: on a slope the uphill side is more. In place (bank): dug earth swells, see soil-state.
 */
export function digVolumeCubicYards(
  floorAreaSquareFeet: number,
  depthInches: number,
  sideSlope: number,
  shape: BasinShape,
  lengthToWidth: number,
): number {
  return basinVolumeCubicFeet(floorAreaSquareFeet, depthInches, sideSlope, shape, lengthToWidth) / CUBIC_FEET_PER_CUBIC_YARD;
}

/** 29 CFR 1926 subpart P (from memory): from here a ladder or ramp is required, and a program garden is referred. */
export const REFERRED_DIG_DEPTH_INCHES = 48;
