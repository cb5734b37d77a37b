import { digDate } from "../../../functions/worksheet/cost.ts";
import { answersInForce, saidAt } from "../../checklist/answers.ts";
import { ticketDays } from "../../checklist/dig-lock.ts";
import { oneCallTicket } from "../../checklist/one-call-ticket.ts";
import { ticketRuleOf, type TicketRule } from "../../checklist/ticket-rules.ts";
import { dayIn } from "../../records/calendar-day.ts";
import type { Yard } from "../program/read-program.ts";

/** The rule of the state that was chosen for the yard's ticket, as it was read. */
export function ticketRuleOfYard({ visits }: Pick<Yard, "visits">): TicketRule | null {
  return ticketRuleOf(saidAt(answersInForce(oneCallTicket, visits), "ticket-rule"));
}

export interface SuggestedDay {
  readonly day: number;
  /** SOAK.DIGDATE's cautions: local law decides, holidays are not known here. */
  readonly cautions: readonly string[];
}

/** The first day to dig as SOAK.DIGDATE counts it from the day of the request: a suggestion, never the law. */
export function suggestedLawfulFrom(yard: Pick<Yard, "visits">): SuggestedDay | null {
  const requested = dayIn(answersInForce(oneCallTicket, yard.visits).get("ticket-requested")?.record.answer ?? null);
  if (requested === null) return null;
  const inputs = [requested, ticketRuleOfYard(yard)?.businessDays ?? null];
  const day = digDate.evaluate(inputs)[0]?.[0];
  return typeof day === "number" ? { day, cautions: digDate.cautionsFor(inputs) } : null;
}

/** Number and days of the newest ticket, as far as they are on record. */
export function ticketDaysOf({ visits }: Pick<Yard, "visits">): ReturnType<typeof ticketDays> {
  return ticketDays(visits);
}
