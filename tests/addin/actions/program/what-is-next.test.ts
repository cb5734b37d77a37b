import { beforeEach, describe, expect, it } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { recordAnswer, recordOverride, withdrawOverride } from "../../../../addin/actions/visits/record-answer.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { refusalsInSight, yardStanding } from "../../../../addin/actions/visits/stage-standing.ts";
import { whatIsNext, type NoticeKind } from "../../../../addin/actions/program/what-is-next.ts";
import { appendRow } from "../../../../addin/actions/program/write-records.ts";
import { NO_OVERRIDE } from "../../../../addin/checklist/dig-lock.ts";
import { oneCallTicket } from "../../../../addin/checklist/one-call-ticket.ts";
import { refusal } from "../../../../addin/checklist/refusal.ts";
import { stageNamed, stages } from "../../../../addin/checklist/stages.ts";
import { followUpsSheet } from "../../../../addin/records/follow-ups.ts";
import { holeTestsSheet } from "../../../../addin/records/hole-tests.ts";
import { pricesSheet } from "../../../../addin/records/prices.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import { HostInMemory } from "../../../taskpane/host-in-memory.ts";
import { screeningVisit } from "../../../../addin/checklist/screening-visit.ts";
import { ticketInForce, type VisitEntry } from "../../checklist/visit-rows.ts";

let workbook: HostInMemory;

beforeEach(async () => {
  workbook = new HostInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: "B" });
});

async function answer(...entries: readonly VisitEntry[]): Promise<void> {
  for (const entry of entries) await appendRow(workbook, visitsSheet, { siteId: "Y-001", date: 46100, stage: "any", ...entry });
}

const enquiry: readonly VisitEntry[] = [
  { step: "contact", answer: "Wren" },
  { step: "problem", answer: "Wet cellar" },
  { step: "in-area", answer: "Yes", verdict: "pass" },
  { step: "permission", answer: "Yes, the owner agreed", verdict: "pass" },
  { step: "photo-consent", answer: "No pictures", verdict: "pass" },
];
const screened: readonly VisitEntry[] = screeningVisit.steps.map(({ id }) => ({ step: id, answer: "seen", verdict: "pass" }));

const on = (iso: string) => dayNumber(...(iso.split("-").map(Number) as [number, number, number]));

async function notices(kind: NoticeKind, today: string): Promise<readonly (readonly [urgency: string, sentence: string])[]> {
  return whatIsNext(await readProgram(workbook), on(today))
    .filter((notice) => notice.kind === kind)
    .map(({ urgency, sentence }) => [urgency, sentence]);
}

async function standing(today = "2026-05-10") {
  const program = await readProgram(workbook);
  const yard = program.yards[0];
  if (yard === undefined) throw new Error("no yard");
  return yardStanding(program, yard, on(today));
}

