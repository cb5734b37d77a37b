import { isoDate, momentText } from "../../../addin/actions/dates.ts";
import { ticketDaysOf } from "../../../addin/actions/visits/ticket-hints.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { visitsText } from "./text.ts";

const words = visitsText.ticket;

/** The newest ticket in a line, and what of it is not on record. */
export function ticketLine(yard: Pick<Yard, "visits">): string {
  const { number, lawfulFrom, expires } = ticketDaysOf(yard);
  if (number === null) return words.none;
  const from =
    lawfulFrom === null ? words.noDay : lawfulFrom.minutes === null ? words.noHour(isoDate(lawfulFrom.day)) : momentText(lawfulFrom);
  return words.line(number, from, expires === null ? words.noDay : isoDate(expires));
}
