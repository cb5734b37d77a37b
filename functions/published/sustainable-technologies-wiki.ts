import { percents, type PublishedMix } from "./soil-mix.ts";
import { PublishedDocument } from "./source.ts";

/** The Sustainable Technologies Evaluation Program's planning and design guide for Ontario, kept as a wiki. */
export const sustainableTechnologiesWiki = new PublishedDocument(
  "Sustainable Technologies Evaluation Program, Low Impact Development Stormwater Management Planning and Design Guide, wiki",
  "as printed online",
  "read",
);

export const lowPhosphorusPeatMix: PublishedMix = {
  values: { sand: percents(86), peat: percents(12), "phosphorus sorbent": percents(2) },
  printedTo: 1,
  from: sustainableTechnologiesWiki.place('page "Bioretention: Filter media"'),
};
