import { describe, expect, it, test } from "vitest";
import { digLock, NO_OVERRIDE } from "../../../addin/checklist/dig-lock.ts";
import { decisionStep } from "../../../addin/checklist/decisions.ts";
import { OVERRIDDEN, overrideOf, overrideStep } from "../../../addin/checklist/overrides.ts";
import { dayNumberOf } from "../../../addin/records/calendar-day.ts";
import { changed, ticketInForce, visitRows, without, type VisitEntry } from "./visit-rows.ts";

const day = (iso: string) => dayNumberOf(iso) ?? 0;
const lock = (entries: readonly VisitEntry[], on = "2026-05-10", minutes?: number) => digLock(visitRows(entries), day(on), minutes);
const ids = (entries: readonly VisitEntry[], on?: string) => lock(entries, on).map(({ id }) => id);

describe("The dig lock", () => {
  it("opens when the ticket is in force, every operator has answered and the marks were seen", () => {
    expect(lock(ticketInForce)).toEqual([]);
  });

  it("is shut without a ticket, and says to call first, the test hole included", () => {
    expect(lock([])).toMatchObject([
      {
        id: "ticket-missing",
        sentence: "There is no one-call ticket. Call before anything is dug, the test hole included, and write its number down.",
      },
    ]);
    expect(ids(without(ticketInForce, "ticket-number"))).toEqual(["ticket-missing"]);
  });

  it.each([
    ["2026-05-03", ["ticket-not-yet-lawful"]],
    ["2026-05-04", []],
    ["2026-06-18", []],
    ["2026-06-19", ["ticket-expired"]],
  ])("on %s, with a ticket lawful from 2026-05-04 to 2026-06-18, refuses %j", (on, refused) => {
    expect(ids(ticketInForce, on)).toEqual(refused);
  });

  it("says the day on which digging becomes lawful, and the day on which the ticket ran out", () => {
    expect(lock(ticketInForce, "2026-05-03")[0]?.sentence).toBe(
      "Digging is not lawful on 2026-05-03: it is from 2026-05-04 at 07:00. Wait, even where the marks are there.",
    );
    expect(lock(ticketInForce, "2026-06-19")[0]?.sentence).toBe(
      "The ticket was in force until 2026-06-18, not on 2026-06-19. Ask for a new one and write its number down.",
    );
  });

  it.each(["ticket-issued", "ticket-lawful-from", "ticket-expires"])("is shut while %s is not on record, or is no day", (step) => {
    expect(ids(without(ticketInForce, step))).toEqual([`${step}-missing`]);
    expect(ids(changed(ticketInForce, step, { answer: "5/4/2026" }))).toEqual([`${step}-unreadable`]);
    expect(lock(changed(ticketInForce, step, { answer: "soon" }))[0]?.sentence).toMatch(
      /"soon".*which is no day\. Write it as 2026-05-04 at 07:00\.$/,
    );
  });

  it("reads a day whether the sheet holds it as a date or as text", () => {
    expect(ids(changed(ticketInForce, "ticket-expires", { answer: day("2026-06-18") }), "2026-06-19")).toEqual(["ticket-expired"]);
  });

  it("is shut on the first lawful day until its hour has come", () => {
    const at = (minutes: number) => lock(ticketInForce, "2026-05-04", minutes).map(({ id }) => id);
    expect([at(6 * 60 + 59), at(7 * 60), at(12 * 60)]).toEqual([["ticket-not-yet-lawful"], [], []]);
    expect(lock(ticketInForce, "2026-05-04", 390)[0]?.sentence).toBe(
      "Digging is not lawful on 2026-05-04 at 06:30: it is from 2026-05-04 at 07:00. Wait, even where the marks are there.",
    );
  });

  it("is shut while the hour of the first lawful day is not on record", () => {
    const dayAlone = changed(ticketInForce, "ticket-lawful-from", { answer: "2026-05-04" });
    expect(lock(dayAlone)).toMatchObject([
      {
        id: "ticket-lawful-hour",
        sentence: "The ticket lacks the hour of 2026-05-04 from which digging is lawful. Write it down as the one-call center gave it.",
      },
    ]);
  });

  it.each([
    ["is not on record", without(ticketInForce, "ticket-kind"), "It is not on record what kind of ticket it is."],
    [
      "is a design ticket's",
      changed(ticketInForce, "ticket-kind", { answer: "Design, survey or planning ticket", verdict: "stop" }),
      "This is no dig ticket: a design, survey or planning ticket opens nothing, a test hole included.",
    ],
  ])("is shut while the kind of ticket %s", (_, entries, sentence) => {
    expect(ids(entries)).toEqual(["ticket-kind"]);
    expect(lock(entries)[0]?.sentence).toContain(sentence);
  });

  it("is shut while the ticket is not in the name of whoever digs, as it was asked for or on the day", () => {
    expect(ids(without(ticketInForce, "ticket-holder"))).toEqual(["ticket-holder"]);
    expect(ids(changed(ticketInForce, "ticket-holder", { answer: "In another's", verdict: "stop" }))).toEqual(["ticket-holder"]);
    const onTheDay: VisitEntry = { step: "digger", answer: "In another's", verdict: "stop" };
    expect(ids([...ticketInForce, onTheDay])).toEqual(["ticket-holder"]);
    // Another digger's own ticket settles it.
    expect(ids([onTheDay, ...ticketInForce])).toEqual([]);
  });

  it("does not believe days that contradict each other", () => {
    expect(ids(changed(ticketInForce, "ticket-expires", { answer: "2026-05-01" }), "2026-05-10")).toEqual([
      "ticket-days",
      "ticket-expired",
    ]);
    expect(ids(changed(ticketInForce, "ticket-issued", { answer: "2026-05-05" }))).toEqual(["ticket-days"]);
  });

  it("is shut while the operators are not listed", () => {
    expect(ids(without(ticketInForce, "ticket-operators"))).toEqual(["ticket-operators"]);
    expect(ids(changed(ticketInForce, "ticket-operators", { answer: " , ;" }))).toEqual(["ticket-operators"]);
  });

  it.each([
    ["did not answer at all", without(ticketInForce, "operator: ferry water")],
    ["has said nothing yet", changed(ticketInForce, "operator: ferry water", { answer: "No answer yet", verdict: "stop" })],
    ["asked for more time", changed(ticketInForce, "operator: ferry water", { answer: "Asked for more time", verdict: "stop" })],
    ["has an answer whose verdict was wiped", changed(ticketInForce, "operator: ferry water", { verdict: "" })],
  ])("is shut while one operator %s, and names it", (_, entries) => {
    expect(lock(entries)).toMatchObject([
      { id: "ticket-unanswered", sentence: "Ferry Water has not answered. Ask the one-call center; no answer is not an all-clear." },
    ]);
  });

  it("an operator who is added later has to answer too", () => {
    const added = changed(ticketInForce, "ticket-operators", { answer: "Ferry Water, Ferry Electric, Ferry Gas" });
    expect(lock(added)[0]?.sentence).toBe("Ferry Gas has not answered. Ask the one-call center; no answer is not an all-clear.");
  });

  it("an answer stands whatever the case in which the operator is listed", () => {
    expect(ids(changed(ticketInForce, "ticket-operators", { answer: "FERRY WATER; ferry electric" }))).toEqual([]);
  });

  it.each([
    ["were not looked for", without(ticketInForce, "ticket")],
    ["are still waited for", changed(ticketInForce, "ticket", { answer: "Asked for, still waiting", verdict: "stop" })],
  ])("is shut while the marks %s", (_, entries) => {
    expect(ids(entries)).toEqual(["marks-missing"]);
  });

  it("shuts again when marks are gone on the day, and opens when they were seen again", () => {
    const gone: VisitEntry = { step: "marks-visible", answer: "Some are gone", verdict: "stop" };
    expect(ids([...ticketInForce, gone])).toEqual(["marks-gone"]);
    expect(ids([...ticketInForce, gone, { step: "marks-visible", answer: "All of them", verdict: "pass" }])).toEqual([]);
  });

  it("is shut while nobody asked about private lines", () => {
    expect(ids(without(ticketInForce, "private-lines"))).toEqual(["private-lines"]);
  });

  it("a new number is a new ticket: days and answers of the one before count no longer", () => {
    const renewed = [...ticketInForce, { step: "ticket-number", answer: "TF-3001" }];
    expect(ids(renewed)).toEqual([
      "ticket-kind",
      "ticket-holder",
      "ticket-issued-missing",
      "ticket-lawful-from-missing",
      "ticket-expires-missing",
      "ticket-operators",
      "marks-missing",
      "private-lines",
    ]);
  });

  it("the same number written again is the same ticket", () => {
    expect(ids([...ticketInForce, { step: "ticket-number", answer: "TF-2207" }])).toEqual([]);
  });

  it("a blanked number is no ticket and no new one either", () => {
    expect(ids([{ step: "ticket-number", answer: " " }])).toEqual(["ticket-missing"]);
    expect(ids([...ticketInForce, { step: "ticket-number", answer: "" }])).toEqual([]);
  });
});

