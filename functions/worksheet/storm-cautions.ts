import { DESIGN_STORM_INCHES, MOST_MEASURED_INCHES } from "../rainfall/likely-rain.ts";
import type { Caution } from "./calling/worksheet-function.ts";

/** Cautions that every function shares that takes a storm, so that a slip of units is put in one set of words. */

export const LOOK_AT_ITS_UNIT = "look at its unit, an inch is 25.4 mm.";

export function unlikelyStorm<Inputs>(stormInches: (inputs: Inputs) => number): readonly Caution<Inputs>[] {
  return [
    {
      when: (inputs) => stormInches(inputs) > 0 && stormInches(inputs) < DESIGN_STORM_INCHES.least,
      says: (inputs, speaker) => `A storm of ${speaker.depth(stormInches(inputs))} hardly runs off: ${LOOK_AT_ITS_UNIT}`,
      about: "So small a storm hardly runs off: look at its unit.",
    },
    {
      when: (inputs) => stormInches(inputs) > DESIGN_STORM_INCHES.most,
      says: (inputs, speaker) => `Few places ever had ${speaker.depth(stormInches(inputs))} of rain in a day: ${LOOK_AT_ITS_UNIT}`,
      about: "Few places ever had so much rain in a day: look at its unit.",
    },
  ];
}

export function unlikelyIntensity<Inputs>(inchesPerHour: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => inchesPerHour(inputs) > MOST_MEASURED_INCHES.hour,
    says: (_, speaker) =>
      `No hour anywhere brought more than ${speaker.rate(MOST_MEASURED_INCHES.hour)}: look at the unit, and for how many minutes it holds.`,
  };
}
