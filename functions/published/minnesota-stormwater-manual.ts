import { percents, type PublishedMix } from "./soil-mix.ts";
import { PublishedDocument } from "./source.ts";

export const minnesotaStormwaterManual = new PublishedDocument("Minnesota Stormwater Manual", "as printed online", "read");

const comparison = minnesotaStormwaterManual.place('page "Comparison of pros and cons of bioretention soil mixes"');

/** The bioretention mixes, A and B as updated. */
export const minnesotaMixes = {
  a: { values: { sand: percents(60, 70), topsoil: percents(15, 25), compost: percents(15, 25) }, printedTo: 1, from: comparison },
  b: { values: { sand: percents(70, 85), compost: percents(15, 30) }, printedTo: 1, from: comparison },
  c: {
    values: { sand: percents(85, 88), "silt and clay": percents(8, 12), "organic matter": percents(3, 5) },
    printedTo: 1,
    from: comparison,
  },
} as const satisfies Readonly<Record<string, PublishedMix>>;
