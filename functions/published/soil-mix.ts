import type { Published } from "./source.ts";

/** A published soil mix: from least to most percent of each material, by volume. */
export type PublishedMix = Published<Readonly<Record<string, PercentRange>>>;

export interface PercentRange {
  readonly least: number;
  readonly most: number;
}

export function percents(least: number, most: number = least): PercentRange {
  return { least, most };
}
