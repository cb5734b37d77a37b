import { areaAtHeightSquareFeet, basinFloor, type BasinFloor, type BasinShape } from "../basin/basin-shape.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * The three planting zones of a basin, in plan.
 *
 *   A, wettest     the level floor
 *   B, transition  the sloping sides up to the ponding level:  k (L + 2 z d) (W + 2 z d) - A
 *   C, berm        a ring of the berm's top width w around the rim:  k 2 w (L' + W' + 2 w), with L' and W' at the rim
 *
 *   in sq ft; L and W the floor's axes in ft, d ponding, z run to rise, k as in basin-shape
 *
 * Source  Geometry; each edge moves outward evenly, as in basin-shape.
 * Domain  Areas, depths, slopes and widths >= 0, lengthToWidth >= 1.
 * Limits  Areas as seen from above. The outer face of the berm is lawn here, and not counted.
 */
export function plantingZones(
  floorSquareFeet: number,
  pondingInches: number,
  sideSlope: number,
  bermTopFeet: number,
  shape: BasinShape,
  lengthToWidth: number,
): ZoneAreas {
  const floor = basinFloor(floorSquareFeet, shape, lengthToWidth);
  const { rimSquareFeet, bermEdgeSquareFeet } = plantingEdges(floor, pondingInches, sideSlope, bermTopFeet);
  return {
    wettestSquareFeet: floorSquareFeet,
    transitionSquareFeet: rimSquareFeet - floorSquareFeet,
    bermSquareFeet: bermEdgeSquareFeet - rimSquareFeet,
  };
}

/** What the rim and the berm's outer edge enclose. */
export function plantingEdges(floor: BasinFloor, pondingInches: number, sideSlope: number, bermTopFeet: number): PlantingEdges {
  const reachFeet = (sideSlope * pondingInches) / INCHES_PER_FOOT;
  return {
    reachFeet,
    rimSquareFeet: areaAtHeightSquareFeet(floor, reachFeet, 1),
    bermEdgeSquareFeet: areaAtHeightSquareFeet(floor, reachFeet + bermTopFeet, 1),
  };
}

export interface PlantingEdges {
  /** From the floor's edge to the rim, in plan. */
  readonly reachFeet: number;
  readonly rimSquareFeet: number;
  readonly bermEdgeSquareFeet: number;
}

export interface ZoneAreas {
  readonly wettestSquareFeet: number;
  readonly transitionSquareFeet: number;
  readonly bermSquareFeet: number;
}

/** Common practice, no source: the narrowest crest that lasts. */
export const USUAL_BERM_TOP_FEET = 1;