/** Every way in which the lock can be shut. */
const shut: readonly (readonly [says: string, entries: readonly VisitEntry[], on: string])[] = [
  ["no ticket", [], "2026-05-10"],
  ["not yet lawful", ticketInForce, "2026-05-03"],
  ["expired", ticketInForce, "2026-06-19"],
  [
    "a design ticket",
    changed(ticketInForce, "ticket-kind", { answer: "Design, survey or planning ticket", verdict: "stop" }),
    "2026-05-10",
  ],
  ["in another's name", changed(ticketInForce, "ticket-holder", { answer: "In another's", verdict: "stop" }), "2026-05-10"],
  ["an hour missing", changed(ticketInForce, "ticket-lawful-from", { answer: "2026-05-04" }), "2026-05-10"],
  ["a day missing", without(ticketInForce, "ticket-lawful-from"), "2026-05-10"],
  ["days that contradict", changed(ticketInForce, "ticket-issued", { answer: "2026-05-05" }), "2026-05-10"],
  ["operators not listed", without(ticketInForce, "ticket-operators"), "2026-05-10"],
  ["an operator silent", without(ticketInForce, "operator: ferry water"), "2026-05-10"],
  ["marks not seen", without(ticketInForce, "ticket"), "2026-05-10"],
  ["marks gone", [...ticketInForce, { step: "marks-visible", answer: "Some are gone", verdict: "stop" }], "2026-05-10"],
  ["private lines not asked for", without(ticketInForce, "private-lines"), "2026-05-10"],
];

