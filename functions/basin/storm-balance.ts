import { INCHES_PER_FOOT } from "../quantities.ts";
import { runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import type { BasinStorm } from "./basin-area.ts";
import { areaAtHeightSquareFeet, basinFloor, USUAL_OUTLINE, volumeToHeightCubicFeet } from "./basin-shape.ts";
import { mediaWaterCubicFeet } from "./drawdown.ts";

/**
 * What a storm brings to a basin and what the basin does with it, each by its own equation.
 *
 *   brought = runoff + P x rim area                                                     (cu ft; P in ft, areas in sq ft)
 *   taken   = ponding volume + floor area x void share x media depth + floor area x f T
 *
 * On the floor that basin-area finds, the two are equal; taken is more where the sloping sides alone hold the storm.
 *
 * Source  Water balance of one storm, as in basin-area.
 * Domain  That of basin-area; floorSquareFeet >= 0.
 * Limits  Those of basin-area.
 */
export function stormBalance(storm: BasinStorm, floorSquareFeet: number): StormBalance {
  const { shape, lengthToWidth } = storm.outline ?? USUAL_OUTLINE;
  const floor = basinFloor(floorSquareFeet, shape, lengthToWidth);
  const pondingFeet = storm.pondingInches / INCHES_PER_FOOT;
  const rimSquareFeet = areaAtHeightSquareFeet(floor, pondingFeet, storm.sideSlope);
  const { runoffCubicFeet } = storm;
  const rainOnBasinCubicFeet = storm.rainOnBasinCounted ? runoffVolumeCubicFeet(rimSquareFeet, storm.stormInches, 1) : 0;
  const pondingCubicFeet = volumeToHeightCubicFeet(floor, pondingFeet, storm.sideSlope);
  const mediaCubicFeet = mediaWaterCubicFeet(floorSquareFeet, storm.mediaInches, storm.voidShare);
  const soakedCubicFeet = (storm.designInchesPerHour * storm.stormHours * floorSquareFeet) / INCHES_PER_FOOT;
  return {
    rimSquareFeet,
    runoffCubicFeet,
    rainOnBasinCubicFeet,
    broughtCubicFeet: runoffCubicFeet + rainOnBasinCubicFeet,
    pondingCubicFeet,
    mediaCubicFeet,
    soakedCubicFeet,
    takenCubicFeet: pondingCubicFeet + mediaCubicFeet + soakedCubicFeet,
  };
}

export interface StormBalance {
  readonly rimSquareFeet: number;
  readonly runoffCubicFeet: number;
  /** 0 where it is not counted. */
  readonly rainOnBasinCubicFeet: number;
  readonly broughtCubicFeet: number;
  readonly pondingCubicFeet: number;
  /** In the voids. */
  readonly mediaCubicFeet: number;
  /** While it rains. */
  readonly soakedCubicFeet: number;
  readonly takenCubicFeet: number;
}
