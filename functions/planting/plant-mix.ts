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
export function plantsOfKind(areaSquareFeet: number, kind: PlantedKind, pattern: PlantingPattern): number {
  const covered = coveredSquareFeet(areaSquareFeet, kind);
  return covered === 0 ? 0 : wholePlants(covered, kind.spacingFeet, pattern);
}

export function coveredSquareFeet(areaSquareFeet: number, { share }: PlantedKind): number {
  return share * areaSquareFeet;
}

export interface PlantedKind {
  readonly spacingFeet: number;
  /** Of the area. */
  readonly share: number;
}
