import {
  WorkbookRefused,
  type CellValue,
  type SheetLayout,
  type ValueWrite,
  type Workbook,
  type WorkbookWriting,
} from "../../workbook/port.ts";
import { CHECKLIST_SETTING, CHECKLIST_VERSION } from "../../checklist/checklist-version.ts";
import { whatIfGrid, workbookFormulas } from "../../records/formulas.ts";
import { plantsSheet, startingPlants } from "../../records/plants.ts";
import { pricesSheet, startingPrices } from "../../records/prices.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { PREPARED_ROWS_SETTING, preparedRowsText, type PreparedRows } from "../../records/prepared-rows.ts";
import { placeSetting, placesAsSetUp, programLayout, programSettings, programSheet } from "../../records/program.ts";
import { reportTexts } from "../../records/report-formulas.ts";
import { reportSheet } from "../../records/report.ts";
import { rulesSheet, startingRules } from "../../records/rules.ts";
import { firstRow, placeAsSetUp } from "../../records/place.ts";
import { layoutOf } from "../../records/sheet.ts";
import { whatIfSheet } from "../../records/what-if.ts";
import { today } from "../dates.ts";
import { nobodyWaits, type Progress } from "../program/progress.ts";

/** Written into the workbook, so that a later version knows what it opens. */
export const RECORDS_VERSION_SETTING = "soakbook.records";
export const RECORDS_VERSION = 5;

/** A sheet as a new workbook starts with it: laid out, and what is typed on it already. */
export interface StartingSheet {
  readonly layout: SheetLayout;
  readonly values: readonly ValueWrite[];
}

/** With the rows of set-up prepared, or with more of them. */
export function startingSheets(rows: PreparedRows = new Map()): readonly StartingSheet[] {
  const typed: Readonly<Record<string, readonly ValueWrite[]>> = {
    [programSheet.name]: [settingsWrite()],
    [rulesSheet.name]: [rulesWrite()],
    [plantsSheet.name]: [block(plantsSheet.name, firstRow(plantsSheet), 0, startingPlants)],
    [reportSheet.name]: reportTexts(),
    [pricesSheet.name]: [block(pricesSheet.name, firstRow(pricesSheet), 0, startingPrices)],
  };
  return [
    ...recordSheets.map((sheet) => ({
      layout: sheet === programSheet ? programLayout() : layoutOf({ ...sheet, rows: rows.get(sheet) ?? sheet.rows }),
      values: typed[sheet.name] ?? [],
    })),
    { layout: whatIfLayout(), values: whatIfWrites() },
  ];
}

export const sheetNamesOfProgram: readonly string[] = [...recordSheets.map((sheet) => sheet.name), whatIfSheet.name];

export type ProgramState =
  | { readonly state: "ready" }
  | { readonly state: "absent" }
  /** Sheets bear our names in a workbook that was never set up: they are the person's own. */
  | { readonly state: "taken"; readonly names: readonly string[] }
  /** Some of the program's sheets are there and some are not: deleted, renamed, or not known to the version that set it up. */
  | { readonly state: "incomplete"; readonly missing: readonly string[] }
  /** Set up by a version of the records that this one does not know. */
  | { readonly state: "newer" };

export async function programState(workbook: Workbook): Promise<ProgramState> {
  const present = await workbook.sheetNames();
  const taken = present.filter((name) => sheetNamesOfProgram.some((ours) => ours.toLowerCase() === name.toLowerCase()));
  const version = await recordsVersion(workbook);
  if (version === null) return taken.length === 0 ? { state: "absent" } : { state: "taken", names: taken };
  if (version > RECORDS_VERSION) return { state: "newer" };
  const missing = sheetNamesOfProgram.filter((name) => !present.includes(name));
  return missing.length === 0 ? { state: "ready" } : { state: "incomplete", missing };
}

/** The version that set the workbook up, or null where none did. */
export async function recordsVersion(workbook: Workbook): Promise<number | null> {
  const text = await workbook.readSetting(RECORDS_VERSION_SETTING);
  return text === null ? null : Number(text);
}

