import { smallestOf } from "../../../functions/extremes.ts";
import { nearestFreePlaces, STEPS_IN_A_SPACING, triangularGrid, type Ground } from "./place-plants.ts";
import { distanceBetween, isInZone, type Spot, type ZoneRing } from "./planting-zones.ts";
import { shuffled } from "./seeded-random.ts";

/** One kind of plant in one zone: how many of it, and how far apart. */
export interface KindToPlant {
  readonly plant: string;
  readonly spacing: number;
  readonly count: number;
  /** A shrub or a tree stands alone. */
  readonly single: boolean;
}

export interface LaidOutClump {
  readonly plant: string;
  readonly spacing: number;
  readonly count: number;
  readonly place: Spot;
}

/** Common practice, no source: one kind in groups of an odd number, three to seven. */
export const CLUMP_SIZES = [3, 5, 7] as const;

/**
 * Lays the kinds out in one zone: shrubs first and apart from each other, then clumps from one end of the floor to the
 * other, or around the ring. What finds no room is left out, so the clumps may hold fewer plants than asked for.
 */
export function layOutZone(ring: ZoneRing, kinds: readonly KindToPlant[], ground: Ground, random: () => number): readonly LaidOutClump[] {
  const singles = kinds.filter(({ single }) => single).sort((one, other) => other.spacing - one.spacing);
  return [
    ...singles.flatMap((kind) => standApart(ring, kind, ground, random)),
    ...standInClumps(
      ring,
      kinds.filter(({ single }) => !single),
      ground,
      random,
    ),
  ];
}

/** Each at the free place furthest from those of its kind that stand already. */
function standApart(ring: ZoneRing, { plant, spacing, count }: KindToPlant, ground: Ground, random: () => number): readonly LaidOutClump[] {
  const candidates = shuffled(gridOf(ring, spacing / STEPS_IN_A_SPACING), random);
  const stood: Spot[] = [];
  while (stood.length < count) {
    const free = candidates.filter((place) => ground.isFree(place, spacing));
    const apart = (place: Spot) => smallestOf(stood.map((other) => distanceBetween(place, other)));
    const place = free.sort((one, other) => (stood.length === 0 ? 0 : apart(other) - apart(one)))[0];
    if (place === undefined) break;
    ground.take([place], spacing);
    stood.push(place);
  }
  return stood.map((place) => ({ plant, spacing, count: 1, place }));
}

function standInClumps(ring: ZoneRing, kinds: readonly KindToPlant[], ground: Ground, random: () => number): readonly LaidOutClump[] {
  const along = sweep(ring, random);
  const waiting = shuffled(kinds, random).map((kind) => ({
    ...kind,
    sizes: [...clumpSizes(kind.count, random)],
    starts: [...gridOf(ring, kind.spacing), ...gridOf(ring, kind.spacing / STEPS_IN_A_SPACING)].sort(
      (one, other) => along(one) - along(other),
    ),
  }));
  const clumps: LaidOutClump[] = [];
  for (;;) {
    const next = waiting
      .filter(({ sizes }) => sizes.length > 0)
      .sort(
        (one, other) =>
          Number(one.plant === clumps.at(-1)?.plant) - Number(other.plant === clumps.at(-1)?.plant) ||
          other.sizes.length / other.count - one.sizes.length / one.count,
      )[0];
    if (next === undefined) return clumps;
    const clump = nextClump(ring, next, ground, along);
    if (clump === null) next.sizes.length = 0;
    else {
      clumps.push(clump);
      next.sizes.shift();
    }
  }
}

interface WaitingKind extends KindToPlant {
  readonly sizes: number[];
  /** Where a clump of the kind may begin, in the order the zone is filled; those that were found taken are dropped. */
  starts: readonly Spot[];
}

