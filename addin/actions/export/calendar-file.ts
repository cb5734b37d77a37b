/**
 * Days of the program as a calendar: when tickets end, looks that are due, and days of digging.
 *
 * Source  RFC 5545, Internet Calendaring and Scheduling, 2009: 3.1 (lines end with CR LF and are folded at 75 octets), 3.3.4 and
 *         3.3.11 (dates, texts and their escapes), 3.6.1 (an event of days ends before its DTEND), 3.8.4.7 (a UID that stays),
 *         3.8.7.2 (DTSTAMP).
 */
import { ticketDays } from "../../checklist/dig-lock.ts";
import { momentIn } from "../../records/calendar-day.ts";
import { digDaysSheet } from "../../records/dig-days.ts";
import { openFollowUps } from "../care/due-follow-ups.ts";
import { isoDate } from "../dates.ts";
import { grouped } from "../program/grouped.ts";
import type { Yard } from "../program/read-program.ts";

export interface CalendarChoices {
  /** Owner, telephone and e-mail too. */
  readonly withPersons: boolean;
}

export interface CalendarOrigin {
  /** What tells this workbook from every other, so that an event keeps its UID from file to file. */
  readonly workbook: string;
  readonly madeAt: Date;
}

interface Day {
  /** What the event is about, within its yard. */
  readonly name: string;
  readonly day: number;
  readonly summary: string;
  readonly says: string;
}

const MOST_OCTETS = 75;

export function calendarFile(yards: readonly Yard[], { withPersons }: CalendarChoices, origin: CalendarOrigin): string {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Soakbook//Rain garden program//EN",
    "CALSCALE:GREGORIAN",
    ...yards.flatMap((yard) =>
      [...grouped(daysOf(yard), ({ name, day }) => [`${name} ${day}`]).values()].flatMap((alike) =>
        alike.flatMap((day, again) =>
          eventLines(yard, { ...day, name: again === 0 ? day.name : `${day.name} ${again + 1}` }, withPersons, origin),
        ),
      ),
    ),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

/** How many events the file would hold. */
export function calendarDays(yards: readonly Yard[]): number {
  return yards.reduce((count, yard) => count + daysOf(yard).length, 0);
}

function daysOf(yard: Yard): readonly Day[] {
  const { number, expires } = ticketDays(yard.visits);
  const planned = momentIn(yard.answers.get("dig-date")?.record.answer ?? null)?.day ?? null;
  const dug = yard.digDays.flatMap(({ record }) => (record.date === null ? [] : [Math.floor(record.date)]));
  const digs = new Set([...(planned === null ? [] : [planned]), ...dug]);
  return [
    ...(expires === null
      ? []
      : [
          {
            name: `ticket ${number ?? ""}`,
            day: expires,
            summary: `Ticket ${number ?? ""} ends`.replace("  ", " "),
            says: "Last day on which the ticket is in force, as it is on record. The date on the ticket decides.",
          },
        ]),
    ...openFollowUps(yard.followUps).flatMap(({ record }): readonly Day[] =>
      record.due === null
        ? []
        : [
            {
              name: `follow-up ${record.kind ?? ""}`,
              day: Math.floor(record.due),
              summary: `Follow-up: ${record.kind ?? ""}`,
              says: record.action ?? "",
            },
          ],
    ),
    ...[...digs].map((day) => ({
      name: "dig",
      day,
      summary: digDaysSheet.name.replace(/s$/, ""),
      says: "Nothing is dug before the marks are there and every answer is in: see the ticket.",
    })),
  ];
}

function eventLines(
  yard: Yard,
  { name, day, summary, says }: Day,
  withPersons: boolean,
  { workbook, madeAt }: CalendarOrigin,
): readonly string[] {
  const { record } = yard.site;
  const who = withPersons ? [record.owner, record.telephone, record.email].filter((part) => part !== null).join(", ") : "";
  return [
    "BEGIN:VEVENT",
    `UID:${identifier(`${workbook}-${yard.siteId}-${name}-${isoDate(day)}`)}@soakbook.invalid`,
    `DTSTAMP:${madeAt.toISOString().replace(/[-:]|\.\d+/g, "")}`,
    `DTSTART;VALUE=DATE:${isoDate(day).replaceAll("-", "")}`,
    `DTEND;VALUE=DATE:${isoDate(day + 1).replaceAll("-", "")}`,
    `SUMMARY:${escaped(`${summary}, ${yard.siteId} ${record.yard ?? record.address ?? ""}`.trim())}`,
    ...(record.address === null ? [] : [`LOCATION:${escaped(record.address)}`]),
    `DESCRIPTION:${escaped([says, who].filter((part) => part !== "").join("\n"))}`,
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

/** Letters and digits that no reader stumbles over; what else a Site ID holds keeps two of them apart by its code. */
function identifier(text: string): string {
  return text.replace(/[^A-Za-z0-9-]/gu, (sign) => `.${(sign.codePointAt(0) ?? 0).toString(16)}.`);
}

function escaped(text: string): string {
  return text
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\r\n?|\n/g, "\\n")
    .replace(UNWRITABLE, "\ufffd");
}

/** No control character, and no half of a character, belongs into a text. */
const UNWRITABLE = /[\p{Cc}\p{Cs}]/gu;

/** No line is longer than it may be, and no character is cut in two. */
function folded(line: string): string {
  const pieces: string[] = [];
  let [piece, octets] = ["", 0];
  for (const character of line) {
    const size = new TextEncoder().encode(character).length;
    // The space that a line goes on with counts too.
    if (octets + size > MOST_OCTETS) {
      pieces.push(piece);
      [piece, octets] = [" ", 1];
    }
    piece += character;
    octets += size;
  }
  return [...pieces, piece].join("\r\n");
}
