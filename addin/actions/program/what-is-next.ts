import { STALE_PRICE_DAYS } from "../../../functions/cost/estimate-totals.ts";
import { ticketDays } from "../../checklist/dig-lock.ts";
import { retestReasons } from "../../checklist/retest.ts";
import { STAGE_IDS, type StageId, type StepPlace } from "../../checklist/stage.ts";
import type { PriceRow } from "../../records/prices.ts";
import { retestFactsOf } from "../hole-test/combine-holes.ts";
import { isoDate, momentText } from "../dates.ts";
import { dueFollowUps, type DueFollowUp } from "../care/due-follow-ups.ts";
import type { Slip } from "../../records/sheet.ts";
import { addressOf } from "../../workbook/port.ts";
import type { Program, Yard } from "./read-program.ts";
import { yardStanding, type Place, type YardStanding } from "../visits/stage-standing.ts";

/** From what cannot wait to what is only on record. */
export const URGENCIES = ["stop", "overdue", "soon", "next", "waiting", "on record"] as const;
export type Urgency = (typeof URGENCIES)[number];

export const NOTICE_KINDS = ["step", "not counted", "ticket", "re-test", "follow-up", "price", "override", "room"] as const;
export type NoticeKind = (typeof NOTICE_KINDS)[number];

/** One line of what is next, for one yard or for the whole program. */
export interface Notice {
  readonly kind: NoticeKind;
  readonly urgency: Urgency;
  readonly sentence: string;
  /** Null for what concerns no single yard. */
  readonly yard: Yard | null;
  readonly stage: StageId | null;
  readonly place: Place | null;
  /** The very step where it is put right, when that is one. */
  readonly at?: StepPlace;
}

/** How many days before its last day a ticket is pointed out. */
export const TICKET_WARNING_DAYS = 5;

/** Everything that is next across the program, the most urgent first; yards in their own order within one urgency. */
export function whatIsNext(program: Program, today: number, minutes?: number): readonly Notice[] {
  const standings = program.yards.map((yard) => yardStanding(program, yard, today, minutes));
  const notices = [
    ...standings.flatMap((standing) => [
      ...ticketNotices(standing, today),
      ...stepNotices(standing),
      ...retestNotices(program, standing),
      ...overrideNotices(standing),
    ]),
    ...uncountedNotices(program),
    ...followUpNotices(program, today),
    ...priceNotices(program.prices, today),
    ...roomNotices(program),
  ];
  return notices.toSorted((one, other) => URGENCIES.indexOf(one.urgency) - URGENCIES.indexOf(other.urgency));
}

/** Rows that somebody typed and nothing counts: of a yard where one may be meant, of the program where none can be told. */
function uncountedNotices({ yards, uncounted }: Program): Notice[] {
  const notice = (slip: Slip, yard: Yard | null): Notice => ({
    kind: "not counted",
    urgency: "soon",
    sentence: `Not counted: ${addressOf(slip.where)}. ${slip.sentence}`,
    yard,
    stage: null,
    place: null,
  });
  return [...yards.flatMap((yard) => yard.uncounted.map((slip) => notice(slip, yard))), ...uncounted.map((slip) => notice(slip, null))];
}

/** Said while there is room to finish what was begun. */
function roomNotices({ nearlyFull }: Program): Notice[] {
  return nearlyFull.map((sentence) => ({ kind: "room", urgency: "soon", sentence, yard: null, stage: null, place: null }));
}

function stepNotices({ yard, next }: YardStanding): Notice[] {
  if (next === null) return [];
  const urgency = { stop: "stop", ask: "next", wait: "waiting", todo: "next" } as const;
  const { kind, ...where } = next;
  return [{ ...where, kind: "step", urgency: urgency[kind], yard }];
}

/** Only while there is something left to dig: a ticket is for the dig, not for the garden. */
function ticketNotices({ yard, stages, current }: YardStanding, today: number): Notice[] {
  const isDone = (id: StageId) => stages.find(({ stage }) => stage.id === id)?.state === "done";
  if (isDone("dig-day")) return [];
  const { number, lawfulFrom, expires } = ticketDays(yard.visits);
  if (number === null) return [];
  const digsNext = DIGS_NEXT.includes(current.stage.id);
  const notice = (urgency: Urgency, sentence: string): Notice => ({
    kind: "ticket",
    urgency,
    sentence,
    yard,
    stage: "ticket",
    place: "visits",
  });
  const left = expires === null ? null : expires - today;
  if (expires !== null && left !== null && left < 0) {
    return [
      notice(digsNext ? "stop" : "next", `Ticket ${number} ran out on ${isoDate(expires)}. Ask for a new one before anything is dug.`),
    ];
  }
  return [
    ...(expires !== null && left !== null && left <= TICKET_WARNING_DAYS
      ? [notice("soon", `Ticket ${number} is in force until ${isoDate(expires)}: ${daysLeft(left)}. Dig by then, or ask for a new one.`)]
      : []),
    ...(lawfulFrom !== null && lawfulFrom.day > today
      ? [notice("waiting", `Ticket ${number}: digging is lawful from ${momentText(lawfulFrom)}, not before.`)]
      : []),
  ];
}

