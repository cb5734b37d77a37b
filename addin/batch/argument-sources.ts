import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import type { CellInput } from "../../functions/worksheet/calling/cell.ts";
import type { Parameter } from "../../functions/worksheet/calling/parameters.ts";
import { orList, quoted } from "../../functions/worksheet/calling/sentences.ts";
import { cellFromText, inputFromText } from "./cells.ts";
import type { ArgumentSource } from "./computed-rows.ts";
import type { BatchOptions } from "./options.ts";
import { decodedWhole } from "./decoded.ts";
import { Refusal } from "./refusal.ts";

/** For each argument where it comes from, given the headings of a CSV stream. Refuses when a required one has no place. */
export function sourcesInColumns(options: BatchOptions, headings: readonly string[]): readonly ArgumentSource[] {
  const byPlainHeading = new Map(headings.map((heading, place) => [plain(heading), place]));
  return sourcesBy(options, headings, (parameter, asked) => {
    if (asked === undefined) return byPlainHeading.get(plain(parameter.key)) ?? byPlainHeading.get(plain(parameter.label));
    const number = /^#(\d+)$/.exec(asked)?.[1];
    const place = number === undefined ? headings.indexOf(asked) : Number(number) - 1;
    if (place >= 0 && place < headings.length) return place;
    throw new Refusal(`There is no column ${quoted(asked)} for ${parameter.key}: the stream has ${orList(headings, "and")}.`);
  });
}

/** In JSON every row may have other names, so an argument's place is its own, and its name is looked up in each row. */
export function sourcesInJson(options: BatchOptions): readonly ArgumentSource[] {
  return sourcesBy(options, undefined, (parameter) => options.fn.parameters.indexOf(parameter));
}

function sourcesBy(
  { fn, columns, values, files, encoding }: BatchOptions,
  headings: readonly string[] | undefined,
  placeOf: (parameter: Parameter, asked: string | undefined) => number | undefined,
): readonly ArgumentSource[] {
  return fn.parameters.map((parameter) => {
    const { key, optional } = parameter;
    const [value, file] = [values.get(key), files.get(key)];
    if (value !== undefined) return { same: inputFromText(value, parameter) };
    if (file !== undefined) return { same: cellsIn(file, parameter, encoding) };
    const place = placeOf(parameter, columns.get(key));
    if (place !== undefined) return { ofRow: place };
    if (optional) return undefined;
    throw new Refusal(
      `${fn.name} needs ${key}: say which column holds it with --column ${key}=HEADING. The stream has ${orList(headings ?? [], "and")}.`,
    );
  });
}

function cellsIn(path: string, parameter: Parameter, encoding: string): CellInput {
  try {
    const rows: string[][] = parse(decodedWhole(readFileSync(path), encoding), {
      bom: true,
      relax_column_count: true,
      skip_empty_lines: true,
    });
    const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
    // A series may as well lie in one row: a record of rain is then one list, and not hundreds of thousands for every worker to be handed.
    if (parameter.isRange && parameter.kind !== "cells" && width === 1) return [rows.map(([word = ""]) => cellFromText(word, parameter))];
    return rows.map((row) => Array.from({ length: width }, (_, place) => cellFromText(row[place] ?? "", parameter)));
  } catch (error) {
    throw new Refusal(`The file for ${parameter.key} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function plain(heading: string): string {
  return heading.toLowerCase().replace(/[\s_-]+/g, "");
}
