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

/** The day in a cell, whether the sheet holds it as a date or as the text "2026-05-04"; null for anything else. */
export function dayIn(cell: CellValue): number | null {
  if (typeof cell === "number") return cell >= 1 && cell <= LAST_DAY ? Math.floor(cell) : null;
  return typeof cell === "string" ? dayNumberOf(cell.trim()) : null;
}

/** The same day of the month, so many months on; the last of the month where that month is shorter. */
export function monthsAfter(day: number, months: number): number {
  const [year = 0, month = 0, dayOfMonth = 0] = isoDate(day).split("-").map(Number);
  const first = dayNumber(year, month + months, 1);
  const lastOfMonth = dayNumber(year, month + months + 1, 1) - 1;
  return Math.min(first + dayOfMonth - 1, lastOfMonth);
}

const MILLISECONDS_A_DAY = 86_400_000;
