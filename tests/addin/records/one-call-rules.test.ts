import { describe, expect, expectTypeOf, it, test } from "vitest";
import { markingService } from "../../../addin/records/one-call-rules/marking-service.ts";
import { ONE_CALL_RULES, OUTSIDE_THE_US, PROGRAM_PLACES, US_STATES } from "../../../addin/records/one-call-rules/rules.ts";
import type { OneCallRule } from "../../../addin/records/one-call-rules/rule.ts";
import { dayNumberOf } from "../../../addin/records/calendar-day.ts";

test("every state and the District of Columbia is a row, once, with a source and the day of its reading", () => {
  expect(US_STATES).toHaveLength(51);
  for (const [state, { sources, readOn, businessDays }] of Object.entries(ONE_CALL_RULES)) {
    for (const { named } of sources) expect(named.length, state).toBeGreaterThan(3);
    expect(dayNumberOf(readOn), state).not.toBeNull();
    expect([3, 4, 5, 6], state).toContain(businessDays);
  }
});

test("a row without a source is none", () => {
  expectTypeOf<Omit<OneCallRule, "sources">>().not.toExtend<OneCallRule>();
  expectTypeOf<Omit<OneCallRule, "sources"> & { readonly sources: readonly [] }>().not.toExtend<OneCallRule>();
  expectTypeOf<Omit<OneCallRule, "readOn">>().not.toExtend<OneCallRule>();
});

test("what only another page says is marked as such", () => {
  for (const { notice, sources } of Object.values(ONE_CALL_RULES))
    if (notice.evidence === "secondary") expect(sources.some(({ evidence }) => evidence === "secondary")).toBe(true);
  expect(ONE_CALL_RULES["West Virginia"].sources.every(({ evidence }) => evidence === "secondary")).toBe(true);
});

// The handbook page, read state by state: fifteen rows of the earlier list counted a business day too few or had no number.
test.each([
  ["Alabama", 3],
  ["Alaska", 3],
  ["Arizona", 3],
  ["Arkansas", 3],
  ["California", 3],
  ["Delaware", 3],
  ["District of Columbia", 5],
  ["Illinois", 3],
  ["Maryland", 4],
  ["Minnesota", 3],
  ["Nebraska", 3],
  ["Ohio", 4],
  ["Oklahoma", 4],
  ["Oregon", 3],
  ["Pennsylvania", 4],
  ["Texas", 3],
  ["Washington", 3],
  ["Wisconsin", 4],
  ["Hawaii", 6],
] as const)("%s counts %d business days", (state, businessDays) => {
  expect(ONE_CALL_RULES[state].businessDays).toBe(businessDays);
});

test("three lives and zones as they were read", () => {
  expect(ONE_CALL_RULES.Michigan.toleranceZone).toEqual({ says: "4 ft", evidence: "read" });
  expect(ONE_CALL_RULES.Washington.life).toEqual({ says: "45 days", evidence: "read" });
  expect(ONE_CALL_RULES.Oregon.life).toBeNull();
});

describe("Whoever marks the lines", () => {
  it("is 811 in every state, and never where the yard is not in the US", () => {
    for (const place of PROGRAM_PLACES) {
      for (const units of ["us", "metric"] as const) {
        const { ask, name, isInUs } = markingService(place, units);
        expect(ask.includes("811"), place).toBe(place !== OUTSIDE_THE_US);
        expect(name.includes("811"), place).toBe(isInUs);
      }
    }
  });

  it("is the local service where no place is chosen and the yard is metric; in US units 811 is said to be the US's", () => {
    expect(markingService(null, "metric").ask).toBe("ask the local one-call or utility-marking service");
    expect(markingService(null, "us").ask).toBe("ask the one-call center (811 in the US)");
  });
});
