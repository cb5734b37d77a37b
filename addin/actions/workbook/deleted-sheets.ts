import { workbookFormulas } from "../../records/formulas.ts";
import { findPlace } from "../../records/place.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { readRecords } from "../../records/read-records.ts";
import type { Sheet } from "../../records/sheet.ts";
import type { CellValue, ValueWrite, Workbook } from "../../workbook/port.ts";
import { isoDate, now } from "../dates.ts";
import { sheetNamesOfProgram, startingSheets } from "./set-up-workbook.ts";

/** The cells of a sheet from A1 on. */
export type SheetCells = readonly (readonly CellValue[])[];

/** What stood on a sheet of ours that somebody deleted, and when it was last read. */
export interface KeptSheet {
  readonly name: string;
  readonly readAt: number;
  readonly cells: SheetCells;
}

/** Kept in the workbook, a text for each sheet that is gone, so that it comes back after a reload too. */
const KEPT_SETTING = "soakbook.deleted.";

/** A gauge's years of rain are no text to keep: the person is told before that they go for good. */
const LONGEST_KEPT = 2_000_000;

/** Keeps what was last read of sheets that are gone. Sheets on which nothing is typed need no keeping. */
export async function keepDeleted(workbook: Workbook, read: ReadonlyMap<string, SheetCells>, gone: readonly string[]): Promise<void> {
  for (const name of gone) {
    const cells = read.get(name);
    if (cells === undefined) continue;
    const kept = keptText({ name, readAt: now(), cells });
    if (kept !== null) await workbook.writeSetting(KEPT_SETTING + name, kept);
  }
}

/** Null where nothing is typed on the sheet, or more than is kept. */
function keptText(sheet: KeptSheet): string | null {
  if (typedRows(sheet.name, sheet.cells) === 0) return null;
  const text = JSON.stringify(sheet);
  return text.length > LONGEST_KEPT ? null : text;
}

/** Those of the sheets named that can come back with what stood on them. */
export async function keptSheets(workbook: Workbook, gone: readonly string[]): Promise<readonly KeptSheet[]> {
  const texts = await Promise.all(gone.map((name) => workbook.readSetting(KEPT_SETTING + name)));
  return texts.flatMap((text) => (text === null || text === "" ? [] : [JSON.parse(text) as KeptSheet]));
}

/** Rows that people typed on one of our sheets; 0 on one that formulas fill. */
export function typedRows(name: string, cells: SheetCells): number {
  const sheet = recordSheets.find((one) => one.name === name);
  if (sheet === undefined) return 0;
  return readRecords(sheet, cells).rows.length;
}

/** What goes with a sheet, said before it is deleted. */
export function whatGoes(name: string, cells: SheetCells): string {
  const rows = typedRows(name, cells);
  const readers = readersOf(name);
  const typed = rows === 0 ? "Nothing that the pane knows of is typed on it." : `${rowWords(rows)} typed on it.`;
  const results = readers.length === 0 ? "" : ` ${listed(readers)} will show errors, because they are computed from it.`;
  const back =
    rows > 0 && keptText({ name, readAt: 0, cells }) === null
      ? " It is too long to be kept: save the workbook to a file first."
      : " One tap in the pane brings it back, after a reload too.";
  return typed + results + back;
}

/** "31 rows are". */
function rowWords(rows: number): string {
  return rows === 1 ? "1 row is" : `${rows} rows are`;
}

/** The other sheets whose formulas read the sheet, or read one that does. */
function readersOf(name: string): readonly string[] {
  const formulas = workbookFormulas().map(({ range, formulas: [[first = ""] = []] }) => ({ sheet: range.sheet, formula: first }));
  const found = new Set([name]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const { sheet, formula } of formulas) if ([...found].some((read) => reads(formula, read))) found.add(sheet);
  }
  return [...found].filter((sheet) => sheet !== name);
}

function reads(formula: string, sheet: string): boolean {
  return formula.includes(`${sheet}!`) || formula.includes(`'${sheet}'!`);
}

/** "Design, Report yards and Report". */
function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}

/** What bringing a sheet back does, in words. */
export function backWords(name: string, kept: KeptSheet | undefined): string {
  if (kept !== undefined)
    return `Bring sheet ${name} back with the ${typedRows(name, kept.cells)} rows typed on it, as they stood on ${day(kept)}.`;
  const starts = startingSheets().find(({ layout }) => layout.name === name)?.values.length ?? 0;
  if (isComputed(name)) return `Add sheet ${name} again. Nothing is typed there: its formulas fill it.`;
  return `Add sheet ${name} with its headings${starts > 0 ? " and what it starts with" : ", blank"}. What stood on it is kept nowhere, and does not come back.`;
}

function day({ readAt }: KeptSheet): string {
  return isoDate(Math.floor(readAt));
}

function isComputed(name: string): boolean {
  const sheet = recordSheets.find((one) => one.name === name);
  return sheet !== undefined && Object.values(sheet.columns).every(({ role }) => role === "result");
}

/** Adds a sheet of ours again, with what was kept of it, or as a new workbook has it. Its formulas are written by the check. */
export async function addAgain(workbook: Workbook, name: string, kept: KeptSheet | undefined): Promise<void> {
  const starting = startingSheets().find(({ layout }) => layout.name === name);
  if (starting === undefined) throw new Error(`${name} is no sheet of the program.`);
  await workbook.addSheets([starting.layout]);
  const sheet = recordSheets.find((one) => one.name === name);
  await workbook.writeValues(kept === undefined || sheet === undefined ? starting.values : [typedCells(sheet, kept.cells)]);
  if (kept !== undefined) await workbook.writeSetting(KEPT_SETTING + name, "");
}

/** Everything on the sheet but what its formulas showed. */
function typedCells(sheet: Sheet, cells: SheetCells): ValueWrite {
  const found = findPlace(sheet, cells);
  const [row, results] =
    "place" in found
      ? [
          found.place.headingRow,
          new Set(
            Object.entries(sheet.columns).flatMap(([key, { role }]) => (role === "result" ? [found.place.columnIndex(key as never)] : [])),
          ),
        ]
      : [Number.POSITIVE_INFINITY, new Set<number>()];
  const columns = cells.reduce((most, line) => Math.max(most, line.length), Object.keys(sheet.columns).length);
  const values = cells.map((line, place) =>
    Array.from({ length: columns }, (_, column) => (place > row && results.has(column) ? null : (line[column] ?? null))),
  );
  return { range: { sheet: sheet.name, row: 0, column: 0, rows: values.length, columns }, values };
}

/** Sheets with other names that have the headings of a sheet that is gone: it was renamed, not deleted. */
export async function renamedSheets(workbook: Workbook, gone: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const others = (await workbook.sheetNames()).filter((name) => !sheetNamesOfProgram.includes(name));
  const cells = others.length === 0 ? [] : await workbook.readSheets(others);
  return new Map(
    gone.flatMap((name): [string, string][] => {
      const sheet = recordSheets.find((one) => one.name === name);
      // A copy of it bears its name and more, and is none.
      const at =
        sheet === undefined ? -1 : cells.findIndex((own, place) => !isCopy(name, others[place]) && "place" in findPlace(sheet, own));
      return at === -1 ? [] : [[name, others[at] ?? ""]];
    }),
  );
}

function isCopy(name: string, other: string | undefined): boolean {
  return other?.startsWith(`${name} `) === true;
}
