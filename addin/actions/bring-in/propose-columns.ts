/** Which column of a list is probably which of ours: by what it is called, and by what stands in it. A person decides. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { isBlank } from "../../records/sheet.ts";
import type { CellValue } from "../../workbook/port.ts";
import { headingWords, inputKeys, namesOf, type ListTarget } from "./known-columns.ts";
import type { ListTable } from "./list-table.ts";
import { LIST_UNITS, unitInHeading, unitOfColumn, type ListUnit } from "./list-units.ts";
import { decimalMarkOf, kindOf, takenCell } from "./taken-cell.ts";

/** Where a column of the list goes: to one of ours, to a column of their own, nowhere, or to find the yard by its address. */
export type Destination =
  | { readonly kind: "ours"; readonly key: string; readonly unit?: string }
  | { readonly kind: "own" }
  | { readonly kind: "left out" }
  | { readonly kind: "address of the yard" };

const ROWS_LOOKED_AT = 200;
const SAME_NAME = 4;
const NAME_INSIDE = 2;
const FITTING_CONTENT = 1;
const ENOUGH = 2;
/** Of the cells that hold something. */
const MOST_OF_THEM = 0.6;

export function proposedColumns(target: ListTarget, table: ListTable): readonly Destination[] {
  const columns = table.headings.map((heading, at) => ({
    heading,
    cells: table.rows.slice(0, ROWS_LOOKED_AT).flatMap(({ cells }) => (isBlank(cells[at] ?? null) ? [] : [cells[at] ?? null])),
  }));
  const scored = columns
    .flatMap(({ heading, cells }, column) =>
      inputKeys(target.sheet).map((key) => ({ column, key, score: scoreOf(target, key, heading, cells) })),
    )
    .filter(({ score }) => score >= ENOUGH)
    .sort((one, other) => other.score - one.score);
  const found = new Map<number, string>();
  for (const { column, key } of scored) if (!found.has(column) && ![...found.values()].includes(key)) found.set(column, key);
  const hasSiteId = [...found.values()].includes("siteId");
  return columns.map(({ heading, cells }, column): Destination => {
    const key = found.get(column);
    if (key !== undefined) return { kind: "ours", key, ...unitOf(target, key, heading) };
    if (target.ofYards && !hasSiteId && (isAddressHeading(heading) || isAddresses(cells))) return { kind: "address of the yard" };
    return cells.length === 0 ? { kind: "left out" } : { kind: "own" };
  });
}

function scoreOf(target: ListTarget, key: string, heading: string, cells: readonly CellValue[]): number {
  const words = headingWords(heading);
  const names = namesOf(target, key).filter((name) => name !== "");
  const name = names.includes(words) ? SAME_NAME : names.some((each) => ` ${words} `.includes(` ${each} `)) ? NAME_INSIDE : 0;
  const fits = fitsContent(target, key, cells);
  if (fits === "never") return 0;
  if (name === 0 && key === "address" && isAddresses(cells)) return ENOUGH;
  // A column of words fits anything; one of few choices, or of dates, says by itself what it is.
  const byContent = fits === "well" ? FITTING_CONTENT : 0;
  return name === 0 ? byContent * ownContent(target, key) : name + byContent;
}

/** How much the content alone says: only of lists of choices that nothing else looks like. */
function ownContent({ sheet }: ListTarget, key: string): number {
  const choices = sheet.columns[key]?.choices ?? [];
  return choices.length > 2 && choices.some((choice) => choice.length > 3) ? ENOUGH : 0;
}

function fitsContent({ sheet }: ListTarget, key: string, cells: readonly CellValue[]): "well" | "maybe" | "never" {
  const column = sheet.columns[key];
  if (column === undefined || cells.length === 0) return "maybe";
  const kind = kindOf(column);
  if (kind === "words") return "maybe";
  const reading = { system: "us", unit: undefined, dateOrder: "month first", decimalMark: decimalMarkOf(cells) } as const;
  const taken = cells.filter((cell) => "value" in takenCell(column, cell, reading)).length / cells.length;
  if (kind === "number" && taken < MOST_OF_THEM) return cells.some((cell) => /\d/.test(String(cell))) ? "maybe" : "never";
  return taken >= MOST_OF_THEM ? "well" : kind === "date" ? "never" : "maybe";
}

function unitOf({ sheet }: ListTarget, key: string, heading: string): { readonly unit?: string } {
  const own = unitOfColumn(sheet.columns[key]?.heading ?? "", "us");
  const named = unitInHeading(heading);
  return own === undefined || named === undefined || named.dimension !== own.dimension ? {} : { unit: named.name };
}

/** The units that a person may say a column of the list is in; none where ours has no unit. */
export function unitsFor({ sheet }: ListTarget, key: string): readonly ListUnit[] {
  const own = unitOfColumn(sheet.columns[key]?.heading ?? "", "us");
  return own === undefined ? [] : LIST_UNITS.filter(({ dimension }) => dimension === own.dimension);
}

function isAddressHeading(heading: string): boolean {
  return /^(?:(?:street|site|property|yard) )?address$|^street$|^property$/.test(headingWords(heading));
}

const STREET = /^\d+[a-z]?\s+\p{L}|\p{L}\s+\d+[a-z]?$/iu;
const STREET_WORD = /\b(?:st|street|ave|avenue|rd|road|ln|lane|dr|drive|ct|court|way|row|blvd|place|pl|terrace|close|hill)\b/i;

function isAddresses(cells: readonly CellValue[]): boolean {
  const addresses = cells.filter((cell) => typeof cell === "string" && STREET.test(cell.trim()) && STREET_WORD.test(cell));
  return cells.length > 0 && addresses.length >= MOST_OF_THEM * cells.length;
}

/** By which an address is found again: how it is written otherwise does not count. */
export function addressKey(address: CellValue): string {
  return plainKey(String(address ?? "")).replace(/[.,]/g, "");
}
