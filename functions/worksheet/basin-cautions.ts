import { DEEPEST_USUAL_PONDING_INCHES, FENCED_PONDING_INCHES, LONGEST_PUBLISHED_DRAIN_HOURS } from "../basin/deepest-ponding.ts";
import { USUAL_SIDE_SLOPE } from "../basin/basin-volume.ts";
import { LARGEST_USUAL_FLOOR_SQUARE_FEET } from "../basin/basin-area.ts";
import { REFERRED_DIG_DEPTH_INCHES } from "../earthwork/dig-volume.ts";
import type { Caution } from "./calling/worksheet-function.ts";

/** Cautions that several functions share, so that a danger is put in one set of words. */

export const callBeforeDigging: Caution<unknown> = {
  when: () => true,
  says: "Have buried utilities marked before any digging, the test hole included: call 811 and wait until each has answered. Private lines are not marked.",
};

export const NOTHING_TAKEN_OFF = "Nothing is taken off: tested rates are usually divided by 2 or 3, because a basin clogs.";

export const steepSides: Caution<{ readonly sideSlope: number }> = {
  when: ({ sideSlope }) => sideSlope > 0 && sideSlope < USUAL_SIDE_SLOPE,
  says: `Sides steeper than ${USUAL_SIDE_SLOPE} to 1 wash and slump more easily.`,
};

export function deepDig<Inputs>(digInches: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => digInches(inputs) >= REFERRED_DIG_DEPTH_INCHES,
    says: (_, speaker) =>
      `A dig of ${speaker.length(REFERRED_DIG_DEPTH_INCHES / 12)} or more can cave in and needs a way out: refer it to a licensed contractor.`,
  };
}

export function deepPonding<Inputs>(pondingInches: (inputs: Inputs) => number): readonly Caution<Inputs>[] {
  return [
    {
      when: (inputs) => pondingInches(inputs) > DEEPEST_USUAL_PONDING_INCHES && pondingInches(inputs) <= FENCED_PONDING_INCHES,
      says: (_, speaker) => `Ponding deeper than ${speaker.depth(DEEPEST_USUAL_PONDING_INCHES)} stands long and is a place to trip.`,
    },
    {
      when: (inputs) => pondingInches(inputs) > FENCED_PONDING_INCHES,
      says: (_, speaker) => `Ponding deeper than ${speaker.depth(FENCED_PONDING_INCHES)} near children needs a barrier: ask locally.`,
    },
  ];
}

export function standsLong<Inputs>(hours: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => hours(inputs) > LONGEST_PUBLISHED_DRAIN_HOURS,
    says: `Water that stands over ${LONGEST_PUBLISHED_DRAIN_HOURS} h lets mosquitoes grow, and is longer than any published limit.`,
  };
}

export function largeFloor<Inputs>(floorSquareFeet: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => floorSquareFeet(inputs) > LARGEST_USUAL_FLOOR_SQUARE_FEET,
    says: (_, speaker) => `A floor over ${speaker.area(LARGEST_USUAL_FLOOR_SQUARE_FEET)} is hard to dig level: consider two gardens.`,
  };
}
