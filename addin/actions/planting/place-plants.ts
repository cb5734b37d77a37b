import { distanceBetween, isInZone, ringOf, type MoistureZone, type Spot, type PlantingZones, type ZoneRing } from "./planting-zones.ts";

/** What has to be known of a clump to stand its plants on the ground. */
export interface PlacedBy {
  readonly zone: MoistureZone;
  readonly count: number;
  readonly spacing: number;
  /** Its middle; null where nobody said: it then takes free ground. */
  readonly place: Spot | null;
}

/** Where the plants of a clump stand: as many of them as there is room for. */
export interface StandingClump<Clump extends PlacedBy> {
  readonly clump: Clump;
  readonly middle: Spot;
  readonly plants: readonly Spot[];
}

/**
 * Plants of different clumps may stand this share nearer than their spacing: common practice, no source, as spacings
 * are printed as ranges. Within a clump the spacing is exact.
 */
export const SPACING_TOLERANCE = 0.1;

/**
 * Stands every clump on the ground, in the order given: each on a triangular grid around its middle, on the nearest
 * places that lie in its zone and that no earlier clump has taken. The same clumps always stand the same way, so a plan
 * is kept as its clumps alone.
 */
export function placePlants<Clump extends PlacedBy>(zones: PlantingZones, clumps: readonly Clump[]): readonly StandingClump<Clump>[] {
  const ground = new Ground();
  const standing = new Map<Clump, StandingClump<Clump>>();
  // Those whose place somebody chose come first; the others take what is left.
  const ordered = [...clumps.filter(({ place }) => place !== null), ...clumps.filter(({ place }) => place === null)];
  for (const clump of ordered) {
    const ring = ringOf(zones, clump.zone);
    const middle = clump.place ?? freePlace(ring, clump.spacing, ground);
    const plants = middle === null ? [] : nearestFreePlaces(ring, { ...clump, middle }, ground);
    ground.take(plants, clump.spacing);
    standing.set(clump, { clump, middle: middle ?? { along: 0, across: 0 }, plants });
  }
  return clumps.map((clump) => standing.get(clump) as StandingClump<Clump>);
}

/**
 * The nearest places to the middle, each a spacing from the next, as many as the clump has plants and there is room for
 * without straying from it. On open ground that is a triangular grid; in a narrow ring it bends along with the ring.
 */
export function nearestFreePlaces(
  ring: ZoneRing,
  { middle, count, spacing }: { readonly middle: Spot; readonly count: number; readonly spacing: number },
  ground: Ground,
): readonly Spot[] {
  const reach = spacing * (1 + count / 2);
  const free = triangularGrid(ring, middle, ring.inner === null ? spacing : spacing / STEPS_IN_A_SPACING, reach)
    .filter((place) => distanceBetween(place, middle) <= reach && ground.isFree(place, spacing))
    .sort(nearestTo(middle));
  if (ring.inner === null) return free.slice(0, count);
  const plants: Spot[] = [];
  for (const place of free) {
    if (plants.length === count) break;
    if (plants.every((plant) => distanceBetween(plant, place) >= spacing * (1 - ROUNDING))) plants.push(place);
  }
  return plants;
}

export const STEPS_IN_A_SPACING = 5;
const ROUNDING = 1e-9;

/** The places of a triangular grid that lie in the ring, one of them at the middle given, no further from it than the reach. */
export function triangularGrid(ring: ZoneRing, middle: Spot, spacing: number, reach: number): readonly Spot[] {
  const { halfLength, halfWidth } = ring.outer;
  const rowGap = spacing * Math.sin(Math.PI / 3);
  const low = Math.ceil((Math.max(-halfWidth, middle.across - reach) - middle.across) / rowGap);
  const high = Math.floor((Math.min(halfWidth, middle.across + reach) - middle.across) / rowGap);
  const places: Spot[] = [];
  for (let row = low; row <= high; row += 1) {
    const shift = (row % 2) * (spacing / 2);
    const first = Math.ceil((Math.max(-halfLength, middle.along - reach) - middle.along - shift) / spacing);
    const last = Math.floor((Math.min(halfLength, middle.along + reach) - middle.along - shift) / spacing);
    for (let step = first; step <= last; step += 1) {
      const place = { along: middle.along + shift + step * spacing, across: middle.across + row * rowGap };
      if (isInZone(ring, place)) places.push(place);
    }
  }
  return places;
}

/** Nearest first; places as far as each other in the order of their bearing, so that the order is always the same. */
function nearestTo(middle: Spot): (one: Spot, other: Spot) => number {
  const rank = (place: Spot) => Math.round(distanceBetween(place, middle) * 1e6);
  const bearing = (place: Spot) => Math.atan2(place.across - middle.across, place.along - middle.along);
  return (one, other) => rank(one) - rank(other) || bearing(one) - bearing(other);
}

/** The first free place of the zone, from its uphill left side on. */
function freePlace(ring: ZoneRing, spacing: number, ground: Ground): Spot | null {
  return (
    triangularGrid(ring, { along: 0, across: 0 }, spacing, Number.POSITIVE_INFINITY).find((place) => ground.isFree(place, spacing)) ?? null
  );
}

interface TakenSpot extends Spot {
  readonly spacing: number;
}

/** The ground already taken, in squares as wide as the widest spacing, so that only neighbors are measured. */
export class Ground {
  #squares = new Map<number, TakenSpot[]>();
  readonly #taken: TakenSpot[] = [];
  #side = 0;

  take(places: readonly Spot[], spacing: number): void {
    const added = places.map((place) => ({ ...place, spacing }));
    for (const each of added) this.#taken.push(each);
    if (spacing <= this.#side) {
      added.forEach((place) => this.#keep(place));
      return;
    }
    this.#side = spacing;
    this.#squares = new Map();
    this.#taken.forEach((place) => this.#keep(place));
  }

  /** Two plants share their spacings half and half: each keeps to its own side. */
  isFree(place: Spot, spacing: number): boolean {
    if (this.#side === 0) return true;
    const reach = Math.ceil((spacing / this.#side + 1) / 2);
    const column = this.#squareAt(place.along);
    const row = this.#squareAt(place.across);
    for (let near = column - reach; near <= column + reach; near += 1) {
      for (let next = row - reach; next <= row + reach; next += 1) {
        const crowded = this.#squares
          .get(keyOf(near, next))
          ?.some((taken) => distanceBetween(taken, place) < ((taken.spacing + spacing) / 2) * (1 - SPACING_TOLERANCE));
        if (crowded === true) return false;
      }
    }
    return true;
  }

  #keep(place: TakenSpot): void {
    const key = keyOf(this.#squareAt(place.along), this.#squareAt(place.across));
    const square = this.#squares.get(key);
    if (square === undefined) this.#squares.set(key, [place]);
    else square.push(place);
  }

  #squareAt(distance: number): number {
    return Math.floor(distance / this.#side);
  }
}

function keyOf(column: number, row: number): number {
  return column * SQUARES_ACROSS + row;
}

/** More than any basin has squares across, so that no two squares share a key. */
const SQUARES_ACROSS = 2 ** 20;
