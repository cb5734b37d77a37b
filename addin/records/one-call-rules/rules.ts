import { dayNumberOf, monthsAfter } from "../calendar-day.ts";
import { alabamaToMissouri } from "./alabama-to-missouri.ts";
import { montanaToWyoming } from "./montana-to-wyoming.ts";
import type { OneCallRule } from "./rule.ts";

/** The fifty states and the District of Columbia. */
export type UsState = keyof typeof alabamaToMissouri | keyof typeof montanaToWyoming;

export const ONE_CALL_RULES: Readonly<Record<UsState, OneCallRule>> = { ...alabamaToMissouri, ...montanaToWyoming };

export const US_STATES = Object.keys(ONE_CALL_RULES) as readonly UsState[];

export const OUTSIDE_THE_US = "outside the US";

/** Where a program works, as Program offers it. */
export type ProgramPlace = UsState | typeof OUTSIDE_THE_US;
export const PROGRAM_PLACES: readonly ProgramPlace[] = [...US_STATES, OUTSIDE_THE_US];

/** What is known of a place's rule on a day: a row that was read too long ago is a reason to ask, and no number. */
export type RuleKnown =
  | { readonly kind: "no place" }
  | { readonly kind: "outside the US" }
  | { readonly kind: "too old"; readonly state: UsState; readonly rule: OneCallRule }
  | { readonly kind: "known"; readonly state: UsState; readonly rule: OneCallRule };

export function ruleKnown(place: ProgramPlace | null, today: number): RuleKnown {
  if (place === null) return { kind: "no place" };
  if (place === OUTSIDE_THE_US) return { kind: "outside the US" };
  const rule = ONE_CALL_RULES[place];
  return { kind: isTooOld(rule, today) ? "too old" : "known", state: place, rule };
}

/** Laws on this subject changed in eight states within two years: after a year a row says nothing any more. */
export const RULE_GOOD_FOR_MONTHS = 12;

function isTooOld({ readOn }: OneCallRule, today: number): boolean {
  const day = dayNumberOf(readOn);
  return day === null || today > monthsAfter(day, RULE_GOOD_FOR_MONTHS);
}
