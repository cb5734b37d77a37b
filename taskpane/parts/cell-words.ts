import { isoDate } from "../../addin/actions/dates.ts";
import type { CellValue } from "../../addin/workbook/port.ts";

/** A cell as people would read it under its column: days as days, numbers without the tail that computers give them. */
export function cellWords(value: CellValue, format?: string): string {
  if (value === null) return "";
  if (typeof value !== "number") return String(value);
  if (format?.includes("yyyy") === true) return isoDate(Math.floor(value));
  if (format === "hh:mm") return new Date(Math.round(value * MINUTES_A_DAY) * MILLISECONDS_A_MINUTE).toISOString().slice(11, 16);
  return String(Number(value.toPrecision(6)));
}

const MINUTES_A_DAY = 24 * 60;
const MILLISECONDS_A_MINUTE = 60_000;
