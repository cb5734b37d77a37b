import type { ICellData, Injector } from "@univerjs/core";
import { IDependencyManagerService } from "@univerjs/preset-sheets-core";
import type { GridWorkbook } from "./embedded-grid.ts";
import type { CellRange } from "../port.ts";

type GridSheet = ReturnType<GridWorkbook["getActiveSheet"]>;

/** Every cell of the range with the look of the cell above the range in its column, and nothing said about what it holds. */
export function looksOfRowAbove(sheet: GridSheet, range: CellRange): Readonly<Record<number, Readonly<Record<number, ICellData>>>> {
  const columns = Array.from({ length: range.columns }, (_, index) => range.column + index);
  const looks = columns.map((column) => [column, { s: sheet.getRange(range.row - 1, column).getCellStyleData("cell") }]);
  return Object.fromEntries(Array.from({ length: range.rows }, (_, index) => [range.row + index, Object.fromEntries(looks)]));
}

/** The rule that holds in the row above holds in the range too, each in its own column. */
export function continueDropDowns(sheet: GridSheet, range: CellRange): void {
  for (let column = range.column; column < range.column + range.columns; column += 1) {
    const rule = sheet.getRange(range.row - 1, column).getDataValidation();
    rule?.setRanges([...rule.getRanges(), sheet.getRange(range.row, column, range.rows, 1)]);
  }
}

/**
 * What the formulas depend on is found out anew at the next calculation, as when a workbook is opened. Otherwise the grid
 * looks for each formula that is overwritten among all ranges that any formula reads: more than a minute for a few hundred
 * that read one column.
 */
export function forgetDependencies(injector: Injector): void {
  injector.get(IDependencyManagerService).reset();
}
