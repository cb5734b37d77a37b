import { PublishedDocument, type Published } from "./source.ts";

export const tm9_2320_366_10_1 = new PublishedDocument("US Army, Operator's Manual, TM 9-2320-366-10-1", "as printed online", "read");

/** Weight of loads, lb per cu ft. Crushed stone is printed as 95 to 100; moist earth is printed as packed. */
export const printedDensities = {
  values: {
    "dry earth": 75,
    "moist earth": 95,
    "earth and gravel": 100,
    gravel: 110,
    "dry gravel and sand": 95,
    "wet gravel and sand": 120,
    "crushed stone": 100,
    "wet mud": 120,
  },
  printedTo: 1,
  from: tm9_2320_366_10_1.table("2-15"),
} as const satisfies Published<Readonly<Record<string, number>>>;
