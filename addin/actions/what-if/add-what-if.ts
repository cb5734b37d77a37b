import { designSheet } from "../../records/design.ts";
import { holeTestsSheet } from "../../records/hole-tests.ts";
import { findPlace, placeAsSetUp, type Place } from "../../records/place.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import { pricesSheet } from "../../records/prices.ts";
import { programSettings, programSheet, type Places } from "../../records/program.ts";
import { rainRecordSheet } from "../../records/rain-record.ts";
import { sitesSheet } from "../../records/sites.ts";
import { surfacesSheet } from "../../records/surfaces.ts";
import { whatIfSheet } from "../../records/what-if.ts";
import { addressOf, WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { layOutWhatIf, type WhatIfTable } from "./lay-out-what-if.ts";
import { readSettings } from "../program/read-settings.ts";
import { faultsOf, type WhatIfRequest } from "./what-if-request.ts";

/** Lays the table out below everything that stands on the what-if sheet, and never over anything. */
export async function addWhatIf(workbook: Workbook, request: WhatIfRequest): Promise<WhatIfTable> {
  const [fault] = faultsOf(request);
  if (fault !== undefined) throw new WorkbookRefused(fault);
  const { places, present } = await readWorkbook(workbook);
  const table = await findRoom(workbook, (top) => layOutWhatIf(request, places, top), firstFreeRow(present));
  await workbook.writeValues(table.values);
  await workbook.writeFormulas(table.formulas);
  return table;
}

const LINKED_SHEETS = [designSheet, sitesSheet, surfacesSheet, holeTestsSheet, pricesSheet, rainRecordSheet] as const;

async function readWorkbook(workbook: Workbook): Promise<{ places: Places; present: readonly (readonly CellValue[])[] }> {
  const sheets: readonly Sheet[] = [...LINKED_SHEETS, programSheet];
  const [present = [], ...cells] = await workbook.readSheets([whatIfSheet.name, ...sheets.map(({ name }) => name)]);
  const found = new Map(sheets.map((sheet, index) => [sheet.name, findPlace(sheet, cells[index] ?? [])]));
  const settings = readSettings(cells.at(-1) ?? []);
  const of = <S extends Sheet>(sheet: S): Place<S> => {
    const at = found.get(sheet.name);
    if (at === undefined) return placeAsSetUp(sheet);
    if ("place" in at) return at.place as unknown as Place<S>;
    const [missing] = at.missing;
    throw new WorkbookRefused(
      `Sheet ${sheet.name} has no column "${missing?.heading ?? ""}", which the table would follow. Put the heading back first.`,
    );
  };
  const setting: Places["setting"] = (key) => {
    const cell = settings.cells.get(key);
    if (cell === undefined)
      throw new WorkbookRefused(
        `Sheet ${programSheet.name} has no row "${programSettings[key].setting}", which the table would follow. Put the row back first.`,
      );
    return cell;
  };
  return { places: { of, setting }, present };
}

/** One row stays blank under the last that holds anything. */
function firstFreeRow(present: readonly (readonly CellValue[])[]): number {
  const last = present.findLastIndex((row) => row.some((cell) => !isBlank(cell)));
  return last < 0 ? 0 : last + 2;
}

/** A formula that shows a blank holds its cell all the same: the table goes below it. */
async function findRoom(workbook: Workbook, layOut: (top: number) => WhatIfTable, top: number): Promise<WhatIfTable> {
  for (let attempt = 0, from = top; attempt < MOST_ATTEMPTS; attempt += 1) {
    const table = layOut(from);
    const [values = []] = await workbook.read([table.area]);
    const formulas = await workbook.readFormulas(table.area);
    const taken = values.findLastIndex(
      (row, index) => row.some((cell) => !isBlank(cell)) || (formulas[index] ?? []).some((formula) => formula !== ""),
    );
    if (taken < 0) return table;
    from += taken + 2;
  }
  throw new WorkbookRefused(
    `There is no room for the table on sheet ${whatIfSheet.name} below ${addressOf({ sheet: whatIfSheet.name, row: top, column: 0, rows: 1, columns: 1 })}. Clear what stands there, or take it to a sheet of your own.`,
  );
}

const MOST_ATTEMPTS = 50;
