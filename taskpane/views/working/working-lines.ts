import type { WorkedCall, WorkedInput, WorkedResult, Working } from "../../../addin/actions/working/show-working.ts";
import { citationText } from "../../../functions/published/source.ts";
import { isCellError, type Cell } from "../../../functions/worksheet/calling/cell.ts";
import { workingText as words } from "./text.ts";

/** A named quantity as it is read: "Curve number", "80", where it stands. */
export interface Line {
  readonly label: string;
  readonly words: string;
  /** The text of the argument in the formula, or "". */
  readonly written: string;
}

export function inputLine({ label, unit, written, cells, leftOut }: WorkedInput): Line {
  if (leftOut !== null)
    return { label, written: "", words: `${words.leftOut}: ${"meaning" in leftOut ? leftOut.meaning : cellWords(leftOut.value, unit)}` };
  if (cells === null) return { label, written, words: words.inside };
  const [first = null] = cells;
  return { label, written, words: cells.length === 1 ? cellWords(first, unit) : seriesWords(cells, unit) };
}

export function stepLine({ label, value, unit }: { readonly label: string; readonly value: number | string; readonly unit: string }): Line {
  return { label, words: cellWords(value, unit), written: "" };
}

function resultLine({ label, value, unit }: WorkedResult): Line {
  if (isCellError(value))
    return { label, written: "", words: value.sentence === "" ? `${value.code}. ${words.fromBefore}` : value.sentence };
  return { label, words: cellWords(value, unit), written: "" };
}

/** A row of results; a sentence that stands in every cell of it is said once. */
export function resultLines(row: readonly WorkedResult[]): readonly Line[] {
  const lines = row.map(resultLine);
  const [first] = lines;
  const isOneSentence =
    first !== undefined &&
    lines.length > 1 &&
    row.every(({ value }) => isCellError(value)) &&
    lines.every((line) => line.words === first.words);
  return isOneSentence ? [{ ...first, label: words.noResult }] : lines;
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
    ...section(
      words.inputs,
      call.inputs.map((input) => lineAsText(inputLine(input))),
    ),
    ...section(
      words.steps,
      call.steps.map((step) => lineAsText(stepLine(step))),
    ),
    ...section(words.result, [...rows.flatMap((row) => resultLines(row).map(lineAsText)), ...(left === 0 ? [] : [words.moreRows(left)])]),
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

/** A long run of blanks is counted, so that series which pair up cell by cell still do on paper. */
function seriesWords(cells: readonly Cell[], unit: string): string {
  const listed: string[] = [];
  let place = 0;
  while (place < cells.length && listed.length < MOST_WORDS) {
    const cell = cells[place] ?? null;
    const blanks = blanksFrom(cells, place);
    listed.push(blanks > 1 ? words.blanks(blanks) : cellWords(cell, ""));
    place += Math.max(1, blanks);
  }
  const series = [...listed, ...(place < cells.length ? [words.more(cells.length - place)] : [])].join(", ");
  return unit === "" ? series : `${series} (${unit})`;
}

function blanksFrom(cells: readonly Cell[], place: number): number {
  const end = cells.findIndex((cell, at) => at >= place && cell !== null && cell !== "");
  return (end === -1 ? cells.length : end) - place;
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

const MOST_WORDS = 60;
const MOST_ROWS = 24;
