import { dayNumber } from "../records/calendar-day.ts";

export { dayNumber, dayNumberOf, isoDate, monthsAfter } from "../records/calendar-day.ts";

export function today(): number {
  const now = new Date();
  return dayNumber(now.getFullYear(), now.getMonth() + 1, now.getDate());
}
