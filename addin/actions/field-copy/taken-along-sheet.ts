/**
 * The sheet of a copy that says where it was taken from, and what its rows were then. Cells, not a setting: they stay with the
 * file whatever program saves it.
 */
import { isBlank } from "../../records/sheet.ts";
import type { CellValue, SheetLayout, ValueWrite } from "../../workbook/port.ts";
import { rowOf, type Fields, type TakenRow } from "./taken-rows.ts";
import { sheetsTaken, type TakenSheet } from "./taken-sheets.ts";

export interface Origin {
  /** The workbook that it was taken from. */
  readonly home: string;
  /** What the IDs begin with that the copy gives out. */
  readonly series: string;
  readonly takenOn: number;
}

export type BaseRows = ReadonlyMap<TakenSheet, readonly TakenRow[]>;

const NAME = "Taken along";
const FORMAT = 1;

export const takenAlongLayout: SheetLayout = {
  name: NAME,
  headingRow: 1,
  columns: [
    { heading: "What", widthPixels: 90, role: "result" },
    { heading: "Of what", widthPixels: 160, role: "result" },
  ],
  rows: 0,
  frozenColumns: 0,
  preface: ["What these yards were when they were taken along. Bring back compares with it: leave it as it is."],
};

/** Under the headings: a line a fact, and for each sheet its fields and then its rows. */
export function takenAlongWrite({ home, series, takenOn }: Origin, rows: ReadonlyMap<TakenSheet, readonly Fields[]>): ValueWrite {
  const lines: (readonly CellValue[])[] = [
    ["format", FORMAT],
    ["home", home],
    ["series", series],
    ["taken on", takenOn],
  ];
  for (const [{ sheet }, held] of rows) {
    const fields = [...new Set(held.flatMap((row) => [...row.keys()]))];
    lines.push(["fields", sheet.name, ...fields]);
    for (const row of held) lines.push(["row", sheet.name, ...fields.map((field) => row.get(field) ?? null)]);
  }
  const columns = lines.reduce((most, line) => Math.max(most, line.length), 0);
  const values = lines.map((line) => Array.from({ length: columns }, (_, at) => line[at] ?? null));
  return { range: { sheet: NAME, row: 2, column: 0, rows: values.length, columns }, values };
}

/** Null where the sheet is not what a copy has. */
export function readTakenAlong(cells: readonly (readonly CellValue[])[]): { readonly origin: Origin; readonly base: BaseRows } | null {
  const facts = new Map<string, CellValue>();
  const base = new Map<TakenSheet, TakenRow[]>(sheetsTaken.map((taken) => [taken, []]));
  let fields: readonly string[] = [];
  for (const [what, of = null, ...rest] of cells.slice(2)) {
    const taken = sheetsTaken.find(({ sheet }) => sheet.name === of);
    if (what === "fields") fields = rest.map((field) => String(field ?? ""));
    else if (what === "row" && taken !== undefined) {
      const held = rest.flatMap((value, at): readonly (readonly [string, Exclude<CellValue, null>])[] =>
        value === null || isBlank(value) ? [] : [[fields[at] ?? "", value]],
      );
      base.get(taken)?.push(rowOf(taken, -1, new Map(held)));
    } else if (typeof what === "string") facts.set(what, of);
  }
  const [home, series, takenOn] = [facts.get("home"), facts.get("series"), facts.get("taken on")];
  if (facts.get("format") !== FORMAT || typeof home !== "string" || typeof series !== "string" || typeof takenOn !== "number") return null;
  return { origin: { home, series, takenOn }, base };
}

export function isTakenAlong(name: string): boolean {
  return name === NAME;
}
