import { PublishedDocument, type Published } from "./source.ts";

export const manningRoughnessPage = new PublishedDocument(
  "Manning's n of channels and closed conduits, a web page that quotes several tables",
  "undated",
  "read",
);

/** Corrugated inside as well as outside; a smooth liner is HDPE. Trade sheets go down to 0.015 for 3 to 8 in (from memory). */
export const corrugatedPlasticRoughness = {
  values: { "corrugated plastic": 0.024 },
  printedTo: 0.001,
  from: manningRoughnessPage.place("plastic pipe, corrugated"),
} as const satisfies Published<Readonly<Record<string, number>>>;
