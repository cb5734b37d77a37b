import { isCellError, type Cell, type CellInput } from "../../functions/worksheet/calling/cell.ts";
import type { WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";

/** A number, or the sentence that says why there is none. */
export type Answer = { readonly value: number } | { readonly sentence: string };

/** The first row of an answer, an error filling every place it stands for. */
export function rowOf(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[], width: number): readonly (Cell | undefined)[] {
  const row = worksheetFunction.evaluate(inputs)[0] ?? [];
  return row.length === 1 && width > 1 ? Array.from({ length: width }, () => row[0]) : row;
}

export function answer(cell: Cell | undefined): Answer {
  if (typeof cell === "number") return { value: cell };
  if (isCellError(cell)) return { sentence: cell.sentence === "" ? `An input shows ${cell.code}.` : cell.sentence };
  return { sentence: "Contributing area and tested rate are missing." };
}
