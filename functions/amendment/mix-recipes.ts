import { minnesotaMixes } from "../published/minnesota-stormwater-manual.ts";
import { lowPhosphorusPeatMix } from "../published/sustainable-technologies-wiki.ts";
import type { PublishedMix } from "../published/soil-mix.ts";
import { westernWashingtonMix } from "../published/western-washington-rain-gardens.ts";
import { wisconsinMix } from "../published/wisconsin-rain-gardens.ts";
import type { PlaceInPrint } from "../published/source.ts";
import type { MixPart } from "./soil-mix.ts";

/**
 * Soil mixes by plain name, each one set of shares inside a published range.
 *
 *   share = middle of the published range / sum of the middles, to whole percents that add up to 100
 *
 * Source  The documents named beside each recipe. Where the middles add up to 100 percent they stand as they are.
 * Domain  The names below.
 * Limits  By volume. A soil sample decides which; local rules may name another mix.
 */
export interface MixRecipe {
  readonly name: string;
  readonly parts: readonly MixPart[];
  readonly published: PublishedMix;
}

export const mixRecipes: readonly MixRecipe[] = [
  recipe("sand and compost", { sand: 0.775, compost: 0.225 }, minnesotaMixes.b),
  recipe("sand with topsoil and compost", { sand: 0.62, topsoil: 0.19, compost: 0.19 }, minnesotaMixes.a),
  recipe("sand low in phosphorus", { sand: 0.86, "silt and clay": 0.1, "organic matter": 0.04 }, minnesotaMixes.c),
  recipe("sand with peat low in phosphorus", { sand: 0.86, peat: 0.12, "phosphorus sorbent": 0.02 }, lowPhosphorusPeatMix),
  recipe("tight soil", { sand: 0.52, topsoil: 0.24, compost: 0.24 }, wisconsinMix),
  recipe("fast soil", { "native soil": 0.65, compost: 0.35 }, westernWashingtonMix),
];

export const recipeSources: readonly PlaceInPrint[] = [...new Set(mixRecipes.map(({ published }) => published.from))];

function recipe(name: string, shares: Readonly<Record<string, number>>, published: PublishedMix): MixRecipe {
  return { name, parts: Object.entries(shares).map(([material, share]) => ({ material, share })), published };
}
