import type { Cell, CellInput } from "../../functions/worksheet/calling/cell.ts";
import { cellFromHost, inputFromHost } from "../../functions/worksheet/calling/host-cells.ts";
import type { Parameter } from "../../functions/worksheet/calling/parameters.ts";

const WORDS: ReadonlySet<string> = new Set(["text", "choice", "flag"]);
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const BETWEEN_PARTS = ";";

/** What stands in a CSV cell. A number is one where the argument takes numbers; what is not stays words, for the function to refuse. */
export function cellFromText(text: string, parameter: Parameter): Cell {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  if (!WORDS.has(parameter.kind) && NUMBER.test(trimmed)) return Number(trimmed);
  return cellFromHost(text);
}

/** An argument out of a CSV cell: a list has its parts apart by semicolons. */
export function inputFromText(text: string, parameter: Parameter): CellInput {
  return parameter.isRange ? text.split(BETWEEN_PARTS).map((part) => [cellFromText(part, parameter)]) : cellFromText(text, parameter);
}

/** An argument out of JSON, where numbers are numbers and a list is an array. */
export function inputFromJson(value: unknown): CellInput {
  return inputFromHost(value);
}
