import type { ArgumentRule } from "./arguments.ts";
import { cellAt, type Grid } from "./broadcasting.ts";
import { isCellError, type Cell } from "./cell.ts";
import { blankValue, isBlank, refused, type Reader } from "./reading.ts";

/** A cell as a sentence speaks of it. */
interface Shown {
  readonly cell: Cell;
  readonly label: string;
}

/** One argument of one call: the value that each row of the result meets. */
export class Lane {
  constructor(
    readonly rule: ArgumentRule,
    readonly grid: Grid,
    /** Reads the cell that a row meets; undefined where all meet the same. */
    private readonly read: Reader | undefined,
    private readonly same: unknown,
    /** Of a range: the one cell that decides what is said about it. */
    private readonly deciding?: Shown,
  ) {}

  /** The value in US units, or `refused`. */
  at(row: number, column: number): unknown {
    return this.read === undefined ? this.same : this.read(cellAt(this.grid, row, column));
  }

  shown(row: number, column: number): Shown {
    return this.deciding ?? { cell: cellAt(this.grid, row, column), label: this.rule.label };
  }
}

export function laneOf(rule: ArgumentRule, grid: Grid, read: Reader): Lane {
  if (rule.takes === "range") return seriesLane(rule, grid, read);
  if (rule.takes === "table") return tableLane(rule, grid);
  // A cell beside a column is read once, and no value of a column is kept: each goes straight into its row.
  return grid.rows === 1 && grid.columns === 1
    ? new Lane(rule, grid, undefined, read(cellAt(grid, 0, 0)))
    : new Lane(rule, grid, read, undefined);
}

/** Reads a whole series (a column, a row, or a grid row by row) in one pass: a record of rain has hundreds of thousands of cells. */
function seriesLane(rule: ArgumentRule, grid: Grid, read: Reader): Lane {
  const { label, keepsBlanks } = rule;
  const values: unknown[] = new Array(grid.rows * grid.columns);
  let count = 0;
  let place = 0;
  let isEmpty = true;
  let unusable: Shown | undefined;
  for (const line of grid.cells) {
    for (const cell of line) {
      place += 1;
      if (isBlank(cell)) {
        if (keepsBlanks === true) values[count++] = null;
        continue;
      }
      isEmpty = false;
      const value = read(cell);
      if (value !== refused) values[count++] = value;
      else if (isCellError(cell)) return wholeLane(rule, grid, refused, { cell, label });
      else unusable ??= { cell, label: `${label} ${place}` };
    }
  }
  if (isEmpty) return wholeLane(rule, grid, blankValue(rule), { cell: null, label });
  if (count < values.length) values.length = count;
  return unusable === undefined ? wholeLane(rule, grid, values, { cell: true, label }) : wholeLane(rule, grid, refused, unusable);
}

/** The cells of a table are the calculation's to judge: all that matters here is whether there are any. */
function tableLane(rule: ArgumentRule, grid: Grid): Lane {
  const isEmpty = grid.cells.every((line) => line.every(isBlank));
  return wholeLane(rule, grid, isEmpty ? blankValue(rule) : grid.cells, { cell: isEmpty ? null : true, label: rule.label });
}

function wholeLane(rule: ArgumentRule, grid: Grid, value: unknown, deciding: Shown): Lane {
  return new Lane(rule, grid, undefined, value, deciding);
}
