import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  businessDayAfter,
  closedDays,
  FIRST_SOUND_DATE,
  firstDigDate,
  isBusinessDay,
  LAST_DATE,
} from "../../../functions/earthwork/dig-date.ts";

import { PRINTED_TICKETS } from "../../published/printed-tickets.ts";

const DAY = 86_400_000;
const EPOCH = Date.UTC(1899, 11, 30);

/** A worksheet's serial number for a date of the calendar. */
const serial = (year: number, month: number, day: number): number => (Date.UTC(year, month - 1, day) - EPOCH) / DAY;

/** An independent count on the language's own calendar: the first business day from the issue on is day 0. */
function byCalendar(issueDate: number, businessDays: number, holidays: readonly number[]): number {
  const days = Array.from({ length: 3 * businessDays + 20 + 2 * holidays.length }, (_, later) => Math.floor(issueDate) + later);
  const open = days.filter((date) => {
    const weekday = new Date(EPOCH + date * DAY).getUTCDay();
    return weekday >= 1 && weekday <= 5 && !holidays.some((holiday) => Math.floor(holiday) === date);
  });
  return open[businessDays]!;
}

const request = fc.oneof(fc.integer({ min: 40_000, max: 60_000 }), fc.double({ min: 40_000, max: 60_000, noNaN: true }));
const businessDays = fc.integer({ min: 1, max: 30 });
const holidays = fc.array(fc.integer({ min: 40_000, max: 60_000 }), { maxLength: 20 });

const workday = (date: number, days: number, holidays: readonly number[]) => businessDayAfter(date, days, closedDays(holidays));

describe("documented counts of WORKDAY", () => {
  // Microsoft, Excel function help, WORKDAY (read).
  test("151 business days after 1 October 2008 is 30 April 2009", () => {
    expect(workday(serial(2008, 10, 1), 151, [])).toBe(serial(2009, 4, 30));
  });

  test("with 26 November, 4 December and 21 January as holidays it is 5 May 2009", () => {
    const closed = [serial(2008, 11, 26), serial(2008, 12, 4), serial(2009, 1, 21)];
    expect(workday(serial(2008, 10, 1), 151, closed)).toBe(serial(2009, 5, 5));
  });

  // LibreOffice help, WORKDAY (read): 1 December 2001 is a Saturday.
  test("17 business days after 1 December 2001, closed for Christmas and New Year, is 28 December", () => {
    const closed = [serial(2001, 12, 24), serial(2001, 12, 25), serial(2001, 12, 26), serial(2001, 12, 31), serial(2002, 1, 1)];
    expect(workday(serial(2001, 12, 1), 17, closed)).toBe(serial(2001, 12, 28));
  });

  // A spreadsheet tutorial (read): 30 days after Sunday 6 May 2007 with Memorial Day closed.
  test("30 business days after 6 May 2007, closed on 28 May, is 18 June", () => {
    expect(workday(serial(2007, 5, 6), 30, [serial(2007, 5, 28)])).toBe(serial(2007, 6, 18));
  });

  // A second tutorial (read).
  test("87 business days after 6 July 2009, closed on 7 September and 12 October, is 6 November", () => {
    expect(workday(serial(2009, 7, 6), 87, [serial(2009, 9, 7), serial(2009, 10, 12)])).toBe(serial(2009, 11, 6));
  });

  // The same help: serial number 39448 is 1 January 2008.
  test("1 January 2008 is serial number 39448", () => {
    expect(serial(2008, 1, 1)).toBe(39_448);
  });
});

