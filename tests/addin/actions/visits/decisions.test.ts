import { beforeEach, describe, expect, it } from "vitest";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { appendRow } from "../../../../addin/actions/program/write-records.ts";
import { contradictionsOf } from "../../../../addin/actions/visits/contradictions.ts";
import { recordAnswer, recordDecision, type DecisionEntry } from "../../../../addin/actions/visits/record-answer.ts";
import { yardStanding } from "../../../../addin/actions/visits/stage-standing.ts";
import { CHECKLIST_SETTING } from "../../../../addin/checklist/checklist-version.ts";
import { screeningVisit } from "../../../../addin/checklist/screening-visit.ts";
import { stageNamed } from "../../../../addin/checklist/stages.ts";
import { asBuiltSheet } from "../../../../addin/records/as-built.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import { workbookOfOneYard } from "../../one-yard.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import type { VisitEntry } from "../../checklist/visit-rows.ts";

const VISIT = dayNumber(2026, 5, 8);
const TODAY = dayNumber(2026, 5, 10);

let workbook: WorkbookInMemory;

beforeEach(async () => {
  workbook = await workbookOfOneYard();
});

async function answer(...entries: readonly VisitEntry[]): Promise<void> {
  for (const entry of entries) await appendRow(workbook, visitsSheet, { siteId: "Y-001", date: VISIT, stage: "any", ...entry });
}

async function standing() {
  const program = await readProgram(workbook);
  const [yard] = program.yards;
  if (yard === undefined) throw new Error("There is no yard.");
  return { program, ...yardStanding(program, yard, TODAY) };
}

const allPass = (stage: (typeof screeningVisit)["id"]): readonly VisitEntry[] =>
  stageNamed(stage).steps.map(({ id }) => ({ step: id, answer: "seen", verdict: "pass" }));

const decision: DecisionEntry = {
  says: "Go on, on conditions",
  by: "Rhea Dunn, zoning office",
  what: "8 ft is enough",
  date: TODAY,
  paper: "Letter of 10 May, binder 3",
};
const at = { stage: "screening", step: "property-line" } as const;

describe("A property line that refers", () => {
  beforeEach(() => answer(...allPass("enquiry"), ...allPass("screening"), { step: "property-line", answer: 8, verdict: "refer" }));

  it("leaves the screening to be asked about, and Next leads to that very step", async () => {
    const { current, next } = await standing();
    expect(current).toMatchObject({ stage: { id: "screening" }, state: "ask", verdict: "refer" });
    expect(next).toEqual({
      stage: "screening",
      kind: "ask",
      place: "visits",
      sentence: "Screening visit: Property line. Ask whoever may decide, and write down what they decide.",
      at,
    });
  });

  it("is done once it is decided, with who, what, when and the paper on Visits", async () => {
    await recordDecision(workbook, (await standing()).yard, at, decision);
    const { stages, yard } = await standing();
    const screening = stages.find(({ stage }) => stage.id === "screening");
    expect(screening).toMatchObject({ state: "done", verdict: "pass" });
    expect(screening?.steps.find(({ step }) => step.id === "property-line")?.decision).toMatchObject({
      by: "Rhea Dunn, zoning office",
      words: "Go on, on conditions: 8 ft is enough (Letter of 10 May, binder 3)",
    });
    expect(yard.visits.at(-1)?.record).toMatchObject({
      step: "decision: property-line",
      answer: "Go on, on conditions",
      note: "8 ft is enough",
      by: "Rhea Dunn, zoning office",
      date: TODAY,
      link: "Letter of 10 May, binder 3",
      verdict: "pass",
    });
  });

  it("is a stop where it is decided that it is not the place", async () => {
    await recordDecision(workbook, (await standing()).yard, at, { ...decision, says: "Not here" });
    expect(await standing()).toMatchObject({ current: { state: "stopped" }, next: { kind: "stop", at } });
  });

  it.each([
    ["without who decided", { by: " " }],
    ["without what", { what: "" }],
    ["without the paper", { paper: "" }],
    ["without an outcome", { says: "Maybe" }],
  ])("is not written %s", async (_, missing) => {
    const { yard } = await standing();
    await expect(recordDecision(workbook, yard, at, { ...decision, ...missing })).rejects.toThrow(
      "A decision needs what came out, who decided, what, when, and on what paper. Nothing was written.",
    );
    expect((await standing()).yard.visits).toHaveLength(yard.visits.length);
  });

  it("is not decided before it was found", async () => {
    const { yard } = await standing();
    await expect(recordDecision(workbook, yard, at, { ...decision, date: VISIT - 1 })).rejects.toThrow(
      "The decision is dated 2026-05-07, before the finding of 2026-05-08.",
    );
  });
});

