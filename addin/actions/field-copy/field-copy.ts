/** A copy that comes back: what it was when it was taken along, what it is now, and what of it no sheet of ours has a place for. */
import { isBlank } from "../../records/sheet.ts";
import { addressOf, type CellValue } from "../../workbook/port.ts";
import { sheetNamesOfProgram } from "../workbook/set-up-workbook.ts";
import type { RowsOfSheets } from "./home-rows.ts";
import { isTakenAlong, readTakenAlong, type BaseRows, type Origin } from "./taken-along-sheet.ts";
import { sameFields, takenRows, type IsFormula, type TakenRow, type TakenRows } from "./taken-rows.ts";
import { settingsTaken, sheetsTaken, type TakenSheet } from "./taken-sheets.ts";

export interface FieldCopy {
  readonly origin: Origin;
  readonly base: BaseRows;
  readonly now: RowsOfSheets;
  /** What does not come back, a sentence each. */
  readonly left: readonly string[];
}

/** A sheet of the copy, as its file has it. */
export interface CopySheet {
  readonly name: string;
  readonly cells: readonly (readonly CellValue[])[];
  readonly isFormula: IsFormula;
  /** Long lists of choices stand in such columns. */
  readonly isHiddenColumn: (column: number) => boolean;
}

export function copyIn(fileName: string, sheets: readonly CopySheet[]): FieldCopy | { readonly sentence: string } {
  const taken = readTakenAlong(sheets.find(({ name }) => isTakenAlong(name))?.cells ?? []);
  if (taken === null)
    return {
      sentence: `"${fileName}" was not made by "Take yards along", or its sheet "Taken along" is gone, so nothing says what its yards were before. Nothing was compared.`,
    };
  const now = new Map<TakenSheet, TakenRows>();
  for (const each of sheetsTaken) {
    const { cells = [], isFormula = () => false } = sheets.find(({ name }) => name === each.sheet.name) ?? {};
    const read = takenRows(each, cells, isFormula);
    if ("sentence" in read) return { sentence: `In "${fileName}": ${read.sentence}` };
    now.set(each, read);
  }
  return { ...taken, now, left: leftIn(sheets, taken.base, now) };
}

function leftIn(sheets: readonly CopySheet[], base: BaseRows, now: RowsOfSheets): readonly string[] {
  const others = sheets.filter(({ name }) => !isTakenAlong(name) && !sheetNamesOfProgram.includes(name)).map(({ name }) => `"${name}"`);
  const settings = differ(base.get(settingsTaken) ?? [], now.get(settingsTaken)?.rows ?? []);
  const unnamed = [...now.values()].flatMap(({ place, cells, rows }) => {
    const headings = cells[place.headingRow] ?? [];
    const isHidden = sheets.find(({ name }) => name === place.sheet.name)?.isHiddenColumn ?? (() => false);
    const typed = new Set(rows.map(({ row }) => row));
    return cells.flatMap((line, row) =>
      typed.has(row)
        ? line.flatMap((cell, column) =>
            isBlank(cell) || !isBlank(headings[column] ?? null) || isHidden(column)
              ? []
              : [addressOf({ sheet: place.sheet.name, row, column, rows: 1, columns: 1 })],
          )
        : [],
    );
  });
  return [
    ...(settings
      ? ["Settings on sheet Program were changed in the copy. They stay as they are here: type at home what should count."]
      : []),
    ...(others.length > 0 ? [`${others.length === 1 ? "Sheet" : "Sheets"} ${others.join(", ")} of the copy stay in the copy.`] : []),
    ...(unnamed.length > 0
      ? [`Cells under no heading do not come back: ${inShort(unnamed)}. Give their column a heading in the copy.`]
      : []),
  ];
}

const NAMED = 4;

function inShort(addresses: readonly string[]): string {
  const more = addresses.length - NAMED;
  return [...addresses.slice(0, NAMED), ...(more > 0 ? [`and ${more} more`] : [])].join(", ");
}

function differ(one: readonly TakenRow[], other: readonly TakenRow[]): boolean {
  return one.length !== other.length || one.some(({ fields }, at) => !sameFields(fields, other[at]?.fields ?? new Map()));
}
