/** One day of the demo's gauge, as the Rain record holds it. */
export type DemoRainDay = Readonly<Record<"began" | "depth", number> & Record<"unit" | "gauge", string> & Record<"note", string | null>>;

const DAYS = 730;
const GAUGE = "Ferry steps (invented)";

/** A day in three is wet, with 0.31 in on average: about 39 in a year. */
const WET_SHARE = 1 / 3;
const MEAN_WET_INCHES = 0.31;
/** Rain stays: after a wet day the next is wet twice as often as after a dry one. */
const WET_AFTER_WET = 0.5;
const WET_AFTER_DRY = 0.25;

/** Two invented years up to the day before, the same in every demo; no gauge has measured them. */
export function demoRain(day: number): readonly DemoRainDay[] {
  const next = numbersFromSeed(4);
  let isWet = next() < WET_SHARE;
  return Array.from({ length: DAYS }, (_, index) => {
    isWet = next() < (isWet ? WET_AFTER_WET : WET_AFTER_DRY);
    const depth = isWet ? Math.round(-MEAN_WET_INCHES * Math.log(1 - next()) * 100) / 100 : 0;
    return {
      began: day - DAYS + index,
      depth,
      unit: "in",
      gauge: GAUGE,
      note: index === 0 ? "Invented, like everything in this program" : null,
    };
  });
}

/** From 0 to 1: a linear congruential generator with the factors of Numerical Recipes (from memory). */
function numbersFromSeed(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