test.each(shut)("%s: no name and no reason opens the lock", (_, entries, on) => {
  const refusals = lock(entries, on);
  expect(refusals.length).toBeGreaterThan(0);
  for (const refusal of refusals) {
    expect(refusal.neverOverridden).toBe(NO_OVERRIDE);
    const forced = visitRows([...entries, { step: overrideStep(refusal.id), answer: OVERRIDDEN, by: "Kit Marlow", note: "In a hurry" }]);
    expect(overrideOf(refusal, forced)).toBeNull();
  }
});

test("an owner who does not know the private lines leaves it to whoever decides by name how they were looked for", () => {
  const unknown = changed(ticketInForce, "private-lines", { answer: "Owner does not know", verdict: "refer" });
  expect(lock(unknown)).toMatchObject([{ id: "refer: private-lines", at: { stage: "ticket", step: "private-lines" } }]);
  const located = {
    step: decisionStep("private-lines"),
    answer: "Go on",
    by: "Kit Marlow",
    note: "Locator found none",
    link: "Invoice 17 of the locator",
  };
  expect(lock([...unknown, located])).toEqual([]);
  expect(lock([...unknown, { ...located, answer: "Not here" }])).toMatchObject([{ id: "refer: private-lines" }]);
});

test("every refusal is a sentence that says what to do", () => {
  for (const [, entries, on] of shut) for (const { sentence } of lock(entries, on)) expect(sentence).toMatch(/^[A-Z].*\.$/);
});
