import { isoDate, momentIn, momentText, type Moment } from "../records/calendar-day.ts";
import type { VisitAnswerRow } from "../records/visits.ts";
import { answersInForce, saidAt, type AnswersInForce } from "./answers.ts";
import { decisionOn, referRefusal } from "./decisions.ts";
import { digDay } from "./dig-day.ts";
import { oneCallTicket, operatorStepId } from "./one-call-ticket.ts";
import { preDig } from "./pre-dig.ts";
import type { Refusal } from "./refusal.ts";
import { namesIn } from "./stage.ts";

export const NO_OVERRIDE =
  "Nobody can override this: a line that was not marked can kill. It opens when the ticket is in force and every operator has answered.";

/**
 * What forbids digging on a day, a test hole included; empty when the ground may be opened.
 *
 * The lock opens when the ticket has its number, is a dig ticket in the digger's own name, and has the day of its issue, a
 * first lawful day and hour that are not after `day` and `minutes`, a last day that is not before it, an answer from every
 * operator on it, and marks that were seen on the ground. Days and hours are those the one-call center gave: nothing here
 * works them out, because local law decides how days count. Without `minutes` the day is looked at as a whole.
 *
 * No name and no reason opens it otherwise. Missing marks, missing answers and a ticket that is not in force are not
 * the program's to waive: the law forbids the dig, and the danger is not only to whoever decides. Private lines are
 * the one exception: no center marks them and no law makes somebody answer for them, so where the owner does not know,
 * a person may decide by name on what was done instead, such as hiring a locator.
 */
export function digLock(visits: readonly VisitAnswerRow[], day: number, minutes: number | null = null): readonly Refusal[] {
  const answers = answersInForce(oneCallTicket, visits);
  if (saidAt(answers, "ticket-number") === null) {
    return [
      locked(
        "ticket-missing",
        "There is no one-call ticket. Call before anything is dug, the test hole included, and write its number down.",
      ),
    ];
  }
  return [
    ...kindRefusals(answers),
    ...holderRefusals(answers, visits),
    ...dayRefusals(answers, day, minutes),
    ...operatorRefusals(answers),
    ...markRefusals(answers, visits),
    ...privateLineRefusals(answers, visits),
  ];
}

function kindRefusals(answers: AnswersInForce): Refusal[] {
  const kind = answers.get("ticket-kind")?.record ?? null;
  if (kind?.verdict === "pass") return [];
  return [
    locked(
      "ticket-kind",
      kind === null
        ? "It is not on record what kind of ticket it is. Only a dig ticket counts: look at it, and answer Kind of ticket."
        : "This is no dig ticket: a design, survey or planning ticket opens nothing, a test hole included. Ask for a dig ticket and write its number down.",
    ),
  ];
}

function holderRefusals(answers: AnswersInForce, visits: readonly VisitAnswerRow[]): Refusal[] {
  const holder = answers.get("ticket-holder")?.record ?? null;
  const onTheDay = answersInForce(preDig, visits).get("digger");
  const others = onTheDay?.record.verdict === "stop" && isAfter(visits, onTheDay, answers.get("ticket-number"));
  if (holder?.verdict === "pass" && !others) return [];
  return [
    locked(
      "ticket-holder",
      holder === null
        ? "It is not on record in whose name the ticket is. Whoever digs needs a ticket of their own: answer Name on the ticket."
        : "The ticket is not in the name of whoever digs. Whoever digs asks for a ticket of their own: write its number down.",
    ),
  ];
}

function dayRefusals(answers: AnswersInForce, day: number, minutes: number | null): Refusal[] {
  const issued = readMoment(answers, "ticket-issued", "the day on which it was issued");
  const from = readMoment(answers, "ticket-lawful-from", "the first day on which digging is lawful");
  const last = readMoment(answers, "ticket-expires", "the last day on which it is in force");
  const unread = [issued, from, last].flatMap((read) => ("refused" in read ? [read.refused] : []));
  if ("refused" in from || "refused" in last) return unread;
  return [
    ...unread,
    ...(from.minutes === null
      ? [
          locked(
            "ticket-lawful-hour",
            `The ticket lacks the hour of ${isoDate(from.day)} from which digging is lawful. Write it down as the one-call center gave it.`,
          ),
        ]
      : []),
    ...("day" in issued && isEarlier(from, issued)
      ? [
          locked(
            "ticket-days",
            `The ticket was issued on ${momentText(issued)} and says digging is lawful from ${momentText(from)}, before that. Put the days right.`,
          ),
        ]
      : []),
    ...(last.day < from.day
      ? [
          locked(
            "ticket-days",
            `The ticket's last day, ${isoDate(last.day)}, is before its first lawful day, ${isoDate(from.day)}. Put the days right.`,
          ),
        ]
      : []),
    ...(isEarlier({ day, minutes }, from)
      ? [
          locked(
            "ticket-not-yet-lawful",
            `Digging is not lawful on ${momentText({ day, minutes })}: it is from ${momentText(from)}. Wait, even where the marks are there.`,
          ),
        ]
      : []),
    ...(day > last.day
      ? [
          locked(
            "ticket-expired",
            `The ticket was in force until ${isoDate(last.day)}, not on ${isoDate(day)}. Ask for a new one and write its number down.`,
          ),
        ]
      : []),
  ];
}

