import { AT_LEAST_THE_DESIGN } from "../../checklist/as-built-check.ts";
import { compareAsBuilt, newestAsBuilt } from "../build/record-as-built.ts";
import { depthWords, digWords, endsAboveTheDig, plannedDig } from "../hole-test/planned-dig.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** What other sheets hold against an answer that would pass by itself, by step id. */
export function contradictionsOf(program: Program, yard: Yard): ReadonlyMap<string, string> {
  return new Map([
    ...entry("as-built-held", lessThanTheDesign(program, yard)),
    ...entry("water-table-depth", notDownToTheDig(program, yard)),
  ]);
}

/** Less than at least: what was measured is the judge of it, and not the person who would like it to be so. */
function lessThanTheDesign(program: Program, yard: Yard): string | null {
  const newest = newestAsBuilt(yard.asBuilt);
  if (newest === null || yard.answers.get("as-built-held")?.record.answer !== AT_LEAST_THE_DESIGN) return null;
  const designedSlope = yard.site.record.sideSlope ?? program.settings.sideSlope;
  const { waterHeld } = compareAsBuilt(newest.record, yard.design, designedSlope, program.settings, yard.units);
  if (waterHeld === null) return "Nothing measured says how much the garden holds. Measure floor and depth, and write them to As-built.";
  if (waterHeld.finding === "pass" || waterHeld.designed === null) return null;
  if (waterHeld.finding === null)
    return "The depth of the soil mix was not measured, and the design counts on it. Measure it, and write it to As-built.";
  const share = Math.floor((waterHeld.built / waterHeld.designed) * 100);
  return `What was measured holds ${share} % of the design, which is not "${AT_LEAST_THE_DESIGN}". Answer that it is less, or measure it again.`;
}

function notDownToTheDig({ settings }: Program, yard: Yard): string | null {
  const { answer } = yard.answers.get("water-table-depth")?.record ?? {};
  const dig = plannedDig(settings, yard);
  if (typeof answer !== "number" || dig === null || !endsAboveTheDig(answer, dig)) return null;
  return `It shows none down to ${depthWords(answer, yard)}, and ${digWords(dig, yard)}. What lies below it is not known: look deeper.`;
}

function entry(step: string, sentence: string | null): (readonly [string, string])[] {
  return sentence === null ? [] : [[step, sentence]];
}
