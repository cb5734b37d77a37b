import type { ArgumentRule } from "./arguments.ts";
import type { Grid } from "./broadcasting.ts";
import { isCellError, type Cell } from "./cell.ts";
import { isBlank, refused, type Reader } from "./reading.ts";

/** One argument of one call, read ahead of the rows: the value that each row of the result meets. */
export class Lane {
  constructor(
    private readonly values: readonly unknown[],
    private readonly rowStride: number,
    private readonly columnStride: number,
    private readonly anyRefused: boolean,
    /** Of a range: the cell that decides what is said about it, and which of its values that is, counted from 1. */
    readonly standsFor: { readonly cell: Cell; readonly number?: number } = { cell: null },
  ) {}

  at(row: number, column: number): unknown {
    return this.values[row * this.rowStride + column * this.columnStride];
  }

  isRefused(row: number, column: number): boolean {
    return this.anyRefused && this.at(row, column) === refused;
  }
}

export function laneOf(rule: ArgumentRule, grid: Grid, read: Reader): Lane {
  if (rule.takes === "cell") return cellLane(grid, read);
  return rule.takes === "range" ? seriesLane(rule, grid, read) : tableLane(grid);
}

function cellLane({ rows, columns, cells }: Grid, read: Reader): Lane {
  const values: unknown[] = new Array(rows * columns);
  let anyRefused = false;
  for (let row = 0; row < rows; row += 1) {
    const line = cells[row]!;
    for (let column = 0; column < columns; column += 1) {
      const value = read(line[column]);
      values[row * columns + column] = value;
      if (value === refused) anyRefused = true;
    }
  }
  // One row or one column meets every row or column of the result.
  return new Lane(values, rows === 1 ? 0 : columns, columns === 1 ? 0 : 1, anyRefused);
}

/** Reads a whole series, a column or a row (or a grid row by row), stopping at the first cell that cannot be used. */
function seriesLane(rule: ArgumentRule, grid: Grid, read: Reader): Lane {
  const cells = grid.cells.flat();
  const first = cells.find((cell) => !isBlank(cell));
  if (first === undefined) return whole(rule.optional ? rule.fallback : refused, null);
  const error = cells.find(isCellError);
  if (error !== undefined) return whole(refused, error);
  const values: unknown[] = [];
  for (const [place, cell] of cells.entries()) {
    if (isBlank(cell)) {
      if (rule.keepsBlanks === true) values.push(null);
      continue;
    }
    const value = read(cell);
    if (value === refused) return whole(refused, cell, place + 1);
    values.push(value);
  }
  return whole(values, first);
}

function tableLane(grid: Grid): Lane {
  const first = grid.cells.flat().find((cell) => !isBlank(cell));
  return first === undefined ? whole(refused, null) : whole(grid.cells, isCellError(first) ? "" : first);
}

function whole(value: unknown, cell: Cell, number?: number): Lane {
  return new Lane([value], 0, 0, value === refused, number === undefined ? { cell } : { cell, number });
}
