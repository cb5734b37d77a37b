/** The copy as a file: written when yards are taken along, read when they are brought back. */
import type { Workbook } from "../../workbook/port.ts";
import { WrittenFile } from "../../workbook/file/written-file.ts";
import { sheetsOfFile } from "../bring-in/list-file.ts";
import { copyIn, type FieldCopy } from "./field-copy.ts";
import { takeAlong } from "./take-along.ts";
import { isTakenAlong } from "./taken-along-sheet.ts";

export async function copyFile(workbook: Workbook, siteIds: readonly string[]): Promise<Uint8Array> {
  const file = new WrittenFile(isTakenAlong);
  await takeAlong(workbook, siteIds, file);
  return file.bytes();
}

export async function readCopyFile(fileName: string, bytes: Uint8Array): Promise<FieldCopy | { readonly sentence: string }> {
  const sheets = await sheetsOfFile(fileName, bytes);
  return "sentence" in sheets ? sheets : copyIn(fileName, sheets);
}
