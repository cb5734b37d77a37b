import { designSheet } from "../records/design.ts";
import type { Place } from "../records/place.ts";
import { recordSheets } from "../records/program-sheets.ts";
import { programSheet, settingCell } from "../records/program.ts";
import type { Places } from "../records/program.ts";
import { readRecords } from "../records/read-records.ts";
import { reportYardsSheet } from "../records/report-yards.ts";
import type { Sheet } from "../records/sheet.ts";
import { sitesSheet } from "../records/sites.ts";
import type { CellValue } from "../workbook/workbook.ts";
import { readSettings } from "./read-settings.ts";

/** Sheets that hold a row for each row of Sites. */
const besideSites: readonly Sheet[] = [designSheet, reportYardsSheet];

/** Where every record sheet stands, by their cells in the order of `recordSheets`; `more` asks for rows that are not there yet. */
export function placesIn(cells: readonly (readonly (readonly CellValue[])[])[], more: ReadonlyMap<Sheet, number> = new Map()): Places {
  const found = new Map(recordSheets.map((sheet, index) => [sheet, readRecords(sheet, cells[index] ?? []).place?.covering(more.get(sheet) ?? 0)]));
  const yards = found.get(sitesSheet)?.rows ?? 0;
  for (const sheet of besideSites) found.set(sheet, found.get(sheet)?.covering(yards));
  const settings = readSettings(cells[recordSheets.indexOf(programSheet)] ?? []);
  return {
    of: <S extends Sheet>(sheet: S) => found.get(sheet) as Place<S>,
    setting: (key) => settings.cells.get(key) ?? settingCell(key),
  };
}
