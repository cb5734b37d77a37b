import { toUs } from "../../../functions/quantities.ts";
import { speakers } from "../../../functions/worksheet/calling/speaker.ts";
import { AT_LEAST_THE_DESIGN } from "../../checklist/as-built-check.ts";
import { compareAsBuilt, newestAsBuilt } from "../build/record-as-built.ts";
import { endsAboveTheDig, plannedDig, type PlannedDig } from "../hole-test/planned-dig.ts";
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

/** "the planned dig goes down 23 in: 8 in of ponding, 3 in of mulch and 12 in of soil mix" */
export function digWords({ depth, ponding, mulch, mix }: PlannedDig, yard: Pick<Yard, "units">): string {
  const parts = [
    `${depthWords(ponding, yard)} of ponding`,
    ...(mulch > 0 ? [`${depthWords(mulch, yard)} of mulch`] : []),
    ...(mix > 0 ? [`${depthWords(mix, yard)} of soil mix`] : []),
  ];
  const listed = parts.length === 1 ? parts.join("") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1) ?? ""}`;
  return `the planned dig goes down ${depthWords(depth, yard)}: ${listed}`;
}

/** One sentence a hole that ends above the bottom of the dig. */
export function shallowHoles({ settings }: Pick<Program, "settings">, yard: Yard): readonly string[] {
  const dig = plannedDig(settings, yard);
  return yard.holeTests.flatMap(({ record, row }) => {
    const sentence = shallowHole(record.hole ?? `in row ${row + 1}`, record.holeDepth, dig, yard);
    return sentence === null ? [] : [sentence];
  });
}

export function shallowHole(name: string, holeDepth: number | null, dig: PlannedDig | null, yard: Pick<Yard, "units">): string | null {
  if (holeDepth === null || dig === null || !endsAboveTheDig(holeDepth, dig)) return null;
  return `Hole ${name} ends at ${depthWords(holeDepth, yard)}, and ${digWords(dig, yard)}. It tested soil that will be dug away: test at the bottom of the dig.`;
}

function depthWords(depth: number, { units }: Pick<Yard, "units">): string {
  return speakers[units].depth(toUs("depth", depth, units));
}

function entry(step: string, sentence: string | null): (readonly [string, string])[] {
  return sentence === null ? [] : [[step, sentence]];
}
