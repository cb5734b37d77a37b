import { hoursBetween, peopleIn, type SignIn } from "../../../addin/actions/build/record-dig-day.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { buildText } from "./text.ts";

/** Volunteers as typed: one or several names, and the times or hours that hold for all of them. */
export interface TypedSignIn {
  readonly names: string;
  readonly arrived: string;
  readonly left: string;
  readonly hours: string;
}

export const BLANK_SIGN_IN: TypedSignIn = { names: "", arrived: "", left: "", hours: "" };

export interface SignInFaults {
  readonly names?: string;
  readonly times?: string;
  readonly hours?: string;
}

export type ReadSignIn = { readonly people: readonly SignIn[] } | { readonly faults: SignInFaults };

/** Hours stay blank until somebody leaves: a blank is never taken for none. */
export function readSignIn(typed: TypedSignIn): ReadSignIn {
  const words = buildText.day.signIn;
  const names = peopleIn(typed.names);
  const arrived = timeOfDay(typed.arrived);
  const left = timeOfDay(typed.left);
  const hours = readTypedNumber(typed.hours, { label: words.hours, moreThan: 0, atMost: 24 });
  const times = timesFault(arrived, left, typed.hours.trim() !== "");
  const faults: SignInFaults = {
    ...(names.length === 0 ? { names: words.nobody } : {}),
    ...(times === null ? {} : { times }),
    ...(isRefused(hours) ? { hours: hours.sentence } : {}),
  };
  if (Object.keys(faults).length > 0 || isRefused(hours)) return { faults };
  const worked = arrived !== null && left !== null ? hoursBetween(arrived, left) : hours.value;
  return { people: names.map((who) => ({ who, arrived, left, hours: worked })) };
}

function timesFault(arrived: number | null, left: number | null, hoursGiven: boolean): string | null {
  const words = buildText.day.signIn;
  if (left !== null && hoursGiven) return words.bothWays;
  if (left !== null && arrived === null) return words.leftOnly;
  return left !== null && arrived !== null && left <= arrived ? words.leftFirst : null;
}

/** "09:30" as a share of the day, as a spreadsheet keeps a time; null for anything else. */
export function timeOfDay(typed: string): number | null {
  const parts = /^(\d{2}):(\d{2})$/.exec(typed);
  if (parts === null) return null;
  const minutes = Number(parts[1]) * 60 + Number(parts[2]);
  return minutes < MINUTES_A_DAY ? minutes / MINUTES_A_DAY : null;
}

/** "9:30" of a share of the day. */
export function timeWords(share: number): string {
  const minutes = Math.round(share * MINUTES_A_DAY);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
}

const MINUTES_A_DAY = 24 * 60;
