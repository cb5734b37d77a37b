import { percents, type PublishedMix } from "./soil-mix.ts";
import { PublishedDocument } from "./source.ts";

export const westernWashingtonRainGardens = new PublishedDocument(
  "Washington State University Extension, Rain Garden Handbook for Western Washington",
  "2013",
  "from memory",
);

/** Compost mixed into the soil that was dug. */
export const westernWashingtonMix: PublishedMix = {
  values: { "native soil": percents(65), compost: percents(35) },
  printedTo: 1,
  from: westernWashingtonRainGardens.place("soil mix"),
};
