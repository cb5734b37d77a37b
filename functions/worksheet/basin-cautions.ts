import {
  DEEPEST_USUAL_PONDING_INCHES,
  FENCED_PONDING_INCHES,
  LONGEST_PUBLISHED_DRAIN_HOURS,
  LONGEST_PUBLISHED_EMPTYING_HOURS,
  SHORTEST_PUBLISHED_DRAIN_HOURS,
} from "../basin/deepest-ponding.ts";
import { MOST_PRINTED_VOID_SHARE } from "../basin/drawdown.ts";
import { USUAL_SIDE_SLOPE } from "../basin/basin-volume.ts";
import { LARGEST_USUAL_FLOOR_SQUARE_FEET } from "../basin/basin-area.ts";
import { FASTEST_LIKELY_INCHES_PER_HOUR } from "../infiltration/design-rate.ts";
import { REFERRED_DIG_DEPTH_INCHES } from "../earthwork/basin-dig.ts";
import type { Caution } from "./calling/worksheet-function.ts";

/** Cautions that several functions share, so that a danger is put in one set of words. */

/** Whoever has lines marked where no number is known: 811 is a number of the US alone. */
const MARKING_SERVICE = "the local one-call or utility-marking service";

export const callBeforeDigging: Caution<unknown> = {
  when: () => true,
  says: (_, { system }) =>
    `Have buried utilities marked before any digging, the test hole included: ask ${system === "us" ? "the one-call center (811 in the US)" : MARKING_SERVICE} and wait until each has answered. Private lines are not marked.`,
  about: `Have buried utilities marked before any digging, the test hole included: ask ${MARKING_SERVICE}, in the US 811, and wait until each has answered. Private lines are not marked.`,
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
    says: `Water that stands for days lets mosquitoes grow: printed limits run from ${SHORTEST_PUBLISHED_DRAIN_HOURS} to ${LONGEST_PUBLISHED_DRAIN_HOURS} h for water on the surface, and to ${LONGEST_PUBLISHED_EMPTYING_HOURS} h for what drains below it.`,
  };
}

/** For a rate tested in a yard, or designed with. */
export function fasterThanSoil<Inputs>(inchesPerHour: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => inchesPerHour(inputs) > FASTEST_LIKELY_INCHES_PER_HOUR,
    says: (_, speaker) =>
      `Hardly any soil takes more than ${speaker.rate(FASTEST_LIKELY_INCHES_PER_HOUR)}: check the units and the readings, and look for gravel, a burrow or a pipe's bed.`,
  };
}

/** For the hours that a basin is allowed, which are sometimes typed as days. */
export const shortDrainTime: Caution<{ readonly drainHours: number }> = {
  when: ({ drainHours }) => drainHours < SHORTEST_PUBLISHED_DRAIN_HOURS,
  says: `The shortest printed limit is ${SHORTEST_PUBLISHED_DRAIN_HOURS} h: drain hours are hours, so two days are 48.`,
};

export const largeVoids: Caution<{ readonly voidShare: number }> = {
  when: ({ voidShare }) => voidShare > MOST_PRINTED_VOID_SHARE,
  says: `No soil mix holds so much: printed void shares run from 0.2 (bioretention soil) to 0.4 (stone), and no printed soil has more than ${MOST_PRINTED_VOID_SHARE} of pores.`,
};

export function largeFloor<Inputs>(floorSquareFeet: (inputs: Inputs) => number): Caution<Inputs> {
  return {
    when: (inputs) => floorSquareFeet(inputs) > LARGEST_USUAL_FLOOR_SQUARE_FEET,
    says: (_, speaker) => `A floor over ${speaker.area(LARGEST_USUAL_FLOOR_SQUARE_FEET)} is hard to dig level: consider two gardens.`,
  };
}
