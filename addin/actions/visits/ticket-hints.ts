import { businessDayAfter, closedDays, firstDigDate, isBusinessDay } from "../../../functions/earthwork/dig-date.ts";
import { ticketDays } from "../../checklist/dig-lock.ts";
import { ruleKnown, type RuleKnown } from "../../records/one-call-rules/rules.ts";
import { isoDate, momentText, type Moment } from "../dates.ts";
import type { Program, Yard } from "../program/read-program.ts";

/** The one-call rule of the program's place, as far as it may still be held against a date. */
export function ruleOfProgram({ oneCall }: Pick<Program, "oneCall">, today: number): RuleKnown {
  return ruleKnown(oneCall.place, today);
}

/** Why the ticket should be looked at again: its first lawful day is earlier than a careful count comes to. */
export interface EarlyWarning {
  /** The day that the count comes to. Digging may be lawful later still, and never by this count alone. */
  readonly notBefore: number;
  readonly sentences: readonly string[];
}

/**
 * Holds a typed day against the state's rule, counted on the careful side: from the day of issue, a ticket of a weekend, of
 * a holiday, of an unknown hour or of after 4 p.m. as one of the next business day. It only warns. A day as late as the
 * count or later is never questioned; without a place, a number that is fresh enough and a day of issue nothing is counted.
 */
export function earlyWarning(
  program: Pick<Program, "oneCall">,
  yard: Pick<Yard, "visits">,
  today: number,
  typed: Moment | null = null,
): EarlyWarning | null {
  const { issued, lawfulFrom } = ticketDays(yard.visits);
  const held = typed ?? lawfulFrom;
  const known = ruleOfProgram(program, today);
  if (held === null || issued === null || known.kind !== "known") return null;
  const { holidays } = program.oneCall;
  const notBefore = carefulCount(issued, known.rule.businessDays, holidays);
  if (held.day >= notBefore) return null;
  const { notice, readOn } = known.rule;
  return {
    notBefore,
    sentences: [
      `Look at the ticket again: ${momentText(held)} is earlier than the rule of ${known.state} comes to, which is not before ${isoDate(notBefore)}.`,
      `The rule as it was read on ${readOn}: ${notice.says}. Counted from ${momentText(issued)}${lateWords(issued)}.`,
      ...(holidays.length === 0 ? ["No holidays are known: write the center's on Program. The count may be a day short for each."] : []),
      "The count only warns: what the center says on the ticket decides.",
    ],
  };
}

function carefulCount(issued: Moment, businessDays: number, holidays: readonly number[]): number {
  const closed = closedDays(holidays);
  const counted = isLate(issued) && isBusinessDay(issued.day, closed) ? businessDayAfter(issued.day, 1, closed) : issued.day;
  return firstDigDate(counted, businessDays, holidays);
}

/** From when on centers count a request as one of the next business day, at the earliest that was read. */
export const LATE_MINUTES = 16 * 60;

function isLate({ minutes }: Moment): boolean {
  return minutes === null || minutes > LATE_MINUTES;
}

function lateWords(issued: Moment): string {
  if (!isLate(issued)) return "";
  return `, as a ticket of the next business day, because ${issued.minutes === null ? "its hour is not known" : "it is of after 4 p.m."}`;
}

/** Number, days and hours of the newest ticket, as far as they are on record. */
export function ticketDaysOf({ visits }: Pick<Yard, "visits">): ReturnType<typeof ticketDays> {
  return ticketDays(visits);
}
