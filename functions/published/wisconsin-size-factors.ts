import type { Published } from "./source.ts";
import { wisconsinRainGardens } from "./wisconsin-rain-gardens.ts";

/** A stretch of ground slope and the ponding depth printed for it. */
export interface SlopeBand {
  readonly fromPercent: number;
  readonly toPercent: number;
  /** Whether the band is printed as "less than" its upper end. */
  readonly endExcluded: boolean;
  readonly shallowestInches: number;
  readonly deepestInches: number;
}

/** Ponding depth by ground slope. Between the bands, and above the last, nothing is printed. */
export const slopeBands: Published<readonly SlopeBand[]> = {
  values: [
    { fromPercent: 0, toPercent: 4, endExcluded: true, shallowestInches: 3, deepestInches: 5 },
    { fromPercent: 5, toPercent: 7, endExcluded: false, shallowestInches: 6, deepestInches: 7 },
    { fromPercent: 8, toPercent: 12, endExcluded: false, shallowestInches: 8, deepestInches: 8 },
  ],
  printedTo: 1,
  from: wisconsinRainGardens.place("depth by slope, as adapted by URI", "read"),
};

export type FactorSoil = "sandy" | "silty" | "clayey";

export const FACTOR_SOILS: readonly FactorSoil[] = ["sandy", "silty", "clayey"];

/** Garden area as a share of the area that drains to it. Not every one was seen in print. */
export interface SizeFactor {
  readonly factor: number;
  readonly evidence: "read" | "from memory";
}

export interface DepthBand {
  readonly fromInches: number;
  readonly toInches: number;
  readonly factors: Readonly<Record<FactorSoil, SizeFactor>>;
}

const read = (factor: number): SizeFactor => ({ factor, evidence: "read" });
const remembered = (factor: number): SizeFactor => ({ factor, evidence: "from memory" });

/** Gardens within 30 ft of the downspout, by ponding depth. */
export const nearFactors: Published<readonly DepthBand[]> = {
  values: [
    { fromInches: 3, toInches: 5, factors: { sandy: read(0.19), silty: read(0.34), clayey: remembered(0.43) } },
    { fromInches: 6, toInches: 7, factors: { sandy: read(0.15), silty: read(0.25), clayey: read(0.32) } },
    { fromInches: 8, toInches: 8, factors: { sandy: read(0.08), silty: remembered(0.16), clayey: remembered(0.2) } },
  ],
  printedTo: 0.01,
  from: wisconsinRainGardens.place("size factors within 30 ft of the downspout, as adapted by URI and Illinois DNR", "read"),
};

/** Gardens over 30 ft from the downspout, of any depth. They count the roof and the lawn uphill. */
export const farFactors: Published<Readonly<Record<FactorSoil, SizeFactor>>> = {
  values: { sandy: remembered(0.03), silty: remembered(0.06), clayey: remembered(0.1) },
  printedTo: 0.01,
  from: wisconsinRainGardens.place("size factors over 30 ft from the downspout"),
};
