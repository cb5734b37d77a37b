import { PublishedDocument, type Published } from "./source.ts";

export const fm5434 = new PublishedDocument("US Army, Earthmoving Operations, FM 5-434", "15 June 2000", "read in transcription");

export type EarthSoil = "sand" | "loam" | "clay";

export const EARTH_SOILS: readonly EarthSoil[] = ["sand", "loam", "clay"];

/** What one volume in place becomes. Sand stands for sand or gravel, loam for common earth. */
export interface StateFactors {
  readonly loose: number;
  readonly compacted: number;
}

export const stateFactors: Published<Readonly<Record<EarthSoil, StateFactors>>> = {
  values: {
    sand: { loose: 1.11, compacted: 0.95 },
    loam: { loose: 1.25, compacted: 0.9 },
    clay: { loose: 1.43, compacted: 0.9 },
  },
  printedTo: 0.01,
  from: fm5434.table("1-1"),
};
