import { invalid, isCellError, type Cell, type CellInput } from "./cell.ts";

/** An argument of any host as the worksheet functions take it: errors in whatever form become CellError. */
export function inputFromHost(value: unknown): CellInput {
  if (!Array.isArray(value)) return cellFromHost(value);
  // Excel hands a single cell over as one row of one, and a call of single cells is answered without grids.
  const [row] = value as readonly unknown[];
  if (value.length === 1 && Array.isArray(row) && row.length === 1) return cellFromHost(row[0]);
  return value.map((row: unknown) => (Array.isArray(row) ? rowFromHost(row) : [cellFromHost(row)]));
}

/** As many rows as only a whole column such as A:A has. */
const WHOLE_COLUMN_ROWS = 1_000_000;

/**
 * Whole columns down to the last row in which any of them holds something, at least one row; shorter inputs as they are.
 * Nobody means a million blank rows, and the answer to them fits on no sheet below a heading.
 */
export function withoutBlankRowsBelow(values: readonly unknown[]): readonly unknown[] {
  if (!values.some(isWholeColumn)) return values;
  const rows = values.reduce<number>(
    (most, value) => Math.max(most, isWholeColumn(value) ? rowsInUse(value) : Array.isArray(value) ? value.length : 1),
    1,
  );
  return values.map((value) => (isWholeColumn(value) ? value.slice(0, rows) : value));
}

function isWholeColumn(value: unknown): value is readonly (readonly unknown[])[] {
  return Array.isArray(value) && value.length >= WHOLE_COLUMN_ROWS;
}

function rowsInUse(rows: readonly (readonly unknown[])[]): number {
  let used = rows.length;
  while (used > 0 && rows[used - 1]!.every((cell) => cell === "" || cell === null)) used -= 1;
  return used;
}

function rowFromHost(row: readonly unknown[]): readonly Cell[] {
  return row.every(isPlain) ? row : row.map(cellFromHost);
}

/** A cell that needs no translation, as nearly all do: those rows are not copied. */
function isPlain(value: unknown): value is Cell {
  return typeof value === "number" || value === null || (typeof value === "string" && !value.startsWith("#"));
}

/** One cell of any host: a plain value, an error as an object or by its code, or a richer value by what it shows. */
export function cellFromHost(value: unknown): Cell {
  if (typeof value === "number" || typeof value === "boolean") return value;
  if (typeof value === "string") return ERROR_CODE.test(value) ? { code: value, sentence: "" } : value;
  if (value === null || value === undefined) return null;
  return isCellError(value) ? value : cellFromObject(value);
}

function cellFromObject(value: NonNullable<unknown>): Cell {
  const { code, type, basicValue } = value as { code?: unknown; type?: unknown; basicValue?: unknown };
  for (const shown of [code, basicValue]) {
    if (typeof shown === "string" && shown.startsWith("#")) return { code: shown, sentence: "" };
  }
  if (type === "Error") return { code: "#VALUE!", sentence: "" };
  if (typeof basicValue === "string" || typeof basicValue === "number" || typeof basicValue === "boolean") return basicValue;
  return invalid("An input cell holds something other than a number, words, TRUE or FALSE.");
}

/** Every error code that Excel shows has this form; text that has it is taken for one. */
const ERROR_CODE = /^#(?:[A-Z_]+[!?]|DIV\/0!|N\/A|GETTING_DATA)$/;
