import { INCHES_PER_FOOT } from "../quantities.ts";
import { runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import { areaAtHeightSquareFeet, basinFloor, USUAL_OUTLINE, volumeToHeightCubicFeet, type BasinOutline } from "./basin-shape.ts";
import { mediaWaterCubicFeet } from "./drawdown.ts";

/**
 * The water balance of a basin over one step of steady inflow.
 *
 *   available = stored + inflow                                     (cu ft)
 *   drawn     = least of (soak + evaporation) x hours, available
 *   overflow  = what is then left over the capacity
 *   stored'   = available - drawn - overflow
 *
 * Water fills the voids of the media first and ponds above; as the media drains, the pond refills it. So media and
 * pond are one store, whose pond is what it holds over the media's voids. Water leaves through the floor alone at the
 * design rate, rain falls on the whole rim, and what stands above the ponding depth spills.
 *
 * Soaking goes on all through the step and spilling comes last: for steady inflow that is the exact solution whatever
 * the length of the step. A bucket that spills before it drains is this one with its capacity less by one step's draw.
 *
 * Source  Conservation of water. Even sides, as in basin-shape; an ellipse twice as long as wide unless another
 *         outline is given.
 * Domain  Volumes, areas, depths, rates and hours >= 0, voidShare 0 to 1.
 * Limits  Water passes from pond to media at once; soil below takes the design rate without end; no freezing.
 */
export function balanceStep(store: BasinStore, storedCubicFeet: number, inflowCubicFeet: number, hours: number): BasinStep {
  const available = storedCubicFeet + inflowCubicFeet;
  const drawn = Math.min(store.drawCubicFeetPerHour * hours, available);
  const left = available - drawn;
  const stored = Math.min(left, store.capacityCubicFeet);
  return { storedCubicFeet: stored, drawnCubicFeet: drawn, overflowCubicFeet: left - stored };
}

/** How a step ends, and what left the basin during it. */
export interface BasinStep {
  readonly storedCubicFeet: number;
  /** Soaked into the ground or evaporated. */
  readonly drawnCubicFeet: number;
  readonly overflowCubicFeet: number;
}

/** A basin as its water sees it. */
export interface BasinStore {
  /** Voids of the media. */
  readonly mediaCubicFeet: number;
  /** Voids of the media and the pond above it, full. */
  readonly capacityCubicFeet: number;
  /** The surface that catches rain. */
  readonly rimSquareFeet: number;
  readonly drawCubicFeetPerHour: number;
  /** The part of what is drawn that soaks into the ground. */
  readonly soakedShare: number;
}

export interface Basin {
  readonly floorSquareFeet: number;
  readonly pondingInches: number;
  readonly designInchesPerHour: number;
  readonly mediaInches: number;
  readonly voidShare: number;
  readonly sideSlope: number;
  /** From floor and plants, while water is stored. */
  readonly evapotranspirationInchesPerDay: number;
  readonly outline?: BasinOutline;
}

/** A basin and what drains to it. */
export interface Garden extends Basin {
  readonly contributingSquareFeet: number;
  readonly runoffShare: number;
}

export function basinStore(basin: Basin): BasinStore {
  const { shape, lengthToWidth } = basin.outline ?? USUAL_OUTLINE;
  const floor = basinFloor(basin.floorSquareFeet, shape, lengthToWidth);
  const pondingFeet = basin.pondingInches / INCHES_PER_FOOT;
  const mediaCubicFeet = mediaWaterCubicFeet(basin.floorSquareFeet, basin.mediaInches, basin.voidShare);
  const drawInchesPerHour = basin.designInchesPerHour + basin.evapotranspirationInchesPerDay / HOURS_PER_DAY;
  return {
    mediaCubicFeet,
    capacityCubicFeet: mediaCubicFeet + volumeToHeightCubicFeet(floor, pondingFeet, basin.sideSlope),
    rimSquareFeet: areaAtHeightSquareFeet(floor, pondingFeet, basin.sideSlope),
    drawCubicFeetPerHour: (drawInchesPerHour * basin.floorSquareFeet) / INCHES_PER_FOOT,
    soakedShare: drawInchesPerHour === 0 ? 1 : basin.designInchesPerHour / drawInchesPerHour,
  };
}

/** Water that a step's rain brings to the basin: runoff, and the rain on the basin itself. */
export function stepInflow(store: BasinStore, garden: Garden, rainInches: number): StepInflow {
  return {
    runoffCubicFeet: runoffVolumeCubicFeet(garden.contributingSquareFeet, rainInches, garden.runoffShare),
    directCubicFeet: runoffVolumeCubicFeet(store.rimSquareFeet, rainInches, 1),
  };
}

export interface StepInflow {
  readonly runoffCubicFeet: number;
  readonly directCubicFeet: number;
}

export const HOURS_PER_DAY = 24;
