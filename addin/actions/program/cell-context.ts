/** What cells belong to: the yard of their row and the heading of their column, where their sheet is one of ours. */
import { findPlace, headingText } from "../../records/place.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import type { CellRange, Workbook } from "../../workbook/port.ts";
import { readParts, type SheetPart } from "./sheet-parts.ts";

export interface CellContext {
  readonly siteId: string | null;
  readonly heading: string | null;
}

export type ContextAt = (where: CellRange) => CellContext;

/** Of a block of cells, what its first cell belongs to. Further sheets are read along. */
export async function readContexts(
  workbook: Workbook,
  cells: readonly CellRange[],
  along: readonly string[] = [],
): Promise<{ readonly contextAt: ContextAt; readonly along: readonly SheetPart[] }> {
  const names = [...new Set(cells.map(({ sheet }) => sheet))];
  const firstRows = cells.map((cell) => ({ ...cell, rows: 1 }));
  const parts = await readParts(workbook, [...names, ...along], firstRows);
  return { contextAt: contextsIn(names, parts), along: parts.slice(names.length) };
}

function contextsIn(names: readonly string[], parts: readonly SheetPart[]): ContextAt {
  const sheets = new Map(
    names.map((name, index) => {
      const sheet = recordSheets.find((one) => one.name === name);
      const rows = parts[index]?.cells ?? [];
      const found = sheet === undefined ? null : findPlace(sheet, rows);
      return [name, { rows, place: found !== null && "place" in found ? found.place : null }];
    }),
  );
  return ({ sheet, row, column }) => {
    const { rows = [], place = null } = sheets.get(sheet) ?? {};
    if (place === null) return { siteId: null, heading: null };
    const siteId = "siteId" in place.sheet.columns ? rows[row]?.[place.columnIndex("siteId")] : null;
    return { siteId: typeof siteId === "string" ? siteId : null, heading: headingText(rows[place.headingRow]?.[column] ?? null) };
  };
}

/** The headings over the cells, as one text; null where they stand on no sheet of ours. */
export function headingsOf(cells: readonly CellRange[], contextAt: ContextAt): string | null {
  const headings = cells.flatMap((cell) => contextAt(cell).heading ?? []);
  return headings.length === 0 ? null : headings.join("; ");
}
