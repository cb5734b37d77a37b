import type { CellRange, CellValue } from "../../workbook/port.ts";

/** What one cell held, a value or a formula as typed; or the values of a block of cells, or the cells of a row. */
export interface Held {
  readonly holds: "value" | "formula" | "values" | "cells";
  readonly content: CellValue;
}

export interface CellHistory {
  readonly where: CellRange;
  readonly before: Held;
  readonly after: Held;
}
