import { plantNamed, standsAlone, type PalettePlant } from "../../../addin/actions/planting/palette.ts";
import type { PlannedClump } from "../../../addin/actions/planting/plan.ts";
import { wholePackages } from "../../../functions/cost/whole-packages.ts";
import { toUs, type UnitSystem } from "../../../functions/quantities.ts";

export interface ShoppingLine {
  readonly plant: string;
  readonly commonName: string;
  readonly count: number;
  /** Widest and narrowest of its clumps, in the yard's length unit; null where no clump says. */
  readonly spacings: readonly number[];
  readonly container: Container | null;
  /** Whole flats and the plants in them; null where plants are bought one by one. */
  readonly flats: { readonly flats: number; readonly plants: number } | null;
}

/** Common practice, no source: plugs stand 9 to 12 in apart, quarts 12 to 18 in, gallons 18 to 36 in, shrubs come in 3 gallons. */
export type Container = "plug" | "quart" | "gallon" | "3 gallon";

/** One line a kind. Only plugs come in flats; a flat of null buys them one by one. */
export function shoppingList(
  clumps: readonly PlannedClump[],
  palette: readonly PalettePlant[],
  plantsInFlat: number | null,
  units: UnitSystem,
): readonly ShoppingLine[] {
  const byKind = new Map<string, PlannedClump[]>();
  for (const clump of clumps) {
    if (clump.plant === null) continue;
    const kind = plantNamed(palette, clump.plant)?.name ?? clump.plant;
    byKind.set(kind, [...(byKind.get(kind) ?? []), clump]);
  }
  return [...byKind].map(([plant, own]) => {
    const known = plantNamed(palette, plant);
    const count = own.reduce((sum, clump) => sum + countOf(clump), 0);
    const spacings = [...new Set(own.map(({ spacing }) => spacing ?? known?.spacing ?? null).filter((spacing) => spacing !== null))].sort(
      (one, other) => one - other,
    );
    const container = containerFor(known, spacings[0], units);
    return {
      plant,
      commonName: known?.commonName ?? "",
      count,
      spacings,
      container,
      flats: container === "plug" && plantsInFlat !== null ? flatsOf(count, plantsInFlat) : null,
    };
  });
}

export function countOf({ planned, planted }: Pick<PlannedClump, "planned" | "planted">): number {
  return planned ?? planted ?? 0;
}

function flatsOf(count: number, plantsInFlat: number): { readonly flats: number; readonly plants: number } {
  const flats = wholePackages(count, plantsInFlat);
  return { flats, plants: flats * plantsInFlat };
}

function containerFor(plant: PalettePlant | undefined, spacing: number | undefined, units: UnitSystem): Container | null {
  if (plant !== undefined && standsAlone(plant)) return "3 gallon";
  if (spacing === undefined) return null;
  const feet = toUs("length", spacing, units);
  if (feet <= PLUG_FEET + ROUNDING) return "plug";
  return feet <= QUART_FEET + ROUNDING ? "quart" : "gallon";
}

const PLUG_FEET = 1;
const QUART_FEET = 1.5;
/** A hundredth of a meter, to which a sheet keeps a spacing. */
const ROUNDING = 0.02;