describe("Where a yard stands", () => {
  it("today's lock forbids the dig until it is found right in depth and levels, and says nothing of it afterwards", async () => {
    const digDay = async () => {
      const found = (await standing("2026-09-01")).stages.find(({ stage }) => stage.id === "dig-day");
      if (found === undefined) throw new Error("no dig day");
      return refusalsInSight(found).map(({ id }) => id);
    };
    await answer(
      ...ticketInForce,
      ...stageNamed("dig-day")
        .steps.slice(0, -1)
        .map(({ id }): VisitEntry => ({ step: id, answer: "Right", verdict: "pass" })),
    );
    expect(await digDay()).toContain("ticket-expired");
    await answer({ step: "levels", answer: "Within 1/2 in (13 mm)", verdict: "pass" });
    expect(await digDay()).toEqual([]);
    await recordOverride(workbook, (await standing()).yard, stageNamed("dig-day"), refusal("untested-soil", ""), {
      by: "Wren",
      reason: "Tested by the county",
    });
    expect(await digDay()).toEqual(["untested-soil"]);
    await answer({ step: "levels", answer: "Not level yet", verdict: "stop" });
    expect(await digDay()).toContain("ticket-expired");
  });

  it("a new yard begins with the enquiry", async () => {
    const { current, next, stages: all } = await standing();
    expect(current.stage.id).toBe("enquiry");
    expect(next).toEqual({
      stage: "enquiry",
      kind: "todo",
      place: "visits",
      sentence: "Enquiry: Contact, and 4 more.",
      at: { stage: "enquiry", step: "contact" },
    });
    expect(all.map(({ stage }) => stage.id)).toEqual(stages.map(({ id }) => id));
  });

  it("it goes on to the screening visit, then to the ticket", async () => {
    await answer(...enquiry);
    expect((await standing()).current.stage.id).toBe("screening");
    await answer(...screened);
    expect((await standing()).current.stage.id).toBe("ticket");
    expect((await standing()).stages.slice(0, 3).map(({ state }) => state)).toEqual(["done", "done", "ready"]);
  });

  it("a stop is the next thing, before anything that follows", async () => {
    await answer(...enquiry, ...screened, { step: "foundation", answer: 6, verdict: "stop" });
    expect(await standing()).toMatchObject({
      current: { state: "stopped" },
      next: { kind: "stop", sentence: "Screening visit says stop: Foundation. Settle it, or find another place." },
    });
  });

  it("with the ticket in force a hole is to be tested, and the day before it is lawful the yard waits", async () => {
    await answer(...enquiry, ...screened, { step: "white-lined", answer: "Outlined", verdict: "pass" }, ...ticketInForce);
    expect((await standing("2026-05-04")).next).toMatchObject({ stage: "test-visit", kind: "todo", place: "hole tests" });
    expect((await standing("2026-05-03")).next).toMatchObject({ stage: "test-visit", kind: "wait" });
    expect((await standing("2026-06-19")).next).toMatchObject({
      stage: "test-visit",
      kind: "stop",
      sentence: "The ticket was in force until 2026-06-18, not on 2026-06-19. Ask for a new one and write its number down.",
    });
  });

  it("an optional step keeps no stage from being done, and its blank is not called a pass", async () => {
    await answer(...enquiry);
    const [first] = (await standing()).stages;
    expect(first).toMatchObject({ state: "done" });
    expect(first?.steps.find(({ step }) => step.id === "language")?.answer).toBeNull();
  });

  it("each operator on the ticket is a step of its own", async () => {
    await answer(...ticketInForce);
    const ticket = (await standing()).stages.find(({ stage }) => stage.id === "ticket");
    expect(ticket?.steps.map(({ step }) => step.title)).toEqual(expect.arrayContaining(["Ferry Water", "Ferry Electric"]));
  });
});

describe("Tickets on the board", () => {
  it.each([
    ["2026-06-12", []],
    ["2026-06-13", [["soon", "Ticket TF-2207 is in force until 2026-06-18: 5 days are left. Dig by then, or ask for a new one."]]],
    ["2026-06-17", [["soon", "Ticket TF-2207 is in force until 2026-06-18: one day is left. Dig by then, or ask for a new one."]]],
    ["2026-06-18", [["soon", "Ticket TF-2207 is in force until 2026-06-18: today is the last day. Dig by then, or ask for a new one."]]],
  ])("a ticket that ends on 2026-06-18 is, on %s, %j", async (today, expected) => {
    await answer(...ticketInForce);
    expect(await notices("ticket", today)).toEqual(expected);
  });

  it("a ticket that ran out cannot wait where the next thing is a dig, and can where it is not", async () => {
    const expired = "Ticket TF-2207 ran out on 2026-06-18. Ask for a new one before anything is dug.";
    await answer(...enquiry, ...ticketInForce);
    expect(await notices("ticket", "2026-06-19")).toEqual([["stop", expired]]);
    await answer({ step: "foundation", answer: 14, verdict: "pass" });
    expect(await notices("ticket", "2026-06-19")).toEqual([["next", expired]]);
  });

  it("one that is not lawful yet waits until its day", async () => {
    await answer(...ticketInForce);
    expect(await notices("ticket", "2026-05-03")).toEqual([
      ["waiting", "Ticket TF-2207: digging is lawful from 2026-05-04 at 07:00, not before."],
    ]);
    expect(await notices("ticket", "2026-05-04")).toEqual([]);
  });
});

describe("Follow-ups on the board", () => {
  beforeEach(() => appendRow(workbook, followUpsSheet, { siteId: "Y-001", kind: "1 month", due: on("2026-05-20") }));

  it.each([
    ["2026-05-05", []],
    ["2026-05-06", [["soon", 'Follow-up "1 month" is due on 2026-05-20.']]],
    ["2026-05-20", [["soon", 'Follow-up "1 month" is due today.']]],
    ["2026-05-21", [["overdue", 'Follow-up "1 month" was due on 2026-05-20.']]],
  ])("one due on 2026-05-20 is, on %s, %j", async (today, expected) => {
    expect(await notices("follow-up", today)).toEqual(expected);
  });
});