/** Rejects in words, and sets nothing up, in a spreadsheet whose formulas cannot fill the program's sheets. */
export async function refuseOldSpreadsheet(workbook: Workbook): Promise<void> {
  if (!(await workbook.spills())) throw new WorkbookRefused(TOO_OLD);
}

const TOO_OLD =
  "Nothing was set up: in this Excel a formula cannot fill the cells below it (dynamic arrays), and the program's sheets rest on that. " +
  "Use Excel of Microsoft 365, Excel 2021 or later, or Excel on the web.";

/**
 * Adds the program's sheets, settings, rules and formulas. Rejects with SheetExists, and adds nothing, where a name is taken.
 * From when the sheets are there the workbook counts as ours: what is missing is brought by Check workbook.
 */
export async function setUpWorkbook(
  workbook: WorkbookWriting,
  progress: Progress = nobodyWaits,
  rows: PreparedRows = new Map(),
): Promise<void> {
  const sheets = startingSheets(rows);
  await workbook.addSheets(
    sheets.map(({ layout }) => layout),
    (share) => progress(SHEETS_SHARE * share),
  );
  await workbook.writeSetting(RECORDS_VERSION_SETTING, String(RECORDS_VERSION));
  await workbook.writeSetting(CHECKLIST_SETTING, String(CHECKLIST_VERSION));
  await workbook.writeValues(sheets.flatMap(({ values }) => values));
  await progress(VALUES_SHARE);
  await workbook.writeFormulas(
    workbookFormulas({ ...placesAsSetUp, of: (sheet) => placeAsSetUp(sheet).over(rows.get(sheet) ?? sheet.rows) }),
  );
  if (rows.size > 0) await workbook.writeSetting(PREPARED_ROWS_SETTING, preparedRowsText(rows));
  await progress(1);
}

/** Of the whole, what is done once the sheets are there, and once what is typed on them is. */
const SHEETS_SHARE = 0.7;
const VALUES_SHARE = 0.8;

function settingsWrite(): ValueWrite {
  const rows = Object.values(programSettings).map(({ setting, value, unit, meaning }) => [setting, value, unit, meaning]);
  return block(programSheet.name, firstRow(programSheet), 0, [
    ...rows,
    [placeSetting.setting, null, placeSetting.unit, placeSetting.meaning],
  ]);
}

function rulesWrite(): ValueWrite {
  const checked = today();
  const rows = startingRules.map(({ rule, comparison, limit, unit, ifNotMet, source }) => [
    rule,
    comparison,
    limit,
    unit,
    ifNotMet,
    source,
    checked,
  ]);
  return block(rulesSheet.name, firstRow(rulesSheet), 0, rows);
}

function whatIfWrites(): ValueWrite[] {
  const { inputsRow, ratesRow } = whatIfGrid;
  return [
    block(
      whatIfSheet.name,
      inputsRow,
      0,
      whatIfSheet.sharedInputs.map(({ label, value }) => [label, value]),
    ),
    block(whatIfSheet.name, ratesRow, 0, [["Area (sq ft) down, rate (in/h) across", ...whatIfSheet.designRatesInchesPerHour]]),
    block(
      whatIfSheet.name,
      ratesRow + 1,
      0,
      whatIfSheet.contributingAreasSquareFeet.map((area) => [area]),
    ),
  ];
}

function whatIfLayout(): SheetLayout {
  const rates = whatIfSheet.designRatesInchesPerHour.length;
  const gridColumn = { heading: "", widthPixels: 96, role: "input", numberFormat: "#,##0.0#" } as const;
  return {
    name: whatIfSheet.name,
    headingRow: whatIfSheet.preface.length,
    columns: [
      { heading: "Shared input", widthPixels: 250, role: "input" },
      { ...gridColumn, heading: "Value" },
      ...Array.from({ length: rates - 1 }, () => gridColumn),
    ],
    rows: whatIfSheet.rows,
    frozenColumns: 1,
    preface: whatIfSheet.preface,
  };
}

function block(sheet: string, row: number, column: number, values: readonly (readonly CellValue[])[]): ValueWrite {
  return { range: { sheet, row, column, rows: values.length, columns: values[0]?.length ?? 0 }, values };
}
