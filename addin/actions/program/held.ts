import type { CellRange, CellValue } from "../../workbook/port.ts";

/** What one cell held, a value or a formula as typed; or the values of a block of cells. */
export interface Held {
  readonly holds: "value" | "formula" | "values";
  readonly content: CellValue;
}

export interface CellHistory {
  readonly where: CellRange;
  readonly before: Held;
  readonly after: Held;
}
