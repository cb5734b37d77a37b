import { PublishedDocument, type Published } from "./source.ts";

export const winchesterStormwaterCode = new PublishedDocument(
  "City of Winchester (Indiana), code of ordinances, stormwater",
  "as printed online",
  "read",
);

/** Manning's n of closed conduits; its values are those of the Federal Highway Administration. */
export const pipeRoughness = {
  values: { PVC: 0.01, HDPE: 0.011, concrete: 0.013, "vitrified clay": 0.013, "cast iron": 0.013, brick: 0.015, "corrugated metal": 0.024 },
  printedTo: 0.001,
  from: winchesterStormwaterCode.table("4"),
} as const satisfies Published<Readonly<Record<string, number>>>;

/** Manning's n of open channels from the same table. */
export const channelRoughness = {
  values: { "short grass": 0.025, "stone, placed": 0.03, "stone, dumped": 0.035, "swale with grass": 0.05 },
  printedTo: 0.001,
  from: winchesterStormwaterCode.table("4"),
} as const satisfies Published<Readonly<Record<string, number>>>;
