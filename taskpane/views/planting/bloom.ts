import type { PalettePlant } from "../../../addin/actions/planting/palette.ts";

export interface Bloom {
  /** Kinds in bloom, January to December. */
  readonly kindsByMonth: readonly number[];
  /** Months between the first bloom and the last in which nothing blooms. */
  readonly gaps: readonly number[];
  readonly seasons: readonly Season[];
  /** Kinds of which Plants does not say when they bloom. */
  readonly unknown: readonly string[];
}

/** Of the northern half of the world. */
export const SEASONS = { spring: [3, 4, 5], summer: [6, 7, 8], fall: [9, 10, 11] } as const;
export type Season = keyof typeof SEASONS;

export function bloomOf(plants: readonly PalettePlant[]): Bloom {
  const kindsByMonth = MONTHS.map((month) => plants.filter(({ bloomMonths }) => bloomMonths.includes(month)).length);
  const blooms = (month: number) => (kindsByMonth[month - 1] ?? 0) > 0;
  const first = MONTHS.findIndex(blooms);
  const last = MONTHS.findLastIndex(blooms);
  return {
    kindsByMonth,
    gaps: MONTHS.filter((month, place) => place > first && place < last && first >= 0 && !blooms(month)),
    seasons: (Object.keys(SEASONS) as Season[]).filter((season) => SEASONS[season].some(blooms)),
    unknown: plants.filter(({ bloomMonths }) => bloomMonths.length === 0).map(({ name }) => name),
  };
}

export const MONTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;
