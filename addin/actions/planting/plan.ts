import { largestOf } from "../../../functions/extremes.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import type { SettingValues } from "../../records/program.ts";
import type { ClumpRow } from "../../records/planting.ts";
import { toHundredth } from "./lay-out-zone.ts";
import { plantNamed, type PalettePlant } from "./palette.ts";
import { placePlants, type PlacedBy, type StandingClump } from "./place-plants.ts";
import { distanceBetween, type MoistureZone, type Spot, type PlantingZones } from "./planting-zones.ts";

/** A clump of a plan as it is tried out: a row of Planting, or one that is not written yet. Plain data, kept as a draft. */
export interface PlannedClump {
  readonly id: string;
  /** Its row on Planting; null for one that is not written yet. */
  readonly row: number | null;
  readonly plant: string | null;
  readonly zone: MoistureZone | null;
  readonly planned: number | null;
  readonly spacing: number | null;
  readonly along: number | null;
  readonly across: number | null;
  /** What was planted: no longer only a plan. */
  readonly planted: number | null;
}

export function clumpOf({ row, record }: Pick<ClumpRow, "row" | "record">): PlannedClump {
  const { plant, zone, planned, spacing, alongLength: along, acrossWidth: across, planted } = record;
  return { id: `row-${row}`, row, plant, zone, planned, spacing, along, across, planted };
}

/** A clump with all that its drawing needs. */
export interface DrawnClump extends PlacedBy {
  readonly id: string;
  readonly plant: string;
}

/** Why a clump is not drawn; the row stays as it is. */
export interface UndrawnClump {
  readonly id: string;
  readonly plant: string | null;
  readonly reason: "no plant" | "no zone" | "no count" | "not whole" | "too many" | "too close";
}

export interface DrawnPlan {
  readonly standing: readonly StandingClump<DrawnClump>[];
  readonly undrawn: readonly UndrawnClump[];
}

/** The plan as it is drawn: what a clump leaves open is taken from Plants and from Program. */
export function drawPlan(
  clumps: readonly PlannedClump[],
  zones: PlantingZones,
  palette: readonly PalettePlant[],
  settings: SettingValues,
): DrawnPlan {
  const usualSpacing = fromUs("length", settings.plantSpacingFeet, zones.units);
  const read = clumps.map((clump) => drawnClump(clump, plantNamed(palette, clump.plant), usualSpacing, zones.units));
  return {
    standing: placePlants(
      zones,
      read.flatMap((clump) => ("reason" in clump ? [] : [clump])),
    ),
    undrawn: read.flatMap((clump) => ("reason" in clump ? [clump] : [])),
  };
}

function drawnClump(
  clump: PlannedClump,
  known: PalettePlant | undefined,
  usualSpacing: number,
  units: UnitSystem,
): DrawnClump | UndrawnClump {
  const { id, plant, along, across } = clump;
  const undrawn = (reason: UndrawnClump["reason"]): UndrawnClump => ({ id, plant, reason });
  const zone = clump.zone ?? known?.zones[0];
  const count = clump.planned ?? clump.planted;
  const spacing = clump.spacing ?? known?.spacing ?? usualSpacing;
  if (plant === null) return undrawn("no plant");
  if (zone === undefined) return undrawn("no zone");
  if (count === null) return undrawn("no count");
  if (!Number.isInteger(count)) return undrawn("not whole");
  if (count > MOST_IN_A_CLUMP) return undrawn("too many");
  if (spacing < fromUs("length", CLOSEST_SPACING_FEET, units)) return undrawn("too close");
  return { id, plant: known?.name ?? plant, zone, count, spacing, place: along === null || across === null ? null : { along, across } };
}

/** More in one place is a bed, or a slip of the keyboard. */
export const MOST_IN_A_CLUMP = 200;

/** Common practice, no source: plugs stand 9 to 12 in apart, so a quarter foot is a slip of the unit. */
export const CLOSEST_SPACING_FEET = 0.25;

export interface MovedPlan {
  readonly clumps: readonly PlannedClump[];
  /** The clump whose place was taken, and which now has the old one. */
  readonly exchangedWith: PlannedClump | null;
}

/** Moves a clump. On ground where another of its zone stands the two change places, because a full bed has no other room. */
export function moveClump(clumps: readonly PlannedClump[], { standing }: DrawnPlan, id: string, to: Spot): MovedPlan {
  const here = standing.find(({ clump }) => clump.id === id);
  if (here === undefined) return { clumps, exchangedWith: null };
  const goal = { along: toHundredth(to.along), across: toHundredth(to.across) };
  const there = standing.find((other) => other !== here && other.clump.zone === here.clump.zone && standsOn(other, goal));
  const at = (clump: PlannedClump, { along, across }: Spot) => ({ ...clump, along: toHundredth(along), across: toHundredth(across) });
  const moved = clumps.map((clump) => {
    if (clump.id === id) return at(clump, there?.middle ?? goal);
    return clump.id === there?.clump.id ? at(clump, here.middle) : clump;
  });
  return { clumps: moved, exchangedWith: clumps.find((clump) => clump.id === there?.clump.id) ?? null };
}

function standsOn({ clump, plants }: StandingClump<DrawnClump>, place: Spot): boolean {
  return plants.some((plant) => distanceBetween(plant, place) < clump.spacing / 2);
}

/** The clump becomes another plant, at that plant's own spacing. */
export function swapPlant(clumps: readonly PlannedClump[], id: string, { name, spacing }: PalettePlant): readonly PlannedClump[] {
  return changeClump(clumps, id, { plant: name, spacing: spacing === null ? null : toHundredth(spacing) });
}

export function changeClump(
  clumps: readonly PlannedClump[],
  id: string,
  changed: Partial<Omit<PlannedClump, "id" | "row">>,
): readonly PlannedClump[] {
  return clumps.map((clump) => (clump.id === id ? { ...clump, ...changed } : clump));
}

export function removeClump(clumps: readonly PlannedClump[], id: string): readonly PlannedClump[] {
  return clumps.filter((clump) => clump.id !== id);
}

/** Clumps whose rows are gone become new ones, under the ids by which what their rows held is found. */
export function putBack(clumps: readonly PlannedClump[], gone: readonly PlannedClump[]): readonly PlannedClump[] {
  return clumps.map((clump) => (gone.includes(clump) ? { ...clump, row: null } : clump));
}

/** One more clump, without a place of its own yet: it stands where there is free ground. */
export function addClump(
  clumps: readonly PlannedClump[],
  { name, spacing }: PalettePlant,
  zone: MoistureZone,
  planned: number,
): readonly PlannedClump[] {
  return [
    ...clumps,
    { ...NEW_CLUMP, id: nextId(clumps), plant: name, zone, planned, spacing: spacing === null ? null : toHundredth(spacing) },
  ];
}

export const NEW_CLUMP: Omit<PlannedClump, "id"> = {
  row: null,
  plant: null,
  zone: null,
  planned: null,
  spacing: null,
  along: null,
  across: null,
  planted: null,
};

export function nextId(clumps: readonly PlannedClump[]): string {
  return `new-${largestOf([0, ...clumps.map(({ id }) => Number(/^new-(\d+)$/.exec(id)?.[1] ?? 0))]) + 1}`;
}
