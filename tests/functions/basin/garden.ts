import fc from "fast-check";
import type { Basin, Garden } from "../../../functions/basin/water-balance.ts";

/** Numbers as people measure them: not so small that only rounding is left. */
const between = (min: number, max: number) => fc.integer({ min: 0, max: 10_000 }).map((part) => min + ((max - min) * part) / 10_000);

/** Gardens of a yard, from a shallow sand bed to a deep slow one. */
export const garden: fc.Arbitrary<Garden> = fc.record({
  contributingSquareFeet: between(0, 5000),
  runoffShare: between(0, 1),
  floorSquareFeet: between(10, 500),
  pondingInches: between(0, 12),
  designInchesPerHour: between(0, 4),
  mediaInches: fc.oneof(fc.constant(0), between(3, 36)),
  voidShare: between(0.05, 0.4),
  sideSlope: between(0, 4),
  evapotranspirationInchesPerDay: between(0, 0.3),
});

/** The handbook's basin: vertical sides, 100 sq ft, 6 in of ponding over 24 in of media, 0.5 in/h, 1,000 sq ft of roof. */
export const roofGarden: Garden = {
  contributingSquareFeet: 1000,
  runoffShare: 0.95,
  floorSquareFeet: 100,
  pondingInches: 6,
  designInchesPerHour: 0.5,
  mediaInches: 24,
  voidShare: 0.25,
  sideSlope: 0,
  evapotranspirationInchesPerDay: 0,
};

/**
 * The rim, and the water in the pond up to a depth, cut into thin ellipses 2 to 1: geometry done another way than the
 * basin's own formulas.
 */
export function slicedPond(basin: Basin, depthInches: number): { readonly areaSquareFeet: number; readonly cubicFeet: number } {
  const width = Math.sqrt(basin.floorSquareFeet / (2 * (Math.PI / 4)));
  const areaAt = (feet: number) => (Math.PI / 4) * (2 * width + 2 * basin.sideSlope * feet) * (width + 2 * basin.sideSlope * feet);
  const slices = 2000;
  const thickness = depthInches / 12 / slices;
  let cubicFeet = 0;
  for (let slice = 0; slice < slices; slice += 1) cubicFeet += thickness * areaAt((slice + 0.5) * thickness);
  return { areaSquareFeet: areaAt(depthInches / 12), cubicFeet };
}
