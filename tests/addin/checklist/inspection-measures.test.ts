import { describe, expect, test } from "vitest";
import { findingOf, inspectionMeasures } from "../../../addin/checklist/inspection-measures.ts";
import { inspectionItems } from "../../../addin/checklist/inspection-items.ts";
import { itemOfStep, lookOf } from "../../../addin/checklist/looks.ts";
import { FOLLOW_UP_KINDS } from "../../../addin/records/follow-ups.ts";

const measure = (item: string) => {
  const found = inspectionMeasures.find((one) => one.item === item);
  if (found === undefined) throw new Error(`no measure ${item}`);
  return found;
};

// Handbook of rain gardens, section 9, inspection items and triggers.
describe("a number read at an inspection, on both sides of each trigger", () => {
  test.each<[item: string, reading: number, finding: string]>([
    ["ponding", 0, "pass"],
    ["ponding", 24, "pass"],
    ["ponding", 24.1, "watch"],
    ["ponding", 48, "watch"],
    ["ponding", 48.1, "fail"],
    ["ponding", 72, "fail"],
    ["sediment", 0, "pass"],
    ["sediment", 0.49, "pass"],
    ["sediment", 0.5, "watch"],
    ["sediment", 1, "watch"],
    ["sediment", 1.01, "fail"],
    ["mulch", 0, "fail"],
    ["mulch", 0.99, "fail"],
    ["mulch", 1, "watch"],
    ["mulch", 1.99, "watch"],
    ["mulch", 2, "pass"],
    ["mulch", 4, "pass"],
    ["mulch", 4.01, "watch"],
    ["plants", 0, "fail"],
    ["plants", 74.9, "fail"],
    ["plants", 75, "watch"],
    ["plants", 89.9, "watch"],
    ["plants", 90, "pass"],
    ["plants", 100, "pass"],
    ["weeds", 0, "pass"],
    ["weeds", 9.9, "pass"],
    ["weeds", 10, "watch"],
    ["weeds", 25, "watch"],
    ["weeds", 25.1, "fail"],
  ])("%s of %s: %s", (item, reading, finding) => {
    expect(findingOf(measure(item), reading, "us")).toBe(finding);
  });

  // An inch is 25.4 mm: 2 in are 50.8 mm, 4 in 101.6 mm.
  test.each([
    [25.3, "fail"],
    [25.4, "watch"],
    [50.7, "watch"],
    [50.8, "pass"],
    [101.6, "pass"],
    [101.7, "watch"],
  ])("%s mm of mulch: %s", (reading, finding) => {
    expect(findingOf(measure("mulch"), reading, "metric")).toBe(finding);
  });

  test("a reading below zero is no reading", () => {
    for (const one of inspectionMeasures) expect(findingOf(one, -1, "us")).toBeNull();
  });

  test("every number belongs to an inspection item", () => {
    const items = inspectionItems.map(({ id }) => id);
    for (const { item } of inspectionMeasures) expect(items).toContain(item);
  });
});

describe("what is asked at a follow-up", () => {
  test.each(FOLLOW_UP_KINDS)("%s asks something that can pass and can fail", (kind) => {
    const look = lookOf(kind);
    const steps = "stage" in look ? look.stage.steps : [look.step];
    const verdicts = steps.flatMap(({ answer }) => (answer.kind === "chosen" ? answer.options.map(({ verdict }) => verdict) : []));
    expect(verdicts).toContain("pass");
    expect(verdicts).toContain("fail");
  });

  test("a yearly look goes through every inspection item, and each has its repair", () => {
    const look = lookOf("yearly");
    if (!("stage" in look)) throw new Error("a yearly look has a stage");
    const asked = look.stage.steps.map((step) => itemOfStep(look.stage, step)).filter((item) => item !== null);
    expect(asked.map(({ id }) => id)).toEqual(inspectionItems.map(({ id }) => id));
    expect(asked.every(({ action }) => action.endsWith("."))).toBe(true);
  });
});
