import type { CellRange, CellValue } from "../port.ts";

/** A million characters are at most 3 MB on the wire; Excel on the web refuses a request or an answer above 5 MB. */
const CHARACTERS_PER_REQUEST = 1_000_000;
/** A number takes up to 25 characters in an answer. */
const CELLS_PER_READ = 40_000;

/** Some rows of a range, and the number of the range among those asked for. */
export interface Piece<Rows> {
  readonly of: number;
  readonly range: CellRange;
  readonly rows: Rows;
}

/** The ranges in pieces, grouped into requests that Excel answers whole. Nearly always one request. */
export function readRequests(ranges: readonly CellRange[]): readonly (readonly Piece<null>[])[] {
  const pieces = ranges.flatMap((range, of) => {
    const height = Math.max(1, Math.floor(CELLS_PER_READ / range.columns));
    return rowStarts(range.rows, height).map((start) => ({
      of,
      range: { ...range, row: range.row + start, rows: Math.min(height, range.rows - start) },
      rows: null,
    }));
  });
  return grouped(pieces, (piece) => piece.range.rows * piece.range.columns, CELLS_PER_READ);
}

/** The rows to write in pieces, grouped into requests that Excel accepts. A row is never split. */
export function writeRequests<Value extends CellValue>(
  writes: readonly { readonly range: CellRange; readonly rows: readonly (readonly Value[])[] }[],
): readonly (readonly Piece<readonly (readonly Value[])[]>[])[] {
  const weigh = (rows: readonly (readonly Value[])[]) => JSON.stringify(rows).length;
  const pieces = writes.flatMap(({ range, rows }, of) =>
    grouped(rows, (row) => weigh([row]), CHARACTERS_PER_REQUEST).map((group, index, groups) => {
      const start = groups.slice(0, index).reduce((count, earlier) => count + earlier.length, 0);
      return { of, range: { ...range, row: range.row + start, rows: group.length }, rows: group };
    }),
  );
  return grouped(pieces, (piece) => weigh(piece.rows), CHARACTERS_PER_REQUEST);
}

function rowStarts(rows: number, height: number): readonly number[] {
  return Array.from({ length: Math.ceil(rows / height) }, (_, index) => index * height);
}

/** In order, as many together as stay within the limit; one alone where it exceeds the limit by itself. */
function grouped<Item>(items: readonly Item[], weigh: (item: Item) => number, limit: number): readonly (readonly Item[])[] {
  const groups: Item[][] = [];
  let weight = 0;
  for (const item of items) {
    const more = weigh(item);
    const last = groups.at(-1);
    if (last !== undefined && weight + more <= limit) {
      last.push(item);
      weight += more;
    } else {
      groups.push([item]);
      weight = more;
    }
  }
  return groups;
}
