import { PublishedDocument, type Published } from "./source.ts";

/** Prints the simple method of Schueler 1987 with concentrations of its own. */
export const newYorkStormwaterManual = new PublishedDocument(
  "New York State Stormwater Management Design Manual",
  "appendix A, as printed online",
  "read",
);

/** Total suspended solids, total phosphorus, total nitrogen. */
export type Pollutant = "TSS" | "TP" | "TN";

export const POLLUTANTS: readonly Pollutant[] = ["TSS", "TP", "TN"];

/** Event mean concentrations in mg/L: national medians of urban runoff. The digits 1 that follow them in copies are footnotes. */
export const medianConcentrations: Published<Readonly<Record<Pollutant, number>>> = {
  values: { TSS: 54.5, TP: 0.26, TN: 2 },
  printedTo: 0.01,
  from: newYorkStormwaterManual.table("A.1"),
};
