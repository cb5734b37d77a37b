import { DESIGN_STORM_INCHES, MOST_MEASURED_INCHES } from "../rainfall/likely-rain.ts";
import type { Speaker } from "./calling/speaker.ts";
import type { Caution } from "./calling/worksheet-function.ts";

/** Cautions that every function shares that takes a storm, so that a slip of units is put in one set of words. */

export function unlikelyStorm<Inputs>(stormInches: (inputs: Inputs) => number): readonly Caution<Inputs>[] {
  return [
    {
      when: (inputs) => stormInches(inputs) > 0 && stormInches(inputs) < DESIGN_STORM_INCHES.least,
      says: (inputs, speaker) => hardlyRunsOff(stormInches(inputs), speaker),
      about: "So small a storm hardly runs off: look at its unit.",
    },
    {
      when: (inputs) => stormInches(inputs) > DESIGN_STORM_INCHES.most,
      says: (inputs, speaker) => fewPlacesHad(stormInches(inputs), speaker),
      about: "Few places ever had so much rain in a day: look at its unit.",
    },
  ];
}

export function hardlyRunsOff(stormInches: number, speaker: Speaker): string {
  return `A storm of ${speaker.depth(stormInches)} hardly runs off: look at its unit, an inch is 25.4 mm.`;
}

export function fewPlacesHad(stormInches: number, speaker: Speaker): string {
  return `Few places ever had ${speaker.depth(stormInches)} of rain in a day: look at its unit, an inch is 25.4 mm.`;
}

export function unlikelyIntensity<Inputs>(inchesPerHour: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => inchesPerHour(inputs) > MOST_MEASURED_INCHES.hour,
    says: (_, speaker) =>
      `No hour anywhere brought more than ${speaker.rate(MOST_MEASURED_INCHES.hour)}: look at the unit, and for how many minutes it holds.`,
  };
}
