/**
 * Earth in a berm with a level crest, compacted.
 *
 *   section  a = c h + z h^2      (sq ft; c crest width and h height in ft, z run to rise of both sides)
 *   volume   V = L a              (cu ft; L length in ft)
 *
 * Source  Geometry.
 * Domain  lengthFeet, topWidthFeet, heightFeet, sideSlope >= 0.
 * Limits  Compacted: it takes more in place and more still loose, see soil-state.
 */
export function bermVolumeCubicFeet(lengthFeet: number, topWidthFeet: number, heightFeet: number, sideSlope: number): number {
  return lengthFeet * bermSectionSquareFeet(topWidthFeet, heightFeet, sideSlope);
}

export function bermSectionSquareFeet(topWidthFeet: number, heightFeet: number, sideSlope: number): number {
  return heightFeet * (topWidthFeet + sideSlope * heightFeet);
}

/** Common practice, no source: a narrower crest is trodden down. */
export const LEAST_BERM_TOP_FEET = 1;

/** Common practice, no source: 2 to 4 in stand between the overflow level and the berm's crest. */
export const LEAST_FREEBOARD_INCHES = 2;
