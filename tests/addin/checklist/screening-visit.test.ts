import { expect, test } from "vitest";
import { oneCallTicket } from "../../../addin/checklist/one-call-ticket.ts";
import { screeningVisit } from "../../../addin/checklist/screening-visit.ts";
import { stageVerdict } from "../../../addin/checklist/stage.ts";
import { startingRules } from "../../../addin/records/rules.ts";

test("every measured step is held against a rule that a new workbook has", () => {
  const rules = new Set(startingRules.map(({ rule }) => rule));
  for (const { id, answer } of screeningVisit.steps) {
    if ("rule" in answer) expect(rules, id).toContain(answer.rule);
  }
});

test("every step says why it is asked, and no step id is used twice", () => {
  const ids = screeningVisit.steps.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { why, ask } of screeningVisit.steps) expect(Math.min(why.length, ask.length)).toBeGreaterThan(10);
});

test("no digging without a ticket: every answer but a complete one stops", () => {
  const ticket = oneCallTicket.steps.find(({ id }) => id === "ticket");
  const options = ticket?.answer.kind === "chosen" ? ticket.answer.options : [];
  expect(options.filter(({ verdict }) => verdict === "pass").map(({ says }) => says)).toEqual(["All answered, ticket in force"]);
  expect(options.filter(({ verdict }) => verdict !== "pass").every(({ verdict }) => verdict === "stop")).toBe(true);
});

test("utilities, private lines, trenches, heat, lead, wells and septic, and standing water each have a reminder", () => {
  expect(screeningVisit.reminders.map(({ id }) => id)).toEqual(
    expect.arrayContaining(["utilities", "private-lines", "trench", "heat", "lead", "wells-septic", "standing-water"]),
  );
});

test("one stop stops the visit, and one unmeasured step keeps it from passing", () => {
  expect(stageVerdict(["pass", "refer", "stop", "not measured"])).toBe("stop");
  expect(stageVerdict(["pass", "refer", "not measured"])).toBe("refer");
  expect(stageVerdict(["pass", "not measured"])).toBe("not measured");
  expect(stageVerdict(["pass", "pass"])).toBe("pass");
  expect(stageVerdict([])).toBe("not measured");
});

test("every starting rule says where it comes from", () => {
  for (const { rule, source } of startingRules) expect(source.length, rule).toBeGreaterThan(15);
});
