import { stateFactors, type EarthSoil } from "../published/fm-5-434.ts";

/**
 * A volume of earth in another of its three states: in place (bank), dug and loose, or compacted.
 *
 *   V to = V from x (factor to / factor from)      (any unit of volume; factor 1 in place)
 *
 * Every change goes by way of the volume in place, so that there and back again is the same earth. The factors the
 * table prints between loose and compacted differ from that only by its rounding.
 *
 * Source  US Army, FM 5-434, Earthmoving Operations, 15 June 2000, table 1-1.
 * Domain  volume >= 0.
 * Limits  Typical factors: moisture and tooling move them by several percent. Never add volumes in different states.
 */
export function soilVolumeInState(volume: number, from: SoilState, to: SoilState, soil: EarthSoil): number {
  if (from === to) return volume;
  return (volume / inPlaceTo(from, soil)) * inPlaceTo(to, soil);
}

export type SoilState = "in place" | "loose" | "compacted";

export const SOIL_STATES: readonly SoilState[] = ["in place", "loose", "compacted"];

/** Volume in a state for each volume in place. */
export function inPlaceTo(state: SoilState, soil: EarthSoil): number {
  return state === "in place" ? 1 : stateFactors.values[soil][state];
}
