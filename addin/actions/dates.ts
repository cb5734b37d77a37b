import { dayNumber } from "../records/calendar-day.ts";

export { clockText, dayNumber, dayNumberOf, isoDate, minutesOf, momentText, monthsAfter, type Moment } from "../records/calendar-day.ts";

export function today(): number {
  const now = new Date();
  return dayNumber(now.getFullYear(), now.getMonth() + 1, now.getDate());
}

/** How many minutes of today have passed. */
export function minutesOfToday(moment = new Date()): number {
  return moment.getHours() * 60 + moment.getMinutes();
}

/** This minute as a spreadsheet holds it: the day number, and the share of the day that has passed. */
export function now(moment = new Date()): number {
  return dayNumber(moment.getFullYear(), moment.getMonth() + 1, moment.getDate()) + minutesOfToday(moment) / 1440;
}
