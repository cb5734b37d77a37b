import { dayNumber, isoDate } from "../dates.ts";

/** Which part of 03/04/2026 comes first. */
export type DateOrder = "day first" | "month first";

/** A date as written in a file, and its time where one is written. */
export interface WrittenMoment {
  readonly year: number;
  /** Day and month in the order in which they are written. */
  readonly parts: readonly [first: number, second: number];
  /** "open" where only other dates of the file, or a person, can tell the two apart. */
  readonly order: DateOrder | "open";
  /** Since midnight; null where no time is written. */
  readonly minutes: number | null;
  /** East of Greenwich; null where none is written. */
  readonly offsetMinutes: number | null;
}

const TIME = "(\\d{1,2})(?::?(\\d{2})(?::?(\\d{2})(?:\\.\\d+)?)?)?\\s*(?:([ap])\\.?m\\.?)?\\s*(z|utc|gmt|[+-]\\d{2}(?::?\\d{2})?)?";
const patternOf = (date: string, beforeTime = "[t\\s,]+") => new RegExp(`^${date}(?:${beforeTime}${TIME})?$`, "i");
const YEAR_FIRST = patternOf("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})");
const RUN_TOGETHER = patternOf("(\\d{4})(\\d{2})(\\d{2})", "[t\\s]?");
const YEAR_LAST = patternOf("(\\d{1,2})[-/.](\\d{1,2})[-/.](\\d{4})");
const NAMED_MONTH_SECOND = patternOf("(\\d{1,2})[-\\s.]+([a-z]{3,9})\\.?[-\\s,]+(\\d{4})");
const NAMED_MONTH_FIRST = patternOf("([a-z]{3,9})\\.?\\s+(\\d{1,2}),?\\s+(\\d{4})");
const TIME_ALONE = new RegExp(`^${TIME}$`, "i");
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const LAST_MINUTE = 24 * 60;

/** Null where the words are no date with four digits for the year, or the time beside them is none. */
export function readMoment(words: string, timeWords: string | null = null): WrittenMoment | null {
  const date = dateIn(words);
  if (date === null) return null;
  const { time, ...day } = timeWords === null ? date : { ...date, time: TIME_ALONE.exec(timeWords)?.slice(1) };
  if (time === undefined) return null;
  const [hours, minutes = "0", seconds = "0", half, offset] = time;
  if (hours === undefined) return { ...day, minutes: null, offsetMinutes: null };
  const sinceMidnight = 60 * hourOf(Number(hours), half) + Number(minutes) + Number(seconds) / 60;
  return sinceMidnight <= LAST_MINUTE && Number(minutes) < 60 ? { ...day, minutes: sinceMidnight, offsetMinutes: offsetOf(offset) } : null;
}

interface WrittenDate extends Pick<WrittenMoment, "year" | "parts" | "order"> {
  /** Hours, minutes, seconds, a or p, offset. */
  readonly time: readonly (string | undefined)[];
}

function dateIn(words: string): WrittenDate | null {
  const yearFirst = YEAR_FIRST.exec(words) ?? RUN_TOGETHER.exec(words);
  if (yearFirst !== null)
    return {
      year: Number(yearFirst[1]),
      parts: [Number(yearFirst[2]), Number(yearFirst[3])],
      order: "month first",
      time: yearFirst.slice(4),
    };
  const yearLast = YEAR_LAST.exec(words);
  if (yearLast !== null)
    return { year: Number(yearLast[3]), parts: [Number(yearLast[1]), Number(yearLast[2])], order: "open", time: yearLast.slice(4) };
  const second = NAMED_MONTH_SECOND.exec(words);
  const named = second ?? NAMED_MONTH_FIRST.exec(words);
  if (named === null) return null;
  const [day, name = ""] = second === null ? [named[2], named[1]] : [named[1], named[2]];
  return {
    year: Number(named[3]),
    parts: [Number(day), MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1],
    order: "day first",
    time: named.slice(4),
  };
}

function hourOf(written: number, half: string | undefined): number {
  if (half === undefined) return written;
  return (written % 12) + (half.toLowerCase() === "p" ? 12 : 0);
}

function offsetOf(written: string | undefined): number | null {
  if (written === undefined) return null;
  const parts = /^([+-])(\d{2}):?(\d{2})?$/.exec(written);
  return parts === null ? 0 : (parts[1] === "-" ? -1 : 1) * (60 * Number(parts[2]) + Number(parts[3] ?? 0));
}

/** What the dates of a file say of their order: some have a part that can be no month. */
export function orderOf(moments: readonly (WrittenMoment | null)[]): DateOrder | "open" | "both" {
  const open = moments.filter((moment): moment is WrittenMoment => moment?.order === "open");
  if (open.length === 0) return "month first";
  const isDayFirst = open.some(({ parts: [first] }) => first > 12);
  const isMonthFirst = open.some(({ parts: [, second] }) => second > 12);
  if (isDayFirst && isMonthFirst) return "both";
  return isDayFirst ? "day first" : isMonthFirst ? "month first" : "open";
}

/** Minutes since a spreadsheet's day 0, by the clock that wrote them; null where the calendar has no such day. */
export function minutesOf({ year, parts: [first, second], order, minutes }: WrittenMoment, open: DateOrder): number | null {
  const [day, month] = (order === "open" ? open : order) === "day first" ? [first, second] : [second, first];
  const number = dayNumber(year, month, day);
  const two = (part: number) => String(part).padStart(2, "0");
  return isoDate(number) === `${year}-${two(month)}-${two(day)}` && number >= 1 ? number * LAST_MINUTE + (minutes ?? 0) : null;
}
