import "./validation.ts";
import * as z from "zod";
import { choiceColumn, type Column, momentColumn, nameColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";
import type { CellValue } from "../workbook/port.ts";

const anyCell = (heading: string): Column<CellValue> => ({ heading, cell: z.custom<CellValue>(), role: "input", widthPixels: 170 });

/** "values" of a block of cells, such as years of rain (change-blocks.ts); "cells" of one row, such as an answer's (change-rows.ts). */
const HOLDS = ["value", "formula", "values", "cells"] as const;

/** One row a cell that the pane wrote, or a row or a block of many: what it held before, and what it holds since. */
export const changeLogSheet = {
  name: "Change log",
  preface: [
    "Change log: every cell the pane wrote, with what it held before. What you type into cells yourself is not listed",
    "Rows of one change bear one number, and are undone together; a row of many cells names each by its column. Nothing here is ever rewritten; an undo is a change of its own.",
  ],
  columns: {
    change: numberColumn("Change", { label: "Change", atLeast: 1 }, { widthPixels: 70, numberFormat: "0" }),
    when: momentColumn("When", "When"),
    by: textColumn("By", { widthPixels: 110 }),
    what: textColumn("What", { widthPixels: 260 }),
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    sheet: textColumn("Sheet", { widthPixels: 110 }),
    cell: textColumn("Cell", { widthPixels: 70 }),
    heading: textColumn("Column", { widthPixels: 150 }),
    beforeHolds: choiceColumn("Before is", "Before is", HOLDS, { widthPixels: 80 }),
    before: anyCell("Before"),
    afterHolds: choiceColumn("After is", "After is", HOLDS, { widthPixels: 80 }),
    after: anyCell("After"),
  },
  rows: 1000,
  // A thousand yards from the first call to the first year's look: a row for each of 83 answers, and half as many for all else.
  mostRows: 250_000,
  frozenColumns: 1,
  isKeptInOrder: true,
} as const satisfies Sheet;

export type Change = RecordOf<typeof changeLogSheet>;
export type ChangeRow = SheetRow<typeof changeLogSheet>;
