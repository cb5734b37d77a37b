import { smallestOf } from "../extremes.ts";
import { veryRapidInchesPerHour } from "../published/soil-permeability-classes.ts";

/**
 * The infiltration rate to design with, from the rates tested in one yard.
 *
 *   geometric mean   (f1 x f2 x ... x fn)^(1/n) / reduction factor      (in/h)
 *   median, lowest   likewise, of the same rates
 *
 * Source  Reduction: Minnesota Stormwater Manual, "Determining soil infiltration rates", divides a field rate by 2;
 *         Toronto and Region Conservation Authority, wiki page "Design infiltration rate", by 2 to 3.
 *         The median for several tests: Minnesota Stormwater Manual. The geometric mean: common practice, no source.
 * Domain  At least one rate, each >= 0; reductionFactor >= 1.
 * Limits  For measured rates, applied once: design rates from a table are already reduced.
 *         A hole that takes no water makes the geometric mean 0.
 */
export function designRateInchesPerHour(testedInchesPerHour: readonly number[], reductionFactor: number, take: RateTaken): number {
  return takenInchesPerHour(testedInchesPerHour, take) / reductionFactor;
}

/** One rate for the yard, not yet reduced. */
export function takenInchesPerHour(testedInchesPerHour: readonly number[], take: RateTaken): number {
  return TAKING[take](testedInchesPerHour);
}

export type RateTaken = "geometric mean" | "median" | "lowest";

export const RATES_TAKEN: readonly RateTaken[] = ["geometric mean", "median", "lowest"];

/** Minnesota Stormwater Manual: field rate divided by 2. */
export const USUAL_REDUCTION_FACTOR = 2;

/** Oregon Sea Grant, ORESU-G-11-008 (read): upper bound where the soil is to clean the water. */
export const FASTEST_TREATING_INCHES_PER_HOUR = 12;

/** Faster is no yard's soil but gravel, a burrow, a pipe's bed, or a slip in the readings. */
export const FASTEST_LIKELY_INCHES_PER_HOUR = veryRapidInchesPerHour.values;

/** Common practice, no source: tests further apart than this are likely to be in different soils. */
export const WIDE_SPREAD_RATIO = 3;

const TAKING: Readonly<Record<RateTaken, (rates: readonly number[]) => number>> = {
  "geometric mean": geometricMean,
  median,
  lowest: (rates) => smallestOf(rates),
};

function geometricMean(rates: readonly number[]): number {
  const lowest = smallestOf(rates);
  if (lowest === 0) return 0;
  // As multiples of the lowest, so that equal rates come back exactly.
  const logs = rates.reduce((sum, rate) => sum + Math.log(rate / lowest), 0);
  return lowest * Math.exp(logs / rates.length);
}

function median(rates: readonly number[]): number {
  const sorted = [...rates].sort((a, b) => a - b);
  // One rate in the middle, or two.
  const middle = sorted.slice((sorted.length - 1) >> 1, (sorted.length >> 1) + 1);
  return middle.reduce((sum, rate) => sum + rate, 0) / middle.length;
}
