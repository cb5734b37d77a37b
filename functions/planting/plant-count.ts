/**
 * Plants that cover an area at an even spacing.
 *
 *   square    n = A / s^2                       (A in sq ft, s in ft)
 *   triangle  n = A / (sin 60 deg x s^2)
 *
 * rounded up to whole plants.
 *
 * Source  Geometry of the two grids; a nursery spacing chart prints the square grid for 100 sq ft at 6, 12, 18 and 24 in
 *         as 400, 100, 44 and 25. Triangles hold 15.5 percent more.
 * Domain  areaSquareFeet >= 0, spacingFeet > 0.
 * Limits  Open ground: take off trunks, stone and inlets first, and add for losses yourself.
 */
export function wholePlants(areaSquareFeet: number, spacingFeet: number, pattern: PlantingPattern): number {
  // A part of a plant that is only rounding error does not buy another plant.
  return Math.ceil(plantsPerArea(areaSquareFeet, spacingFeet, pattern) * (1 - 1e-8));
}

/** Before rounding up. */
export function plantsPerArea(areaSquareFeet: number, spacingFeet: number, pattern: PlantingPattern): number {
  return areaSquareFeet / spacingFeet / spacingFeet / AREA_SHARE[pattern];
}

export type PlantingPattern = "triangle" | "square";

export const PLANTING_PATTERNS: readonly PlantingPattern[] = ["triangle", "square"];

/** Ground each plant stands for, as a share of the spacing squared. */
const AREA_SHARE: Readonly<Record<PlantingPattern, number>> = { triangle: Math.sqrt(3) / 2, square: 1 };

/** Common practice, no source: shrubs stand 3 to 5 ft apart, so more than this is a tree or a spacing in inches. */
export const WIDEST_LIKELY_SPACING_FEET = 10;
