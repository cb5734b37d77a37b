/** Puts chosen yards into a workbook of their own: set up like any other, and with what brings them back. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { CHECKLIST_SETTING } from "../../checklist/checklist-version.ts";
import { placeAsSetUp, rowsCovering } from "../../records/place.ts";
import { mostRowsOf, type PreparedRows } from "../../records/prepared-rows.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { placeSetting, programSettings } from "../../records/program.ts";
import { designSheet } from "../../records/design.ts";
import { reportYardsSheet } from "../../records/report-yards.ts";
import { rulesSheet } from "../../records/rules.ts";
import type { Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import { visitsSheet } from "../../records/visits.ts";
import type { CellValue, FormulaWrite, ValueWrite, Workbook, WorkbookWriting } from "../../workbook/port.ts";
import { today } from "../dates.ts";
import { unlogged } from "../program/unlogged.ts";
import { setUpWorkbook, startingSheets } from "../workbook/set-up-workbook.ts";
import { workbookId } from "../workbook/workbook-id.ts";
import { SERIES_SETTING, seriesOf } from "../yard/site-ids.ts";
import { homeRows, type RowsOfSheets } from "./home-rows.ts";
import { takenAlongLayout, takenAlongWrite } from "./taken-along-sheet.ts";
import { headingOf, inputKeys, isOwnField, valuesOf, type Fields } from "./taken-rows.ts";
import { settingsTaken, sheetsOfTakenProgram, sheetsOfTakenYards, type TakenSheet } from "./taken-sheets.ts";
import { verdictWrites } from "./verdicts.ts";

/** How many copies were taken along from a workbook, so that each has a series of IDs of its own. */
const COPIES_SETTING = "soakbook.copies";

/** Writes the copy. At home nothing changes but what tells the workbook and its copies apart. */
export async function takeAlong(workbook: Workbook, siteIds: readonly string[], copy: WorkbookWriting): Promise<void> {
  const home = unlogged(workbook);
  const [rows, series, { id, keep }] = await Promise.all([homeRows(home), nextSeries(home), workbookId(home)]);
  await keep();
  const chosen = chosenRows(rows, new Set(siteIds.map(plainKey)));
  const prepared = preparedFor(chosen);
  await setUpWorkbook(copy, undefined, prepared);
  const checklist = await home.readSetting(CHECKLIST_SETTING);
  if (checklist !== null) await copy.writeSetting(CHECKLIST_SETTING, checklist);
  await copy.writeSetting(SERIES_SETTING, series);
  await copy.writeValues([...startingRowsAway(), ...[...chosen].flatMap(([taken, held]) => writesOf(taken, held, prepared))]);
  await copy.writeFormulas(verdictsOf(chosen, prepared));
  await copy.addSheets([takenAlongLayout]);
  await copy.writeValues([takenAlongWrite({ home: id, series, takenOn: today() }, chosen)]);
}

async function nextSeries(home: Workbook): Promise<string> {
  const copies = Number((await home.readSetting(COPIES_SETTING)) ?? 0) + 1;
  await home.writeSetting(COPIES_SETTING, String(copies));
  const own = await seriesOf(home);
  // Of a copy of a copy: Y2.1, which no copy of the first workbook has.
  return /\d$/.test(own) ? `${own}.${copies}` : `${own}${copies}`;
}

function chosenRows(rows: RowsOfSheets, siteIds: ReadonlySet<string>): ReadonlyMap<TakenSheet, readonly Fields[]> {
  const held = (taken: TakenSheet) => rows.get(taken)?.rows ?? [];
  return new Map([
    ...sheetsOfTakenYards.map((taken) => [taken, fieldsOf(held(taken).filter(({ siteId }) => siteIds.has(siteId)))] as const),
    ...sheetsOfTakenProgram.map((taken) => [taken, fieldsOf(held(taken))] as const),
    [settingsTaken, settingRows(fieldsOf(held(settingsTaken)))] as const,
  ]);
}

function fieldsOf(rows: readonly { readonly fields: Fields }[]): readonly Fields[] {
  return rows.map(({ fields }) => fields);
}

/**
 * A setting stands in the cell that formulas read, whatever row it has at home; rows of people's own come below. Holidays are
 * a list of their own beside them.
 */
