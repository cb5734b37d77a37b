import { PublishedDocument, type Published } from "./source.ts";

export const saxtonRawls2006 = new PublishedDocument(
  "Saxton and Rawls, Soil Water Characteristic Estimates by Texture and Organic Matter, Soil Science Society of America Journal 70, 1569 to 1578",
  "2006",
  "read in transcription",
);

/** Terms of one regression: sand and clay as fractions of 1, organic matter in percent. */
export interface SoilRegression {
  readonly sand: number;
  readonly clay: number;
  readonly organic: number;
  readonly sandOrganic: number;
  readonly clayOrganic: number;
  readonly sandClay: number;
  readonly constant: number;
}

/** First estimates of the water held at 1,500 kPa, at 33 kPa, and between saturation and 33 kPa. */
export const soilRegressions: Published<Readonly<Record<"at1500" | "at33" | "above33", SoilRegression>>> = {
  values: {
    at1500: { sand: -0.024, clay: 0.487, organic: 0.006, sandOrganic: 0.005, clayOrganic: -0.013, sandClay: 0.068, constant: 0.031 },
    at33: { sand: -0.251, clay: 0.195, organic: 0.011, sandOrganic: 0.006, clayOrganic: -0.027, sandClay: 0.452, constant: 0.299 },
    above33: { sand: 0.278, clay: 0.034, organic: 0.022, sandOrganic: -0.018, clayOrganic: -0.027, sandClay: -0.584, constant: 0.078 },
  },
  printedTo: 0.001,
  from: saxtonRawls2006.table("1, regressions"),
};

/** How an estimate x is corrected: to x + square x^2 + linear x + constant. */
export const soilCorrections = {
  values: {
    at1500: { square: 0, linear: 0.14, constant: -0.02 },
    at33: { square: 1.283, linear: -0.374, constant: -0.015 },
    above33: { square: 0, linear: 0.636, constant: -0.107 },
  },
  printedTo: 0.001,
  from: saxtonRawls2006.table("1, corrections"),
} as const satisfies Published<unknown>;
