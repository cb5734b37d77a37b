import { absolute, addressOf, type CellRange, type CellValue } from "../workbook/port.ts";
import type { KeyOf, Sheet } from "./sheet.ts";

/** Where the headings and columns of one sheet stand: as set-up laid them out, or wherever people have moved them. */
export class Place<S extends Sheet = Sheet> {
  constructor(
    readonly sheet: S,
    readonly headingRow: number,
    private readonly columns: ReadonlyMap<string, number>,
    /** Rows below the headings that formulas cover. */
    readonly rows: number,
  ) {}

  get firstRow(): number {
    return this.headingRow + 1;
  }

  /** The same columns over so many rows. */
  over(rows: number): Place<S> {
    return new Place(this.sheet, this.headingRow, this.columns, rows);
  }

  columnIndex(key: KeyOf<S>): number {
    const column = this.columns.get(key);
    if (column === undefined) throw new Error(`Sheet ${this.sheet.name} was asked for a column it does not declare: ${key}.`);
    return column;
  }

  cell(row: number, key: KeyOf<S>): CellRange {
    return { sheet: this.sheet.name, row, column: this.columnIndex(key), rows: 1, columns: 1 };
  }

  /** All covered cells of one column. */
  column(key: KeyOf<S>): CellRange {
    return { ...this.cell(this.firstRow, key), rows: this.rows };
  }

  /** All covered cells of one column, as a formula writes them: Sites!$D$4:$D$203. */
  columnReference(key: KeyOf<S>): string {
    return absolute(addressOf(this.column(key)));
  }

  /** The same, as a formula on the sheet itself writes them: $D$4:$D$203. */
  ownColumn(key: KeyOf<S>): string {
    return this.columnReference(key).replace(/^.*!/, "");
  }

  /** One cell of the row as a formula on the sheet itself writes it, its row free to move: $D4. */
  ownCell(row: number, key: KeyOf<S>): string {
    return addressOf(this.cell(row, key)).replace(/^.*!/, "$");
  }

  /** The covered cells from one column to another as a formula writes them, for a table that a function takes whole. */
  tableReference(first: KeyOf<S>, last: KeyOf<S>): string {
    return absolute(addressOf({ ...this.column(first), columns: this.columnIndex(last) - this.columnIndex(first) + 1 }));
  }

  /**
   * A column from its heading down, as a formula that looks for rows by what stands in them reads it: a row that people
   * insert above the first one is inside the range, which it would push down otherwise.
   */
  listReference(key: KeyOf<S>): string {
    return absolute(addressOf(this.#fromHeading(key)));
  }

  /** The same from one column to another. */
  listTableReference(first: KeyOf<S>, last: KeyOf<S>): string {
    return absolute(addressOf({ ...this.#fromHeading(first), columns: this.columnIndex(last) - this.columnIndex(first) + 1 }));
  }

  /** The cells below the heading, row for row, whatever people insert above the first one: an expression, not a range. */
  rowsBelowHeading(key: KeyOf<S>): string {
    const list = this.listReference(key);
    return `FILTER(${list},ROW(${list})>ROW(${absolute(addressOf(this.cell(this.headingRow, key)))}))`;
  }

  #fromHeading(key: KeyOf<S>): CellRange {
    return { ...this.cell(this.headingRow, key), rows: this.rows + 1 };
  }

  /** Whether the columns from one to another stand side by side in their declared order, as such a function reads them. */
  isTable(first: KeyOf<S>, last: KeyOf<S>): boolean {
    const keys = Object.keys(this.sheet.columns) as KeyOf<S>[];
    const table = keys.slice(keys.indexOf(first), keys.indexOf(last) + 1);
    return table.every((key, place) => this.columnIndex(key) === this.columnIndex(first) + place);
  }
}

/** The place that set-up gives the sheet. */
export function placeAsSetUp<S extends Sheet>(sheet: S): Place<S> {
  const columns = new Map(Object.keys(sheet.columns).map((key, column) => [key, column]));
  return new Place(sheet, sheet.preface.length, columns, sheet.rows);
}

/** A column whose heading is nowhere on the sheet, and where it stood at set-up. */
export interface MissingColumn {
  readonly key: string;
  readonly heading: string;
  readonly expectedAt: CellRange;
}

export type FoundPlace<S extends Sheet> =
  | { readonly place: Place<S> }
  | { readonly headingRow: number; readonly missing: readonly MissingColumn[]; readonly found: ReadonlyMap<string, number> };

/** Looks for the sheet's headings among its cells, read from A1: the row that holds most of them is the heading row. */
export function findPlace<S extends Sheet>(sheet: S, values: readonly (readonly CellValue[])[]): FoundPlace<S> {
  const asSetUp = placeAsSetUp(sheet);
  const wanted = new Set(Object.values(sheet.columns).map(({ heading }) => heading));
  const headingRow = rowWithMost(wanted, values) ?? asSetUp.headingRow;
  const headings = (values[headingRow] ?? []).map(headingText);
  const found = new Map(
    Object.entries(sheet.columns)
      .map(([key, { heading }]) => [key, headings.indexOf(heading)] as const)
      .filter(([, column]) => column >= 0),
  );
  const missing = Object.entries(sheet.columns).flatMap(([key, { heading }]): MissingColumn[] =>
    found.has(key) ? [] : [{ key, heading, expectedAt: { ...asSetUp.cell(headingRow, key as KeyOf<S>) } }],
  );
  if (missing.length > 0) return { headingRow, missing, found };
  return { place: new Place(sheet, headingRow, found, rowsCovering(values.length - headingRow - 1, sheet.rows)) };
}

/** The first row that holds most of the headings; null where none holds any. No row after one that holds them all is looked at. */
function rowWithMost(headings: ReadonlySet<string>, values: readonly (readonly CellValue[])[]): number | null {
  let [found, most]: [number | null, number] = [null, 0];
  for (const [row, cells] of values.entries()) {
    const matches = new Set(cells.map(headingText).filter((text) => headings.has(text))).size;
    if (matches > most) [found, most] = [row, matches];
    if (most === headings.size) break;
  }
  return found;
}

/** The rows prepared, doubled until they take the rows wanted: formulas are written anew only when the rows have doubled. */
export function rowsCovering(wanted: number, prepared: number): number {
  return wanted <= prepared || prepared <= 0 ? Math.max(wanted, prepared) : rowsCovering(wanted, 2 * prepared);
}

/** A heading as people see it: a line break inside it, or a space too many, makes it no other. */
export function headingText(value: CellValue): string {
  return String(value ?? "")
    .replace(/\s+/g, " ")
    .trim();
}

/** Row of the headings as set-up laid them out. */
export function headingRow(sheet: Sheet): number {
  return placeAsSetUp(sheet).headingRow;
}

export function firstRow(sheet: Sheet): number {
  return placeAsSetUp(sheet).firstRow;
}

export function columnOf<S extends Sheet>(sheet: S, key: KeyOf<S>): number {
  return placeAsSetUp(sheet).columnIndex(key);
}

/** A cell where set-up put it. On a sheet that people have worked with, ask its place, or the row that was read. */
export function cellOf<S extends Sheet>(sheet: S, row: number, key: KeyOf<S>): CellRange {
  return placeAsSetUp(sheet).cell(row, key);
}
