import { areaAtHeightSquareFeet, volumeToHeightCubicFeet, type BasinFloor } from "../basin/basin-shape.ts";
import { stateFactors, type EarthSoil } from "../published/fm-5-434.ts";
import { CUBIC_FEET_PER_CUBIC_YARD, INCHES_PER_FOOT } from "../quantities.ts";
import { levelPad } from "./level-pad.ts";
import { frustumVolume, groundAtFeet, volumeOverGround, type FallingGround, type Frustum } from "./over-ground.ts";

/**
 * Earth to dig for a basin, measured in place: the hole that mulch and soil mix are put into, as the section draws it.
 *
 *   to the floor   the basin from its floor to full water, by the prismoidal rule (basin-volume)
 *   mulch          rim area x mulch depth: it lies under the finished floor and sides, straight down from them
 *   soil mix       floor area x mix depth: straight down under the mulch of the floor
 *   slope          on ground that falls: what stands over the water uphill and is cut back along the sides as they go on
 *                  rising, less the part of the hole that lies over the ground downhill (over-ground)
 *   water level    S x over the ground at the uphill rim, x as for a level pad as wide as the rim (level-pad)
 *   dig            the four together                                                        (all in cu yd)
 *
 * Source  Geometry; prismoidal rule; soil factors of US Army, FM 5-434, 15 June 2000, table 1-1.
 * Domain  A floor of some area, depths >= 0, side slope >= 0, 0 <= ground slope < 1 / side slope.
 * Limits  One even fall across the floor's width, level along its length; turf is counted. In place (bank): dug earth
 *         swells, see soil-state. What is placed again, as a berm or under the floor, is for cut-fill.
 */
export function basinDig(hole: BasinHole): BasinDig {
  const { floor, sideSlope } = hole;
  const { pondingFeet, mulchFeet, mediaFeet } = depthsInFeet(hole);
  const ground = groundOf(hole);
  const toFloorCubicYards = cubicYards(volumeToHeightCubicFeet(floor, pondingFeet, sideSlope));
  const mulchCubicYards = cubicYards(areaAtHeightSquareFeet(floor, pondingFeet, sideSlope) * mulchFeet);
  const mediaCubicYards = cubicYards(floor.areaSquareFeet * mediaFeet);
  const aboveWater = cutAboveWater(hole, ground);
  const slopeCubicYards = cubicYards(
    frustumVolume(floor, aboveWater) - volumeOverGround(floor, aboveWater, ground) - underWaterOverGround(hole, ground),
  );
  return {
    toFloorCubicYards,
    mulchCubicYards,
    mediaCubicYards,
    slopeCubicYards,
    wholeCubicYards: toFloorCubicYards + mulchCubicYards + mediaCubicYards + slopeCubicYards,
  };
}

function cubicYards(cubicFeet: number): number {
  return cubicFeet / CUBIC_FEET_PER_CUBIC_YARD;
}

export interface BasinHole {
  /** Its length across the slope, its width down it. */
  readonly floor: BasinFloor;
  readonly pondingInches: number;
  readonly mulchInches: number;
  readonly mediaInches: number;
  readonly sideSlope: number;
  readonly groundSlopePercent: number;
  readonly soil: EarthSoil;
}

export interface BasinDig {
  /** From the full water down to the finished floor and sides. */
  readonly toFloorCubicYards: number;
  readonly mulchCubicYards: number;
  readonly mediaCubicYards: number;
  /** More than on level ground. */
  readonly slopeCubicYards: number;
  readonly wholeCubicYards: number;
}

/** Common practice, no source: 2 to 4 in of mulch. */
export const USUAL_MULCH_INCHES = 3;

/** Common practice, no source: yards are mostly loam. */
export const USUAL_EARTH: EarthSoil = "loam";

/** 29 CFR 1926 subpart P (from memory): from here a ladder or ramp is required, and a program garden is referred. */
export const REFERRED_DIG_DEPTH_INCHES = 48;

/** From the full water down. */
export function depthsInFeet({ pondingInches, mulchInches, mediaInches }: BasinHole) {
  return {
    pondingFeet: pondingInches / INCHES_PER_FOOT,
    mulchFeet: mulchInches / INCHES_PER_FOOT,
    mediaFeet: mediaInches / INCHES_PER_FOOT,
  };
}

/** Seen from the full water: the height of the old ground, and where it stands at the uphill rim. */
export function groundOf(hole: BasinHole): FallingGround & { readonly cutWidthFeet: number; readonly uphillRiseFeet: number } {
  const fall = hole.groundSlopePercent / 100;
  const rimWidthFeet = hole.floor.widthFeet + 2 * hole.sideSlope * (hole.pondingInches / INCHES_PER_FOOT);
  const { cutWidthFeet } = levelPad(rimWidthFeet, fall, stateFactors.values[hole.soil].compacted);
  return {
    fall,
    middleFeet: fall * (cutWidthFeet - rimWidthFeet / 2),
    cutWidthFeet,
    uphillRiseFeet: fall * cutWidthFeet,
  };
}

/** Under the ground, at the floor's uphill edge. */
export function deepestDigFeet(hole: BasinHole): number {
  const { pondingFeet, mulchFeet, mediaFeet } = depthsInFeet(hole);
  return pondingFeet + mulchFeet + mediaFeet + groundAtFeet(groundOf(hole), -hole.floor.widthFeet / 2);
}

/** The hole under the full water: soil mix, floor and sides, mulch. */
export function underWaterOverGround(hole: BasinHole, ground: FallingGround): number {
  const { pondingFeet, mulchFeet, mediaFeet } = depthsInFeet(hole);
  const reachFeet = hole.sideSlope * pondingFeet;
  const level = (heightFeet: number, wideningFeet: number) => ({ heightFeet, wideningFeet });
  const bodies: readonly Frustum[] = [
    { bottom: level(-pondingFeet - mulchFeet - mediaFeet, 0), top: level(-pondingFeet - mulchFeet, 0) },
    { bottom: level(-pondingFeet - mulchFeet, 0), top: level(-mulchFeet, reachFeet) },
    { bottom: level(-mulchFeet, reachFeet), top: level(0, reachFeet) },
  ];
  return bodies.reduce((sum, body) => sum + volumeOverGround(hole.floor, body, ground), 0);
}

/** The sides as they go on over the full water, up to where the highest of them meets the ground. */
function cutAboveWater(hole: BasinHole, { fall, uphillRiseFeet }: ReturnType<typeof groundOf>): Frustum {
  return sidesOverWater(hole, uphillRiseFeet / (1 - fall * hole.sideSlope));
}

export function sidesOverWater({ sideSlope, pondingInches }: BasinHole, topFeet: number): Frustum {
  const reachFeet = (sideSlope * pondingInches) / INCHES_PER_FOOT;
  return {
    bottom: { heightFeet: 0, wideningFeet: reachFeet },
    top: { heightFeet: topFeet, wideningFeet: reachFeet + sideSlope * topFeet },
  };
}