describe("Prices on the board", () => {
  // 180 days: common practice, no source. 1 January plus 180 days is 30 June (30 + 28 + 31 + 30 + 31 + 30 = 180).
  it.each([
    ["2026-06-30", []],
    ["2026-07-01", [["next", "Prices older than 180 days: Compost. Ask again, and write price and day on Prices."]]],
  ])("one of 2026-01-01 is, on %s, %j", async (today, expected) => {
    await appendRow(workbook, pricesSheet, { item: "Compost", unitPrice: 38, unit: "cu yd", priceDate: on("2026-01-01") });
    expect(await notices("price", today)).toEqual(expected);
  });

  it("one without a day is pointed out, and an item without a price is not", async () => {
    await appendRow(workbook, pricesSheet, { item: "Stone", unitPrice: 52 });
    await appendRow(workbook, pricesSheet, { item: "Mulch", priceDate: on("2020-01-01") });
    expect(await notices("price", "2026-05-10")).toEqual([["next", "Prices without a day: Stone. Write the day on Prices."]]);
  });
});

describe("Tests to repeat on the board", () => {
  it("a single hole that was not soaked is one, and a yard without a test is none", async () => {
    expect(await notices("re-test", "2026-05-10")).toEqual([]);
    await appendRow(workbook, holeTestsSheet, {
      siteId: "Y-001",
      hole: "A",
      soaked: "no",
      holeDiameter: 8,
      minutes1: 0,
      water1: 8,
      minutes2: 30,
      water2: 7,
      minutes3: 60,
      water3: 6,
    });
    const [[urgency, sentence] = []] = await notices("re-test", "2026-05-10");
    expect(urgency).toBe("next");
    expect(sentence).toContain("Hole A: not soaked first");
  });
});

describe("Overrides", () => {
  const stop = refusal("stop: foundation", "Screening visit says stop.", "foundation");
  const yardOf = async () => (await readProgram(workbook)).yards[0]!;

  it("one in force is on the board with its name, reason and day, and a withdrawn one is not", async () => {
    await answer({ step: "foundation", answer: 6, verdict: "stop" });
    await recordOverride(workbook, await yardOf(), screeningVisit, stop, { by: "Kit Marlow", reason: "Slab without a cellar" });
    expect((await notices("override", "2026-05-10"))[0]?.[1]).toMatch(
      /^Kit Marlow overrode "stop: foundation" on \d{4}-\d{2}-\d{2}: Slab without a cellar$/,
    );
    await withdrawOverride(workbook, await yardOf(), screeningVisit, stop, { by: "Ada Fenn", reason: "Cellar found" });
    expect(await notices("override", "2026-05-10")).toEqual([]);
    expect((await yardOf()).visits.map(({ record }) => record.answer)).toEqual([6, "Overridden", "Withdrawn"]);
  });

  it.each([
    [{ by: " ", reason: "Slab" }, "An override needs a name and a reason. Nothing was written."],
    [{ by: "Kit Marlow", reason: "" }, "An override needs a name and a reason. Nothing was written."],
  ])("%j is refused", async (entry, sentence) => {
    await expect(recordOverride(workbook, await yardOf(), screeningVisit, stop, entry)).rejects.toThrow(sentence);
    expect((await yardOf()).visits).toEqual([]);
  });

  it("the ticket's lock takes none", async () => {
    const locked = { id: "ticket-missing", sentence: "There is no one-call ticket.", neverOverridden: NO_OVERRIDE };
    await expect(
      recordOverride(workbook, await yardOf(), oneCallTicket, locked, { by: "Kit Marlow", reason: "In a hurry" }),
    ).rejects.toThrow(NO_OVERRIDE);
  });
});

describe("What is recorded", () => {
  const step = (id: string) => stages.flatMap((stage) => stage.steps).find((one) => one.id === id)!;

  it("a day is kept as text that every spreadsheet leaves alone, a number with the yard's unit, a text as it was typed", async () => {
    const yard = (await readProgram(workbook)).yards[0]!;
    await recordAnswer(workbook, yard, oneCallTicket, step("ticket-expires"), {
      kind: "date",
      date: on("2026-06-18"),
      note: "",
      by: "Kit Marlow",
      day: on("2026-05-02"),
    });
    await recordAnswer(workbook, yard, oneCallTicket, step("refusal-depth"), {
      kind: "number",
      value: 26,
      note: "",
      by: "",
      link: "IMG 44",
    });
    await recordAnswer(workbook, yard, oneCallTicket, step("contact"), { kind: "text", text: '=HYPERLINK("x")', note: "", by: "" });
    const rows = (await readProgram(workbook)).yards[0]!.visits.map(({ record }) => record);
    expect(rows[0]).toMatchObject({ answer: "2026-06-18", unit: null, verdict: null, date: on("2026-05-02"), by: "Kit Marlow" });
    expect(rows[1]).toMatchObject({ answer: 26, unit: "in", link: "IMG 44" });
    expect(rows[2]).toMatchObject({ answer: '=HYPERLINK("x")' });
  });
});
