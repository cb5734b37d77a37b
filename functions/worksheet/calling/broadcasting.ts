import type { ArgumentRule } from "./arguments.ts";
import type { Cell, CellError, CellInput } from "./cell.ts";
import { cannotBroadcast, mustBeCellOrColumn, mustBeSingleCell } from "./sentences.ts";

/** An argument as rows of cells; a single cell is one row of one. */
export interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly cells: readonly (readonly Cell[])[];
}

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

export function gridOf(input: CellInput): Grid {
  if (!isRows(input)) return { rows: 1, columns: 1, cells: [[input ?? null]] };
  const columns = input[0]?.length ?? 0;
  return columns === 0 ? gridOf(null) : { rows: input.length, columns, cells: input };
}

function isRows(input: CellInput): input is readonly (readonly Cell[])[] {
  return Array.isArray(input);
}

/** The cell of a grid that meets the result's cell at this row and column. */
export function cellAt(grid: Grid, row: number, column: number): Cell {
  return grid.cells[grid.rows === 1 ? 0 : row]?.[grid.columns === 1 ? 0 : column] ?? null;
}

/** A labelled argument that takes part in lifting. */
export interface Lifted {
  readonly rule: ArgumentRule;
  readonly grid: Grid;
}

/**
 * The size of the result when arguments of these sizes meet as they do in Excel: one row or one column stretches,
 * anything else must agree. Where Excel pads with #N/A, the answer is a sentence naming the two that disagree.
 */
export function broadcastSize(lifted: readonly Lifted[]): Size | CellError {
  let tallest: Lifted | undefined;
  let widest: Lifted | undefined;
  for (const each of lifted) {
    if (each.grid.rows > 1) {
      if (tallest !== undefined && tallest.grid.rows !== each.grid.rows) return disagree(tallest, each);
      tallest = each;
    }
    if (each.grid.columns > 1) {
      if (widest !== undefined && widest.grid.columns !== each.grid.columns) return disagree(widest, each);
      widest = each;
    }
  }
  return { rows: tallest?.grid.rows ?? 1, columns: widest?.grid.columns ?? 1 };
}

/** As broadcastSize, for functions whose result is itself a row: they take single cells and columns. */
export function columnSize(lifted: readonly Lifted[]): Size | CellError {
  const wide = lifted.find(({ grid }) => grid.columns > 1);
  return wide === undefined ? broadcastSize(lifted) : mustBeCellOrColumn(wide.rule.label, sizeInWords(wide.grid));
}

/** For functions whose result is a table: they take single cells beside their ranges. */
export function singleSize(lifted: readonly Lifted[]): Size | CellError {
  const large = lifted.find(({ grid }) => grid.rows > 1 || grid.columns > 1);
  return large === undefined ? { rows: 1, columns: 1 } : mustBeSingleCell(large.rule.label, sizeInWords(large.grid));
}

function disagree(first: Lifted, second: Lifted): CellError {
  return cannotBroadcast(first.rule.label, sizeInWords(first.grid), second.rule.label, sizeInWords(second.grid));
}

/** "1 row by 3 columns". */
export function sizeInWords({ rows, columns }: Size): string {
  return `${rows} ${rows === 1 ? "row" : "rows"} by ${columns} ${columns === 1 ? "column" : "columns"}`;
}