/** By the hour where both have one. */
function isEarlier(one: Moment, other: Moment): boolean {
  if (one.day !== other.day) return one.day < other.day;
  return one.minutes !== null && other.minutes !== null && one.minutes < other.minutes;
}

function operatorRefusals(answers: AnswersInForce): Refusal[] {
  const operators = namesIn(saidAt(answers, "ticket-operators") ?? "");
  if (operators.length === 0)
    return [locked("ticket-operators", "The operators on the ticket are not listed. Write down every one of them, with commas between.")];
  const silent = operators.filter((name) => answers.get(operatorStepId(name))?.record.verdict !== "pass");
  if (silent.length === 0) return [];
  return [
    locked(
      "ticket-unanswered",
      `${listed(silent)} ${silent.length === 1 ? "has" : "have"} not answered. Ask the one-call center; no answer is not an all-clear.`,
      operatorStepId(silent[0] ?? ""),
    ),
  ];
}

function markRefusals(answers: AnswersInForce, visits: readonly VisitAnswerRow[]): Refusal[] {
  const stillVisible = answersInForce(digDay, visits).get("marks-visible");
  const gone = stillVisible?.record.verdict === "stop" && isAfter(visits, stillVisible, answers.get("ticket-number"));
  return [
    ...(answers.get("ticket")?.record.verdict === "pass"
      ? []
      : [
          locked(
            "marks-missing",
            "Nobody has seen the marks in the yard yet. Walk it, compare marks and answers, and say so under Marks and answers.",
          ),
        ]),
    ...(gone
      ? [locked("marks-gone", "Some marks can no longer be seen. Have the lines marked again, then say so under Dig day, Marks.")]
      : []),
  ];
}

function privateLineRefusals(answers: AnswersInForce, visits: readonly VisitAnswerRow[]): Refusal[] {
  const verdict = answers.get("private-lines")?.record.verdict ?? null;
  if (verdict === "pass" || (verdict === "refer" && decisionOn("private-lines", visits)?.verdict === "pass")) return [];
  if (verdict === null)
    return [
      locked(
        "private-lines",
        "The owner was not asked about private lines: irrigation, propane, septic, yard wiring. Ask, and write the answer down.",
      ),
    ];
  return [
    referRefusal(
      { stage: oneCallTicket.id, step: "private-lines" },
      "The owner does not know where the private lines run. Have them located, or let whoever answers for the dig write down how they were looked for.",
    ),
  ];
}

/** What the newest ticket's lines stand for on the board: null where the day is not on record or cannot be read. */
export function ticketDays(visits: readonly VisitAnswerRow[]): {
  readonly number: string | null;
  readonly issued: Moment | null;
  readonly lawfulFrom: Moment | null;
  readonly expires: number | null;
} {
  const answers = answersInForce(oneCallTicket, visits);
  const moment = (step: string) => momentIn(answers.get(step)?.record.answer ?? null);
  return {
    number: saidAt(answers, "ticket-number"),
    issued: moment("ticket-issued"),
    lawfulFrom: moment("ticket-lawful-from"),
    expires: moment("ticket-expires")?.day ?? null,
  };
}

function readMoment(answers: AnswersInForce, step: string, what: string): Moment | { readonly refused: Refusal } {
  const answer = answers.get(step)?.record.answer ?? null;
  const moment = momentIn(answer);
  if (moment !== null) return moment;
  if (answer === null)
    return { refused: locked(`${step}-missing`, `The ticket lacks ${what}. Write it down as the one-call center gave it.`) };
  return {
    refused: locked(
      `${step}-unreadable`,
      `The ticket has "${String(answer).slice(0, 40)}" for ${what}, which is no day. Write it as 2026-05-04 at 07:00.`,
    ),
  };
}

function locked(id: string, sentence: string, step = STEP_OF[id] ?? "ticket-number"): Refusal {
  const stage = step === "marks-visible" ? digDay.id : oneCallTicket.id;
  return { id, sentence, neverOverridden: NO_OVERRIDE, at: { stage, step } };
}

/** Where what locks the dig is put right; a new ticket, where nothing else is said. */
const STEP_OF: Readonly<Record<string, string>> = {
  "ticket-requested-missing": "ticket-requested",
  "ticket-requested-unreadable": "ticket-requested",
  "ticket-lawful-from-missing": "ticket-lawful-from",
  "ticket-lawful-from-unreadable": "ticket-lawful-from",
  "ticket-expires-missing": "ticket-expires",
  "ticket-expires-unreadable": "ticket-expires",
  "ticket-days": "ticket-lawful-from",
  "ticket-not-yet-lawful": "ticket-lawful-from",
  "ticket-operators": "ticket-operators",
  "marks-missing": "ticket",
  "marks-gone": "marks-visible",
  "private-lines": "private-lines",
};

function isAfter(visits: readonly VisitAnswerRow[], row: VisitAnswerRow, other: VisitAnswerRow | undefined): boolean {
  return other === undefined || visits.indexOf(row) > visits.indexOf(other);
}

export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}
