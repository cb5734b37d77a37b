/**
 * The plan of a basin floor and what its sloping sides make of it.
 *
 *   floor area           A = k L W                                (sq ft; k = pi / 4 for an ellipse, 1 for a rectangle)
 *   area at height h     k (L + 2 z h) (W + 2 z h)                (sq ft; z run to rise)
 *   volume to height d   A d + k (L + W) z d^2 + 4/3 k z^2 d^3    (cu ft)
 *
 * The volume is the integral of the area, which the prismoidal rule d/6 (bottom + 4 middle + top) gives exactly.
 *
 * Source  Geometry: each side of a slope z reaches z times the height further out.
 * Domain  floorAreaSquareFeet >= 0, lengthToWidth >= 1, sideSlope >= 0, heights >= 0.
 * Limits  A level floor, one slope all around. An ellipse widened evenly is taken as the ellipse on the longer axes.
 */
export interface BasinFloor {
  readonly areaSquareFeet: number;
  readonly lengthFeet: number;
  readonly widthFeet: number;
  /** Area as a share of length times width. */
  readonly fill: number;
}

export type BasinShape = "ellipse" | "rectangle";

export const BASIN_SHAPES: readonly BasinShape[] = ["ellipse", "rectangle"];

/** Common practice, no source: about twice as long, across the slope, as wide. */
export const USUAL_LENGTH_TO_WIDTH = 2;

/** What a floor looks like from above. */
export interface BasinOutline {
  readonly shape: BasinShape;
  readonly lengthToWidth: number;
}

export const USUAL_OUTLINE: BasinOutline = { shape: "ellipse", lengthToWidth: USUAL_LENGTH_TO_WIDTH };

export const FILL: Readonly<Record<BasinShape, number>> = { ellipse: Math.PI / 4, rectangle: 1 };

export function basinFloor(areaSquareFeet: number, shape: BasinShape, lengthToWidth: number): BasinFloor {
  const fill = FILL[shape];
  const widthFeet = Math.sqrt(areaSquareFeet / (fill * lengthToWidth));
  return { areaSquareFeet, lengthFeet: lengthToWidth * widthFeet, widthFeet, fill };
}

export function areaAtHeightSquareFeet(floor: BasinFloor, heightFeet: number, sideSlope: number): number {
  const wider = 2 * sideSlope * heightFeet;
  // Grown from the floor's own area, so that vertical sides give it back exactly.
  return floor.areaSquareFeet + floor.fill * wider * (floor.lengthFeet + floor.widthFeet + wider);
}

export function volumeToHeightCubicFeet(floor: BasinFloor, heightFeet: number, sideSlope: number): number {
  const { linear, square, cube } = volumeTerms(floor, sideSlope);
  return heightFeet * (linear + heightFeet * (square + heightFeet * cube));
}

/** Volume as a polynomial in the height, for those who have to turn it around. */
export function volumeTerms(floor: BasinFloor, sideSlope: number): VolumeTerms {
  return {
    linear: floor.areaSquareFeet,
    square: floor.fill * (floor.lengthFeet + floor.widthFeet) * sideSlope,
    cube: (4 / 3) * floor.fill * sideSlope ** 2,
  };
}

export interface VolumeTerms {
  readonly linear: number;
  readonly square: number;
  readonly cube: number;
}
