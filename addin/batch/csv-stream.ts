import type { Readable } from "node:stream";
import { parse } from "csv-parse";
import type { Cell } from "../../functions/worksheet/cell.ts";
import { quoted } from "../../functions/worksheet/sentences.ts";
import { sourcesInColumns } from "./argument-sources.ts";
import { inputFromText } from "./cells.ts";
import { computedRows, type ArgumentSource, type RowAnswer } from "./computed-rows.ts";
import type { BatchOptions } from "./options.ts";
import { Refusal } from "./refusal.ts";

/** Rows that go through one call. */
const ROWS_AT_ONCE = 500;
/** Longer than any row of a table: so a quote that is never closed does not take in the whole stream. */
const LONGEST_ROW_BYTES = 1_048_576;

/** A CSV stream with results and an Error column after its own, a piece of text for each batch of rows. */
export async function* computedCsv(input: Readable, options: BatchOptions): AsyncGenerator<string> {
  const rows = input.pipe(parse({ bom: true, relax_column_count: true, skip_empty_lines: true, max_record_size: LONGEST_ROW_BYTES }));
  input.on("error", (error) => rows.destroy(error));
  let stream = options.headings === undefined ? undefined : new CsvStream(options, options.headings);
  let batch: string[][] = [];
  for await (const row of rowsOf(rows)) {
    if (stream === undefined) {
      stream = new CsvStream(options, row);
      yield csvLine(stream.outputHeadings());
      continue;
    }
    batch.push(row);
    if (batch.length === ROWS_AT_ONCE) {
      yield stream.computed(batch);
      batch = [];
    }
  }
  if (stream === undefined) throw new Refusal("The stream is empty: it needs a line of headings, or --headings.");
  yield stream.computed(batch);
}

async function* rowsOf(rows: AsyncIterable<unknown>): AsyncGenerator<string[]> {
  try {
    for await (const row of rows) yield row as string[];
  } catch (error) {
    throw new Refusal(`The stream is not CSV that can be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

class CsvStream {
  private readonly sources: readonly ArgumentSource[];

  constructor(
    private readonly options: BatchOptions,
    private readonly headings: readonly string[],
  ) {
    const twice = headings.find((heading, place) => headings.indexOf(heading) !== place);
    if (twice !== undefined) throw new Refusal(`The heading ${quoted(twice)} stands over two columns: give each its own.`);
    this.sources = sourcesInColumns(options, headings);
  }

  outputHeadings(): readonly string[] {
    const { fn } = this.options;
    const ours = [...fn.result.values.map(({ label }) => label), "Error"];
    return [...this.headings, ...ours.map((heading) => (this.headings.includes(heading) ? `${heading} (${fn.name})` : heading))];
  }

  computed(rows: readonly (readonly string[])[]): string {
    const answers = computedRows(this.options.fn, this.sources, rows.map((row) => this.inputs(row)));
    return rows.map((row, place) => this.lines(row, answers[place])).join("");
  }

  private inputs(row: readonly string[]) {
    const inputs = new Array<ReturnType<typeof inputFromText>>(this.headings.length).fill(null);
    for (const [place, source] of this.sources.entries()) {
      const parameter = this.options.fn.parameters[place];
      if (source !== undefined && "ofRow" in source && parameter !== undefined) inputs[source.ofRow] = inputFromText(row[source.ofRow] ?? "", parameter);
    }
    return inputs;
  }

  private lines(row: readonly string[], answer: RowAnswer | undefined): string {
    const width = this.headings.length;
    const own = Array.from({ length: width }, (_, place) => row[place] ?? "");
    const blank = this.options.fn.result.values.map(() => null);
    if (row.length > width) return csvLine([...own, ...blank, `The row has ${row.length} cells under ${width} headings.`]);
    const { rows = [], error = "" } = answer ?? {};
    return (rows.length === 0 ? [blank] : rows).map((cells) => csvLine([...own, ...cells, error])).join("");
  }
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
