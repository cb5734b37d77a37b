import type { Place } from "../../records/place.ts";
import type { PreparedRows } from "../../records/prepared-rows.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { programSheet, settingCell, type Places } from "../../records/program.ts";
import { readRecords } from "../../records/read-records.ts";
import type { Sheet } from "../../records/sheet.ts";
import type { CellValue } from "../../workbook/port.ts";
import { readSettings } from "../program/read-settings.ts";

/** Where every record sheet stands, by their cells in the order of `recordSheets`, with formulas reaching over so many rows. */
export function placesIn(cells: readonly (readonly (readonly CellValue[])[])[], rows: PreparedRows): Places {
  const found = new Map(
    recordSheets.map((sheet, index) => [sheet, readRecords(sheet, cells[index] ?? []).place?.over(rows.get(sheet) ?? sheet.rows)]),
  );
  const settings = readSettings(cells[recordSheets.indexOf(programSheet)] ?? []);
  return {
    of: <S extends Sheet>(sheet: S) => found.get(sheet) as Place<S>,
    setting: (key) => settings.cells.get(key) ?? settingCell(key),
  };
}
