import { expect, test } from "vitest";
import { inspectionItems } from "../../../addin/checklist/inspection-items.ts";
import { yearInspection } from "../../../addin/checklist/inspections.ts";
import { namesIn, STAGE_IDS } from "../../../addin/checklist/stage.ts";
import { stages } from "../../../addin/checklist/stages.ts";
import { startingRules } from "../../../addin/records/rules.ts";

test("no step id is used twice in the whole job, because the workbook knows a step by its id alone", () => {
  const ids = stages.flatMap(({ steps }) => steps.map(({ id }) => id));
  expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([]);
});

test("the stages run from the enquiry to the yearly look", () => {
  expect(stages.map(({ id }) => id)).toEqual(STAGE_IDS);
});

test("every step says what to do and why", () => {
  for (const { steps } of stages) for (const { ask, why } of steps) expect(Math.min(ask.length, why.length)).toBeGreaterThan(10);
});

test("every measured step is held against a rule that a new workbook has", () => {
  const rules = new Set(startingRules.map(({ rule }) => rule));
  for (const { answer, id } of stages.flatMap(({ steps }) => steps)) if ("rule" in answer) expect(rules, id).toContain(answer.rule);
});

test("every choice offers one that passes and says how the others are judged", () => {
  for (const { answer, id } of stages.flatMap(({ steps }) => steps)) {
    if (answer.kind !== "chosen") continue;
    expect(
      answer.options.some(({ verdict }) => verdict === "pass"),
      id,
    ).toBe(true);
    expect(new Set(answer.options.map(({ says }) => says)).size, id).toBe(answer.options.length);
  }
});

test("a stage is begun anew by one of its own steps, or never", () => {
  for (const { beginsWith, steps } of stages) if (beginsWith !== undefined) expect(steps.map(({ id }) => id)).toContain(beginsWith);
});

test("wherever the ground is opened, utilities, private lines and hand digging are in the reminders", () => {
  for (const id of ["ticket", "test-visit", "dig-day"]) {
    const reminders = stages.find((stage) => stage.id === id)?.reminders.map((reminder) => reminder.id);
    expect(reminders).toEqual(expect.arrayContaining(["utilities", "private-lines", "hand-digging"]));
  }
});

test("the yearly look goes through every inspection item, and each says what is done about a fail and where its trigger is from", () => {
  const ids = yearInspection.steps.map(({ id }) => id);
  for (const { id, action, source } of inspectionItems) {
    expect(ids).toContain(`year-${id}`);
    expect(action).toMatch(/\.$/);
    expect(source.length).toBeGreaterThan(15);
  }
});

// Handbook, section 9: the table of inspection items has these nine.
test("there are nine inspection items", () => {
  expect(inspectionItems.map(({ id }) => id)).toEqual([
    "ponding",
    "sediment",
    "mulch",
    "erosion",
    "plants",
    "weeds",
    "sill",
    "inlet",
    "unauthorized",
  ]);
});

test("a list of operators is read with commas, semicolons or line breaks, each name once", () => {
  expect(namesIn(" Ferry Water, Ferry Gas;ferry water\nFerry Cable ,,")).toEqual(["Ferry Water", "Ferry Gas", "Ferry Cable"]);
  expect(namesIn("  ")).toEqual([]);
});
