import { PublishedDocument, type Published } from "./source.ts";

export const planningPlanetWiki = new PublishedDocument(
  "Planning Planet, wiki, labour outputs for excavation by hand",
  "pages 422684 and 422442",
  "read",
);

/** Pits by hand, to 2 sq m and 1.5 m deep: cu m in place that one person digs in an hour. */
export const handDigCubicMetersPerHour = {
  values: { loose: 0.5, firm: 0.43, gravel: 0.34, clay: 0.35, "boulder clay": 0.28 },
  printedTo: 0.01,
  from: planningPlanetWiki.table("of pits to 2 sq m"),
} as const satisfies Published<Readonly<Record<string, number>>>;
