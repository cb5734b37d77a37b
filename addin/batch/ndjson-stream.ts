import type { Readable } from "node:stream";
import type { Cell, CellInput } from "../../functions/worksheet/calling/cell.ts";
import type { WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";
import { sourcesInJson } from "./argument-sources.ts";
import { inputFromJson } from "./cells.ts";
import { computedRows, type RowAnswer } from "./computed-rows.ts";
import type { BatchOptions } from "./options.ts";
import { decoded } from "./decoded.ts";
import { freeName } from "./own-names.ts";
import { Refusal } from "./refusal.ts";
import { inBatches, type OpenStream, type StreamRow, type StreamWork } from "./stream.ts";

const LONGEST_LINE = 16_777_216;

interface JsonRow {
  /** As it came, without the spaces around it. */
  readonly line: string;
  readonly given: Readonly<Record<string, unknown>>;
  readonly fault: string;
}

/** A stream of one JSON object a line, each with its `result` and, where something is wrong, its `error`. */
export function openNdjson(input: Readable, options: BatchOptions): OpenStream {
  const { fn, columns } = options;
  const headings = fn.parameters.map(({ key }) => columns.get(key) ?? key);
  return {
    head: "",
    batches: inBatches(rowsOf(decoded(input, options.encoding))),
    work: { functionName: fn.name, format: "ndjson", headings, sources: sourcesInJson(options) },
  };
}

async function* rowsOf(input: AsyncIterable<string>): AsyncGenerator<StreamRow> {
  for await (const line of linesOf(input)) if (line.trim() !== "") yield [line];
}

async function* linesOf(input: AsyncIterable<string>): AsyncGenerator<string> {
  let rest = "";
  for await (const chunk of input) {
    // What is left of a line is put on, not looked through again: a long line comes in hundreds of chunks.
    const [end = "", ...lines] = chunk.split("\n");
    rest += end;
    for (const begun of lines) {
      yield rest;
      rest = begun;
    }
    if (rest.length > LONGEST_LINE)
      throw new Refusal("A line of the stream is over 16 million characters long: give one JSON object a line.");
  }
  yield rest;
}

function rowFrom(typed: string): JsonRow {
  const line = typed.trim();
  try {
    const given: unknown = JSON.parse(line);
    if (typeof given === "object" && given !== null && !Array.isArray(given)) return { line, given: given as JsonRow["given"], fault: "" };
    return { line, given: {}, fault: "The line is not a JSON object." };
  } catch {
    return { line, given: {}, fault: "The line is not JSON." };
  }
}

export function computedNdjson({ headings, sources }: StreamWork, fn: WorksheetFunction, rows: readonly StreamRow[]): string {
  const batch = rows.map(([line = ""]) => rowFrom(line));
  const inputs = batch.map(({ given }) =>
    headings.map((name): CellInput => (Object.hasOwn(given, name) ? inputFromJson(given[name]) : null)),
  );
  const isCell = (row: readonly CellInput[]): boolean =>
    row.every((input, place) => fn.parameters[place]?.isRange === true || !Array.isArray(input));
  const answers = computedRows(
    fn,
    sources,
    inputs.map((row) => (isCell(row) ? row : row.map(() => null))),
  );
  return batch.map((row, place) => `${output(row, inputs[place] ?? [], answers[place], fn, isCell(inputs[place] ?? []))}\n`).join("");
}

function output(
  { line, given, fault }: JsonRow,
  inputs: readonly CellInput[],
  answer: RowAnswer | undefined,
  fn: WorksheetFunction,
  isCell: boolean,
): string {
  const listed = fn.parameters.find(({ isRange }, place) => !isRange && Array.isArray(inputs[place]));
  const error = fault !== "" ? fault : !isCell && listed !== undefined ? `${listed.label} must be a single value.` : (answer?.error ?? "");
  const rows = fault === "" && isCell ? (answer?.rows ?? []) : [];
  const named = rows.map((cells) =>
    Object.fromEntries(fn.result.values.map(({ label }, place): [string, Cell] => [label, cells[place] ?? null])),
  );
  const result = fn.result.shape === "table" ? named : (named[0] ?? null);
  const name = (ours: string) => freeName(ours, (known) => Object.hasOwn(given, known), fn.name);
  const ours = { [name("result")]: result, ...(error === "" ? {} : { [name("error")]: error }) };
  return fault === "" ? withOurs(line, given, ours) : JSON.stringify({ line, ...ours });
}

/** The line as it came, digit for digit, with ours before its last brace: to read it and write it anew would round its long numbers. */
function withOurs(line: string, given: JsonRow["given"], ours: object): string {
  const between = Object.keys(given).length === 0 ? "" : ",";
  return `${line.slice(0, -1).trimEnd()}${between}${JSON.stringify(ours).slice(1)}`;
}
