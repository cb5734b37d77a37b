import { describe, expect, test } from "vitest";
import { dayNumber, dayNumberOf, isoDate, minutesOfToday, momentText, monthsAfter } from "../../../addin/actions/dates.ts";
import { dayIn, momentIn } from "../../../addin/records/calendar-day.ts";

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

describe("a day with its hour in a cell", () => {
  // 4 May 2026 is day 46146: 26 years of which 7 are leap years, and 31 + 28 + 31 + 30 + 3 days, after day 36526.
  test.each([
    ["2026-05-04", { day: 46_146, minutes: null }],
    ["2026-05-04 at 07:00", { day: 46_146, minutes: 420 }],
    ["2026-05-04 at 00:00", { day: 46_146, minutes: 0 }],
    ["2026-05-04 7:05", { day: 46_146, minutes: 425 }],
    ["2026-05-04T23:59", { day: 46_146, minutes: 1439 }],
    [46_146, { day: 46_146, minutes: null }],
    [46_146.5, { day: 46_146, minutes: 720 }],
    [46_146.99999, { day: 46_146, minutes: 1439 }],
  ])("%s is read as its day and minutes", (cell, moment) => {
    expect(momentIn(cell)).toEqual(moment);
    expect(dayIn(cell)).toBe(46_146);
  });

  test.each(["5/4/2026", "2026-05-04 at noon", "2026-05-04 at 24:00", "2026-05-04 at 07:60", "", true, null, -1, 0.5, 3e6])(
    "%s is none",
    (cell) => {
      expect(momentIn(cell)).toBeNull();
    },
  );

  test("is written with a word between, and read again the same", () => {
    for (const minutes of [null, 0, 425, 1439]) {
      const moment = { day: 46_146, minutes };
      expect(momentIn(momentText(moment))).toEqual(moment);
    }
    expect(momentText({ day: 46_146, minutes: 425 })).toBe("2026-05-04 at 07:05");
  });

  test("minutes of today are those of the clock on the wall", () => {
    expect(minutesOfToday(new Date(2026, 4, 4, 7, 5, 59))).toBe(425);
  });
});
