import { addressOf, WorkbookRefused, type CellRange, type CellValue, type FormulaWrite, type Workbook } from "../../workbook/port.ts";
import type { Place } from "../../records/place.ts";
import { readRecords, type SheetRecords } from "../../records/read-records.ts";
import { isBlank, type KeyOf, type Sheet, type SheetRow } from "../../records/sheet.ts";
import { mostRowsOf } from "../../records/prepared-rows.ts";
import { growSheets } from "../workbook/grow-sheet.ts";
import { readParts, SHORT_SHEET_ROWS } from "./sheet-parts.ts";
import { unlogged } from "./unlogged.ts";

/** One cell to write, with what it held when the person saw it. */
export interface CellChange {
  readonly where: CellRange;
  readonly shown: CellValue;
  readonly write: CellValue;
}

/** A cell that somebody else changed meanwhile: nothing is written until the person has chosen. */
export interface Conflict {
  readonly where: CellRange;
  readonly shown: CellValue;
  readonly now: CellValue;
  readonly write: CellValue;
}

/** Writes the cells, or none of them if any no longer holds what was shown. */
export async function writeUnlessChanged(workbook: Workbook, changes: readonly CellChange[]): Promise<readonly Conflict[]> {
  const wanted = changes.filter(({ shown, write }) => !sameCell(shown, write));
  if (wanted.length === 0) return [];
  const present = await workbook.read(wanted.map(({ where }) => where));
  const conflicts = wanted.flatMap((change, index): Conflict[] => {
    const now = present[index]?.[0]?.[0] ?? null;
    return sameCell(now, change.shown) || sameCell(now, change.write) ? [] : [{ ...change, now }];
  });
  if (conflicts.length > 0) return conflicts;
  await workbook.writeValues(wanted.map(({ where, write }) => ({ range: where, values: [[write]] })));
  return [];
}

export function sentenceOf({ where, shown, now, write }: Conflict): string {
  return `${addressOf(where)} held ${spoken(shown)} when you opened it and holds ${spoken(now)} now. Nothing was written; you wanted ${spoken(write)}.`;
}

/** The changes that turn a row's present cells into the given values. */
export function changesOfRow<S extends Sheet>({ at, cells }: Pick<SheetRow<S>, "at" | "cells">, values: Values<S>): CellChange[] {
  const keys = Object.keys(values) as KeyOf<S>[];
  return keys.map((key) => ({ where: at(key), shown: cells[key], write: values[key] ?? null }));
}

/**
 * Writes into the row that was seen. Sorting, inserting and deleting move rows while a form is open: a row that stands
 * elsewhere by now, cell for cell as it was seen, is written there.
 */
export async function changeRow<S extends Sheet>(workbook: Workbook, seen: SheetRow<S>, values: Values<S>): Promise<readonly Conflict[]> {
  return writeUnlessChanged(workbook, changesOfRow(await whereItStands(workbook, seen), values));
}

/** The row where it stands now, with the cells that were seen. */
export async function whereItStands<S extends Sheet>(workbook: Workbook, seen: SheetRow<S>): Promise<SheetRow<S>> {
  const [cells = []] = await workbook.readSheets([seen.sheet.name]);
  const { rows } = readRecords(seen.sheet, cells);
  const present = rowAsSeen(seen, rows) ?? rows.find(({ row }) => row === seen.row);
  return present === undefined ? seen : { ...present, cells: seen.cells };
}

/** The row that holds what was seen, at its place or wherever it was moved; undefined where its cells have changed. */
export function rowAsSeen<S extends Sheet>(
  seen: Pick<SheetRow<S>, "row" | "cells">,
  rows: readonly SheetRow<S>[],
): SheetRow<S> | undefined {
  const holdsTheSame = ({ sheet, cells }: SheetRow<S>) => inputKeys(sheet).every((key) => sameCell(cells[key], seen.cells[key]));
  return rows.find((row) => row.row === seen.row && holdsTheSame(row)) ?? rows.find(holdsTheSame);
}

function inputKeys<S extends Sheet>(sheet: S): readonly KeyOf<S>[] {
  return (Object.keys(sheet.columns) as KeyOf<S>[]).filter((key) => sheet.columns[key]?.role === "input");
}

/** Empties what was typed into the row, or nothing of it if any cell changed since it was shown. The row stays, blank. */
export function clearRow<S extends Sheet>(workbook: Workbook, { sheet, at, cells }: SheetRow<S>): Promise<readonly Conflict[]> {
  return writeUnlessChanged(
    workbook,
    inputKeys(sheet).map((key) => ({ where: at(key), shown: cells[key], write: null })),
  );
}