// Hand-worked calendars: 2 to 8 March 2026 is Monday to Sunday.
describe("worked by hand on a calendar", () => {
  test.each([
    ["Monday", 2, 5],
    ["Tuesday", 3, 6],
    ["Wednesday", 4, 9],
    ["Thursday", 5, 10],
    ["Friday", 6, 11],
    ["Saturday", 7, 12],
    ["Sunday", 8, 12],
  ])("a ticket issued on a %s, March %d of 2026, allows digging on March %d", (_, requested, dig) => {
    expect(firstDigDate(serial(2026, 3, requested), 3, [])).toBe(serial(2026, 3, dig));
  });

  test("three days before Independence Day, closed on Friday 3 July 2026, end on Monday 6 July", () => {
    expect(firstDigDate(serial(2026, 6, 30), 3, [serial(2026, 7, 3)])).toBe(serial(2026, 7, 6));
  });

  test("a holiday on a weekend, a holiday before the request and a holiday listed twice change nothing", () => {
    const monday = serial(2026, 3, 2);
    expect(firstDigDate(monday, 3, [serial(2026, 3, 7), serial(2026, 2, 27)])).toBe(serial(2026, 3, 5));
    expect(firstDigDate(monday, 3, [serial(2026, 3, 3), serial(2026, 3, 3)])).toBe(serial(2026, 3, 6));
  });

  test("the time of day does not count, of the request or of a holiday", () => {
    expect(firstDigDate(serial(2026, 3, 2) + 0.99, 3, [serial(2026, 3, 3) + 0.5])).toBe(serial(2026, 3, 6));
  });

  test("a leap day is a day", () => {
    expect(firstDigDate(serial(2028, 2, 28), 1, [])).toBe(serial(2028, 2, 29));
  });

  test("the first sound date is 1 March 1900 and the last 31 December 9999", () => {
    expect([FIRST_SOUND_DATE, LAST_DATE]).toEqual([serial(1900, 3, 1), serial(9999, 12, 31)]);
    expect(firstDigDate(FIRST_SOUND_DATE, 1, [])).toBe(serial(1900, 3, 2));
  });
});

// The handbook's twelve examples as one-call centers and statutes print them; 2 March 2026 is a Monday.
describe("printed examples of one-call centers", () => {
  test.each(PRINTED_TICKETS)(
    "$place, asked for on $asked: lawful on $lawful",
    ({ asked, holidays = [], businessDays, lawful, counted = lawful }) => {
      const day = (iso: string) => (Date.parse(iso) - EPOCH) / DAY;
      const first = firstDigDate(day(asked), businessDays, holidays.map(day));
      expect(first).toBe(day(counted));
      expect(first).toBeGreaterThanOrEqual(day(lawful));
    },
  );

  test("Labor Day left out of the list is a day early, which is why the caution asks for holidays", () => {
    expect(firstDigDate(serial(2018, 8, 31), 3, [])).toBe(serial(2018, 9, 5));
  });
});

describe("any ticket", () => {
  test("ends on the day that the language's own calendar counts to", () => {
    fc.assert(
      fc.property(request, businessDays, holidays, (requested, days, closed) => {
        expect(firstDigDate(requested, days, closed)).toBe(byCalendar(requested, days, closed));
      }),
    );
  });

  test("ends on a business day after the issue", () => {
    fc.assert(
      fc.property(request, businessDays, holidays, (requested, days, closed) => {
        const dig = firstDigDate(requested, days, closed);
        expect(dig).toBeGreaterThan(requested);
        expect(isBusinessDay(dig, new Set(closed))).toBe(true);
      }),
    );
  });

  test("is a day or more later for each further business day, and never earlier for a holiday", () => {
    fc.assert(
      fc.property(request, businessDays, holidays, fc.integer({ min: 40_000, max: 60_000 }), (requested, days, closed, holiday) => {
        const dig = firstDigDate(requested, days, closed);
        expect(firstDigDate(requested, days + 1, closed)).toBeGreaterThan(dig);
        expect(firstDigDate(requested, days, [...closed, holiday])).toBeGreaterThanOrEqual(dig);
      }),
    );
  });

  test("of five business days without a holiday is a week", () => {
    fc.assert(
      fc.property(fc.integer({ min: 40_000, max: 60_000 }), (requested) => {
        if (isBusinessDay(requested, new Set())) expect(firstDigDate(requested, 5, [])).toBe(requested + 7);
      }),
    );
  });
});
