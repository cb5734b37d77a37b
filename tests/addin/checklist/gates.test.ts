import { describe, expect, it, test } from "vitest";
import { FROM_THE_START } from "../../../addin/checklist/checklist-version.ts";
import { gateInto, type YardFacts } from "../../../addin/checklist/gates.ts";
import { decisionStep } from "../../../addin/checklist/decisions.ts";
import { OVERRIDDEN, overrideStep, WITHDRAWN } from "../../../addin/checklist/overrides.ts";
import { screeningVisit } from "../../../addin/checklist/screening-visit.ts";
import { STAGE_IDS, type StageId } from "../../../addin/checklist/stage.ts";
import { dayNumberOf } from "../../../addin/records/calendar-day.ts";
import { changed, ticketInForce, visitRows, without, type VisitEntry } from "./visit-rows.ts";

const TODAY = "2026-05-10";

const screened: readonly VisitEntry[] = screeningVisit.steps.map(({ id }) => ({ step: id, answer: "seen", verdict: "pass" }));
const designChecked: readonly VisitEntry[] = [
  { step: "design-version", answer: "May" },
  { step: "designed-by", answer: "Kit Marlow" },
  { step: "design-checked-by", answer: "Ada Fenn" },
  { step: "design-verdict", answer: "It holds", verdict: "pass" },
];
const agreed: readonly VisitEntry[] = [
  { step: "agreement-covers", answer: "All of it", verdict: "pass" },
  { step: "agreement-signed", answer: "2026-05-01" },
  { step: "agreement-signed-by", answer: "Owner of the house" },
  { step: "agreement-until", answer: "2031-05-01" },
  { step: "agreement-copy", answer: "Folder 3" },
  { step: "permit", answer: "Asked, none needed", verdict: "pass" },
  { step: "budget", answer: "Agreed", verdict: "pass" },
];
const prepared: readonly VisitEntry[] = [
  { step: "dig-date", answer: TODAY },
  { step: "digger", answer: "In the name of whoever digs", verdict: "pass" },
  { step: "orders", answer: "All ordered, days known", verdict: "pass" },
  { step: "tools", answer: "All packed", verdict: "pass" },
  { step: "volunteers", answer: 8 },
  { step: "rain-forecast", answer: "Dry", verdict: "pass" },
  { step: "heat-forecast", answer: "Under 80 °F (27 °C)", verdict: "pass" },
  { step: "frozen-ground", answer: "Neither", verdict: "pass" },
];
const everything: readonly VisitEntry[] = [
  { step: "in-area", answer: "Yes", verdict: "pass" },
  { step: "permission", answer: "Yes, the owner agreed", verdict: "pass" },
  ...screened,
  ...ticketInForce,
  ...designChecked,
  ...agreed,
  ...prepared,
  { step: "levels", answer: "Within 1/2 in (13 mm)", verdict: "pass" },
  { step: "plants-planted", answer: 64 },
  { step: "flow-test", answer: "In at the inlet, out over the sill", verdict: "pass" },
];

interface Changes extends Partial<Omit<YardFacts, "visits" | "today">> {
  readonly entries?: readonly VisitEntry[];
  readonly today?: string;
}

function gate(into: StageId, { entries = everything, today = TODAY, ...others }: Changes = {}) {
  return gateInto(into, {
    visits: visitRows(entries),
    today: dayNumberOf(today) ?? 0,
    tested: true,
    rateVerdict: "pass",
    basinStatus: "fits",
    asBuiltMeasured: true,
    contradictions: new Map(),
    checklist: FROM_THE_START,
    ...others,
  });
}

const ids = (into: StageId, changes?: Changes) => gate(into, changes).refusals.map(({ id }) => id);
const override = (
  id: string,
  by: string | undefined = "Kit Marlow",
  note: string | undefined = "Engineer's letter of 2 May",
): VisitEntry => ({
  step: overrideStep(id),
  answer: OVERRIDDEN,
  ...(by === undefined ? {} : { by }),
  ...(note === undefined ? {} : { note }),
});

