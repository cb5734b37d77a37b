import { soilCorrections, soilRegressions } from "../published/saxton-rawls-2006.ts";
import { toUs } from "../quantities.ts";

/**
 * What a soil holds and lets through, from its texture and organic matter.
 *
 *   w15, w33, w0 - w33   regressions on sand, clay and organic matter, corrected      (shares of the volume)
 *   w0   = w33 + (w0 - w33) - 0.097 S + 0.043          saturation; S sand fraction
 *   w0'  = 1 - (1 - w0) DF                             compacted by a density factor DF
 *   w33' = w33 - 0.2 (w0 - w0')
 *   Ks   = 1930 (w0' - w33')^(3 - L)                   saturated rate, mm/h, given back in in/h
 *   L    = (ln w33' - ln w15) / 3.816713               3.816713 = ln 1500 - ln 33
 *
 *   w15 wilting point (1,500 kPa), w33 field capacity (33 kPa).
 *
 * Source  Saxton and Rawls, Soil Science Society of America Journal 70, 2006, table 1. The density factor: the same
 *         table (from memory).
 * Domain  sandPercent and clayPercent >= 0, together 100 or less; organicPercent >= 0; densityFactor > 0.
 *         Undefined where the regressions leave the order 0 < w15 < w33 < w0 < 1.
 * Limits  Organic matter of 8 percent, clay of 60 percent and a density factor of 0.9 to 1.3 (from memory). No gravel.
 */
export function soilWaterCharacteristics(
  sandPercent: number,
  clayPercent: number,
  organicPercent: number,
  densityFactor: number,
): SoilWater | undefined {
  const uncompacted = uncompactedWater(sandPercent, clayPercent, organicPercent);
  const { wiltingPoint } = uncompacted;
  // A factor of 1 must change nothing, not even the last digit.
  const lost = (densityFactor - 1) * (1 - uncompacted.saturation);
  const saturation = uncompacted.saturation - lost;
  const fieldCapacity = uncompacted.fieldCapacity - 0.2 * lost;
  const isSoil = wiltingPoint > 0 && fieldCapacity > wiltingPoint && saturation > fieldCapacity && saturation < 1;
  if (!isSoil) return undefined;
  const millimetresPerHour = 1930 * (saturation - fieldCapacity) ** (3 - retentionSlope(wiltingPoint, fieldCapacity));
  return { wiltingPoint, fieldCapacity, saturation, saturatedInchesPerHour: toUs("rate", millimetresPerHour, "metric") };
}

/** Shares of the soil's volume. */
export interface WaterShares {
  readonly wiltingPoint: number;
  readonly fieldCapacity: number;
  readonly saturation: number;
}

export interface SoilWater extends WaterShares {
  readonly saturatedInchesPerHour: number;
}

/** What the regressions give before any density factor. */
export function uncompactedWater(sandPercent: number, clayPercent: number, organicPercent: number): WaterShares {
  const [sand, clay] = [sandPercent / 100, clayPercent / 100];
  const fieldCapacity = waterHeld("at33", sand, clay, organicPercent);
  return {
    wiltingPoint: waterHeld("at1500", sand, clay, organicPercent),
    fieldCapacity,
    saturation: fieldCapacity + waterHeld("above33", sand, clay, organicPercent) - 0.097 * sand + 0.043,
  };
}

/** L: the slope of water content against tension, both as logarithms. */
export function retentionSlope(wiltingPoint: number, fieldCapacity: number): number {
  return (Math.log(fieldCapacity) - Math.log(wiltingPoint)) / (Math.log(1500) - Math.log(33));
}

function waterHeld(tension: keyof typeof soilRegressions.values, sand: number, clay: number, organicPercent: number): number {
  const terms = soilRegressions.values[tension];
  const estimate =
    terms.sand * sand +
    terms.clay * clay +
    terms.organic * organicPercent +
    terms.sandOrganic * sand * organicPercent +
    terms.clayOrganic * clay * organicPercent +
    terms.sandClay * sand * clay +
    terms.constant;
  const { square, linear, constant } = soilCorrections.values[tension];
  return estimate + square * estimate ** 2 + linear * estimate + constant;
}

/** Saxton and Rawls: the organic matter of their tables. */
export const USUAL_ORGANIC_PERCENT = 2.5;

/** Saxton and Rawls, limits of the regressions (from memory). */
export const MOST_ORGANIC_PERCENT = 8;
export const MOST_CLAY_PERCENT = 60;
export const LOOSEST_DENSITY_FACTOR = 0.9;
export const DENSEST_DENSITY_FACTOR = 1.3;
