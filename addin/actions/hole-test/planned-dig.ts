import { fromUs } from "../../../functions/quantities.ts";
import type { SettingValues } from "../../records/program.ts";
import type { Yard } from "../program/read-program.ts";

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
