import { describe, expect, test } from "vitest";
import { askedAt } from "../../../../addin/actions/care/asked-at-look.ts";
import { dayNumber } from "../../../../addin/actions/dates.ts";
import { FOLLOW_UP_KINDS, type FollowUpKind } from "../../../../addin/records/follow-ups.ts";
import { blankLook, readLook, withReading, withStep, type TypedLook, type TypedStep } from "../../../../taskpane/views/care/look-draft.ts";

const DONE = dayNumber(2026, 6, 20);
const stepsOfLook = (kind: FollowUpKind) => askedAt(kind).steps.map((asked) => asked.step);
const measureOf = (kind: FollowUpKind, of: { readonly id: string }) =>
  askedAt(kind).steps.find((asked) => asked.step.id === of.id)?.measure ?? null;
const step = (kind: FollowUpKind, id: string) => {
  const found = stepsOfLook(kind).find((one) => one.id === id);
  if (found === undefined) throw new Error(`no step ${id}`);
  return found;
};

/** Every choice answered with a pass but those named. */
function look(kind: FollowUpKind, others: Readonly<Record<string, Partial<TypedStep>>> = {}): TypedLook {
  return stepsOfLook(kind).reduce((typed, one) => {
    const passed = one.answer.kind === "chosen" ? withStep(typed, one, { verdict: "pass" }) : typed;
    return withStep(passed, one, others[one.id] ?? {});
  }, blankLook(DONE));
}

function entry(kind: FollowUpKind, typed: TypedLook, units: "us" | "metric" = "us") {
  const read = readLook(kind, typed, "Wren", units);
  if ("faults" in read) throw new Error([...read.faults.steps.values()].join(" "));
  return read.entry;
}

describe("a look as typed", () => {
  test.each(FOLLOW_UP_KINDS)("%s left blank is refused at every item: a blank is never a pass", (kind) => {
    const read = readLook(kind, blankLook(DONE), "", "us");
    if (!("faults" in read)) throw new Error("a blank look was read");
    const asked = stepsOfLook(kind).filter(({ optional }) => optional !== true);
    expect([...read.faults.steps.keys()]).toEqual(asked.map(({ id }) => id));
    for (const fault of read.faults.steps.values()) expect(fault).toMatch(/never a pass\.$|is missing\.$/);
  });

  test("the day of the look begins the stage anew, and each item follows in its own words", () => {
    const { answers, done, by } = entry("1 week", look("1 week"));
    expect([done, by]).toEqual([DONE, "Wren"]);
    expect(answers[0]).toMatchObject({ answer: "2026-06-20", verdict: null, step: { id: "week-date" } });
    expect(answers.find((one) => one.step.id === "week-erosion")).toMatchObject({ answer: "None", verdict: "pass" });
  });

  test("a reading decides the verdict, and stands on record with its unit", () => {
    const mulch = step("1 month", "month-mulch");
    const measure = measureOf("1 month", mulch);
    if (measure === null) throw new Error("mulch is measured");
    const typed = withReading(look("1 month"), mulch, measure, "1.5", "us");
    expect(entry("1 month", typed).answers.find((one) => one.step.id === "month-mulch")).toMatchObject({
      answer: 1.5,
      unit: "in",
      verdict: "watch",
    });
    // 38 mm is 1.496 in.
    const metric = withReading(look("1 month"), mulch, measure, "38", "metric");
    expect(entry("1 month", metric, "metric").answers.find((one) => one.step.id === "month-mulch")).toMatchObject({
      answer: 38,
      unit: "mm",
      verdict: "watch",
    });
  });

  test("a reading that is no number is refused, and leaves the choice as it was", () => {
    const mulch = step("1 month", "month-mulch");
    const measure = measureOf("1 month", mulch);
    if (measure === null) throw new Error("mulch is measured");
    const read = readLook("1 month", withReading(look("1 month"), mulch, measure, "about 2", "us"), "", "us");
    expect("faults" in read && read.faults.steps.get("month-mulch")).toBe('Mulch depth must be a number; it is the text "about 2".');
  });

  test("what was not seen is on record as not measured, whatever was typed beside it", () => {
    const { answers } = entry("1 month", look("1 month", { "month-plants": { verdict: "not measured", reading: "80" } }));
    expect(answers.find((one) => one.step.id === "month-plants")).toMatchObject({
      answer: "Not seen",
      unit: null,
      verdict: "not measured",
    });
  });

  test("the day of a repair is taken for what failed, and only for that", () => {
    const { repairDays } = entry(
      "1 month",
      look("1 month", {
        "month-inlet": { verdict: "fail", repairBy: "2026-06-22" },
        "month-weeds": { verdict: "watch", repairBy: "2026-06-23" },
      }),
    );
    expect([...repairDays]).toEqual([["month-inlet", dayNumber(2026, 6, 22)]]);
  });

  test("hours of draining may stay blank, and are a number where they do not", () => {
    expect(entry("1 month", look("1 month")).answers.some((one) => one.step.id === "month-drain-hours")).toBe(false);
    expect(
      entry("1 month", look("1 month", { "month-drain-hours": { reading: "30" } })).answers.find(
        (one) => one.step.id === "month-drain-hours",
      ),
    ).toMatchObject({ answer: 30, unit: "h", verdict: null });
    expect(readLook("1 month", look("1 month", { "month-drain-hours": { reading: "-1" } }), "", "us")).toHaveProperty("faults");
  });

  test("a look without a day is refused", () => {
    expect(readLook("1 week", { ...look("1 week"), done: "2026-02-30" }, "", "us")).toMatchObject({
      faults: { done: "Day of the look is missing." },
    });
  });
});
