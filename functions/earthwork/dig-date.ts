/**
 * The first day to dig: business days counted from the day on which the one-call center issued the ticket.
 *
 *   a ticket of a Saturday, a Sunday or a holiday counts as one of the next business day;
 *   that day is not counted; Saturdays, Sundays and the holidays given are not business days;
 *   the day on which the count is full is the answer      (dates as serial numbers of the worksheet)
 *
 * Source  Kansas one-call center, call timeline (read): tickets of Saturday, Sunday and Monday are all lawful on Thursday.
 *         From a business day on it counts as the worksheet function WORKDAY does (read); holidays are the user's own list.
 * Domain  issueDate >= FIRST_SOUND_DATE, businessDays a whole number of 1 or more; times of day are dropped.
 * Limits  Local law decides how days are counted, when the clock starts and whether they must have passed in full.
 *         Dates of a workbook that counts from 1904 are not understood.
 */
export function firstDigDate(issueDate: number, businessDays: number, holidays: readonly number[]): number {
  const closed = closedDays(holidays);
  return businessDayAfter(sameOrNextBusinessDay(issueDate, closed), businessDays, closed);
}

/** The day so many business days after another, which is not counted: WORKDAY. */
export function businessDayAfter(date: number, businessDays: number, closed: ReadonlySet<number>): number {
  let reached = Math.floor(date);
  for (let counted = 0; counted < businessDays; ) {
    reached += 1;
    if (isBusinessDay(reached, closed)) counted += 1;
  }
  return reached;
}

export function sameOrNextBusinessDay(date: number, closed: ReadonlySet<number>): number {
  const day = Math.floor(date);
  return isBusinessDay(day, closed) ? day : businessDayAfter(day, 1, closed);
}

/** The days of a list of holidays, whatever hour a cell of it holds. */
export function closedDays(holidays: readonly number[]): ReadonlySet<number> {
  return new Set(holidays.map(Math.floor));
}

export function isBusinessDay(date: number, closed: ReadonlySet<number>): boolean {
  const weekday = date % 7;
  return weekday !== SATURDAY && weekday !== SUNDAY && !closed.has(date);
}

/** Serial numbers of worksheet dates, divided by seven, leave these. */
const SATURDAY = 0;
const SUNDAY = 1;

/** 1 March 1900: before it worksheets count a day that never was. */
export const FIRST_SOUND_DATE = 61;

/** 31 December 9999. */
export const LAST_DATE = 2_958_465;

/** What the notices of the states come to, read state by state: two full days are 3, Hawaii's five are 6. */
export const FEWEST_NOTICE_DAYS = 3;
export const MOST_NOTICE_DAYS = 6;

/** No ticket law asks for anything like this. */
export const MOST_BUSINESS_DAYS = 365;
