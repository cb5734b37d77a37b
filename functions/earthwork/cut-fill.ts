import { CUBIC_FEET_PER_CUBIC_YARD, INCHES_PER_FOOT } from "../quantities.ts";
import { basinDig, depthsInFeet, groundOf, sidesOverWater, underWaterOverGround, type BasinDig, type BasinHole } from "./basin-dig.ts";
import { groundAtFeet, volumeOverGround } from "./over-ground.ts";
import { soilVolumeInState } from "./soil-state.ts";

/**
 * Cut, berm and what is left over, for a basin with a level floor on sloping ground.
 *
 *   cut          the dig of the basin, mulch and soil mix included, in place                       (basin-dig)
 *   berm         wherever the ground is lower than the crest: the basin's sides go on rising to full water + freeboard,
 *                then the crest, then the outer face down to the ground, 1 in zo
 *   fill         what of berm and basin lies over the ground and is earth; compacted               (over-ground)
 *   left over    cut - fill / compacted per in place: what berm, mulch and soil mix leave          (all in cu yd)
 *
 * Source  Geometry; soil factors of US Army, FM 5-434, 15 June 2000, table 1-1. Crest 1 ft, sides 3 to 1, freeboard
 *         2 to 4 in: common practice, no source.
 * Domain  That of basin-dig; lengths >= 0, ground slope < 1 / outer side slope.
 * Limits  Those of basin-dig. The berm's lowest point is the overflow sill, which is left out here; so is the inlet.
 */
export function cutAndFill(basin: BermedBasin): CutAndFill {
  const { floor, soil } = basin;
  const { pondingFeet, mulchFeet, mediaFeet } = depthsInFeet(basin);
  const ground = groundOf(basin);
  const freeboardFeet = basin.freeboardInches / INCHES_PER_FOOT;
  const sides = sidesOverWater(basin, freeboardFeet);
  const crest = { heightFeet: freeboardFeet, wideningFeet: sides.top.wideningFeet + basin.bermTopFeet };
  const crestOverGroundFeet = freeboardFeet - groundAtFeet(ground, floor.widthFeet / 2 + crest.wideningFeet);
  const faceFeet = crestOverGroundFeet / (1 - ground.fall * basin.bermSideSlope);
  const toe = { heightFeet: crest.heightFeet - faceFeet, wideningFeet: crest.wideningFeet + basin.bermSideSlope * faceFeet };

  const dig = basinDig(basin);
  const floorDownhillFeet = groundAtFeet(ground, floor.widthFeet / 2);
  const bottomFeet = pondingFeet + mulchFeet + mediaFeet;
  const fillCubicYards =
    (volumeOverGround(floor, { bottom: toe, top: crest }, ground) -
      volumeOverGround(floor, sides, ground) -
      underWaterOverGround(basin, ground)) /
    CUBIC_FEET_PER_CUBIC_YARD;
  const { cutWidthFeet, uphillRiseFeet } = ground;
  return {
    dig,
    fillCubicYards,
    leftOverCubicYards: dig.wholeCubicYards - soilVolumeInState(fillCubicYards, "compacted", "in place", soil),
    bermHeightFeet: freeboardFeet - groundAtFeet(ground, floor.widthFeet / 2 + sides.bottom.wideningFeet),
    cutWidthFeet,
    uphillRiseFeet,
    hasFloorOnFill: floorDownhillFeet < -bottomFeet,
  };
}

export interface BermedBasin extends BasinHole {
  readonly bermTopFeet: number;
  /** Of the outer face; the inner one goes on with the basin's own sides. */
  readonly bermSideSlope: number;
  readonly freeboardInches: number;
}

export interface CutAndFill {
  /** In place. */
  readonly dig: BasinDig;
  /** Compacted. */
  readonly fillCubicYards: number;
  /** In place. */
  readonly leftOverCubicYards: number;
  /** Above the ground at the downhill rim. */
  readonly bermHeightFeet: number;
  /** Uphill of the line where the ground stands at the water level. */
  readonly cutWidthFeet: number;
  /** Of the ground over the full water, at the uphill rim. */
  readonly uphillRiseFeet: number;
  readonly hasFloorOnFill: boolean;
}

/** Common practice, no source: a narrower crest is trodden down. */
export const LEAST_BERM_TOP_FEET = 1;

/** Common practice, no source: 2 to 4 in stand between the overflow level and the berm's crest. */
export const LEAST_FREEBOARD_INCHES = 2;
