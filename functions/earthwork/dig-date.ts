/**
 * The first day to dig: business days counted from the day the ticket was requested.
 *
 *   the request day is not counted; Saturdays, Sundays and the holidays given are not business days;
 *   the day on which the count is full is the answer      (dates as serial numbers of the worksheet)
 *
 * Source  Counts as the worksheet function WORKDAY does (read); holidays are the user's own list.
 * Domain  requestDate >= FIRST_SOUND_DATE, businessDays a whole number of 1 or more; times of day are dropped.
 * Limits  Local law decides how days are counted, when the clock starts and whether they must have passed in full.
 *         Dates of a workbook that counts from 1904 are not understood.
 */
export function firstDigDate(requestDate: number, businessDays: number, holidays: readonly number[]): number {
  const closed = new Set(holidays.map(Math.floor));
  let date = Math.floor(requestDate);
  for (let counted = 0; counted < businessDays; ) {
    date += 1;
    if (isBusinessDay(date, closed)) counted += 1;
  }
  return date;
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

/** Most states ask for 2 to 3 (read state by state). */
export const USUAL_BUSINESS_DAYS = 3;
export const FEWEST_USUAL_BUSINESS_DAYS = 2;

/** No ticket law asks for anything like this. */
export const MOST_BUSINESS_DAYS = 365;
