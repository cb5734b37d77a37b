import { wholePackages } from "../cost/whole-packages.ts";
import { materialTons, type Material } from "../amendment/material-weight.ts";

/**
 * Loads that carry off loose material, by the stricter of volume and weight.
 *
 *   n = the larger of V / load volume and weight / load weight limit, rounded up to whole loads
 *
 * Source  Definition; weights as in material-weight.
 * Domain  looseCubicYards >= 0, loadCubicYards > 0, loadTons > 0 where there is a limit.
 * Limits  Loose volume: earth in place swells first, see soil-state. Wet soil fills a pickup's payload long before its bed.
 */
export function wholeTruckLoads(
  looseCubicYards: number,
  loadCubicYards: number,
  loadTons: number | undefined,
  material: Material,
): TruckLoads {
  const byVolume = wholePackages(looseCubicYards, loadCubicYards);
  const byWeight = loadTons === undefined ? 0 : loadsByWeight(looseCubicYards, loadTons, material);
  return { loads: Math.max(byVolume, byWeight), isWeightGoverned: byWeight > byVolume };
}

/** Whole loads where weight alone counts. */
export function loadsByWeight(looseCubicYards: number, loadTons: number, material: Material): number {
  return wholePackages(materialTons(looseCubicYards, material), loadTons);
}

export interface TruckLoads {
  readonly loads: number;
  readonly isWeightGoverned: boolean;
}

/** FHWA, questions and answers on 23 CFR 658.17 (read): 80,000 lb is the most that a vehicle may weigh, its load included. */
export const HEAVIEST_VEHICLE_TONS = 40;

/** Common practice, no source: the largest open box that is set down in a street holds 40 cu yd. */
export const LARGEST_LOAD_CUBIC_YARDS = 40;

/** Common practice, no source: the payload of a half-ton pickup. */
export const PICKUP_TONS = 0.75;
