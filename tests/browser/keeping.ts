/** What a person sees and does of how the page without Excel keeps its workbook. */
import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { savedBytes } from "./page.ts";

export function button(page: Page, name: string) {
  return page.getByRole("button", { name, exact: true });
}

export async function expectSaved(page: Page): Promise<void> {
  // A change is noticed at once, so "saved" seen before it would be about something older.
  await page.waitForTimeout(50);
  await expect.poll(() => page.locator("#saving-state").innerText()).toBe("Saved in this browser");
}

/** Whether the page has a question for whoever closes it now; it stays open. */
export function asksBeforeClosing(page: Page): Promise<boolean> {
  return page.evaluate(() => !window.dispatchEvent(new Event("beforeunload", { cancelable: true })));
}

export async function savedFile(page: Page): Promise<Buffer> {
  const downloading = page.waitForEvent("download");
  await button(page, "Save to file").click();
  const download = await downloading;
  expect(download.suggestedFilename()).toMatch(/^rain-gardens-\d{4}-\d\d-\d\d\.xlsx$/);
  return savedBytes(download);
}

/** What a cell of a saved file holds. */
export async function cellInFile(file: Buffer, sheet: string, address: string): Promise<unknown> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength) as ArrayBuffer);
  return workbook.getWorksheet(sheet)?.getCell(address).value;
}

/** Bytes are those of an .xlsx; a text is a file of the page from before it had those. */
export async function openFile(page: Page, content: Buffer | string): Promise<void> {
  const extension = typeof content === "string" ? "soakbook" : "xlsx";
  const file = join(tmpdir(), `workbook-${Math.random().toString(36).slice(2)}.${extension}`);
  await writeFile(file, content);
  const choosing = page.waitForEvent("filechooser");
  await button(page, "Open a file").click();
  await (await choosing).setFiles(file);
}
