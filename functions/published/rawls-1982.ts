import type { TabledTexture } from "./soil-survey-manual.ts";
import { PublishedDocument, type Published } from "./source.ts";

export const rawls1982 = new PublishedDocument(
  "Rawls, Brakensiek and Saxton, Estimation of Soil Water Properties, Transactions of the ASAE 25, 1316 to 1328",
  "1982",
  "read in transcription",
);

/** Saturated conductivity in mm/h, by texture class. */
export const saturatedConductivities: Published<Readonly<Record<TabledTexture, number>>> = {
  values: {
    sand: 210,
    "loamy sand": 61.1,
    "sandy loam": 25.9,
    loam: 13.2,
    "silt loam": 6.8,
    "sandy clay loam": 4.3,
    "clay loam": 2.3,
    "silty clay loam": 1.5,
    "sandy clay": 1.2,
    "silty clay": 0.9,
    clay: 0.6,
  },
  printedTo: 0.1,
  from: rawls1982.place("table of soil water properties by texture class"),
};

/** Effective porosity of clay loam, whose published range is 0.279 to 0.501. */
export const clayLoamPorosity: Published<number> = {
  values: 0.39,
  printedTo: 0.001,
  from: rawls1982.place("effective porosity of clay loam"),
};
