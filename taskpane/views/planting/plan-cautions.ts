import { plantNamed, standsAlone, type PalettePlant } from "../../../addin/actions/planting/palette.ts";
import type { ShoppingLine } from "./shopping-list.ts";
import { plantingText } from "./text.ts";

const words = plantingText.cautions;

/** Common practice, no source. */
export const MOST_OF_ONE_KIND_PERCENT = 30;

/** Too few to speak of shares. */
const FEW_PLANTS = 10;

/** What to know of the plants of a plan before they are bought. */
export function planCautions(lines: readonly ShoppingLine[], palette: readonly PalettePlant[]): readonly string[] {
  const all = lines.reduce((sum, { count }) => sum + count, 0);
  return lines.flatMap(({ plant, commonName, count }) => {
    const known = plantNamed(palette, plant);
    const name = plantingText.named(plant, commonName);
    const percent = Math.round((100 * count) / all);
    return [
      ...(known === undefined ? [words.unknownPlant(name)] : []),
      ...(known?.cautions == null ? [] : [words.plant(name, known.cautions)]),
      ...(known !== undefined && standsAlone(known) ? [words.shrub(plant, commonName)] : []),
      ...(all >= FEW_PLANTS && percent > MOST_OF_ONE_KIND_PERCENT ? [words.tooMany(name, percent)] : []),
    ];
  });
}