function settingRows(held: readonly Fields[]): readonly Fields[] {
  const ours = [
    ...Object.values(programSettings).map((each) => ({ ...each, value: each.value as CellValue })),
    { ...placeSetting, value: null },
  ];
  const named = new Map(held.map((fields) => [plainKey(String(fields.get("setting") ?? "")), fields]));
  const known = ours.map(({ setting, value, unit, meaning }): Fields => {
    const there = named.get(plainKey(setting));
    const asSetUp = new Map(
      Object.entries({ setting, value, unit, meaning }).flatMap(([key, cell]) => (cell === null ? [] : [[key, cell]])),
    );
    return without(there ?? asSetUp, "holiday");
  });
  const theirs = held.filter((fields) => !ours.some(({ setting }) => plainKey(setting) === plainKey(String(fields.get("setting") ?? ""))));
  const lines = [...known, ...theirs.map((fields) => without(fields, "holiday")).filter(({ size }) => size > 0)];
  const holidays = held.flatMap((fields) => fields.get("holiday") ?? []);
  return Array.from({ length: Math.max(lines.length, holidays.length) }, (_, at) => {
    const holiday = holidays[at];
    return new Map([...(lines[at] ?? []), ...(holiday === undefined ? [] : [["holiday", holiday] as const])]);
  });
}

function without(fields: Fields, field: string): Fields {
  return new Map([...fields].filter(([name]) => name !== field));
}

function preparedFor(chosen: ReadonlyMap<TakenSheet, readonly Fields[]>): PreparedRows {
  const wanted = new Map<Sheet, number>([...chosen].map(([{ sheet }, held]) => [sheet, held.length]));
  const yards = wanted.get(sitesSheet) ?? 0;
  const beside: ReadonlySet<Sheet> = new Set([designSheet, reportYardsSheet]);
  return new Map(
    recordSheets.map((sheet) => {
      const rows = beside.has(sheet) ? yards : (wanted.get(sheet) ?? 0);
      return [sheet, Math.min(rowsCovering(rows, sheet.rows), Math.max(sheet.rows, mostRowsOf(sheet)))];
    }),
  );
}

/** Rules, prices and plants that a new workbook starts with: those of home take their place. */
function startingRowsAway(): readonly ValueWrite[] {
  const replaced = new Set([...sheetsOfTakenProgram, settingsTaken].map(({ sheet }) => sheet.name));
  return startingSheets()
    .filter(({ layout }) => replaced.has(layout.name))
    .flatMap(({ values }) => values.map(({ range, values: cells }) => ({ range, values: cells.map((row) => row.map(() => null)) })));
}

/** Ours where set-up puts them, and theirs beside. */
function writesOf({ sheet }: TakenSheet, held: readonly Fields[], prepared: PreparedRows): readonly ValueWrite[] {
  if (held.length === 0) return [];
  const place = placeAsSetUp(sheet).over(prepared.get(sheet) ?? sheet.rows);
  const values = held.map((fields) => valuesOf(sheet, fields) ?? {});
  const filled = inputKeys(sheet).filter((key) => values.some((row) => (row[key] ?? null) !== null));
  const own = [...new Set(held.flatMap((fields) => [...fields.keys()].filter(isOwnField)))];
  const beside = Object.keys(sheet.columns).length;
  return [
    ...filled.map((key) => ({
      range: { ...place.cell(place.firstRow, key), rows: held.length },
      values: values.map((row) => [row[key] ?? null]),
    })),
    ...own.flatMap((field, at) => {
      const column = { sheet: sheet.name, row: place.headingRow, column: beside + at, rows: held.length + 1, columns: 1 };
      return [{ range: column, values: [[headingOf(sheet, field)], ...held.map((fields) => [fields.get(field) ?? null])] }];
    }),
  ];
}

function verdictsOf(chosen: ReadonlyMap<TakenSheet, readonly Fields[]>, prepared: PreparedRows): readonly FormulaWrite[] {
  const heldOn = (sheet: Sheet) => [...chosen].find(([taken]) => taken.sheet.name === sheet.name)?.[1] ?? [];
  const place = placeAsSetUp(visitsSheet);
  const answers = heldOn(visitsSheet).map((fields, index) => ({ row: place.firstRow + index, fields }));
  return verdictWrites(place, placeAsSetUp(rulesSheet).over(prepared.get(rulesSheet) ?? rulesSheet.rows), heldOn(sitesSheet), answers);
}
