import type { UnitSystem } from "../site-terms.ts";
import { OUTSIDE_THE_US, type ProgramPlace } from "./rules.ts";

/** Whoever is asked to have lines marked. 811 is a number of the US: it is said alone where the yard is there. */
export interface MarkingService {
  /** "call 811", for the middle of a sentence. */
  readonly ask: string;
  readonly name: string;
  readonly isInUs: boolean;
}

/** Where no place is chosen, US units leave 811 in sight as the number of the US, and metric ones do not. */
export function markingService(place: ProgramPlace | null, units: UnitSystem): MarkingService {
  if (place === OUTSIDE_THE_US || (place === null && units === "metric"))
    return { ask: `ask ${LOCAL_SERVICE}`, name: LOCAL_SERVICE, isInUs: false };
  if (place === null) return { ask: "ask the one-call center (811 in the US)", name: "the one-call center (811 in the US)", isInUs: true };
  return { ask: "call 811", name: "811, the one-call center", isInUs: true };
}

const LOCAL_SERVICE = "the local one-call or utility-marking service";
