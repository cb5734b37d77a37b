import { largestOf } from "../../functions/extremes.ts";
import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { nearestKeys } from "../../functions/worksheet/calling/nearest-keys.ts";
import { orList, quoted } from "../../functions/worksheet/calling/sentences.ts";
import type { WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";
import { encodingNamed, USUAL_ENCODING } from "./decoded.ts";
import { Refusal } from "./refusal.ts";

export const FORMATS = ["csv", "ndjson"] as const;

export interface BatchOptions {
  readonly fn: WorksheetFunction;
  readonly format: (typeof FORMATS)[number];
  /** Of a stream that has no line of them; its output has none either. */
  readonly headings?: readonly string[];
  /** Argument to a heading, or to "#3", the third column. */
  readonly columns: ReadonlyMap<string, string>;
  /** Argument to what every row gets. */
  readonly values: ReadonlyMap<string, string>;
  /** Argument to a file whose cells every row gets. */
  readonly files: ReadonlyMap<string, string>;
  /** Of the bytes that come in; what goes out is UTF-8. */
  readonly encoding: string;
  /** Threads that compute. */
  readonly workers: number;
}

export const HELP = `node soakbook-batch.mjs FUNCTION [options] < rows > rows

Computes a Soakbook function for every row of a stream: CSV by default, or one JSON object a line. Rows keep their order
and their columns; results come after them, and last an Error column, with a sentence where a row has no answer. Columns
and JSON keys of the stream go through unchanged: where one bears a name of ours, ours has the function's name added. Cells
beyond the headings come after the Error column. However long the stream, memory stays the same.

  --format csv|ndjson      what comes in and goes out (csv)
  --column NAME=HEADING    where an argument stands; NAME=#3 is the third column. Without it, an argument stands under
                           its own name or label, in any case
  --value NAME=VALUE       the same value for every row, such as --value units=metric
  --file NAME=PATH         the same cells for every row, out of a CSV file: a rain record, a table
  --headings A,B,C         the stream has no line of headings, and these are its columns; the output has none either
  --encoding NAME          what the stream and the files are written in, such as windows-1252 or utf-16le (utf-8); what comes
                           out is UTF-8
  --workers N              threads that compute; one for each core, 4 at most, if left out. The output is the same
  --list                   every function
  --help                   this; after a function, its arguments and results

A cell that is itself a list has its parts apart by semicolons in CSV and is an array in JSON. A function that answers
with a table gives a line for each of its rows. Many processes, with the same bytes out as from one:

  tail -n +2 parcels.csv | parallel --pipe -k node soakbook-batch.mjs SITEDESIGN \\
    --workers 1 --headings parcel,roof,rate --column contributingArea=roof --column testedRate=rate

GNU parallel parts a stream at line ends, so keep line breaks out of its quoted cells.
`;

/** What the words of the command line ask for: a batch, or words to print. */
export function optionsFrom(words: readonly string[]): BatchOptions | { readonly print: string } {
  const { values, positionals } = parsed(words);
  if (values.list === true) return { print: catalogue.map(({ name, summary }) => `${name.padEnd(16)}${summary}\n`).join("") };
  const [name, ...more] = positionals;
  if (name === undefined) {
    if (values.help === true) return { print: HELP };
    throw new Refusal("Name a function, such as SITEDESIGN. --list shows all, --help how to use them.");
  }
  if (more.length > 0)
    throw new Refusal(`One function at a time: ${quoted(more.join(" "))} is one word too many. Put quotes around a heading with spaces.`);
  const fn = functionNamed(name);
  if (values.help === true) return { print: helpFor(fn) };
  const format = FORMATS.find((known) => known === values.format);
  if (format === undefined) throw new Refusal(`Format must be ${orList(FORMATS)}; it is ${quoted(values.format ?? "")}.`);
  if (format === "ndjson" && values.headings !== undefined) throw new Refusal("JSON objects name their own values: --headings is for CSV.");
  const options = {
    columns: pairs("column", values.column, fn),
    values: pairs("value", values.value, fn),
    files: pairs("file", values.file, fn),
  };
  const encoding = encodingNamed(values.encoding ?? USUAL_ENCODING);
  const workers = workersFrom(values.workers);
  refuseTwice(options);
  return { fn, format, ...(values.headings === undefined ? {} : { headings: values.headings.split(",") }), ...options, encoding, workers };
}

function parsed(words: readonly string[]) {
  try {
    const several = { type: "string", multiple: true } as const;
    return parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        format: { type: "string", default: "csv" },
        headings: { type: "string" },
        column: several,
        value: several,
        file: several,
        encoding: { type: "string" },
        workers: { type: "string" },
        list: { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
  } catch (error) {
    throw new Refusal(error instanceof Error ? error.message : String(error));
  }
}

function workersFrom(typed: string | undefined): number {
  if (typed === undefined) return Math.min(availableParallelism(), MOST_UNASKED_WORKERS);
  const workers = Number(typed);
  if (Number.isInteger(workers) && workers >= 1 && workers <= MOST_WORKERS) return workers;
  throw new Refusal(`Workers must be a whole number from 1 to ${MOST_WORKERS}; it is ${quoted(typed)}.`);
}

const MOST_WORKERS = 256;
/** Each takes some 60 MB. */
const MOST_UNASKED_WORKERS = 4;

export function functionNamed(typed: string): WorksheetFunction {
  const name = typed.toUpperCase().replace(/^SOAK\./, "");
  const found = catalogue.find((fn) => fn.name === name);
  if (found !== undefined) return found;
  const nearest = nearestKeys(
    name,
    catalogue.map((fn) => fn.name),
  );
  throw new Refusal(`There is no function ${quoted(typed)}. The nearest are ${orList(nearest, "and")}.`);
}

function pairs(option: string, typed: readonly string[] | undefined, fn: WorksheetFunction): ReadonlyMap<string, string> {
  return new Map(
    (typed ?? []).map((text): [string, string] => {
      const equals = text.indexOf("=");
      if (equals < 1) throw new Refusal(`--${option} takes an argument's name, an equals sign and the rest; it is ${quoted(text)}.`);
      return [argumentNamed(text.slice(0, equals), fn), text.slice(equals + 1)];
    }),
  );
}

function argumentNamed(typed: string, fn: WorksheetFunction): string {
  const keys = fn.parameters.map(({ key }) => key);
  const found = keys.find((key) => key.toLowerCase() === typed.trim().toLowerCase());
  if (found === undefined) throw new Refusal(`${fn.name} has no argument ${quoted(typed)}: it has ${orList(keys, "and")}.`);
  return found;
}

function refuseTwice(options: Readonly<Record<string, ReadonlyMap<string, string>>>): void {
  const named = Object.values(options).flatMap((map) => [...map.keys()]);
  const twice = named.find((key, place) => named.indexOf(key) !== place);
  if (twice !== undefined)
    throw new Refusal(`Argument ${quoted(twice)} is given twice: as a column, a value or a file, but not as two of them.`);
}

function helpFor({ name, summary, parameters, result }: WorksheetFunction): string {
  const width = largestOf(parameters.map(({ key }) => key.length)) + 2;
  const takes = parameters.map(
    ({ key, description, optional }) => `  ${key.padEnd(width)}${description}${optional ? " May be left out." : ""}\n`,
  );
  const gives = result.values.map(({ label, units }) => `  ${label}${units === undefined ? "" : `, ${units.us} or ${units.metric}`}\n`);
  return `${name}: ${summary}\n\nTakes\n${takes.join("")}\nGives${result.shape === "table" ? ", in as many rows as it finds" : ""}\n${gives.join("")}`;
}
