import { fromUs, toUs } from "../../../functions/quantities.ts";
import { speakers } from "../../../functions/worksheet/calling/speaker.ts";
import type { SettingValues } from "../../records/program.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** How far down the planned dig goes, in the yard's units, and what makes it up. */
export interface PlannedDig {
  readonly depth: number;
  readonly ponding: number;
  readonly mulch: number;
  readonly mix: number;
}

/**
 * Ponding, mulch and soil mix under one another, from Design; null while there is no basin.
 *
 *   d = ponding + mulch + soil mix
 *
 * The soil below this depth is what drinks the water, so it is what has to be tested: the stormwater code of Dover
 * Township, Pennsylvania, asks for the test at the elevation of the facility's bottom.
 */
export function plannedDig(settings: Pick<SettingValues, "mulchDepthInches">, { design, units }: Yard): PlannedDig | null {
  const { pondingDepth, mediaDepth } = design;
  if (typeof pondingDepth !== "number") return null;
  const mulch = fromUs("depth", settings.mulchDepthInches, units);
  const mix = typeof mediaDepth === "number" ? mediaDepth : 0;
  return { depth: pondingDepth + mulch + mix, ponding: pondingDepth, mulch, mix };
}

/** A hole that ends above the bottom of the dig: what it tested will be dug away. */
export function endsAboveTheDig(holeDepth: number | null, dig: PlannedDig | null): boolean {
  return holeDepth !== null && dig !== null && dig.depth - holeDepth > SHORT_BY * dig.depth;
}

/** Common practice, no source: a tape in a hole misses by as much. */
const SHORT_BY = 0.02;

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

export function depthWords(depth: number, { units }: Pick<Yard, "units">): string {
  return speakers[units].depth(toUs("depth", depth, units));
}
