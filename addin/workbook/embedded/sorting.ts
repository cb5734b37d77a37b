/**
 * Sorting and filtering for people. The grid's own sorting moves the selected cells alone, or the headings with them: a
 * record would come apart. Here rows move whole, and a filter begins at the headings; both find them by the frozen rows.
 */
import { ICommandService, type IRange, type Injector } from "@univerjs/core";
import { ReorderRangeCommand } from "@univerjs/preset-sheets-core";
import { SetSheetFilterRangeCommand } from "@univerjs/preset-sheets-filter";
import type { FUniver } from "@univerjs/core/facade";
import { cellName, type ResultCells } from "./results.ts";
import { inOrder } from "./row-order.ts";
import type { CellValue } from "../port.ts";

type GridSheet = ReturnType<ReturnType<FUniver["createWorkbook"]>["getActiveSheet"]>;

export interface SortedGrid {
  readonly api: FUniver;
  readonly injector: Injector;
  workbook(): ReturnType<FUniver["createWorkbook"]>;
  valueAt(sheetId: string, row: number, column: number): CellValue;
  extentOf(sheetId: string): { readonly rows: number; readonly columns: number };
}

const DIRECTIONS = [
  { id: "soakbook.sort-rows-up", title: "Sort rows A to Z", isDescending: false },
  { id: "soakbook.sort-rows-down", title: "Sort rows Z to A", isDescending: true },
] as const;

/** Above the cells, in the menu of a cell and in that of a column. */
const MENUS = [["ribbon.data.organization"], ["contextMenu.mainArea", "contextMenu.data"], ["contextMenu.colHeader", "contextMenu.data"]];

/** Called when the grid's own parts have come to life. */
export function offerSorting(grid: SortedGrid, results: ResultCells): void {
  for (const { id, title, isDescending } of DIRECTIONS) {
    const menu = grid.api.createMenu({ id, title, action: () => sortRows(grid, results, isDescending) });
    for (const path of MENUS) menu.appendTo(path);
  }
  grid.injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetSheetFilterRangeCommand.id) return;
    const filter = params as { readonly subUnitId: string; range: IRange };
    filter.range = rowsFromHeading(grid, filter.subUnitId) ?? filter.range;
  });
}

/** The headings and everything below them; null on a sheet that has none. */
function rowsFromHeading(grid: SortedGrid, sheetId: string): IRange | null {
  const frozen = grid.workbook().getSheetBySheetId(sheetId)?.getFreeze();
  if (!frozen || frozen.ySplit === 0) return null;
  const { rows, columns } = grid.extentOf(sheetId);
  if (rows <= frozen.startRow) return null;
  return { startRow: frozen.startRow - 1, endRow: rows - 1, startColumn: 0, endColumn: columns - 1 };
}

function sortRows(grid: SortedGrid, results: ResultCells, isDescending: boolean): void {
  const sheet = grid.workbook().getActiveSheet();
  const sheetId = sheet.getSheetId();
  const column = sheet.getSelection()?.getCurrentCell()?.actualColumn;
  const rows = rowsToSort(grid, sheet);
  const refusal =
    results.refusalToSort(sheetId) ?? (rows === null ? "Select the rows to sort, without their headings." : whyNot(results, sheet, rows));
  if (refusal !== null) results.refused(refusal);
  if (refusal !== null || rows === null || column === undefined) return;
  const places: number[] = [];
  // Rows out of sight stay where they are.
  for (let row = rows.startRow; row <= rows.endRow; row += 1) if (isInSight(sheet, row)) places.push(row);
  const sorted = inOrder(
    places.map((row) => ({ row, value: grid.valueAt(sheetId, row, column) })),
    isDescending,
  );
  const order = Object.fromEntries(places.map((place, index) => [place, sorted[index]?.row ?? place]));
  grid.api.syncExecuteCommand(ReorderRangeCommand.id, {
    unitId: grid.workbook().getId(),
    subUnitId: sheetId,
    range: rows,
    order,
  });
}

/** All rows below the headings, or those that are selected on a sheet of a person's own that has none. */
function rowsToSort(grid: SortedGrid, sheet: GridSheet): IRange | null {
  const list = rowsFromHeading(grid, sheet.getSheetId());
  if (list) return { ...list, startRow: list.startRow + 1 };
  const selected = sheet.getSelection()?.getActiveRange()?.getRange();
  if (!selected || selected.startRow === selected.endRow) return null;
  return { ...selected, startColumn: 0, endColumn: sheet.getMaxColumns() - 1 };
}

function isInSight(sheet: GridSheet, row: number): boolean {
  return !sheet.getSheet().getRowFiltered(row) && sheet.getSheet().getRowRawVisible(row);
}

/** What would come apart if the rows moved. */
function whyNot(results: ResultCells, sheet: GridSheet, rows: IRange): string | null {
  const merged = sheet
    .getSheet()
    .getMergeData()
    .find((cells) => meet(cells, rows));
  if (merged)
    return `${cellName({ row: merged.startRow, column: merged.startColumn })} is merged with its neighbours: take them apart before sorting.`;
  const spill = results.spills(sheet.getSheetId()).find(({ cells }) => meet(cells, rows));
  return spill ? `The formula in ${cellName(spill.formula)} fills several cells: rows are not sorted around it.` : null;
}

function meet(one: IRange, other: IRange): boolean {
  return (
    one.startRow <= other.endRow && one.endRow >= other.startRow && one.startColumn <= other.endColumn && one.endColumn >= other.startColumn
  );
}
