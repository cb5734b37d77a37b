import { dayNumber } from "../records/calendar-day.ts";

export { dayNumber, dayNumberOf, isoDate, monthsAfter } from "../records/calendar-day.ts";

export function today(): number {
  const now = new Date();
  return dayNumber(now.getFullYear(), now.getMonth() + 1, now.getDate());
}

/** This minute as a spreadsheet holds it: the day number, and the share of the day that has passed. */
export function now(moment = new Date()): number {
  const minutes = moment.getHours() * 60 + moment.getMinutes();
  return dayNumber(moment.getFullYear(), moment.getMonth() + 1, moment.getDate()) + minutes / 1440;
}
