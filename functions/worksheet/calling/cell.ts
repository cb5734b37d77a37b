/** What a worksheet cell can hold, the same for every host. Blank is null. */
export type Cell = number | string | boolean | null | CellError;

/** An error a cell shows. The sentence is ours; an error that only passes through carries an empty one. */
export interface CellError {
  readonly code: string;
  readonly sentence: string;
}

/** An argument as a host hands it over: one cell, or rows of cells; undefined when it was left out. */
export type CellInput = Cell | undefined | readonly (readonly Cell[])[];

export function isCellError(cell: unknown): cell is CellError {
  return typeof cell === "object" && cell !== null && "code" in cell && "sentence" in cell;
}

/** Impossible input: the sentence names the argument and the rule. */
export function invalid(sentence: string): CellError {
  return { code: "#VALUE!", sentence };
}

/** A required input that is not there yet: the sentence names it. */
export function missing(sentence: string): CellError {
  return { code: "#N/A", sentence };
}
