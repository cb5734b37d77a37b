/** A row of a sheet as keys on the keyboard. */
import type { Page } from "playwright-core";
import { cellOf } from "../../addin/records/place.ts";
import { isBlank, type Sheet, type SheetRow } from "../../addin/records/sheet.ts";
import { addressOf, type CellValue } from "../../addin/workbook/port.ts";
import { calculated, goTo } from "./grid.ts";

const DAY_NUMBER_OF_1970 = 25_569;
const MILLISECONDS_IN_A_DAY = 86_400_000;

/** Cell by cell of a row, what is typed into it and the key that leaves it. */
export function keystrokes({ sheet, cells }: SheetRow<Sheet>): readonly (readonly string[])[] {
  const keys = Object.keys(sheet.columns);
  const isTyped = (key: string) => sheet.columns[key]?.role === "input" && !isBlank(cells[key] ?? null);
  const last = keys.findLastIndex(isTyped);
  return keys
    .slice(0, last + 1)
    .map((key, place) => [...(isTyped(key) ? asTyped(sheet, key, cells[key] ?? null) : ""), place === last ? "Enter" : "Tab"]);
}

/** Types what stands in a row into another, cell by cell, as a person does who has no pane. */
export async function typeRecord(page: Page, record: SheetRow<Sheet>, row: number): Promise<void> {
  const { sheet } = record;
  await goTo(page, addressOf(cellOf(sheet, row, Object.keys(sheet.columns)[0] ?? "siteId")).replaceAll("'", ""));
  for (const strokes of keystrokes(record)) {
    for (const stroke of strokes) await page.keyboard.press(stroke === " " ? "Space" : stroke, { delay: 5 });
  }
  await calculated(page);
}

/** A date is typed as a date; a cell holds its day number. */
function asTyped(sheet: Sheet, key: string, value: CellValue): string {
  const isDay = sheet.columns[key]?.numberFormat === "yyyy-mm-dd";
  return isDay ? new Date((Number(value) - DAY_NUMBER_OF_1970) * MILLISECONDS_IN_A_DAY).toISOString().slice(0, 10) : String(value);
}

/** What a person put into the row. */
export function inputsOf({ sheet, record }: SheetRow<Sheet>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => sheet.columns[key]?.role === "input"));
}
