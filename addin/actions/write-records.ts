import { addressOf, WorkbookRefused } from "../workbook/workbook.ts";
import type { CellRange, CellValue, FormulaWrite, Workbook } from "../workbook/workbook.ts";
import { cellOf, firstRow, isBlank, wholeRange } from "../records/sheet.ts";
import type { Sheet } from "../records/sheet.ts";

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
export function changesOfRow<S extends Sheet>(
  sheet: S,
  row: number,
  cells: { readonly [Key in keyof S["columns"]]?: CellValue },
  values: { readonly [Key in keyof S["columns"]]?: CellValue },
): CellChange[] {
  const keys = Object.keys(values) as (keyof S["columns"] & string)[];
  return keys.map((key) => ({ where: cellOf(sheet, row, key), shown: cells[key] ?? null, write: values[key] ?? null }));
}

/**
 * Writes the values into the first row of the sheet whose input cells are all blank, and returns that row.
 * Formulas, where a column of this row takes one, are made for the row found.
 */
export async function appendRow<S extends Sheet>(
  workbook: Workbook,
  sheet: S,
  values: { readonly [Key in keyof S["columns"]]?: CellValue },
  formulas: (row: number) => readonly FormulaWrite[] = () => [],
): Promise<number> {
  const row = await firstBlankRow(workbook, sheet);
  const keys = (Object.keys(values) as (keyof S["columns"] & string)[]).filter((key) => !isBlank(values[key] ?? null));
  await workbook.writeValues(keys.map((key) => ({ range: cellOf(sheet, row, key), values: [[values[key] ?? null]] })));
  const written = formulas(row);
  if (written.length > 0) await workbook.writeFormulas(written);
  return row;
}

/** After the last row that holds anything, so that a gap a person left stays theirs. */
async function firstBlankRow(workbook: Workbook, sheet: Sheet): Promise<number> {
  const [values = []] = await workbook.read([wholeRange(sheet)]);
  const inputs = Object.values(sheet.columns).map(({ role }) => role === "input");
  const last = values.slice(1).findLastIndex((cells) => cells.some((cell, column) => inputs[column] === true && !isBlank(cell)));
  if (last + 1 >= sheet.rows) {
    throw new WorkbookRefused(`Sheet ${sheet.name} is full: all ${sheet.rows} prepared rows are used. Clear rows that are no longer needed, or keep further yards in a second workbook.`);
  }
  return firstRow(sheet) + last + 1;
}

function sameCell(one: CellValue, other: CellValue): boolean {
  return one === other || (isBlank(one) && isBlank(other));
}

function spoken(value: CellValue): string {
  if (isBlank(value)) return "nothing";
  return typeof value === "string" ? `"${value}"` : String(value);
}
