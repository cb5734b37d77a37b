import { toUs, type UnitSystem } from "../../../functions/quantities.ts";
import type { ClumpRow } from "../../records/planting.ts";
import type { Container } from "../../records/prices.ts";
import { plantNamed, standsAlone, type PalettePlant } from "./palette.ts";
import type { PlannedClump } from "./plan.ts";

/** The one count of a clump: as planned, or as planted where nothing was planned. */
export function countOf({ planned, planted }: Pick<PlannedClump, "planned" | "planted">): number {
  return planned ?? planted ?? 0;
}

/** Plants of a yard's plan, as Design adds them up; null where there is no plan, and the count by spacing stands. */
export function plannedPlants(clumps: readonly Pick<ClumpRow, "record">[]): number | null {
  const sum = clumps.reduce((plants, { record }) => plants + countOf(record), 0);
  return sum > 0 ? sum : null;
}

export type { Container };

/** All clumps of one kind. */
export interface PlantsOfKind {
  readonly plant: string;
  readonly known: PalettePlant | undefined;
  readonly count: number;
  /** Of its clumps, narrowest first, in the yard's length unit; none where neither they nor Plants say. */
  readonly spacings: readonly number[];
  /** Null where no spacing is known. */
  readonly container: Container | null;
}

/** In the order in which the kinds first appear; a clump that names no plant is of no kind. */
export function plantsByKind(
  clumps: readonly PlannedClump[],
  palette: readonly PalettePlant[],
  units: UnitSystem,
): readonly PlantsOfKind[] {
  const byKind = new Map<string, PlannedClump[]>();
  for (const clump of clumps) {
    if (clump.plant === null) continue;
    const kind = plantNamed(palette, clump.plant)?.name ?? clump.plant;
    byKind.set(kind, [...(byKind.get(kind) ?? []), clump]);
  }
  return [...byKind].map(([plant, own]) => {
    const known = plantNamed(palette, plant);
    const spacings = [...new Set(own.map(({ spacing }) => spacing ?? known?.spacing ?? null).filter((spacing) => spacing !== null))].sort(
      (one, other) => one - other,
    );
    const isShrub = known !== undefined && standsAlone(known);
    const [closest] = spacings;
    return {
      plant,
      known,
      count: own.reduce((sum, clump) => sum + countOf(clump), 0),
      spacings,
      container: isShrub ? "3 gallon" : closest === undefined ? null : containerFor(toUs("length", closest, units)),
    };
  });
}

/** Common practice, no source: plugs stand 9 to 12 in apart, quarts 12 to 18 in, gallons 18 to 36 in, shrubs come in 3 gallons. */
export function containerFor(spacingFeet: number): Exclude<Container, "3 gallon"> {
  if (spacingFeet <= PLUG_FEET + ROUNDING) return "plug";
  return spacingFeet <= QUART_FEET + ROUNDING ? "quart" : "gallon";
}

const PLUG_FEET = 1;
const QUART_FEET = 1.5;
/** A hundredth of a meter, to which a sheet keeps a spacing. */
const ROUNDING = 0.02;