/** Of the clumps that could begin at the next places with room for three, the fullest, and of those the one furthest back. */
function nextClump(ring: ZoneRing, kind: WaitingKind, ground: Ground, along: (place: Spot) => number): LaidOutClump | null {
  const { plant, spacing } = kind;
  const found: FoundClump[] = [];
  const crowded = new Set<Spot>();
  for (const start of kind.starts) {
    const clump = ground.isFree(start, spacing) ? clumpFrom(ring, start, kind, ground) : null;
    // Ground only fills up: where there is no room now, there is none later.
    if (clump === null) crowded.add(start);
    else if (found.push(clump) === CLUMPS_COMPARED) break;
  }
  kind.starts = kind.starts.filter((start) => !crowded.has(start));
  const mean = (plants: readonly Spot[]) => plants.reduce((sum, place) => sum + along(place), 0) / plants.length;
  const [best] = found.sort((one, other) => other.plants.length - one.plants.length || mean(one.plants) - mean(other.plants));
  if (best === undefined) return null;
  ground.take(best.plants, spacing);
  return { plant, spacing, count: best.plants.length, place: best.middle };
}

const CLUMPS_COMPARED = 20;

interface FoundClump {
  readonly middle: Spot;
  readonly plants: readonly Spot[];
}

/** The clump around a place, or null where there is no room for three; around the middle of its plants where that holds as many. */
function clumpFrom(ring: ZoneRing, start: Spot, { spacing, sizes }: WaitingKind, ground: Ground): FoundClump | null {
  const from = (middle: Spot, count: number) => nearestFreePlaces(ring, { middle, count, spacing }, ground);
  const around = from(start, sizes[0] ?? 0);
  const count = CLUMP_SIZES.findLast((size) => size <= around.length);
  if (count === undefined) return null;
  const plants = around.slice(0, count);
  const middle = middleOf(plants);
  const centered = from(middle, count);
  return centered.length === count ? { middle, plants: centered } : { middle: start, plants };
}

/** The plant nearest the middle of them all. */
function middleOf(plants: readonly Spot[]): Spot {
  const mean = (of: (place: Spot) => number) => plants.reduce((sum, place) => sum + of(place), 0) / plants.length;
  const center = { along: mean(({ along }) => along), across: mean(({ across }) => across) };
  return plants.reduce((nearest, place) => (distanceBetween(place, center) < distanceBetween(nearest, center) ? place : nearest));
}

/** A count as odd clumps of three to seven; 1 and 2 make a three, and 4 loses one. */
export function clumpSizes(count: number, random: () => number): readonly number[] {
  const sizes: number[] = [];
  for (let left = count; left > 0; ) {
    const fits = shuffled(CLUMP_SIZES, random).find((size) => size === left || canBeClumps(left - size)) ?? CLUMP_SIZES[0];
    sizes.push(fits);
    left = left - fits < CLUMP_SIZES[0] ? 0 : left - fits;
  }
  return sizes;
}

function canBeClumps(count: number): boolean {
  return count >= CLUMP_SIZES[0] && count !== 4;
}

/** Where a place comes in the filling of the zone: along the floor from one end, or around the ring from a chance bearing. */
function sweep({ inner }: ZoneRing, random: () => number): (place: Spot) => number {
  const start = random() * 2 * Math.PI;
  if (inner === null) return ({ along, across }) => along + across / 1000;
  return ({ along, across }) => (Math.atan2(across / inner.halfWidth, along / inner.halfLength) - start + 4 * Math.PI) % (2 * Math.PI);
}

/** A grid over the zone, its places as a sheet keeps them: what is drafted must be what is drawn from the sheet. */
function gridOf(ring: ZoneRing, spacing: number): readonly Spot[] {
  return triangularGrid(ring, { along: 0, across: 0 }, spacing, Number.POSITIVE_INFINITY)
    .map(({ along, across }) => ({ along: toHundredth(along), across: toHundredth(across) }))
    .filter((place) => isInZone(ring, place));
}

export function toHundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
