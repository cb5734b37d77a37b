import { CUBIC_FEET_PER_CUBIC_YARD } from "../quantities.ts";
import { printedDensities } from "../published/tm-9-2320-366-10-1.ts";

/**
 * Weight of a volume of material as it lies.
 *
 *   W = V x density x 27 / 2000      (US tons; V cu yd, density lb per cu ft)
 *
 * Source  US Army, TM 9-2320-366-10-1, table 2-15 (read). Compost, mulch and wet topsoil: the heavy end of what is usual,
 *         common practice, no source.
 * Domain  cubicYards >= 0; the materials below.
 * Limits  Moisture moves a density by a quarter and more. Moist earth is the weight of packed earth.
 */
export function materialTons(cubicYards: number, material: Material): number {
  return (cubicYards * poundsPerCubicFoot(material) * CUBIC_FEET_PER_CUBIC_YARD) / POUNDS_PER_TON;
}

export type Material = keyof typeof printedDensities.values | keyof typeof usualPoundsPerCubicYard;

export function isPrintedMaterial(material: Material): material is keyof typeof printedDensities.values {
  return material in printedDensities.values;
}

/** Common practice, no source; moist or wet, lb per cu yd. */
export const usualPoundsPerCubicYard = { compost: 1000, mulch: 800, "wet topsoil": 3000 } as const;

export const MATERIALS = [...Object.keys(printedDensities.values), ...Object.keys(usualPoundsPerCubicYard)] as readonly Material[];

export const POUNDS_PER_TON = 2000;

export function poundsPerCubicFoot(material: Material): number {
  return isPrintedMaterial(material) ? printedDensities.values[material] : usualPoundsPerCubicYard[material] / CUBIC_FEET_PER_CUBIC_YARD;
}
