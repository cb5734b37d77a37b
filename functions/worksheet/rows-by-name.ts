import type { Cell } from "./calling/cell.ts";
import { isCellError } from "./calling/cell.ts";
import { plainKey } from "./calling/typed-words.ts";
import { isBlank } from "./calling/reading.ts";

export type Table = readonly (readonly Cell[])[];

/** The rows of a table by the name in their first cell, made once for all rows of a call. Rows without a name are left out. */
export class RowsByName {
  private readonly byTable = new WeakMap<Table, ReadonlyMap<string, Table>>();
  private readonly namesByTable = new WeakMap<Table, readonly string[]>();

  /** `isEntry` tells the rows whose names are offered where a name is not found: a heading is none. */
  constructor(private readonly isEntry: (row: readonly Cell[]) => boolean) {}

  named(name: string, table: Table): Table {
    return this.rowsOf(table).get(plainKey(name)) ?? NONE;
  }

  /** The names of the table, each once, as typed. The same list for the same table, so that it is taken apart once. */
  names(table: Table): readonly string[] {
    const known = this.namesByTable.get(table);
    if (known !== undefined) return known;
    const names = [...new Set(table.filter((row) => nameIn(row) !== "" && this.isEntry(row)).map(([name]) => String(name)))];
    this.namesByTable.set(table, names);
    return names;
  }

  private rowsOf(table: Table): ReadonlyMap<string, Table> {
    const known = this.byTable.get(table);
    if (known !== undefined) return known;
    const rows = new Map<string, (readonly Cell[])[]>();
    for (const row of table) {
      const name = nameIn(row);
      if (name === "") continue;
      const others = rows.get(name);
      if (others === undefined) rows.set(name, [row]);
      else others.push(row);
    }
    this.byTable.set(table, rows);
    return rows;
  }
}

const NONE: Table = [];

function nameIn([cell]: readonly Cell[]): string {
  return isBlank(cell) || isCellError(cell) ? "" : plainKey(String(cell));
}