/** The stages from which the next thing is a spade in the ground. */
const DIGS_NEXT: readonly StageId[] = ["ticket", "test-visit", "pre-dig", "dig-day"];

function daysLeft(days: number): string {
  if (days === 0) return "today is the last day";
  return days === 1 ? "one day is left" : `${days} days are left`;
}

function retestNotices(program: Program, { yard }: YardStanding): Notice[] {
  const reasons = retestReasons(retestFactsOf(program, yard));
  if (reasons.length === 0) return [];
  return [
    {
      kind: "re-test",
      urgency: "next",
      sentence: `Test the soil again. ${reasons.join(" ")}`,
      yard,
      stage: "test-visit",
      place: "hole tests",
    },
  ];
}

/** Until the garden is built and measured: from then on an override is history, and stays on Visits. */
function overrideNotices({ yard, stages, overrides }: YardStanding): Notice[] {
  if (stages.some(({ stage, state }) => stage.id === "as-built" && state === "done")) return [];
  return overrides.map(
    ({ refusalId, by, reason, date, row }): Notice => ({
      kind: "override",
      urgency: "on record",
      sentence: `${by} overrode "${refusalId}"${date === null ? "" : ` on ${isoDate(date)}`}: ${reason}`,
      yard,
      stage: stageIdOf(row.record.stage),
      place: "visits",
    }),
  );
}

function stageIdOf(text: string | null): StageId | null {
  return STAGE_IDS.find((id) => id === text) ?? null;
}

function followUpNotices(program: Program, today: number): Notice[] {
  const yards = new Map(program.yards.map((yard) => [yard.siteId, yard]));
  return dueFollowUps(program, today).flatMap((due): Notice[] => {
    const yard = yards.get(due.siteId);
    const said = FOLLOW_UP_WORDS[due.state];
    if (yard === undefined || said === null) return [];
    return [{ kind: "follow-up", urgency: said.urgency, sentence: said.sentence(due), yard, stage: followUpStage(due), place: "care" }];
  });
}

const dueOn = ({ row: { record } }: DueFollowUp) => isoDate(Math.floor(record.due ?? 0));
const named = ({ row: { record } }: DueFollowUp) =>
  `Follow-up "${record.kind ?? ""}"${record.action === null ? "" : ` (${record.action})`}`;

const FOLLOW_UP_WORDS: Readonly<
  Record<DueFollowUp["state"], { readonly urgency: Urgency; readonly sentence: (due: DueFollowUp) => string } | null>
> = {
  overdue: { urgency: "overdue", sentence: (due) => `${named(due)} was due on ${dueOn(due)}.` },
  today: { urgency: "soon", sentence: (due) => `${named(due)} is due today.` },
  soon: { urgency: "soon", sentence: (due) => `${named(due)} is due on ${dueOn(due)}.` },
  "no day": { urgency: "next", sentence: (due) => `${named(due)} has no day. Give it one on Follow-ups.` },
  later: null,
};

function followUpStage({ row: { record } }: DueFollowUp): StageId {
  if (record.kind === "1 week" || record.kind === "watering") return "week";
  return record.kind === "1 month" ? "month" : "year";
}

/** Prices that an estimate should not rest on any longer, and prices without a day. */
function priceNotices(prices: readonly PriceRow[], today: number): Notice[] {
  const priced = prices.filter(({ record }) => record.item !== null && record.unitPrice !== null);
  const old = priced.filter(({ record }) => record.priceDate !== null && today - record.priceDate > STALE_PRICE_DAYS);
  const undated = priced.filter(({ record }) => record.priceDate === null);
  const items = (rows: readonly PriceRow[]) => rows.map(({ record }) => record.item ?? "").join(", ");
  const notice = (sentence: string): Notice => ({ kind: "price", urgency: "next", sentence, yard: null, stage: null, place: null });
  return [
    ...(old.length === 0
      ? []
      : [notice(`Prices older than ${STALE_PRICE_DAYS} days: ${items(old)}. Ask again, and write price and day on Prices.`)]),
    ...(undated.length === 0 ? [] : [notice(`Prices without a day: ${items(undated)}. Write the day on Prices.`)]),
  ];
}
