import { smallestOf } from "../../../functions/extremes.ts";
import { USUAL_OUTLINE } from "../../../functions/basin/basin-shape.ts";
import { plantMix } from "../../../functions/worksheet/plants.ts";
import { MOISTURE_ZONES } from "../../records/planting.ts";
import type { SettingValues } from "../../records/program.ts";
import { CLUMP_SIZES, layOutZone, toHundredth, type LaidOutClump } from "./lay-out-zone.ts";
import { standsAlone, type PalettePlant } from "./palette.ts";
import { Ground, placePlants, type PlacedBy } from "./place-plants.ts";
import { NEW_CLUMP, type PlannedClump } from "./plan.ts";
import { plantingZones, ringOf, type MoistureZone, type PlantingZones, type ZoneRing } from "./planting-zones.ts";
import { seededRandom } from "./seeded-random.ts";
import type { Yard } from "../program/read-program.ts";

/** The plants chosen for each zone. */
export type ChosenPlants = Readonly<Record<MoistureZone, readonly PalettePlant[]>>;

/** The zones of a yard's basin as the Design sheet has it now, or the sentence that says what is missing. */
export function zonesOfYard(yard: Yard, settings: SettingValues): PlantingZones | { readonly sentence: string } {
  const { floorArea, pondingDepth } = yard.design;
  if (typeof floorArea !== "number" || typeof pondingDepth !== "number")
    return { sentence: "The basin has no size yet: the Basin tab says what is missing." };
  const { sideSlope, shape, lengthToWidth } = yard.site.record;
  const outline = { shape: shape ?? USUAL_OUTLINE.shape, lengthToWidth: lengthToWidth ?? USUAL_OUTLINE.lengthToWidth };
  return plantingZones({ units: yard.units, floorArea, pondingDepth, sideSlope: sideSlope ?? settings.sideSlope, outline });
}

export interface PlantingDraft {
  readonly clumps: readonly PlannedClump[];
  /** Chosen plants that found no room in a zone, or that have no spacing. */
  readonly leftOut: readonly { readonly plant: string; readonly zone: MoistureZone; readonly reason: "no room" | "no spacing" }[];
  /** Zones with more ground than can be laid out plant by plant. */
  readonly tooLarge: readonly MoistureZone[];
}

/**
 * A plan of the chosen plants, each on an equal part of its zone: as many as SOAK.PLANTMIX counts, or fewer where the
 * zone's shape has no room for them. Clumps that are kept hold their ground. The same yard and choice always make the
 * same plan.
 */
export function draftPlanting(siteId: string, zones: PlantingZones, chosen: ChosenPlants, kept: readonly PlacedBy[] = []): PlantingDraft {
  const tooLarge = MOISTURE_ZONES.filter((zone) => plantsCounted(ringOf(zones, zone), spaced(chosen[zone]), zones) > MOST_IN_A_ZONE);
  const planted = MOISTURE_ZONES.filter((zone) => !tooLarge.includes(zone) && spaced(chosen[zone]).length > 0);
  // The narrow rings share their edges with each other: which of them comes first decides which gets its room.
  const orders: readonly (readonly MoistureZone[])[] = [
    ["A", "B", "C"],
    ["A", "C", "B"],
  ];
  const tried = orders.map((order) =>
    layOut(
      siteId,
      zones,
      chosen,
      order.filter((zone) => planted.includes(zone)),
      kept,
    ),
  );
  const leastPlanted = (laidOut: readonly ZoneClump[]) =>
    smallestOf(planted.map((zone) => plantsIn(laidOut, zone) / plantsCounted(ringOf(zones, zone), spaced(chosen[zone]), zones)));
  const [best = []] = [...tried].sort((one, other) => leastPlanted(other) - leastPlanted(one));
  const settled = settle(zones, best, kept);
  const clumps = settled.map(
    ({ plant, zone, spacing, count, place }, index): PlannedClump => ({
      ...NEW_CLUMP,
      id: `new-${index + 1}`,
      plant,
      zone,
      planned: count,
      spacing,
      along: place.along,
      across: place.across,
    }),
  );
  const leftOut = MOISTURE_ZONES.flatMap((zone) =>
    chosen[zone].flatMap(({ name: plant, spacing }) => {
      if (tooLarge.includes(zone) || settled.some((clump) => clump.zone === zone && clump.plant === plant)) return [];
      return [{ plant, zone, reason: spacing === null ? ("no spacing" as const) : ("no room" as const) }];
    }),
  );
  return { clumps, leftOut, tooLarge };
}

