import { fromUs, unitOf } from "../quantities.ts";
import { deepestPondingInches } from "../basin/deepest-ponding.ts";
import { drawdownHours } from "../basin/drawdown.ts";
import type { Speaker } from "./calling/speaker.ts";

/** Why a basin fails, in words for a homeowner's file and in the units of the yard. */

/** "Drains too slowly: 6 in needs 62 h and 48 h is the limit. Up to 4.6 in would drain." */
export function drainsTooSlowly(pondingInches: number, designInchesPerHour: number, drainHours: number, speaker: Speaker): string {
  const needed = drawdownHours(pondingInches, designInchesPerHour, 0, 0);
  const deepest = depthThatHolds(deepestPondingInches(designInchesPerHour, drainHours), speaker);
  return `Drains too slowly: ${speaker.depth(pondingInches)} needs ${speaker.hours(needed, "up")} and ${speaker.hours(drainHours)} is the limit. Up to ${deepest} would drain.`;
}

export const DOES_NOT_DRAIN = "Does not drain: the design rate is 0.";

export const NEVER_DRAINS = "Does not drain: the tested rate is 0. Choose another place or ask a professional.";

export function noAreaHolds(stormInches: number, speaker: Speaker): string {
  return `No area can hold this storm: each part of the basin catches ${speaker.depth(stormInches)} of rain itself and can hold no more than that. Pond deeper or add soil mix.`;
}

/** Rounded down to what a rule shows, a tenth of an inch or a millimetre: as printed it must still drain. */
function depthThatHolds(inches: number, speaker: Speaker): string {
  const perUnit = speaker.system === "us" ? 10 : 1;
  const marks = Math.floor(fromUs("depth", inches, speaker.system) * perUnit * (1 + 1e-9));
  return marks === 0 ? speaker.depth(inches, "down") : `${marks / perUnit} ${unitOf("depth", speaker.system)}`;
}
