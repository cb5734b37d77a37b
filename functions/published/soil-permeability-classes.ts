import { PublishedDocument, type Published } from "./source.ts";

/** Reprints the permeability classes of the USDA Soil Conservation Service for saturated soil. */
export const landTreatmentManual = new PublishedDocument(
  "US EPA, Process Design Manual for Land Treatment of Municipal Wastewater",
  "1981",
  "read in transcription",
);

/** In in/h: where the fastest class, "very rapid", begins. */
export const veryRapidInchesPerHour: Published<number> = {
  values: 20,
  printedTo: 1,
  from: landTreatmentManual.place("permeability classes of saturated soil"),
};