describe("Where everything is in order", () => {
  it.each(STAGE_IDS)("the gate into %s is open", (stage) => {
    expect(gate(stage)).toMatchObject({ open: true, refusals: [] });
  });
});

describe("Where nothing is on record", () => {
  const nothing = { entries: [], tested: false, rateVerdict: "not measured", basinStatus: null, asBuiltMeasured: false } as const;
  it.each([
    ["enquiry", []],
    ["screening", ["leave-to-enter"]],
    ["ticket", []],
    ["test-visit", ["leave-to-enter", "ticket-missing"]],
    ["design-check", ["screening-unmeasured", "untested-soil"]],
    ["agreement", ["untested-soil", "basin-does-not-fit", "design-unchecked"]],
    ["pre-dig", ["basin-does-not-fit", "design-unchecked", "agreement-unsigned"]],
    [
      "dig-day",
      [
        "ticket-missing",
        "agreement-unsigned",
        "screening-unmeasured",
        "untested-soil",
        "basin-does-not-fit",
        "design-unchecked",
        "pre-dig-unfinished",
      ],
    ],
    ["planting", ["unanswered: levels"]],
    ["as-built", ["unanswered: plants-planted"]],
    ["week", ["as-built-missing", "unanswered: flow-test"]],
    ["month", ["as-built-missing", "unanswered: flow-test"]],
    ["year", ["as-built-missing", "unanswered: flow-test"]],
  ] satisfies [StageId, string[]][])("the gate into %s refuses %j", (stage, refused) => {
    expect(ids(stage, nothing)).toEqual(refused);
  });

  it("every refusal is a sentence that says what to do", () => {
    for (const stage of STAGE_IDS) for (const { sentence } of gate(stage, nothing).refusals) expect(sentence).toMatch(/^[A-Z"].*\.$/);
  });
});

describe("Stop findings", () => {
  const stopped = changed(everything, "foundation", { answer: 9.5, verdict: "stop" });
  const later = STAGE_IDS.slice(STAGE_IDS.indexOf("ticket"));

  it.each(later)("a foundation too close keeps the yard from %s, and names the finding", (stage) => {
    expect(gate(stage, { entries: stopped })).toMatchObject({ open: false, refusals: [{ id: "stop: foundation", step: "foundation" }] });
    expect(gate(stage, { entries: stopped }).refusals[0]?.sentence).toBe(
      'Screening visit says stop: Foundation, "9.5". Settle it and answer the step again, or find another place.',
    );
  });

  it.each(["enquiry", "screening"] as const)("it does not keep anybody from %s, where it is found or before", (stage) => {
    expect(ids(stage, { entries: stopped })).toEqual([]);
  });

  it("a new answer that passes opens the gate again", () => {
    expect(ids("ticket", { entries: [...stopped, { step: "foundation", answer: 14, verdict: "pass" }] })).toEqual([]);
  });

  it("water in the test hole stops the design", () => {
    expect(
      ids("design-check", { entries: [...everything, { step: "water-signs", answer: "Water came into the hole", verdict: "stop" }] }),
    ).toEqual(["stop: water-signs"]);
  });

  it("a heat index of 103 °F stops the dig day, and another day begins the forecast anew", () => {
    const hot = changed(everything, "heat-forecast", { answer: "103 °F (39 °C) or more: move the day", verdict: "stop" });
    expect(ids("dig-day", { entries: hot })).toEqual(["stop: heat-forecast"]);
    expect(ids("dig-day", { entries: [...hot, { step: "dig-date", answer: "2026-05-12" }] })).toEqual(["pre-dig-unfinished"]);
  });
});

describe("What refers", () => {
  const referred = changed(everything, "trees", { answer: "No, under branches", verdict: "refer" });
  const decided = (entry: Partial<VisitEntry> = {}): VisitEntry => ({
    step: decisionStep("trees"),
    answer: "Go on, on conditions",
    by: "Tamar Reed, town arborist",
    note: "No root over 1 in is cut",
    link: "Letter of 9 May, binder 3",
    ...entry,
  });

  it.each(STAGE_IDS.slice(STAGE_IDS.indexOf("ticket")))("keeps the yard from %s until somebody has decided", (stage) => {
    const { open, refusals } = gate(stage, { entries: referred });
    expect(open).toBe(false);
    expect(refusals[0]).toMatchObject({
      id: "refer: trees",
      at: { stage: "screening", step: "trees" },
      sentence: 'Screening visit says refer: Trees, "No, under branches". Ask whoever may decide, and write down what they decide.',
    });
    expect(ids(stage, { entries: [...referred, decided()] })).toEqual([]);
  });

  it.each([
    ["who decided", { by: "" }],
    ["what was decided", { note: "" }],
    ["when", { date: null }],
    ["on what paper", { link: "" }],
    ["how it came out", { answer: "We think so" }],
  ] as const)("is not decided without %s", (_, missing) => {
    expect(ids("ticket", { entries: [...referred, decided(missing)] })).toEqual(["refer: trees"]);
  });

  it("is not opened by an override: it is decided, and nothing else ends it", () => {
    expect(ids("ticket", { entries: [...referred, override("refer: trees")] })).toEqual(["refer: trees"]);
    expect(gate("ticket", { entries: [...referred, override("refer: trees")] }).open).toBe(false);
  });

  it("is asked again once it is answered again", () => {
    const again = [...referred, decided(), { step: "trees", answer: "No, under branches", verdict: "refer" }];
    expect(ids("ticket", { entries: again })).toEqual(["refer: trees"]);
  });

  it("decided against is a stop, which says who decided and on what paper", () => {
    const against = gate("ticket", { entries: [...referred, decided({ answer: "Not here" })] });
    expect(against.refusals).toMatchObject([
      {
        id: "stop: trees",
        sentence:
          'Screening visit: Trees, "No, under branches". Tamar Reed, town arborist decided: Not here: No root over 1 in is cut (Letter of 9 May, binder 3). Settle it and answer the step again, or find another place.',
      },
    ]);
  });

  it("at an unmarked private line is decided too, such as by whoever hires a locator", () => {
    const unknown = changed(everything, "private-lines", { answer: "Owner does not know", verdict: "refer" });
    expect(ids("test-visit", { entries: unknown })).toEqual(["refer: private-lines"]);
    expect(ids("test-visit", { entries: [...unknown, decided({ step: decisionStep("private-lines") })] })).toEqual([]);
  });
});

describe("Steps that a later checklist brought", () => {
  const today = dayNumberOf(TODAY) ?? 0;
  const since = screeningVisit.steps.filter((step) => step.since !== undefined).map(({ id }) => id);
  const asBefore = without(everything, ...since, "frozen-ground");

  it("are asked where the workbook began with them", () => {
    expect(ids("design-check", { entries: asBefore })).toEqual(["screening-unmeasured"]);
    expect(ids("dig-day", { entries: asBefore })).toEqual(["screening-unmeasured", "pre-dig-unfinished"]);
  });

  it("do not un-finish what was finished before the workbook had them", () => {
    // The answers of these tests are of day 46100, before the day on which the list came into use.
    expect(ids("dig-day", { entries: asBefore, checklist: new Map([[2, today]]) })).toEqual([]);
  });

  it("are asked from the next visit on: any new answer of the stage begins it", () => {
    const visited = [...asBefore, { step: "trees", answer: "Yes, outside", verdict: "pass", date: today }];
    expect(ids("design-check", { entries: visited, checklist: new Map([[2, today]]) })).toEqual(["screening-unmeasured"]);
  });

  it("are asked of a stage that was not finished", () => {
    const unfinished = without(asBefore, "overflow");
    const [refusal] = gate("design-check", { entries: unfinished, checklist: new Map([[2, today]]) }).refusals;
    expect(refusal?.sentence).toContain("Overflow");
    expect(refusal?.sentence).toContain("Sewer lateral");
  });
});

describe("The dig lock", () => {
  it.each(["test-visit", "dig-day"] as const)("guards %s", (stage) => {
    expect(ids(stage, { today: "2026-05-03" })).toContain("ticket-not-yet-lawful");
    expect(ids(stage, { today: "2026-06-19" })).toContain("ticket-expired");
    expect(ids(stage, { entries: without(everything, "operator: ferry water") })).toEqual(["ticket-unanswered"]);
    expect(ids(stage, { entries: without(everything, "ticket-number") })).toEqual(["ticket-missing"]);
  });

  it("does not guard the desk: design and agreement go on while the operators answer", () => {
    const waiting = without(everything, ...ticketInForce.map(({ step }) => step));
    expect(ids("design-check", { entries: waiting })).toEqual([]);
    expect(ids("agreement", { entries: waiting })).toEqual([]);
    expect(ids("pre-dig", { entries: waiting })).toEqual([]);
  });

  it("looks at the planned day too, so that a ticket that runs out before it is found in time", () => {
    const planned = (date: string) => ids("dig-day", { entries: changed(everything, "dig-date", { answer: date }) });
    expect(planned("2026-06-18")).toEqual([]);
    expect(planned("2026-06-19")).toEqual(["ticket-expired"]);
    expect(planned("2026-05-09")).toEqual([]);
  });

  it("cannot be overridden in a gate, whatever is typed into the sheet", () => {
    const forced = gate("dig-day", { entries: [...without(everything, "ticket-number"), override("ticket-missing")] });
    expect(forced).toMatchObject({ open: false, refusals: [{ id: "ticket-missing", override: null }] });
  });
});

describe("No design on an untested soil", () => {
  it.each(["design-check", "agreement", "dig-day"] as const)("guards %s", (stage) => {
    expect(ids(stage, { tested: false, rateVerdict: "not measured" })).toEqual(["untested-soil"]);
  });

  it("a rate that the Rules sheet stops is refused too", () => {
    expect(ids("design-check", { rateVerdict: "stop" })).toEqual(["rate-stop"]);
    expect(ids("design-check", { rateVerdict: "refer" })).toEqual([]);
  });
});

describe("A second person checks the design", () => {
  it.each(["design-verdict", "designed-by", "design-checked-by"])("it is unchecked without %s", (step) => {
    expect(ids("agreement", { entries: without(everything, step) })).toEqual(["design-unchecked"]);
  });

  it.each(["Kit Marlow", " kit  marlow ", "KIT. MARLOW"])("nobody checks their own work: %j is the one who made it", (checker) => {
    expect(ids("agreement", { entries: changed(everything, "design-checked-by", { answer: checker }) })).toEqual(["design-self-checked"]);
  });

  it("another version of the design has to be checked again", () => {
    expect(ids("agreement", { entries: [...everything, { step: "design-version", answer: "June" }] })).toEqual(["design-unchecked"]);
  });

  it("corrections needed stop the agreement", () => {
    expect(ids("agreement", { entries: changed(everything, "design-verdict", { answer: "Corrections needed", verdict: "stop" }) })).toEqual(
      ["stop: design-verdict"],
    );
  });

  it("a basin that does not fit is refused with its reason", () => {
    expect(gate("agreement", { basinStatus: "Drains too slowly." }).refusals).toMatchObject([
      { id: "basin-does-not-fit", sentence: "The basin does not fit: Drains too slowly." },
    ]);
  });
});

describe("No dig without the signed agreement", () => {
  it.each(["agreement-signed", "agreement-signed-by"])("it is unsigned without %s", (step) => {
    expect(ids("dig-day", { entries: without(everything, step) })).toEqual(["agreement-unsigned"]);
    expect(ids("pre-dig", { entries: without(everything, step) })).toEqual(["agreement-unsigned"]);
  });

  it("it counts from the day it is signed to its last day, both included", () => {
    const until = changed(everything, "agreement-until", { answer: "2026-05-20" });
    expect(ids("pre-dig", { entries: until, today: "2026-05-20" })).toEqual([]);
    expect(ids("pre-dig", { entries: until, today: "2026-05-21" })).toEqual(["agreement-lapsed"]);
    expect(ids("pre-dig", { today: "2026-05-01" })).toEqual([]);
    expect(ids("pre-dig", { today: "2026-04-30" })).toEqual(["agreement-unsigned"]);
  });

  it("a day that cannot be read is no signature", () => {
    expect(ids("pre-dig", { entries: changed(everything, "agreement-signed", { answer: "last week" }) })).toEqual(["agreement-unsigned"]);
  });

  it.each([
    ["agreement-copy", "agreement-copy"],
    ["agreement-until", "agreement-until"],
    ["permit", "unanswered: permit"],
  ])("without %s it refuses %s", (step, refused) => {
    expect(ids("pre-dig", { entries: without(everything, step) })).toEqual([refused]);
  });

  it("a permit that is applied for stops the dig", () => {
    expect(ids("dig-day", { entries: changed(everything, "permit", { answer: "Applied for, no answer", verdict: "stop" }) })).toEqual([
      "stop: permit",
    ]);
  });
});

describe("An override", () => {
  const stopped = changed(everything, "foundation", { answer: 9.5, verdict: "stop" });

  it("opens the gate, and is shown with its name and reason at every gate it opens", () => {
    const entries = [...stopped, override("stop: foundation")];
    for (const stage of ["ticket", "test-visit", "dig-day"] as const) {
      expect(gate(stage, { entries })).toMatchObject({
        open: true,
        refusals: [{ id: "stop: foundation", override: { by: "Kit Marlow", reason: "Engineer's letter of 2 May" } }],
      });
    }
  });

  it.each([
    ["a name", { step: overrideStep("stop: foundation"), answer: OVERRIDDEN, note: "Engineer's letter" }],
    ["a reason", { step: overrideStep("stop: foundation"), answer: OVERRIDDEN, by: "Kit Marlow" }],
  ])("without %s is none", (_, entry) => {
    expect(gate("ticket", { entries: [...stopped, entry] }).open).toBe(false);
  });

  it("of one finding says nothing about another", () => {
    const two = changed(stopped, "wet-spot", { verdict: "stop" });
    expect(gate("ticket", { entries: [...two, override("stop: foundation")] })).toMatchObject({
      open: false,
      refusals: [{ override: { by: "Kit Marlow" } }, { id: "stop: wet-spot", override: null }],
    });
  });

  it("given before the finding was measured again says nothing about the new one", () => {
    const entries = [...stopped, override("stop: foundation"), { step: "foundation", answer: 3, verdict: "stop" }];
    expect(gate("ticket", { entries })).toMatchObject({ open: false, refusals: [{ override: null }] });
  });

  it("can be taken back, and given again", () => {
    const back = [
      ...stopped,
      override("stop: foundation"),
      { step: overrideStep("stop: foundation"), answer: WITHDRAWN, by: "Ada Fenn", note: "Letter was for another yard" },
    ];
    expect(gate("ticket", { entries: back }).open).toBe(false);
    expect(gate("ticket", { entries: [...back, override("stop: foundation", "Ada Fenn")] })).toMatchObject({
      open: true,
      refusals: [{ override: { by: "Ada Fenn" } }],
    });
  });

  it("of an untested soil is possible by name, because a report may stand in for a hole", () => {
    expect(gate("design-check", { tested: false, entries: [...everything, override("untested-soil")] }).open).toBe(true);
  });
});

test("a screening step that was never measured is no pass when the design begins", () => {
  expect(gate("design-check", { entries: without(everything, "well", "lead") }).refusals).toMatchObject([
    { id: "screening-unmeasured", sentence: "Not measured at the screening visit, and never a pass: Well, Lead in soil." },
  ]);
});
