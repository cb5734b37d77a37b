import type { TextureClass } from "../published/soil-survey-manual.ts";

/**
 * USDA texture class of fine earth.
 *
 *   silt = 100 - sand - clay      (percent by mass; then the one class of the triangle whose rule holds)
 *
 * Source  USDA Soil Survey Manual, chapter 3. A point on a line belongs to the class above it or to its right: Benham,
 *         Ahrens and Nettleton, 2009, so that every point has exactly one class.
 * Domain  sandPercent >= 0, clayPercent >= 0. Undefined where together they are over 100.
 * Limits  Sand, silt and clay of the fine earth add up to 100: leave out gravel and organic matter.
 */
export function textureClass(sandPercent: number, clayPercent: number): TextureClass | undefined {
  return textureClasses(sandPercent, clayPercent)[0];
}

/** Every class whose rule holds: one, if the rules are right. */
export function textureClasses(sandPercent: number, clayPercent: number): readonly TextureClass[] {
  const silt = siltPercent(sandPercent, clayPercent);
  // Percents with decimals may add up to a hair over 100.
  if (silt < -1e-9) return [];
  return RULES.filter(([, holds]) => holds(sandPercent, silt, clayPercent)).map(([name]) => name);
}

export function siltPercent(sandPercent: number, clayPercent: number): number {
  return 100 - sandPercent - clayPercent;
}

type TextureRule = (sand: number, silt: number, clay: number) => boolean;

const RULES: readonly (readonly [TextureClass, TextureRule])[] = [
  ["sand", (_, silt, clay) => silt + 1.5 * clay < 15],
  ["loamy sand", (_, silt, clay) => silt + 1.5 * clay >= 15 && silt + 2 * clay < 30],
  ["sandy loam", (sand, silt, clay) => silt + 2 * clay >= 30 && ((clay >= 7 && clay < 20 && sand > 52) || (clay < 7 && silt < 50))],
  ["loam", (sand, silt, clay) => clay >= 7 && clay < 27 && silt >= 28 && silt < 50 && sand <= 52],
  ["silt loam", (_, silt, clay) => (silt >= 50 && clay >= 12 && clay < 27) || (silt >= 50 && silt < 80 && clay < 12)],
  ["silt", (_, silt, clay) => silt >= 80 && clay < 12],
  ["sandy clay loam", (sand, silt, clay) => clay >= 20 && clay < 35 && silt < 28 && sand > 45],
  ["clay loam", (sand, _, clay) => clay >= 27 && clay < 40 && sand > 20 && sand <= 45],
  ["silty clay loam", (sand, _, clay) => clay >= 27 && clay < 40 && sand <= 20],
  ["sandy clay", (sand, _, clay) => clay >= 35 && sand > 45],
  ["silty clay", (_, silt, clay) => clay >= 40 && silt >= 40],
  ["clay", (sand, silt, clay) => clay >= 40 && sand <= 45 && silt < 40],
];
