import type { CellValue } from "../workbook/port.ts";

/** A calendar day as a spreadsheet counts it: days since 30 December 1899. */
export function dayNumber(year: number, month: number, day: number): number {
  return (Date.UTC(year, month - 1, day) - Date.UTC(1899, 11, 30)) / MILLISECONDS_A_DAY;
}

/** 31 December 9999, the last a spreadsheet knows. */
export const LAST_DAY = 2_958_465;

/** "2026-05-04", as date inputs and file names write it. */
export function isoDate(day: number): string {
  return new Date(Date.UTC(1899, 11, 30) + day * MILLISECONDS_A_DAY).toISOString().slice(0, 10);
}

/** The day number of "2026-05-04", or null when it is no calendar day. */
export function dayNumberOf(iso: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (parts === null) return null;
  const day = dayNumber(Number(parts[1]), Number(parts[2]), Number(parts[3]));
  return isoDate(day) === iso ? day : null;
}

/** The day in a cell, whether the sheet holds it as a date or as the text "2026-05-04", with an hour or without; null for anything else. */
export function dayIn(cell: CellValue): number | null {
  return momentIn(cell)?.day ?? null;
}

/** A day and, where it is known, the minutes of it that have passed. */
export interface Moment {
  readonly day: number;
  readonly minutes: number | null;
}

/** The day and the hour in a cell: a date, a date with a time, or the text that `momentText` writes; null for anything else. */
export function momentIn(cell: CellValue): Moment | null {
  if (typeof cell === "number") {
    if (!(cell >= 1 && cell < LAST_DAY + 1)) return null;
    const day = Math.floor(cell);
    const minutes = Math.round((cell - day) * MINUTES_A_DAY);
    // A whole number is a date without an hour. A minute that rounds up to midnight is the last one of the day.
    return { day, minutes: cell === day ? null : Math.min(minutes, MINUTES_A_DAY - 1) };
  }
  const parts = typeof cell === "string" ? /^(\d{4}-\d{2}-\d{2})(?:(?: at |[ T])(.*))?$/.exec(cell.trim()) : null;
  const day = parts?.[1] === undefined ? null : dayNumberOf(parts[1]);
  if (day === null) return null;
  if (parts?.[2] === undefined) return { day, minutes: null };
  const minutes = minutesOf(parts[2]);
  return minutes === null ? null : { day, minutes };
}

/** "2026-05-04 at 07:00": with the word between, no spreadsheet makes another date of it. */
export function momentText({ day, minutes }: Moment): string {
  return minutes === null ? isoDate(day) : `${isoDate(day)} at ${clockText(minutes)}`;
}

export function clockText(minutes: number): string {
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");
}

/** The minutes of "07:00", as time inputs write it; null where it is no time of day. */
export function minutesOf(clock: string): number | null {
  const parts = /^(\d{1,2}):(\d{2})$/.exec(clock.trim());
  if (parts === null) return null;
  const [hours, minutes] = [Number(parts[1]), Number(parts[2])];
  return hours < 24 && minutes < 60 ? hours * 60 + minutes : null;
}

/** The same day of the month, so many months on; the last of the month where that month is shorter. */
export function monthsAfter(day: number, months: number): number {
  const [year = 0, month = 0, dayOfMonth = 0] = isoDate(day).split("-").map(Number);
  const first = dayNumber(year, month + months, 1);
  const lastOfMonth = dayNumber(year, month + months + 1, 1) - 1;
  return Math.min(first + dayOfMonth - 1, lastOfMonth);
}

const MINUTES_A_DAY = 1440;
const MILLISECONDS_A_DAY = 86_400_000;
