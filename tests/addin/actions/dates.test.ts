import { describe, expect, test } from "vitest";
import { dayNumber, dayNumberOf, isoDate, monthsAfter } from "../../../addin/actions/dates.ts";

describe("calendar days as a spreadsheet counts them", () => {
  // 1 January 2000 is day 36526 in every spreadsheet (from memory: the date systems Microsoft documents for Excel).
  test("1 January 2000 is day 36526", () => {
    expect(dayNumber(2000, 1, 1)).toBe(36526);
    expect(isoDate(36526)).toBe("2000-01-01");
    expect(dayNumberOf("2000-01-01")).toBe(36526);
  });

  test("29 February is a day in 2028 and 2000, and none in 2027 and 2100", () => {
    expect(dayNumberOf("2028-02-29")).not.toBeNull();
    expect(dayNumberOf("2000-02-29")).not.toBeNull();
    expect(dayNumberOf("2027-02-29")).toBeNull();
    expect(dayNumberOf("2100-02-29")).toBeNull();
  });

  test.each([
    ["2026-05-15", 1, "2026-06-15"],
    ["2026-12-15", 1, "2027-01-15"],
    ["2026-01-31", 1, "2026-02-28"],
    ["2028-01-31", 1, "2028-02-29"],
    ["2026-03-31", 1, "2026-04-30"],
    ["2026-05-15", 12, "2027-05-15"],
    ["2028-02-29", 12, "2029-02-28"],
    ["2027-02-28", 12, "2028-02-28"],
    ["2028-02-29", 48, "2032-02-29"],
    ["2026-05-15", 24, "2028-05-15"],
  ])("%s and %d months is %s", (from, months, to) => {
    expect(isoDate(monthsAfter(dayNumberOf(from) ?? 0, months))).toBe(to);
  });
});
