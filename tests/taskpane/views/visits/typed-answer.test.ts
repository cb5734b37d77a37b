import { describe, expect, it } from "vitest";
import { oneCallTicket } from "../../../../addin/checklist/one-call-ticket.ts";
import { screeningVisit } from "../../../../addin/checklist/screening-visit.ts";
import { BLANK_ANSWER, readAnswer } from "../../../../taskpane/views/visits/typed-answer.ts";

const step = (id: string) => [...screeningVisit.steps, ...oneCallTicket.steps].find((candidate) => candidate.id === id)!;

describe("An answer typed for a step of the visit", () => {
  it.each(screeningVisit.steps.map(({ id }) => id))("left blank at %s is refused in words and never becomes a pass", (id) => {
    const read = readAnswer(step(id), BLANK_ANSWER, "Kit");
    expect(read).toHaveProperty("faults");
    if (!("faults" in read)) return;
    expect(Object.values(read.faults).join(" ")).toMatch(/never a pass\.$/);
  });

  it("a distance is taken with its note and who measured it", () => {
    expect(readAnswer(step("foundation"), { ...BLANK_ANSWER, value: " 9.5 ", note: " from the porch " }, " Kit ")).toEqual({
      answer: { kind: "measured", value: 9.5, note: "from the porch", by: "Kit" },
    });
  });

  it("a distance of zero is a measurement, not a blank", () => {
    expect(readAnswer(step("foundation"), { ...BLANK_ANSWER, value: "0" }, "")).toEqual({
      answer: { kind: "measured", value: 0, note: "", by: "" },
    });
  });

  it("a distance with its unit is said back, not guessed", () => {
    expect(readAnswer(step("foundation"), { ...BLANK_ANSWER, value: "12 ft" }, "")).toEqual({
      faults: { value: 'Distance must be a number alone, in the unit shown; it is "12 ft".' },
    });
  });

  it("nothing to measure to is an answer of its own, whatever else was typed", () => {
    expect(readAnswer(step("well"), { ...BLANK_ANSWER, none: true, value: "?" }, "")).toEqual({
      answer: { kind: "none", note: "", by: "" },
    });
  });

  it("a slope takes drop and run, and names the one that is wrong", () => {
    expect(readAnswer(step("slope"), { ...BLANK_ANSWER, drop: "11", run: "180" }, "")).toEqual({
      answer: { kind: "slope", drop: 11, run: 180, note: "", by: "" },
    });
    expect(readAnswer(step("slope"), { ...BLANK_ANSWER, drop: "11", run: "0" }, "")).toEqual({
      faults: { run: "Run of the level string must be more than 0." },
    });
    expect(readAnswer(step("slope"), { ...BLANK_ANSWER, drop: "-1", run: "180" }, "")).toEqual({
      faults: { drop: "Drop must be 0 or more." },
    });
  });

  it("a day is taken with its hour, which the first lawful day must have and the issue need not", () => {
    const day = { ...BLANK_ANSWER, value: "2026-05-04" };
    expect(readAnswer(step("ticket-lawful-from"), day, "")).toEqual({
      faults: { hour: "Hour is missing. Type it from the ticket, such as 07:00." },
    });
    expect(readAnswer(step("ticket-lawful-from"), { ...day, hour: "07:00" }, "")).toMatchObject({ answer: { kind: "date", minutes: 420 } });
    expect(readAnswer(step("ticket-lawful-from"), { ...day, hour: "25:00" }, "")).toEqual({
      faults: { hour: 'Hour must be a time of day, such as 07:00; it is "25:00".' },
    });
    expect(readAnswer(step("ticket-issued"), day, "")).toMatchObject({ answer: { kind: "date", date: 46_146 } });
    expect(readAnswer(step("ticket-expires"), { ...day, hour: "07:00" }, "")).toEqual({
      answer: { kind: "date", date: 46_146, note: "", by: "" },
    });
  });

  it("a choice is taken as the checklist words it", () => {
    expect(readAnswer(step("ticket"), { ...BLANK_ANSWER, says: "Asked for, still waiting" }, "")).toEqual({
      answer: { kind: "chosen", says: "Asked for, still waiting", note: "", by: "" },
    });
  });
});
