import { describe, expect, it, test } from "vitest";
import { dayNumberOf, isoDate } from "../../../../addin/actions/dates.ts";
import { earlyWarning, ruleOfProgram } from "../../../../addin/actions/visits/ticket-hints.ts";
import { ONE_CALL_RULES, OUTSIDE_THE_US, type ProgramPlace, type UsState } from "../../../../addin/records/one-call-rules/rules.ts";
import { PRINTED_TICKETS } from "../../../published/printed-tickets.ts";
import { visitRows } from "../../checklist/visit-rows.ts";

const day = (iso: string) => dayNumberOf(iso) ?? 0;
const TODAY = day("2026-12-01");

function warned(place: ProgramPlace | null, issued: string | null, lawfulFrom: string, holidays: readonly string[] = [], today = TODAY) {
  const visits = visitRows([
    { step: "ticket-number", answer: "TF-2207" },
    ...(issued === null ? [] : [{ step: "ticket-issued", answer: issued }]),
    { step: "ticket-lawful-from", answer: lawfulFrom },
  ]);
  return earlyWarning({ oneCall: { place, placeAt: null, holidays: holidays.map(day) } }, { visits }, today);
}

describe("A typed first lawful day, beside the printed examples of one-call centers", () => {
  test.each(PRINTED_TICKETS)("$place, issued in business hours of $asked: earlier than $lawful is warned of", (printed) => {
    const { place, asked, holidays = [], lawful, counted = lawful } = printed;
    const at = `${asked} at 10:00`;
    const dayBefore = isoDate(day(counted) - 1);
    expect(isoDate(warned(place as UsState, at, dayBefore, holidays)?.notBefore ?? 0)).toBe(counted);
    expect(warned(place as UsState, at, counted, holidays)).toBeNull();
    // Where the hour is not known the count may be a day later than print, and is never earlier.
    expect(warned(place as UsState, asked, isoDate(day(lawful) - 1), holidays)).not.toBeNull();
  });

  test("the printed examples are of states whose row counts as many days", () => {
    for (const { place, businessDays } of PRINTED_TICKETS) expect(ONE_CALL_RULES[place as UsState].businessDays, place).toBe(businessDays);
  });
});

describe("The warning", () => {
  // 2 March 2026 is a Monday. Kansas: two full days, so Thursday the 5th.
  it.each([
    ["in the morning", "2026-03-02 at 09:00", "2026-03-05"],
    ["at 4 p.m.", "2026-03-02 at 16:00", "2026-03-05"],
    ["after 4 p.m.", "2026-03-02 at 16:01", "2026-03-06"],
    ["at an hour that nobody knows", "2026-03-02", "2026-03-06"],
    ["late on a Saturday, which is Monday's and no later", "2026-03-07 at 20:00", "2026-03-12"],
  ])("counts a ticket issued %s", (_, issued, notBefore) => {
    expect(isoDate(warned("Kansas", issued, "2026-03-03")?.notBefore ?? 0)).toBe(notBefore);
    expect(warned("Kansas", issued, notBefore)).toBeNull();
  });

  it("never questions a later day", () => {
    for (const later of ["2026-03-06", "2026-03-20", "2027-01-04"]) expect(warned("Kansas", "2026-03-02 at 09:00", later)).toBeNull();
  });

  it("names the rule, the day of its reading and the ticket, and says that no holidays are known", () => {
    const said = warned("Kansas", "2026-03-02", "2026-03-04 at 07:00")?.sentences.join(" ");
    expect(said).toContain(
      "Look at the ticket again: 2026-03-04 at 07:00 is earlier than the rule of Kansas comes to, which is not before 2026-03-06.",
    );
    expect(said).toContain("as it was read on 2026-11-29: 2 full working days, at most 20 calendar days; lawful from 12:01 a.m.");
    expect(said).toContain("because its hour is not known");
    expect(said).toContain("No holidays are known");
    expect(said).toContain("what the center says on the ticket decides");
    const known = warned("Kansas", "2026-03-02 at 09:00", "2026-03-04", ["2026-03-03"]);
    expect(isoDate(known?.notBefore ?? 0)).toBe("2026-03-06");
    expect(known?.sentences.join(" ")).not.toContain("holidays");
  });

  it("counts nothing without a place, outside the US, or without the day of issue", () => {
    expect(warned(null, "2026-03-02 at 09:00", "2026-03-02")).toBeNull();
    expect(warned(OUTSIDE_THE_US, "2026-03-02 at 09:00", "2026-03-02")).toBeNull();
    expect(warned("Kansas", null, "2026-03-02")).toBeNull();
    expect(warned("Kansas", "last week", "2026-03-02")).toBeNull();
  });

  it("counts nothing by a row that was read more than twelve months ago", () => {
    const issued = "2026-03-02 at 09:00";
    expect(warned("Kansas", issued, "2026-03-03", [], day("2027-11-29"))).not.toBeNull();
    expect(warned("Kansas", issued, "2026-03-03", [], day("2027-11-30"))).toBeNull();
    expect(ruleOfProgram({ oneCall: { place: "Kansas", placeAt: null, holidays: [] } }, day("2027-11-30"))).toMatchObject({
      kind: "too old",
    });
  });
});