/** More plants than this in one zone are sown or set out in blocks, not drawn one by one. */
export const MOST_IN_A_ZONE = 1500;

interface ZoneClump extends LaidOutClump {
  readonly zone: MoistureZone;
}

type SpacedPlant = PalettePlant & { readonly spacing: number };

function spaced(plants: readonly PalettePlant[]): readonly SpacedPlant[] {
  return plants.filter((plant): plant is SpacedPlant => plant.spacing !== null);
}

function layOut(
  siteId: string,
  zones: PlantingZones,
  chosen: ChosenPlants,
  order: readonly MoistureZone[],
  kept: readonly PlacedBy[],
): readonly ZoneClump[] {
  const ground = new Ground();
  placePlants(zones, kept).forEach(({ clump, plants }) => ground.take(plants, clump.spacing));
  return order.flatMap((zone) => {
    const ring = ringOf(zones, zone);
    const kinds = spaced(chosen[zone]);
    const counts = countsInMix(
      ring,
      kinds.map(({ spacing }) => spacing),
      zones,
    );
    const toPlant = kinds.map((plant, index) => ({
      plant: plant.name,
      spacing: toHundredth(plant.spacing),
      count: counts[index] ?? 0,
      single: standsAlone(plant),
    }));
    return layOutZone(ring, toPlant, ground, seededRandom(`${siteId}/${zone}`)).map((clump) => ({ ...clump, zone }));
  });
}

/** What SOAK.PLANTMIX counts of each kind, all on equal parts of the zone. */
export function countsInMix({ area }: ZoneRing, spacings: readonly number[], { units }: PlantingZones): readonly number[] {
  if (spacings.length === 0) return [];
  const rows = plantMix.evaluate([
    area,
    spacings.map((spacing) => [spacing]),
    spacings.map(() => [1 / spacings.length]),
    "triangle",
    units,
  ]);
  return rows.map(([count]) => (typeof count === "number" ? count : 0));
}

function plantsCounted(ring: ZoneRing, plants: readonly SpacedPlant[], zones: PlantingZones): number {
  return countsInMix(
    ring,
    plants.map(({ spacing }) => spacing),
    zones,
  ).reduce((sum, count) => sum + count, 0);
}

function plantsIn(clumps: readonly ZoneClump[], zone: MoistureZone): number {
  return clumps.reduce((sum, clump) => sum + (clump.zone === zone ? clump.count : 0), 0);
}

/** Takes off the plants that find no room when the plan is drawn from its rows, so that a fresh plan is drawn in full. */
function settle(zones: PlantingZones, clumps: readonly ZoneClump[], kept: readonly PlacedBy[]): readonly ZoneClump[] {
  const standing = placePlants<PlacedBy>(zones, [...kept, ...clumps]).slice(kept.length);
  const stood = (index: number) => standing[index]?.plants.length ?? 0;
  if (clumps.every(({ count }, index) => count === stood(index))) return clumps;
  return settle(
    zones,
    clumps.flatMap((clump, index) => (stood(index) === 0 ? [] : [{ ...clump, count: settledCount(clump, stood(index)) }])),
    kept,
  );
}

/** Odd as before, and one less at least where not all found room. */
function settledCount({ count }: ZoneClump, stood: number): number {
  return stood === count ? count : (CLUMP_SIZES.findLast((size) => size <= stood) ?? 1);
}
