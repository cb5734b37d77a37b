import { PublishedDocument, type Published } from "./source.ts";

export const asceManual37 = new PublishedDocument(
  "ASCE and WPCF, Design and Construction of Sanitary and Storm Sewers, Manual 37",
  "1970",
  "read in transcription",
);

/** From least to most of a surface's coefficient, for storms of 2 to 10 years. */
export type CoefficientRange = readonly [least: number, most: number];

/** Peak coefficients of the rational method. Lawn by soil and slope: flat to 2 percent, average to 7, steep beyond. */
export const peakCoefficients = {
  values: {
    roof: [0.75, 0.95],
    "asphalt street": [0.7, 0.95],
    "concrete street": [0.8, 0.95],
    brick: [0.7, 0.85],
    "drive or walk": [0.75, 0.85],
    "flat sandy lawn": [0.05, 0.1],
    "average sandy lawn": [0.1, 0.15],
    "steep sandy lawn": [0.15, 0.2],
    "flat heavy lawn": [0.13, 0.17],
    "average heavy lawn": [0.18, 0.22],
    "steep heavy lawn": [0.25, 0.35],
  },
  printedTo: 0.01,
  from: asceManual37.table("of runoff coefficients by surface"),
} as const satisfies Published<Readonly<Record<string, CoefficientRange>>>;
