/** Where yards lie, as far as their coordinates can be believed. */
import { OUTSIDE_THE_US } from "../../records/one-call-rules/rules.ts";
import { isBlank } from "../../records/sheet.ts";
import type { Program, Yard } from "../program/read-program.ts";

export interface YardPoint {
  readonly yard: Yard;
  readonly latitude: number;
  readonly longitude: number;
}

/** A yard that no map may show, and why. */
export interface LeftOut {
  readonly siteId: string;
  readonly sentence: string;
}

/** All of the United States but the islands beyond the date line: degrees, rounded outwards (from memory). */
const UNITED_STATES = { latitude: [13, 72], longitude: [-180, -64] } as const;
/** A program's yards lie in one county or a few. */
const FAR_DEGREES = 5;
/** So many others say where the program is. */
const ENOUGH_OTHERS = 2;

export function yardPoints(
  { oneCall }: Pick<Program, "oneCall">,
  yards: readonly Yard[],
): { readonly points: readonly YardPoint[]; readonly leftOut: readonly LeftOut[] } {
  const isInUs = oneCall.place !== null && oneCall.place !== OUTSIDE_THE_US;
  const located = yards.map((yard) => ({ yard, fault: faultOf(yard, isInUs) }));
  const believed = located.filter(({ fault }) => fault === null).map(({ yard }) => pointOf(yard));
  const points: YardPoint[] = [];
  const leftOut: LeftOut[] = [];
  for (const { yard, fault } of located) {
    const sentence = fault ?? farFault(pointOf(yard), believed);
    if (sentence === null) points.push(pointOf(yard));
    else leftOut.push({ siteId: yard.siteId, sentence });
  }
  return { points, leftOut };
}

const SWAPPED = "its latitude and longitude look the wrong way round: latitude is the one from the equator.";

/** What its own coordinates say of themselves. */
function faultOf({ site: { cells, record } }: Yard, isInUs: boolean): string | null {
  const { latitude, longitude } = cells;
  if (isBlank(latitude) && isBlank(longitude)) return "it has no coordinates.";
  if (isBlank(latitude) || isBlank(longitude)) return `it has no ${isBlank(latitude) ? "latitude" : "longitude"}.`;
  if (typeof latitude !== "number" || typeof longitude !== "number") return "its coordinates are no numbers of degrees.";
  if (record.latitude === null || record.longitude === null)
    return Math.abs(latitude) <= 180 && Math.abs(longitude) <= 90 && record.longitude !== null
      ? SWAPPED
      : "latitude must be from -90 to 90, and longitude from -180 to 180.";
  if (latitude === 0 && longitude === 0) return "0, 0 is a place in the sea.";
  if (!isInUs || isWithin(latitude, longitude)) return null;
  if (isWithin(longitude, latitude)) return SWAPPED;
  return isWithin(latitude, -longitude)
    ? "its longitude is not negative, and all of America is."
    : "its place is not in the United States.";
}

function isWithin(latitude: number, longitude: number): boolean {
  const [south, north] = UNITED_STATES.latitude;
  const [west, east] = UNITED_STATES.longitude;
  return latitude >= south && latitude <= north && longitude >= west && longitude <= east;
}

/** Far from where the others are, and near to them when its numbers change places. */
function farFault(point: YardPoint, all: readonly YardPoint[]): string | null {
  const others = all.filter(({ yard }) => yard !== point.yard);
  if (others.length < ENOUGH_OTHERS) return null;
  const middle = { latitude: median(others.map(({ latitude }) => latitude)), longitude: median(others.map(({ longitude }) => longitude)) };
  const isNear = (latitude: number, longitude: number) =>
    Math.abs(latitude - middle.latitude) <= FAR_DEGREES && Math.abs(longitude - middle.longitude) <= FAR_DEGREES;
  return !isNear(point.latitude, point.longitude) && isNear(point.longitude, point.latitude) ? SWAPPED : null;
}

function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0;
}

function pointOf(yard: Yard): YardPoint {
  return { yard, latitude: yard.site.record.latitude ?? 0, longitude: yard.site.record.longitude ?? 0 };
}
