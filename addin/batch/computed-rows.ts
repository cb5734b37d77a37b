import { isCellError, type Cell, type CellInput } from "../../functions/worksheet/calling/cell.ts";
import type { WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";

/** Where the values of an argument come from: the same for every row, or out of each row's own. */
export type ArgumentSource = { readonly same: CellInput } | { readonly ofRow: number } | undefined;

/** The answer to one row: none to several rows of values, and what is wrong in words. */
export interface RowAnswer {
  readonly rows: readonly (readonly Cell[])[];
  readonly error: string;
}

/**
 * Answers rows as the worksheet does. Where every argument is a cell, all go through one lifted call, which is many times
 * faster than a call for each; a list in a row or a table for an answer takes a call for each.
 */
export function computedRows(
  fn: WorksheetFunction,
  sources: readonly ArgumentSource[],
  rows: readonly (readonly CellInput[])[],
): readonly RowAnswer[] {
  const isListed = sources.some((source, place) => source !== undefined && "ofRow" in source && fn.parameters[place]?.isRange === true);
  const isLifted = fn.result.shape !== "table" && !isListed && sources.some((source) => source !== undefined && "ofRow" in source);
  if (!isLifted) return rows.map((row) => answerFrom(fn, sources, row, fn.evaluate(sources.map((source) => inputOf(source, row)))));
  const columns = sources.map(
    (source): CellInput =>
      source === undefined ? null : "same" in source ? source.same : rows.map((row) => [(row[source.ofRow] ?? null) as Cell]),
  );
  const answers = fn.evaluate(columns);
  return rows.map((row, place) => answerFrom(fn, sources, row, [answers[place] ?? []]));
}

function inputOf(source: ArgumentSource, row: readonly CellInput[]): CellInput {
  return source === undefined ? null : "same" in source ? source.same : (row[source.ofRow] ?? null);
}

function answerFrom(
  fn: WorksheetFunction,
  sources: readonly ArgumentSource[],
  row: readonly CellInput[],
  rows: readonly (readonly Cell[])[],
): RowAnswer {
  if (hasNothing(fn, sources, row)) return { rows: [], error: "Nothing is given in this row." };
  const wrong = rows.flat().filter(isCellError);
  const error = [...new Set(wrong.map(({ code, sentence }) => (sentence === "" ? `An input cell shows ${code}.` : sentence)))].join(" ");
  const values = rows.map((cells) => cells.map((cell) => (isCellError(cell) ? null : cell)));
  return { rows: values.some((cells) => cells.some((cell) => cell !== null)) ? values : [], error };
}

/** A worksheet answers with nothing while nothing is typed; in a stream that is a row that went wrong. */
function hasNothing({ parameters }: WorksheetFunction, sources: readonly ArgumentSource[], row: readonly CellInput[]): boolean {
  const required = sources.filter((_, place) => parameters[place]?.optional === false);
  return required.length > 0 && required.every((source) => isBlank(inputOf(source, row)));
}

function isBlank(input: CellInput): boolean {
  if (input === null || input === undefined || input === "") return true;
  return (
    Array.isArray(input) && (input as readonly (readonly Cell[])[]).every((cells) => cells.every((cell) => cell === null || cell === ""))
  );
}
