import { fromUs, INCHES_PER_FOOT, toUs, type UnitSystem } from "../../../functions/quantities.ts";
import { quantityWords } from "../../parts/quantity-words.ts";

/** An upright depth (in or mm) as a length (ft or m) of the same units, as drawings need it. */
export function depthAsLength(depth: number, units: UnitSystem): number {
  return fromUs("length", toUs("depth", depth, units) / INCHES_PER_FOOT, units);
}

/** "6 in" or "152 mm" of an upright length that a drawing holds in ft or m. */
export function depthWords(length: number, units: UnitSystem): string {
  return quantityWords("depth", lengthAsDepth(length, units), units);
}

/** To a whole inch or millimetre: as near as the fall of a lawn is known. */
export function roundDepthWords(length: number, units: UnitSystem): string {
  return quantityWords("depth", Math.round(lengthAsDepth(length, units)), units);
}

/** The same as a number. */
export function roundDepth(length: number | null, units: UnitSystem): number | null {
  return length === null ? null : Math.round(lengthAsDepth(length, units));
}

/** An upright length (ft or m) as a depth (in or mm) of the same units. */
export function lengthAsDepth(length: number, units: UnitSystem): number {
  return fromUs("depth", toUs("length", length, units) * INCHES_PER_FOOT, units);
}
