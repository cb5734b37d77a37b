import type { PalettePlant } from "../../../addin/actions/planting/palette.ts";
import type { PlannedClump } from "../../../addin/actions/planting/plan.ts";
import { plantsByKind, type Container } from "../../../addin/actions/planting/plant-counts.ts";
import { wholePackages } from "../../../functions/cost/whole-packages.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";

export interface ShoppingLine {
  readonly plant: string;
  readonly commonName: string;
  readonly count: number;
  /** Widest and narrowest of its clumps, in the yard's length unit; none where no clump says. */
  readonly spacings: readonly number[];
  readonly container: Container | null;
  /** Whole flats and the plants in them; null where plants are bought one by one. */
  readonly flats: { readonly flats: number; readonly plants: number } | null;
}

/** One line a kind. Only plugs come in flats; a flat of null buys them one by one. */
export function shoppingList(
  clumps: readonly PlannedClump[],
  palette: readonly PalettePlant[],
  plantsInFlat: number | null,
  units: UnitSystem,
): readonly ShoppingLine[] {
  return plantsByKind(clumps, palette, units).map(({ plant, known, count, spacings, container }) => ({
    plant,
    commonName: known?.commonName ?? "",
    count,
    spacings,
    container,
    flats: container === "plug" && plantsInFlat !== null ? flatsOf(count, plantsInFlat) : null,
  }));
}

function flatsOf(count: number, plantsInFlat: number): { readonly flats: number; readonly plants: number } {
  const flats = wholePackages(count, plantsInFlat);
  return { flats, plants: flats * plantsInFlat };
}
