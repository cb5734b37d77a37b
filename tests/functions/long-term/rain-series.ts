import { dailyRainMillimetres } from "../rainfall/daily-rain.ts";

export interface RainSeries {
  readonly name: string;
  readonly stepHours: number;
  readonly inches: readonly number[];
}

/** Numbers from 0 to 1 that are the same in every run: a linear congruential generator with the factors of Numerical Recipes. */
export function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const HOURS_IN_YEAR = 8766;

/** Invented: hours of rain in showers, about one hour in twelve and 45 in a year, in hundredths of an inch. */
export function inventedHours(years: number): RainSeries {
  const next = seededNumbers(2026);
  let isRaining = false;
  const inches = Array.from({ length: years * HOURS_IN_YEAR }, () => {
    isRaining = next() < (isRaining ? 0.75 : 0.022);
    return isRaining ? Math.ceil(-6 * Math.log(1 - next())) / 100 : 0;
  });
  return { name: `${years} invented years of hours`, stepHours: 1, inches };
}

/** A wet day now and then, with 40 to 160 dry days between. */
function inventedDroughts(years: number): RainSeries {
  const next = seededNumbers(7);
  const inches: number[] = [];
  while (inches.length < years * HOURS_IN_YEAR) {
    for (let hour = 0; hour < 24; hour += 1) inches.push(next() < 0.6 ? Math.ceil(next() * 60) / 100 : 0);
    for (let left = 24 * Math.ceil(40 + 120 * next()); left > 0; left -= 1) inches.push(0);
  }
  return { name: `${years} invented years of droughts`, stepHours: 1, inches };
}

const dailyInches = (city: keyof typeof dailyRainMillimetres): readonly number[] =>
  dailyRainMillimetres[city].map((millimetres) => millimetres / 25.4);

export const fiveSeries: readonly RainSeries[] = [
  { name: "Seattle's days, 2012 to 2015 (vega-datasets 3.2.1)", stepHours: 24, inches: dailyInches("Seattle") },
  { name: "New York's days, 2012 to 2015 (vega-datasets 3.2.1)", stepHours: 24, inches: dailyInches("New York") },
  inventedHours(1),
  { name: "the same rain in every hour", stepHours: 1, inches: new Array<number>(2000).fill(0.01) },
  inventedDroughts(3),
];
