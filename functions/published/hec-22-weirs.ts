import { hec22 } from "./documents.ts";
import type { Published } from "./source.ts";

/** Broad-crested weir coefficients (US units) by head in ft, for each breadth of the crest in ft. */
export const broadCrestedCoefficients: Published<readonly BroadCrest[]> = {
  values: [
    {
      breadthFeet: 1,
      byHeadFeet: [
        [0.2, 2.69],
        [0.4, 2.72],
        [0.6, 2.75],
        [0.8, 2.85],
        [1, 2.98],
      ],
    },
    {
      breadthFeet: 2,
      byHeadFeet: [
        [0.2, 2.54],
        [0.4, 2.61],
        [0.6, 2.61],
        [0.8, 2.6],
        [1, 2.66],
      ],
    },
    {
      breadthFeet: 5,
      byHeadFeet: [
        [0.2, 2.34],
        [0.4, 2.5],
        [0.6, 2.7],
        [0.8, 2.68],
        [1, 2.68],
      ],
    },
  ],
  printedTo: 0.01,
  from: hec22.table("of broad-crested weir coefficients"),
};

export interface BroadCrest {
  readonly breadthFeet: number;
  readonly byHeadFeet: readonly (readonly [headFeet: number, coefficient: number])[];
}
