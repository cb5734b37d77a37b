/** Typing into the grid as a person does, and reading it through the workbook port. */
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { addressOf, type CellRange, type CellValue } from "../../addin/workbook/port.ts";

/** "Program!H5" or "Program!H5:I9" as the port takes it. */
export function at(address: string): CellRange {
  const [, sheet, firstColumn, firstRow, lastColumn, lastRow] = /^(.+)!([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(address) ?? [];
  if (sheet === undefined || firstColumn === undefined) throw new Error(`"${address}" is not an address.`);
  const column = columnNumber(firstColumn);
  const row = Number(firstRow) - 1;
  return {
    sheet,
    row,
    column,
    rows: lastRow === undefined ? 1 : Number(lastRow) - row,
    columns: lastColumn === undefined ? 1 : columnNumber(lastColumn) + 1 - column,
  };
}

/** 0 for A, 26 for AA. */
function columnNumber(letters: string): number {
  return [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

export async function values(page: Page, address: string): Promise<readonly (readonly CellValue[])[]> {
  const read = await page.evaluate(async (range) => (await window.soakbook?.workbook.read([range])) ?? [], at(address));
  return read[0] ?? [];
}

export async function value(page: Page, address: string): Promise<CellValue> {
  return (await values(page, address))[0]?.[0] ?? null;
}

export async function formula(page: Page, address: string): Promise<string> {
  const formulas = await page.evaluate((range) => window.soakbook?.workbook.readFormulas(range), at(address));
  return formulas?.[0]?.[0] ?? "";
}

/** Puts the keyboard into the grid and selects the cell. */
export async function goTo(page: Page, address: string): Promise<void> {
  if (await isInExcel(page)) {
    await page.evaluate(({ sheet, ...area }) => window.excelInMemory?.select(sheet, [area]), at(address));
    return;
  }
  await page.locator("[id^=univer-sheet-main-canvas]").click({ position: { x: 80, y: 300 } });
  await page.evaluate((range) => window.soakbook?.workbook.select(range), at(address));
}

/** Types into the cell, confirms with Enter and waits for the answers. */
export async function typeInto(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  if (await isInExcel(page)) {
    await page.evaluate(([{ sheet, row, column }, entry]) => window.excelInMemory?.type(sheet, row, column, entry), [
      at(address),
      text,
    ] as const);
    return;
  }
  await page.keyboard.type(text, { delay: 5 });
  await page.keyboard.press("Enter");
  await calculated(page);
}

/** Excel's own cells are no part of the page: there a person's hand on them is the in-memory Excel's. */
function isInExcel(page: Page): Promise<boolean> {
  return page.evaluate(() => window.excelInMemory !== undefined);
}

const KEYS_APART_MILLISECONDS = 60;

/** Presses keys as hands do, without waiting for what the page makes of each: texts are typed, names such as "Tab" pressed. */
export async function pressWithoutWaiting(page: Page, keys: readonly string[]): Promise<void> {
  const pressed: Promise<void>[] = [];
  for (const key of keys) {
    for (const one of KEY_NAMES.has(key) ? [key] : [...key]) {
      pressed.push(page.keyboard.press(one));
      await new Promise((resolve) => setTimeout(resolve, KEYS_APART_MILLISECONDS));
    }
  }
  await Promise.all(pressed);
}

const KEY_NAMES: ReadonlySet<string> = new Set(["Tab", "Enter"]);

/** Types down a column; what is to be blank is emptied, and what stands right is passed over. */
export async function typeDown(page: Page, first: string, texts: readonly string[]): Promise<void> {
  const cells = at(first);
  const present = await values(page, addressOf({ ...cells, rows: texts.length }).replaceAll("'", ""));
  for (const [down, text] of texts.entries()) {
    if (String(present[down]?.[0] ?? "") === text) continue;
    await typeInto(page, addressOf({ ...cells, row: cells.row + down }).replaceAll("'", ""), text);
  }
}

export async function calculated(page: Page): Promise<void> {
  await page.evaluate(() => window.soakbook?.workbook.calculated());
}

/** The cell shows this value, now or within a moment. */
export async function expectCell(page: Page, address: string, expected: CellValue): Promise<void> {
  await expect.poll(() => value(page, address)).toEqual(expected);
}