type Values<S extends Sheet> = { readonly [Key in keyof S["columns"]]?: CellValue };

/** Where other sheets stand that were read along. */
type PlaceOf = <S extends Sheet>(sheet: S) => Place<S>;

/**
 * Writes the values into the row after the last one that holds anything typed, and returns that row.
 * Formulas, where a column of this row takes one, are made for the row found, and may refer to the sheets read along.
 */
export async function appendRow<S extends Sheet>(
  workbook: Workbook,
  sheet: S,
  values: Values<S>,
  formulas: (row: number, place: Place<S>, placeOf: PlaceOf) => readonly FormulaWrite[] = () => [],
  readAlong: readonly Sheet[] = [],
): Promise<number> {
  const [end, ...others] = (await endsOf(workbook, [sheet, ...readAlong])) as [End<S>, ...End<Sheet>[]];
  await appendTo(workbook, end, [values]);
  const { row, place } = end;
  const written = formulas(row, place, (wanted) => others[readAlong.indexOf(wanted)]?.place as Place<typeof wanted>);
  if (written.length > 0) await workbook.writeFormulas(written);
  return row;
}

/** Writes many rows below the last one in one go, and returns where they stand. */
export async function appendRows<S extends Sheet>(workbook: Workbook, sheet: S, rows: readonly Values<S>[]): Promise<readonly number[]> {
  return rows.length === 0 ? [] : appendTo(workbook, await endOf(workbook, sheet), rows);
}

async function appendTo<S extends Sheet>(
  workbook: Workbook,
  { place, row: nextRow }: End<S>,
  rows: readonly Values<S>[],
): Promise<readonly number[]> {
  const { sheet } = place;
  const wanted = nextRow - place.firstRow + rows.length;
  if (wanted > mostRowsOf(sheet))
    throw new WorkbookRefused(
      `Sheet ${sheet.name} would have ${wanted} rows, and ${mostRowsOf(sheet)} are the most. Keep further yards in a second workbook.`,
    );
  // First the formulas: rows that no formula reads would be yards without a design.
  if (wanted > sheet.rows) await growSheets(unlogged(workbook), new Map([[sheet, wanted]]));
  const keys = (Object.keys(sheet.columns) as KeyOf<S>[]).filter((key) => rows.some((values) => !isBlank(values[key] ?? null)));
  await workbook.writeValues(
    keys.map((key) => ({ range: { ...place.cell(nextRow, key), rows: rows.length }, values: rows.map((values) => [values[key] ?? null]) })),
  );
  return rows.map((_, index) => nextRow + index);
}

/** Where the sheet's columns stand now, and the row after the last that holds anything typed: a gap a person left stays theirs. */
interface End<S extends Sheet> {
  readonly place: Place<S>;
  readonly row: number;
}

async function endOf<S extends Sheet>(workbook: Workbook, sheet: S): Promise<End<S>> {
  const [end] = (await endsOf(workbook, [sheet])) as [End<S>];
  return end;
}

/** Rejects with WorkbookRefused where a column is missing. */
async function endsOf(workbook: Workbook, sheets: readonly Sheet[]): Promise<readonly End<Sheet>[]> {
  const parts = await readParts(
    workbook,
    sheets.map(({ name }) => name),
  );
  return Promise.all(
    sheets.map(async (sheet, index) => {
      const { cells, isWhole } = parts[index] ?? { cells: [], isWhole: true };
      const found = endIn(readRecords(sheet, cells));
      // A long sheet whose headings or last typed row stand somewhere else is read from end to end.
      if (isWhole || ("row" in found && found.row > SHORT_SHEET_ROWS)) return orRefused(found);
      const [whole = []] = await workbook.readSheets([sheet.name]);
      return orRefused(endIn(readRecords(sheet, whole)));
    }),
  );
}

function endIn({ place, rows, slips }: SheetRecords<Sheet>): End<Sheet> | { readonly refusal: string } {
  if (place === null) return { refusal: `Nothing was written. ${slips[0]?.sentence ?? ""}`.trim() };
  return { place, row: (rows.at(-1)?.row ?? place.headingRow) + 1 };
}

function orRefused(end: End<Sheet> | { readonly refusal: string }): End<Sheet> {
  if ("refusal" in end) throw new WorkbookRefused(end.refusal);
  return end;
}

export function sameCell(one: CellValue, other: CellValue): boolean {
  return one === other || (isBlank(one) && isBlank(other));
}

function spoken(value: CellValue): string {
  if (isBlank(value)) return "nothing";
  return typeof value === "string" ? `"${value}"` : String(value);
}
