import { recordSheets } from "./program-sheets.ts";
import type { Sheet } from "./sheet.ts";

/** Kept in the workbook: the sheets that have outgrown the rows of their set-up, and how many are prepared now. */
export const PREPARED_ROWS_SETTING = "soakbook.rows";

/** How many rows below the headings formats, drop-downs and the formulas that read the sheet reach. */
export type PreparedRows = ReadonlyMap<Sheet, number>;

/** By the text of the setting; a sheet that it does not name has the rows of its set-up. */
export function preparedRows(text: string | null): PreparedRows {
  const kept = new Map(
    (text ?? "")
      .split("\n")
      .map((line) => line.split("\t"))
      .map(([name = "", rows]) => [name, Number(rows)]),
  );
  return new Map(
    recordSheets.map((sheet) => {
      const rows = kept.get(sheet.name) ?? 0;
      return [sheet, Number.isSafeInteger(rows) ? Math.max(rows, sheet.rows) : sheet.rows];
    }),
  );
}

export function preparedRowsText(rows: PreparedRows): string {
  return [...rows]
    .filter(([sheet, count]) => count > sheet.rows)
    .map(([sheet, count]) => `${sheet.name}\t${count}`)
    .join("\n");
}

/** Far beyond any program, and few enough that a slip with a whole column does not bring the spreadsheet to a stand. */
const MOST_ROWS = 20_000;

export function mostRowsOf(sheet: Sheet): number {
  return sheet.mostRows ?? MOST_ROWS;
}
