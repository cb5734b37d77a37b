/**
 * The kinds of value a worksheet can pass, each with its US and metric unit, exact factor and natural limits.
 *
 * Calculations work in the US unit of a kind; a worksheet may hold either. This is the only file that converts.
 *
 * Source  NIST Special Publication 811, 2008 edition, appendix B (from memory): 1 in = 25.4 mm, 1 ft = 0.3048 m and
 *         1 lb = 0.45359237 kg exactly; the other factors are exact products of these.
 */
export type UnitSystem = "us" | "metric";

/** A kind of number. `metricPerUs` metric units make one US unit; a kind without units is 1 in both systems. */
export interface Kind {
  readonly us?: string;
  readonly metric?: string;
  readonly metricPerUs?: number;
  /** Smallest and largest value that can exist at all, in US units. */
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

export const kinds = {
  depth: { us: "in", metric: "mm", metricPerUs: 25.4, least: 0 },
  length: { us: "ft", metric: "m", metricPerUs: 0.3048, least: 0 },
  rate: { us: "in/h", metric: "mm/h", metricPerUs: 25.4, least: 0 },
  area: { us: "sq ft", metric: "m²", metricPerUs: 0.09290304, least: 0 },
  waterVolume: { us: "cu ft", metric: "m³", metricPerUs: 0.028316846592, least: 0 },
  earthVolume: { us: "cu yd", metric: "m³", metricPerUs: 0.764554857984, least: 0 },
  flow: { us: "cfs", metric: "L/s", metricPerUs: 28.316846592, least: 0 },
  weight: { us: "tons", metric: "t", metricPerUs: 0.90718474, least: 0 },
  load: { us: "lb", metric: "kg", metricPerUs: 0.45359237, least: 0 },
  /** A length compared with another in the same unit, whichever that is. */
  lengthInSameUnit: { least: 0 },
  money: { least: 0 },
  hours: { least: 0 },
  minutes: { least: 0 },
  share: { least: 0, most: 1 },
  percent: { least: 0, most: 100 },
  number: {},
  count: { least: 0, whole: true },
} as const satisfies Record<string, Kind>;

export type NumberKind = keyof typeof kinds;

/** No yard measures more and no program pays more. What is typed beyond is a slip, and a sum of such runs out of numbers. */
export const LARGEST_NUMBER = 1e12;

export const CUBIC_FEET_PER_CUBIC_YARD = 27;
export const INCHES_PER_FOOT = 12;

/** The same quantity in US units. */
export function toUs(kind: NumberKind, value: number, system: UnitSystem): number {
  return value / unitsPerUs(kind, system);
}

/** A quantity in US units, in the units of the caller. */
export function fromUs(kind: NumberKind, value: number, system: UnitSystem): number {
  return value * unitsPerUs(kind, system);
}

/** toUs for a whole column of a kind, whose factor is looked up once. */
export function conversionToUs(kind: NumberKind, system: UnitSystem): (value: number) => number {
  const perUs = unitsPerUs(kind, system);
  return (value) => value / perUs;
}

/** fromUs for a whole column of a kind, whose factor is looked up once. */
export function conversionFromUs(kind: NumberKind, system: UnitSystem): (valueInUs: number) => number {
  const perUs = unitsPerUs(kind, system);
  return (valueInUs) => valueInUs * perUs;
}

function unitsPerUs(kind: NumberKind, system: UnitSystem): number {
  return system === "us" ? 1 : metricPerUs(kind);
}

/** How many metric units make one US unit of the kind; 1 where both systems use the same. */
export function metricPerUs(kind: NumberKind): number {
  return (kinds[kind] as Kind).metricPerUs ?? 1;
}

/** "in" or "mm"; "" for a kind that has no unit to write. */
export function unitOf(kind: NumberKind, system: UnitSystem): string {
  return (kinds[kind] as Kind)[system] ?? "";
}

export function hasDimension(kind: NumberKind): boolean {
  return "metricPerUs" in kinds[kind];
}
