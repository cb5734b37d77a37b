import type { Readable } from "node:stream";
import { parse, type Parser } from "csv-parse";
import type { Cell } from "../../functions/worksheet/calling/cell.ts";
import { quoted } from "../../functions/worksheet/calling/sentences.ts";
import type { WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";
import { sourcesInColumns } from "./argument-sources.ts";
import { inputFromText } from "./cells.ts";
import { computedRows, type RowAnswer } from "./computed-rows.ts";
import type { BatchOptions } from "./options.ts";
import { decoded } from "./decoded.ts";
import { freeName } from "./own-names.ts";
import { Refusal } from "./refusal.ts";
import { inBatches, type OpenStream, type StreamRow, type StreamWork } from "./stream.ts";

/** Longer than any row of a table: so a quote that is never closed does not take in the whole stream. */
const LONGEST_ROW_BYTES = 1_048_576;

/** A CSV stream up to its headings; its output has results and an Error column after its own. */
export async function openCsv(input: Readable, options: BatchOptions): Promise<OpenStream> {
  const rows = rowsOf(
    decoded(input, options.encoding),
    parse({ bom: true, relax_column_count: true, skip_empty_lines: true, max_record_size: LONGEST_ROW_BYTES }),
  );
  const headings = options.headings ?? (await rows.next()).value;
  if (headings === undefined) throw new Refusal("The stream is empty: it needs a line of headings, or --headings.");
  const twice = headings.find((heading, place) => headings.indexOf(heading) !== place);
  if (twice !== undefined) throw new Refusal(`The heading ${quoted(twice)} stands over two columns: give each its own.`);
  return {
    head: options.headings === undefined ? csvLine(outputHeadings(headings, options.fn)) : "",
    batches: inBatches(rows),
    work: { functionName: options.fn.name, format: "csv", headings, sources: sourcesInColumns(options, headings) },
  };
}

/** Every row up to where the stream breaks: whoever iterates over the parser itself loses what it holds at that moment. */
async function* rowsOf(input: AsyncIterable<string>, parser: Parser): AsyncGenerator<StreamRow, undefined> {
  parser.on("error", () => undefined);
  let refused: Refusal | null = null;
  try {
    try {
      for await (const chunk of input) {
        const fault = new Promise<Error | null | undefined>((resolve) => parser.write(chunk, resolve));
        yield* parsedRows(parser);
        throwIfAny(await fault);
      }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      // The stream breaks off between two lines: the parser still holds the last whole one.
      refused = error;
    }
    const fault = await new Promise<Error | null | undefined>((resolve) => parser.end(resolve));
    yield* parsedRows(parser);
    throwIfAny(fault);
  } catch (error) {
    throw new Refusal(`The stream is not CSV that can be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (refused !== null) throw refused;
}

function* parsedRows(parser: Parser): Generator<StreamRow> {
  for (let row = parser.read() as StreamRow | null; row !== null; row = parser.read() as StreamRow | null) yield row;
}

function throwIfAny(fault: Error | null | undefined): void {
  if (fault !== null && fault !== undefined) throw fault;
}

function outputHeadings(headings: readonly string[], fn: WorksheetFunction): readonly string[] {
  const ours = [...fn.result.values.map(({ label }) => label), "Error"];
  return [...headings, ...ours.map((heading) => freeName(heading, (name) => headings.includes(name), fn.name))];
}

export function computedCsv({ headings, sources }: StreamWork, fn: WorksheetFunction, rows: readonly StreamRow[]): string {
  const inputs = rows.map((row) => {
    const cells = new Array<ReturnType<typeof inputFromText>>(headings.length).fill(null);
    for (const [place, source] of sources.entries()) {
      const parameter = fn.parameters[place];
      if (source !== undefined && "ofRow" in source && parameter !== undefined)
        cells[source.ofRow] = inputFromText(row[source.ofRow] ?? "", parameter);
    }
    return cells;
  });
  const answers = computedRows(fn, sources, inputs);
  return rows.map((row, place) => answeredLines(row, headings.length, fn, answers[place])).join("");
}

function answeredLines(row: StreamRow, width: number, fn: WorksheetFunction, answer: RowAnswer | undefined): string {
  const own = Array.from({ length: width }, (_, place) => row[place] ?? "");
  const blank = fn.result.values.map(() => null);
  if (row.length > width)
    return csvLine([...own, ...blank, `The row has ${row.length} cells under ${width} headings.`, ...row.slice(width)]);
  const { rows = [], error = "" } = answer ?? {};
  return (rows.length === 0 ? [blank] : rows).map((cells) => csvLine([...own, ...cells, error])).join("");
}

const NEEDS_QUOTES = /[",\r\n]/;

/** RFC 4180, with the line end of the systems such streams run on. */
export function csvLine(cells: readonly (Cell | string)[]): string {
  const texts = cells.map((cell) => {
    const text = cell === null ? "" : typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell);
    return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  });
  // A line of one blank cell would be no line at all.
  return `${texts.length === 1 && texts[0] === "" ? '""' : texts.join(",")}\n`;
}
