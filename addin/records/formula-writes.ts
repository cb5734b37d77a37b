import type { FormulaWrite } from "../workbook/port.ts";
import type { Place } from "./place.ts";
import type { KeyOf, Sheet } from "./sheet.ts";

/** One formula in the first row of the column, from where its answer spills: on computed sheets alone. */
export function spilled<S extends Sheet>(place: Place<S>, key: KeyOf<S>, formula: string): FormulaWrite {
  return { range: place.cell(place.firstRow, key), formulas: [[formula]] };
}

/** A formula of its own in every prepared row, as sheets that people type in hold them: rows may be sorted, inserted and deleted. */
export function inEachRow<S extends Sheet>(place: Place<S>, key: KeyOf<S>, formula: (row: number) => string): FormulaWrite {
  const range = place.column(key);
  return { range, formulas: Array.from({ length: range.rows }, (_, index) => [formula(range.row + index)]) };
}
