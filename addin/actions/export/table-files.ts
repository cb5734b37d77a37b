/** Every sheet of the program as a CSV file, people's own columns too, and a file that says what the columns mean. */
import { zipSync } from "fflate";
import { ownColumnsIn } from "../../records/own-columns.ts";
import { findPlace } from "../../records/place.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import type { Column } from "../../records/column.ts";
import { isErrorCode, type CellValue, type Workbook } from "../../workbook/port.ts";
import { isoDate } from "../dates.ts";
import { csvFile } from "./csv-file.ts";

type Rows = readonly (readonly (string | number | null)[])[];

const DICTIONARY = "Data dictionary";

/** As one .zip; what could not be written is said, a sentence each. */
export async function tableFiles(workbook: Workbook): Promise<{ readonly content: Uint8Array; readonly leftOut: readonly string[] }> {
  const present = new Set(await workbook.sheetNames());
  const sheets = recordSheets.filter(({ name }) => present.has(name));
  const cells = await workbook.readSheets(sheets.map(({ name }) => name));
  const files: Record<string, Uint8Array> = {};
  const leftOut: string[] = recordSheets.filter(({ name }) => !present.has(name)).map(({ name }) => `Sheet ${name} is missing.`);
  const own: Rows[] = [];
  sheets.forEach((sheet, index) => {
    const table = tableOf(sheet, cells[index] ?? []);
    if (table === null) return leftOut.push(`Sheet ${sheet.name} has lost a heading: check the workbook first.`);
    files[`${sheet.name}.csv`] = encoded(csvFile(table.rows));
    own.push(table.own.map((heading) => [sheet.name, heading, "", "", "a person's own column", "", ""]));
    return undefined;
  });
  files[`${DICTIONARY}.csv`] = encoded(csvFile([DICTIONARY_HEADINGS, ...sheets.flatMap(dictionaryOf), ...own.flat()]));
  return { content: zipSync(files), leftOut };
}

function encoded(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Rows below the headings, without blank ones: columns of ours in their own order, then theirs. */
function tableOf(sheet: Sheet, cells: readonly (readonly CellValue[])[]): { readonly rows: Rows; readonly own: readonly string[] } | null {
  const found = findPlace(sheet, cells);
  if (!("place" in found)) return null;
  const { place } = found;
  const theirs = ownColumnsIn(sheet, cells[place.headingRow] ?? []);
  const ours = Object.entries(sheet.columns).map(([key, column]) => ({ column, at: place.columnIndex(key) }));
  const wanted = [...ours, ...theirs.map(({ column }) => ({ column: null, at: column }))];
  const isInUse = (row: readonly CellValue[]) =>
    wanted.some(({ column, at }) => (column === null || column.role === "input" || isComputed(sheet)) && !isBlank(row[at] ?? null));
  return {
    rows: [
      [...ours.map(({ column }) => column.heading), ...theirs.map(({ heading }) => heading)],
      ...cells
        .slice(place.firstRow)
        .filter(isInUse)
        .map((row) => wanted.map(({ column, at }) => written(column, row[at] ?? null))),
    ],
    own: theirs.map(({ heading }) => heading),
  };
}

function isComputed({ columns }: Sheet): boolean {
  return Object.values(columns).every(({ role }) => role === "result");
}

/** A day is written as a day: who reads the file does not know how spreadsheets count. An error is no value of anything. */
function written(column: Column | null, value: CellValue): string | number | null {
  if (value === null || (typeof value === "string" && column?.role === "result" && isErrorCode(value))) return null;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  const format = column?.numberFormat ?? "";
  if (typeof value !== "number" || !/yyyy|hh/.test(format)) return value;
  const minutes = Math.round((value % 1) * MINUTES_A_DAY) % MINUTES_A_DAY;
  const time = `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
  if (!format.includes("yyyy")) return time;
  return format.includes("hh") ? `${isoDate(Math.floor(value))}T${time}` : isoDate(Math.floor(value));
}

const MINUTES_A_DAY = 24 * 60;

function two(part: number): string {
  return String(part).padStart(2, "0");
}

const DICTIONARY_HEADINGS = ["Sheet", "Column", "Unit, US yards", "Unit, metric yards", "What it is", "One of", "Meaning"];

function dictionaryOf(sheet: Sheet): Rows {
  return Object.values(sheet.columns).map((column) => {
    const [us, metric] = unitsOf(column);
    return [
      sheet.name,
      column.heading,
      us,
      metric,
      `${column.role === "input" ? "typed" : "computed"}, ${kindOf(column)}`,
      (column.choices ?? []).join("; "),
      column.note ?? MEANINGS.get(column.heading) ?? inPreface(sheet, column),
    ];
  });
}

/** What its rows are, where a column's name says the rest. */
function inPreface({ preface, name }: Sheet, { heading }: Column): string {
  const words = heading.replace(/ \([^()]*\)$/, "");
  const [about = name] = preface;
  return `${words}. ${about}.`.replace(/\.\.$/, ".");
}

/** Of columns that many sheets have. */
const MEANINGS: ReadonlyMap<string, string> = new Map([
  ["Site ID", "The yard that the row belongs to. It never changes and is never used again."],
  ["Yard", "What the program calls the yard."],
  ["Address", "Where the yard is, as people find it."],
  ["Units", "us: numbers of the row are in in, ft and sq ft. metric: in mm, m and m²."],
  ["Date", "The day on which it was done."],
  ["By", "Who did it or wrote it down."],
  ["Note", "In people's own words."],
  ["Notes", "In people's own words."],
  ["Unit", "What the quantity beside it is measured in."],
  ["Funder", "Who pays."],
]);

/** "(in | mm)" at the end of a heading: of a US yard and of a metric one. "(h)" is the same for both. */
function unitsOf({ heading, numberFormat = "" }: Column): readonly [string, string] {
  if (numberFormat.includes("yyyy") && numberFormat.includes("hh")) return ["date and time, ISO 8601", "date and time, ISO 8601"];
  if (numberFormat.includes("yyyy")) return ["date, ISO 8601", "date, ISO 8601"];
  if (numberFormat.includes("hh")) return ["time of day", "time of day"];
  const [, us = "", metric = us] = /\(([^()|]+?)(?: \| ([^()]+))?\)$/.exec(heading) ?? [];
  return [us, metric];
}

function kindOf({ choices, numberFormat, cell }: Column): string {
  if (choices !== undefined) return "a choice";
  if (numberFormat !== undefined && /yyyy|hh/.test(numberFormat)) return "a moment";
  if (numberFormat !== undefined) return "a number";
  return cell.safeParse("words that are no number").success ? "words" : "a number";
}
