import { isBlank } from "../../records/sheet.ts";
import { WorkbookRefused, type CellRange, type CellValue } from "../../workbook/port.ts";

/**
 * A write as large as years of rain stands on the Change log in blocks, a row of the log for each: the values of many
 * cells in one cell, row by row, as JSON.
 */
export interface ValueBlock {
  readonly where: CellRange;
  readonly before: string | null;
  readonly after: string | null;
}

/** Up to this many cells each has a row of the log, where people can read what it held. */
const MOST_CELLS_APART = 1000;

/** A cell holds 32,767 characters; a value that would not fit beside others is kept apart. */
export const MOST_CHARACTERS = 30_000;
const LONGEST_VALUE = 1000;

type Values = readonly (readonly CellValue[])[];

export function isLarge({ rows, columns }: CellRange): boolean {
  return rows * columns > MOST_CELLS_APART;
}

/** Whether every value is short enough to stand in a block. */
export function fitsInBlocks(values: Values): boolean {
  return values.every((row) => row.every((value) => typeof value !== "string" || value.length <= LONGEST_VALUE));
}

/** The rows of a range as blocks that a cell holds, leaving out those that nothing changed in. */
export function blocksOf(range: CellRange, before: Values, after: Values): readonly ValueBlock[] {
  const blocks: ValueBlock[] = [];
  for (let from = 0; from < range.rows; ) {
    let characters = 0;
    let until = from;
    while (until < range.rows && (until === from || characters < MOST_CHARACTERS)) {
      characters += Math.max(lengthOf(before[until] ?? []), lengthOf(after[until] ?? []));
      if (characters < MOST_CHARACTERS || until === from) until += 1;
    }
    const block = {
      where: { ...range, row: range.row + from, rows: until - from },
      before: packed(before.slice(from, until)),
      after: packed(after.slice(from, until)),
    };
    if (block.before !== block.after) blocks.push(block);
    from = until;
  }
  return blocks;
}

function lengthOf(row: readonly CellValue[]): number {
  return row.reduce<number>((sum, value) => sum + JSON.stringify(value).length + 1, 0);
}

/** Null for cells that are all blank. */
export function packed(values: Values): string | null {
  const flat = values.flat().map((value) => (isBlank(value) ? null : value));
  return flat.every((value) => value === null) ? null : JSON.stringify(flat);
}

export function unpacked(block: CellValue, { rows, columns }: CellRange): Values {
  const flat = (parsed(block) ?? []) as CellValue[];
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => flat[row * columns + column] ?? null));
}

/** What the log keeps of many cells in one; null where they were all blank. */
export function parsed(content: CellValue): unknown {
  if (isBlank(content)) return null;
  try {
    return JSON.parse(String(content));
  } catch {
    throw new WorkbookRefused("What the Change log keeps of this change has been altered by hand and cannot be read. Nothing was undone.");
  }
}
