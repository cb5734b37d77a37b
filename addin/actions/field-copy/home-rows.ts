/** What a workbook holds of all that a copy takes along. */
import { visitsSheet } from "../../records/visits.ts";
import { WorkbookRefused, type Workbook } from "../../workbook/port.ts";
import { takenRows, type TakenRows } from "./taken-rows.ts";
import { sheetsTaken, type TakenSheet } from "./taken-sheets.ts";

export type RowsOfSheets = ReadonlyMap<TakenSheet, TakenRows>;

/** Refused in words where a sheet has lost a heading. */
export async function homeRows(workbook: Workbook): Promise<RowsOfSheets> {
  const cells = await workbook.readSheets(sheetsTaken.map(({ sheet }) => sheet.name));
  const found = new Map<TakenSheet, TakenRows>();
  for (const [index, taken] of sheetsTaken.entries()) {
    const values = cells[index] ?? [];
    const columns = values.reduce((most, row) => Math.max(most, row.length), 0);
    const block = { sheet: taken.sheet.name, row: 0, column: 0, rows: values.length, columns };
    // Verdicts are the only cells that people's rows share with formulas.
    const formulas = taken.sheet.name === visitsSheet.name && values.length > 0 ? await workbook.readFormulas(block) : [];
    const read = takenRows(taken, values, (row, column) => (formulas[row]?.[column] ?? "") !== "");
    if ("sentence" in read) throw new WorkbookRefused(read.sentence);
    found.set(taken, read);
  }
  return found;
}
