import type { PrintedDocument } from "../../addin/actions/export/printed-page.ts";
import { freeSheetName } from "../../addin/actions/workbook/free-sheet-name.ts";
import { text } from "../text.ts";
import type { ViewProps } from "../view.ts";

/** Where the page did not print: the same on a sheet of the workbook, which the spreadsheet prints. The status line says where. */
export async function layOutInstead(
  { workbook, write }: Pick<ViewProps, "workbook" | "write">,
  name: string,
  unprinted: PrintedDocument | null,
): Promise<void> {
  if (unprinted === null) return;
  const sheet = freeSheetName(name, await workbook.sheetNames());
  await write(async () => {
    const { layOutDocuments } = await import("../../addin/actions/export/document-sheet.ts");
    await layOutDocuments(workbook, sheet, [unprinted]);
  }, text.laidOut(sheet));
}
