import { PublishedDocument, type Published } from "./source.ts";

/** Carries the filter-bed method of Claytor and Schueler (1996) with a worked example; only its title pages could be opened. */
export const georgiaStormwaterManual = new PublishedDocument(
  "Atlanta Regional Commission, Georgia Stormwater Management Manual, volume 2",
  "1st ed., August 2001",
  "from memory",
);

/** How fast water passes a filter medium, ft a day. The first was also read on slides of the Center for Watershed Protection. */
export const mediaFeetPerDay = {
  values: { "bioretention soil": 0.5, peat: 2, sand: 3.5, "leaf compost": 8.7 },
  printedTo: 0.1,
  from: georgiaStormwaterManual.place("coefficients of permeability of filter media"),
} as const satisfies Published<Readonly<Record<string, number>>>;
