import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { largestOf, smallestOf } from "../../../functions/extremes.ts";
import { fromUs, type UnitSystem } from "../../../functions/quantities.ts";
import { MOISTURE_ZONES } from "../../records/planting.ts";
import type { Plant } from "../../records/plants.ts";
import type { MoistureZone } from "./planting-zones.ts";

/** From most light to least. */
export const SUN_LEVELS = ["sun", "part shade", "shade"] as const;
export type SunLevel = (typeof SUN_LEVELS)[number];

/** Regions of the National Wetland Plant List that the palette has ratings of, by their columns on Plants. */
export const RATING_REGIONS = [
  "midwest",
  "northcentralAndNortheast",
  "easternMountainsAndPiedmont",
  "atlanticAndGulfCoastalPlain",
  "westernMountainsValleysAndCoast",
  "aridWest",
] as const satisfies readonly (keyof Plant)[];
export type RatingRegion = (typeof RATING_REGIONS)[number];

/** Wetland indicators from wettest to driest. */
export const INDICATORS = ["OBL", "FACW", "FAC", "FACU", "UPL"] as const;
export type Indicator = (typeof INDICATORS)[number];

/** A row of Plants as a plan uses it, its spacing in the yard's length unit. */
export interface PalettePlant {
  readonly name: string;
  readonly commonName: string;
  readonly form: string;
  readonly spacing: number | null;
  /** None where Plants does not say. */
  readonly sun: readonly SunLevel[];
  readonly bloomMonths: readonly number[];
  readonly zones: readonly MoistureZone[];
  readonly ratings: Readonly<Record<RatingRegion, string | null>>;
  readonly cautions: string | null;
}

/** The plants with a name, the first row of each name. */
export function readPalette(plants: readonly { readonly record: Plant }[], units: UnitSystem): readonly PalettePlant[] {
  const seen = new Set<string>();
  return plants.flatMap(({ record }): PalettePlant[] => {
    const { scientificName: name, spacingFeet } = record;
    if (name === null || seen.has(plainKey(name))) return [];
    seen.add(plainKey(name));
    return [
      {
        name,
        commonName: record.commonName ?? "",
        form: record.form ?? "",
        spacing: spacingFeet === null ? null : fromUs("length", spacingFeet, units),
        sun: sunLevels(record.sun),
        bloomMonths: bloomMonths(record.bloom),
        zones: zonesIn(record.zone),
        ratings: Object.fromEntries(RATING_REGIONS.map((region) => [region, record[region]])) as PalettePlant["ratings"],
        cautions: record.cautions,
      },
    ];
  });
}

export function plantNamed(palette: readonly PalettePlant[], name: string | null): PalettePlant | undefined {
  return name === null ? undefined : palette.find((plant) => plainKey(plant.name) === plainKey(name));
}

/** "sun to part shade" is both and what lies between. */
export function sunLevels(written: string | null): readonly SunLevel[] {
  const places = (written ?? "")
    .toLowerCase()
    .split(/\bto\b|,|;|\//)
    .map((word) => SUN_LEVELS.indexOf(word.trim() as SunLevel));
  const known = places.filter((place) => place >= 0);
  return known.length === 0 || known.length < places.length ? [] : SUN_LEVELS.slice(smallestOf(known), largestOf(known) + 1);
}

/** Months 1 to 12 of "6 to 8", "5" or, over the winter, "11 to 2". What reads otherwise is not known. */
export function bloomMonths(written: string | null): readonly number[] {
  const [, from, to] = /^(\d{1,2})(?:\s*(?:to|-|–)\s*(\d{1,2}))?$/.exec((written ?? "").trim()) ?? [];
  const first = Number(from);
  const last = Number(to ?? from);
  const isMonth = (month: number) => month >= 1 && month <= 12;
  if (!isMonth(first) || !isMonth(last)) return [];
  return Array.from({ length: ((last - first + 12) % 12) + 1 }, (_, step) => ((first - 1 + step) % 12) + 1);
}

function zonesIn(written: string | null): readonly MoistureZone[] {
  const words = (written ?? "").toUpperCase().split(/[^A-Z]+/);
  return MOISTURE_ZONES.filter((zone) => words.includes(zone));
}

/** What the plants to choose from must be; null does not matter. */
export interface PlantWish {
  readonly zone: MoistureZone;
  readonly sun: SunLevel | null;
  readonly region: RatingRegion | null;
  /** Rated at least as wet, in the region. */
  readonly atLeastAsWetAs: Indicator | null;
  /** In the yard's length unit. */
  readonly widestSpacing: number | null;
  readonly bloomMonth: number | null;
}

export function plantsFor(palette: readonly PalettePlant[], wish: PlantWish): readonly PalettePlant[] {
  return palette.filter((plant) => suits(plant, wish));
}

export function suits(plant: PalettePlant, { zone, sun, region, atLeastAsWetAs, widestSpacing, bloomMonth }: PlantWish): boolean {
  if (!plant.zones.includes(zone)) return false;
  if (sun !== null && !plant.sun.includes(sun)) return false;
  if (widestSpacing !== null && (plant.spacing === null || plant.spacing > widestSpacing * (1 + 1e-9))) return false;
  if (bloomMonth !== null && !plant.bloomMonths.includes(bloomMonth)) return false;
  if (region === null || atLeastAsWetAs === null) return true;
  const rated = INDICATORS.indexOf(plant.ratings[region] as Indicator);
  return rated >= 0 && rated <= INDICATORS.indexOf(atLeastAsWetAs);
}

export function standsAlone({ form }: Pick<PalettePlant, "form">): boolean {
  return ["shrub", "tree"].includes(form.toLowerCase());
}

export function isGrassLike({ form }: Pick<PalettePlant, "form">): boolean {
  return ["sedge", "rush", "grass"].includes(form.toLowerCase());
}

/**
 * A few plants of those that suit, for a first draft: one sedge, rush or grass, then each that blooms in the most months
 * that no other does. Shrubs, trees and plants that carry a caution are left to a person.
 */
export function suggestedFrom(suitable: readonly PalettePlant[], most: number): readonly PalettePlant[] {
  const calm = suitable.filter((plant) => !standsAlone(plant) && plant.spacing !== null && plant.cautions === null);
  const chosen: PalettePlant[] = calm.filter(isGrassLike).slice(0, 1);
  while (chosen.length < most) {
    const blooming = new Set(chosen.flatMap(({ bloomMonths: months }) => months));
    const gain = ({ bloomMonths: months }: PalettePlant) => months.filter((month) => !blooming.has(month)).length;
    const [next] = calm.filter((plant) => !chosen.includes(plant) && !isGrassLike(plant)).sort((one, other) => gain(other) - gain(one));
    if (next === undefined) break;
    chosen.push(next);
  }
  return chosen;
}

/** Common practice, no source: few kinds in a small bed, so that it can be weeded by anyone. */
export const KINDS_SUGGESTED_A_ZONE = 4;
