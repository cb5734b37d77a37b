import { wholePlants, type PlantingPattern } from "./plant-count.ts";

/**
 * Plants of one kind in a mix, on its share of the area and at its own spacing.
 *
 *   n of a kind = plants that cover share x area, rounded up      (plant-count)
 *
 * Source  Geometry as in plant-count; rounding up kind by kind, then dropping or adding: common practice, no source.
 * Domain  areaSquareFeet >= 0, spacings > 0, shares >= 0 that add up to 1 or less.
 * Limits  Those of plant-count. Shares that add up to less leave ground bare.
 */
export function plantsOfKind(areaSquareFeet: number, { spacingFeet, share }: PlantedKind, pattern: PlantingPattern): number {
  const coveredSquareFeet = share * areaSquareFeet;
  return coveredSquareFeet === 0 ? 0 : wholePlants(coveredSquareFeet, spacingFeet, pattern);
}

export interface PlantedKind {
  readonly spacingFeet: number;
  /** Of the area. */
  readonly share: number;
}
