import { metricPerUs } from "../quantities.ts";
import { handDigCubicMetersPerHour } from "../published/planning-planet-wiki.ts";

/**
 * Hours to dig a volume by hand.
 *
 *   person-hours = V / output x volunteer factor      (V in place; output of one laborer as printed, cu m an hour)
 *   clock hours  = person-hours / people
 *
 * Source  Planning Planet wiki, pits by hand to 2 sq m and 1.5 m deep (read). Sand is taken as loose and loam as firm soil.
 *         Volunteers need 1.5 to 2 times as long: common practice, no source.
 * Domain  inPlaceCubicYards >= 0, people a whole number of 1 or more.
 * Limits  Digging and throwing out alone: no barrowing, breaks, roots or heat. More people than there is room for do not help.
 */
export function handDigHours(inPlaceCubicYards: number, soil: DugSoil, people: number, areVolunteers: boolean): DigHours {
  const personHours = laborerHours(inPlaceCubicYards, soil) * (areVolunteers ? VOLUNTEER_FACTOR : 1);
  return { personHours, clockHours: personHours / people };
}

/** What one laborer would take. */
export function laborerHours(inPlaceCubicYards: number, soil: DugSoil): number {
  return (inPlaceCubicYards * metricPerUs("earthVolume")) / laborerCubicMetersPerHour(soil);
}

export function laborerCubicMetersPerHour(soil: DugSoil): number {
  return handDigCubicMetersPerHour.values[DUG_AS[soil]];
}

export interface DigHours {
  readonly personHours: number;
  readonly clockHours: number;
}

/** Each soil by the row of the table it is dug as. */
const DUG_AS = {
  sand: "loose",
  loam: "firm",
  clay: "clay",
  loose: "loose",
  firm: "firm",
  gravel: "gravel",
  "boulder clay": "boulder clay",
} as const satisfies Readonly<Record<string, keyof typeof handDigCubicMetersPerHour.values>>;

export type DugSoil = keyof typeof DUG_AS;

export const DUG_SOILS = Object.keys(DUG_AS) as readonly DugSoil[];

/** Common practice, no source. */
export const VOLUNTEER_FACTOR = 1.5;

/** Common practice, no source: nobody digs well for longer in one session. */
export const LONGEST_SESSION_HOURS = 4;
