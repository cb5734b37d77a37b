import type { WorkedCall, WorkedInput, WorkedResult, Working } from "../../addin/actions/show-working.ts";
import { citationText } from "../../functions/published/source.ts";
import { isCellError } from "../../functions/worksheet/cell.ts";
import type { Cell } from "../../functions/worksheet/cell.ts";
import { workingText as words } from "./text.ts";

/** A named quantity as it is read: "Curve number", "80", where it stands. */
export interface Line {
  readonly label: string;
  readonly words: string;
  /** The text of the argument in the formula, or "". */
  readonly written: string;
}

export function inputLine({ label, unit, written, cells, leftOut }: WorkedInput): Line {
  if (leftOut !== null) return { label, written: "", words: `${words.leftOut}: ${"meaning" in leftOut ? leftOut.meaning : cellWords(leftOut.value, unit)}` };
  if (cells === null) return { label, written, words: words.inside };
  const [first = null] = cells;
  return { label, written, words: cells.length === 1 ? cellWords(first, unit) : seriesWords(cells, unit) };
}

export function stepLine({ label, value, unit }: { readonly label: string; readonly value: number | string; readonly unit: string }): Line {
  return { label, words: cellWords(value, unit), written: "" };
}

export function resultLine({ label, value, unit }: WorkedResult): Line {
  if (isCellError(value)) return { label, written: "", words: value.sentence === "" ? `${value.code}. ${words.fromBefore}` : value.sentence };
  return { label, words: cellWords(value, unit), written: "" };
}

/** The rows of a result that a sheet of paper takes, and how many are left in the workbook. */
export function shownResults({ results }: WorkedCall): { readonly rows: WorkedCall["results"]; readonly left: number } {
  return { rows: results.slice(0, MOST_ROWS), left: Math.max(0, results.length - MOST_ROWS) };
}

/** The whole working as plain text, a line each. */
export function workingAsText(working: Working, date: string): string {
  const { address, formula, spilledFrom, agrees, calls } = working;
  return [
    words.title(address),
    `${words.date}: ${date}`,
    `${words.shows}: ${shownWords(working)}`,
    `${words.formula}: ${formula}`,
    ...(spilledFrom === null ? [] : [words.spilledFrom(spilledFrom)]),
    ...(agrees === false ? [words.disagrees] : []),
    ...calls.flatMap((call) => ["", ...callAsText(call)]),
    "",
    words.footer,
    "",
  ].join("\n");
}

export function shownWords({ shown }: Working): string {
  return shown === null || shown === "" ? words.blank : cellWords(shown, "");
}

function callAsText(call: WorkedCall): readonly string[] {
  const { rows, left } = shownResults(call);
  return [
    call.written,
    call.summary,
    ...section(words.equation, call.equation),
    ...section(words.inputs, call.inputs.map((input) => lineAsText(inputLine(input)))),
    ...section(words.steps, call.steps.map((step) => lineAsText(stepLine(step)))),
    ...section(words.result, [...rows.flatMap((row) => row.map((result) => lineAsText(resultLine(result)))), ...(left === 0 ? [] : [words.moreRows(left)])]),
    ...section(words.cautions, call.cautions),
    ...section(words.sources, call.sources.map(citationText)),
  ];
}

function section(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [title, ...lines.map((line) => `  ${line}`)];
}

function lineAsText({ label, words: said, written }: Line): string {
  return written === "" || written === said ? `${label}: ${said}` : `${label}: ${said}   [${written}]`;
}

function seriesWords(cells: readonly Cell[], unit: string): string {
  const listed = cells.slice(0, MOST_CELLS).map((cell) => cellWords(cell, "")).join(", ");
  const left = cells.length - MOST_CELLS;
  const series = left > 0 ? `${listed}, ${words.more(left)}` : listed;
  return unit === "" ? series : `${series} (${unit})`;
}

function cellWords(cell: Cell, unit: string): string {
  if (cell === null || cell === "") return words.notGiven;
  if (isCellError(cell)) return cell.code;
  if (typeof cell === "boolean") return String(cell).toUpperCase();
  if (typeof cell === "string") return cell;
  const number = numberWords(cell);
  return unit === "" ? number : `${number} ${unit}`;
}

/** Enough digits to follow by hand, without the noise of the machine's last ones. */
function numberWords(value: number): string {
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-4 || size >= 1e9)) return value.toPrecision(6);
  return value.toLocaleString("en-US", { maximumSignificantDigits: Math.max(6, Math.ceil(Math.log10(size + 1))) });
}

const MOST_CELLS = 60;
const MOST_ROWS = 24;
