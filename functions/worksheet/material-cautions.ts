import { isPrintedMaterial, materialTons, type Material } from "../amendment/material-weight.ts";
import type { Speaker } from "./calling/speaker.ts";
import type { Caution } from "./calling/worksheet-function.ts";

/** What functions that weigh material say alike. */

export const usualWeight: Caution<{ readonly material: Material }> = {
  when: ({ material }) => !isPrintedMaterial(material),
  about: "The weight of the material is common practice, not a published value: ask the supplier.",
  says: ({ material }) => `The weight of ${material} is common practice, not a published value: ask the supplier.`,
};

export function weightOf(cubicYards: number, material: Material, speaker: Speaker): string {
  return speaker.say("weight", materialTons(cubicYards, material));
}
