import { CUBIC_FEET_PER_CUBIC_YARD, INCHES_PER_FOOT } from "../quantities.ts";
import { stateFactors, type EarthSoil } from "../published/fm-5-434.ts";
import { bermSectionSquareFeet, bermVolumeCubicFeet } from "./berm-volume.ts";
import { levelPad } from "./level-pad.ts";
import { soilVolumeInState } from "./soil-state.ts";

/**
 * Cut, berm and what is left over, for a rectangular garden with a level floor on sloping ground.
 *
 *   water level   where a level pad's cut would balance its fill, x from the uphill edge (level-pad)
 *   floor         the ponding depth under the water level
 *   cut           ground above the floor, in place
 *   fill          under the floor where the ground falls below it, and the berm (berm-volume); compacted
 *   berm          around the garden wherever the ground is lower than water level + freeboard; on the downhill edge
 *                 h = S (B - x) + freeboard, tapering uphill along both ends
 *   left over     cut - fill / compacted per in place                                  (all in cu yd; short if negative)
 *
 * Source  Geometry; soil factors of US Army, FM 5-434, 15 June 2000, table 1-1. Crest 1 ft, sides 3 to 1, freeboard
 *         2 to 4 in: common practice, no source.
 * Domain  Lengths, depths and slopes >= 0, all finite.
 * Limits  An even slope, level across; vertical sides; the corners of the berm are not counted; turf is. The berm's lowest
 *         point is the overflow sill, which is left out here.
 */
export function cutAndFill(garden: SlopingGarden): CutAndFill {
  const { acrossFeet, downFeet, soil } = garden;
  const slope = garden.groundSlopePercent / 100;
  const { cutWidthFeet } = levelPad(downFeet, slope, stateFactors.values[soil].compacted);
  const pondingFeet = garden.pondingInches / INCHES_PER_FOOT;
  const freeboardFeet = garden.freeboardInches / INCHES_PER_FOOT;
  const uphillRiseFeet = slope * cutWidthFeet;
  const downhillFallFeet = slope * (downFeet - cutWidthFeet);

  const uphillDigFeet = pondingFeet + uphillRiseFeet;
  const downhillDigFeet = pondingFeet - downhillFallFeet;
  const floorFillCubicFeet = downhillDigFeet < 0 ? (acrossFeet * downhillDigFeet ** 2) / (2 * slope) : 0;
  const cutCubicFeet =
    downhillDigFeet < 0 ? (acrossFeet * uphillDigFeet ** 2) / (2 * slope) : (acrossFeet * downFeet * (uphillDigFeet + downhillDigFeet)) / 2;

  const bermHeightFeet = freeboardFeet + downhillFallFeet;
  const bermCubicFeet = bermAround(garden, slope, bermHeightFeet, freeboardFeet - uphillRiseFeet);

  const cutCubicYards = cutCubicFeet / CUBIC_FEET_PER_CUBIC_YARD;
  const fillCubicYards = (floorFillCubicFeet + bermCubicFeet) / CUBIC_FEET_PER_CUBIC_YARD;
  return {
    cutCubicYards,
    fillCubicYards,
    leftOverCubicYards: cutCubicYards - soilVolumeInState(fillCubicYards, "compacted", "in place", soil),
    bermHeightFeet,
    cutWidthFeet,
    uphillRiseFeet,
    downhillFallFeet,
    floorFillCubicYards: floorFillCubicFeet / CUBIC_FEET_PER_CUBIC_YARD,
    bermCubicYards: bermCubicFeet / CUBIC_FEET_PER_CUBIC_YARD,
    deepestDigFeet: uphillDigFeet,
    hasFloorOnFill: floorFillCubicFeet > 0,
  };
}

export interface SlopingGarden {
  readonly acrossFeet: number;
  readonly downFeet: number;
  readonly pondingInches: number;
  readonly groundSlopePercent: number;
  readonly bermTopFeet: number;
  readonly bermSideSlope: number;
  readonly freeboardInches: number;
  readonly soil: EarthSoil;
}

export interface CutAndFill {
  /** In place. */
  readonly cutCubicYards: number;
  /** Compacted. */
  readonly fillCubicYards: number;
  /** In place. */
  readonly leftOverCubicYards: number;
  /** Above the ground at the downhill edge. */
  readonly bermHeightFeet: number;
  /** Uphill of the line where the ground stands at the water level. */
  readonly cutWidthFeet: number;
  /** Of the ground, from that line to the uphill edge. */
  readonly uphillRiseFeet: number;
  readonly downhillFallFeet: number;
  /** Compacted. */
  readonly floorFillCubicYards: number;
  readonly bermCubicYards: number;
  /** At the uphill edge. */
  readonly deepestDigFeet: number;
  readonly hasFloorOnFill: boolean;
}

/** The crest is level; the ground under it falls, so that along the ends the height grows evenly downhill. */
function bermAround(garden: SlopingGarden, slope: number, downhillFeet: number, uphillFeet: number): number {
  const { acrossFeet, downFeet, bermTopFeet: top, bermSideSlope: side } = garden;
  const startsFeet = Math.max(uphillFeet, 0);
  const endLengthFeet = uphillFeet < 0 ? downhillFeet / slope : downFeet;
  const middle = bermSectionSquareFeet(top, (startsFeet + downhillFeet) / 2, side);
  const uphill = bermSectionSquareFeet(top, startsFeet, side);
  const downhill = bermSectionSquareFeet(top, downhillFeet, side);
  // The section grows with the square of the way along an end: Simpson's rule is exact.
  const endsCubicFeet = (2 * endLengthFeet * (uphill + 4 * middle + downhill)) / 6;
  return bermVolumeCubicFeet(acrossFeet, top, downhillFeet, side) + bermVolumeCubicFeet(acrossFeet, top, startsFeet, side) + endsCubicFeet;
}