describe("Water or rock below the dig", () => {
  const none = { step: "water-table", answer: "None met and no sign of it", verdict: "pass" };
  const open = async () =>
    (await standing()).stages
      .find(({ stage }) => stage.id === "screening")
      ?.steps.filter(({ verdict }) => verdict === "not measured")
      .map(({ step }) => step.id);

  beforeEach(() => answer(...allPass("enquiry"), ...allPass("screening")));

  it('"none met" asks how it is known and down to which depth, and passes with both', async () => {
    await answer({ step: "water-table-how", answer: null }, none);
    const asked = (await standing()).stages.find(({ stage }) => stage.id === "screening")?.steps.map(({ step }) => step.id);
    expect(asked).toEqual(expect.arrayContaining(["water-table-how", "water-table-depth"]));
    await answer({ step: "water-table-how", answer: "A well log nearby", verdict: "pass" }, { step: "water-table-depth", answer: 36 });
    expect(await open()).toEqual([]);
  });

  it("a measured depth asks for neither", async () => {
    await answer({ step: "water-table", answer: 5, verdict: "pass" });
    const asked = (await standing()).stages.find(({ stage }) => stage.id === "screening")?.steps.map(({ step }) => step.id);
    expect(asked).not.toContain("water-table-how");
  });

  it("left to the test hole, it holds up neither ticket nor test, but the test visit is not done and no design begins", async () => {
    const step = screeningVisit.steps.find(({ id }) => id === "water-table");
    const { yard } = await standing();
    if (step === undefined) throw new Error("There is no such step.");
    await recordAnswer(workbook, yard, screeningVisit, step, { kind: "later", note: "", by: "Wren", day: TODAY });
    const { stages } = await standing();
    const stage = (id: string) => stages.find((one) => one.stage.id === id);
    expect(stage("screening")).toMatchObject({ state: "done", verdict: "watch" });
    expect(stage("ticket")?.gate.open).toBe(true);
    expect(stage("test-visit")?.missing).toMatchObject([{ place: "hole tests" }, { at: { stage: "screening", step: "water-table" } }]);
    expect(stage("design-check")?.gate.refusals[0]).toMatchObject({
      id: "screening-unmeasured",
      sentence: "Not measured at the screening visit, and never a pass: Water table or rock.",
    });
  });

  // 8 in of ponding, 3 in of mulch and 12 in of mix go down 23 in.
  it.each([
    [18, true],
    [23, false],
    [36, false],
  ])("none down to %s in, under a dig of 23 in, is contradicted: %s", async (depth, contradicted) => {
    await answer(none, { step: "water-table-depth", answer: depth });
    const { program, yard } = await standing();
    const designed = { ...yard, design: { ...yard.design, pondingDepth: 8, mediaDepth: 12 } };
    expect(contradictionsOf(program, designed).has("water-table-depth")).toBe(contradicted);
  });
});

describe('"At least the design"', () => {
  /** An upright rectangle of 10 x 10 ft floor: 100 sq ft x depth / 12, in cu ft. */
  async function built(pondingDepth: number, waterHeld: number | null, says = "At least the design") {
    await appendRow(workbook, asBuiltSheet, {
      siteId: "Y-001",
      date: VISIT,
      shape: "rectangle",
      floorLength: 10,
      floorWidth: 10,
      pondingDepth,
      sideSlope: 0,
    });
    await answer({ step: "as-built-held", answer: says, verdict: "pass" });
    const { program, yard } = await standing();
    return contradictionsOf(program, { ...yard, design: { ...yard.design, waterHeld, mediaDepth: null } }).get("as-built-held") ?? null;
  }

  // 100 x 5.22 / 12 = 43.5 cu ft of 50 is 87 %.
  it("is contradicted by a garden that holds 87 % of it", async () => {
    expect(await built(5.22, 50)).toBe(
      'What was measured holds 87 % of the design, which is not "At least the design". Answer that it is less, or measure it again.',
    );
  });

  it("holds where the garden holds it, within the half inch of 8 in that a level can tell", async () => {
    expect(await built(6, 50)).toBeNull();
    expect(await built(5.76, 50)).toBeNull();
  });

  it("is not asked of an answer that says less", async () => {
    expect(await built(4, 50, "Less, and the owner knows")).toBeNull();
  });
});

describe("A stage that was finished before a workbook met the new steps", () => {
  const since = screeningVisit.steps.filter((step) => step.since !== undefined).map(({ id }) => id);

  it("stays done, and is asked for them from the next answer on", async () => {
    await workbook.writeSetting(CHECKLIST_SETTING, "1");
    await answer(...allPass("enquiry"), ...allPass("screening").filter(({ step }) => !since.includes(step)));
    const screening = async () => (await standing()).stages.find(({ stage }) => stage.id === "screening");
    expect((await screening())?.state).toBe("done");
    const step = screeningVisit.steps.find(({ id }) => id === "trees");
    if (step === undefined) throw new Error("There is no such step.");
    await recordAnswer(workbook, (await standing()).yard, screeningVisit, step, {
      kind: "chosen",
      says: "Yes, outside",
      note: "",
      by: "Wren",
    });
    expect(await workbook.readSetting(CHECKLIST_SETTING)).toMatch(/^1 2@\d+$/);
    expect(await screening()).toMatchObject({ state: "begun" });
  });
});
