/** A cell of somebody's list as what one of our columns holds. Text stays text whatever it says; a number loses its unit. */
import { keyAmong, plainKey, plainWords } from "../../../functions/worksheet/calling/typed-words.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import type { Column } from "../../records/column.ts";
import { isBlank } from "../../records/sheet.ts";
import type { CellValue } from "../../workbook/port.ts";
import { minutesOf, readMoment, type DateOrder } from "../rain-record/moment-reading.ts";
import { converted, unitNamed, unitOfColumn, type ListUnit } from "./list-units.ts";

export type Taken = { readonly value: CellValue } | { readonly sentence: string };

export interface Reading {
  /** The system of the yard that the row belongs to. */
  readonly system: UnitSystem;
  /** What the column of the list is measured in, where a cell does not say so itself; undefined for that of our column. */
  readonly unit: ListUnit | undefined;
  /** Null where nobody has said which of 3/4/2026 is the month. */
  readonly dateOrder: DateOrder | null;
  readonly decimalMark: "." | ",";
}

const MINUTES_A_DAY = 24 * 60;

export function takenCell(column: Column, cell: CellValue, reading: Reading): Taken {
  if (isBlank(cell)) return { value: null };
  const value = meant(column, cell, reading);
  if (typeof value === "object" && value !== null) return value;
  const checked = column.cell.safeParse(value);
  if (!checked.success) return { sentence: checked.error.issues[0]?.message ?? "It does not hold what its column asks for." };
  return { value: typeof checked.data === "string" ? checked.data : value };
}

function meant(column: Column, cell: CellValue, reading: Reading): CellValue | { readonly sentence: string } {
  const kind = kindOf(column);
  if (kind === "choice") return choiceMeant(column, String(cell));
  if (kind === "words") return typeof cell === "string" ? cell.trim() : String(cell);
  if (kind === "date") return typeof cell === "string" ? dayMeant(column, cell, reading) : cell;
  return numberMeant(column, cell, reading);
}

export function kindOf({ choices, numberFormat, cell }: Column): "choice" | "words" | "date" | "number" {
  if (choices !== undefined) return "choice";
  if (numberFormat?.includes("yyyy") === true) return "date";
  return cell.safeParse("words that are no number").success ? "words" : "number";
}

function dayMeant({ heading }: Column, words: string, { dateOrder }: Reading): CellValue | { readonly sentence: string } {
  const moment = readMoment(words.trim());
  if (moment === null) return { sentence: `${heading} "${short(words)}" is no date that can be read.` };
  if (moment.order === "open" && dateOrder === null)
    return { sentence: `${heading} "${short(words)}" may be two days: say whether the day or the month comes first.` };
  const minutes = minutesOf(moment, dateOrder ?? "month first");
  return minutes === null ? { sentence: `${heading} "${short(words)}" is in no calendar.` } : Math.floor(minutes / MINUTES_A_DAY);
}

const NUMBER = /^(?:[$€£]\s*)?([+-]?(?:\d[\d.,'\s]*\d|\d)|[.,]\d+)\s*(%|[^\d\s].*)?$/s;

function numberMeant(
  { heading }: Column,
  cell: CellValue,
  { system, unit, decimalMark }: Reading,
): CellValue | { readonly sentence: string } {
  const own = unitOfColumn(heading, system);
  if (typeof cell === "number") return unit === undefined || own === undefined ? cell : converted(cell, unit, own);
  const [, digits = "", behind = ""] = NUMBER.exec(plainWords(String(cell))) ?? [];
  // Where commas are decimal marks elsewhere in the column, this one may be either.
  if (decimalMark === "," && /^[+-]?[1-9]\d{0,2},\d{3}$/.test(digits))
    return {
      sentence: `${heading} "${short(String(cell))}" may be ${digits.replace(",", "")} or ${digits.replace(",", ".")}: write it without the comma.`,
    };
  const value = plainNumber(digits, decimalMark);
  if (value === null) return { sentence: `${heading} "${short(String(cell))}" is no number.` };
  if (behind === "") return unit === undefined || own === undefined ? value : converted(value, unit, own);
  if (behind === "%") return value / 100;
  const written = unitNamed(behind);
  if (written === undefined || own === undefined || written.dimension !== own.dimension)
    return own === undefined && !/\d/.test(behind) && written === undefined && PLAIN_UNITS.has(plainKey(behind))
      ? value
      : { sentence: `${heading} "${short(String(cell))}" has a unit that this column does not take.` };
  return converted(value, written, own);
}

/** Words behind a number that change nothing about it in a column without units. */
const PLAIN_UNITS: ReadonlySet<string> = new Set(["min", "mins", "minutes", "h", "hours", "each", "ea", "to 1", ":1"]);

/** Null where the digits are no one number: marks at wrong places, or two of the kind that ends the whole part. */
function plainNumber(digits: string, decimalMark: "." | ","): number | null {
  const thousands = decimalMark === "." ? "," : ".";
  const [whole = "", ...fractions] = digits.replace(/[\s']/g, "").split(decimalMark);
  const groups = whole.split(thousands);
  const isGrouped = groups.length === 1 || groups.slice(1).every((group) => /^\d{3}$/.test(group));
  if (digits === "" || fractions.length > 1 || !isGrouped || !/^\d*$/.test(fractions[0] ?? "")) return null;
  return Number(`${groups.join("")}.${fractions[0] ?? ""}0`);
}

/** A comma is the decimal mark of a column where some number can be read no other way. */
export function decimalMarkOf(cells: readonly CellValue[]): "." | "," {
  const texts = cells.filter((cell): cell is string => typeof cell === "string");
  const comma = texts.some((text) => /\d,(?:\d{1,2}|\d{4,})(?:\D|$)/.test(text.trim()) && !/\d\.\d/.test(text));
  const point = texts.some((text) => /\d\.(?:\d{1,2}|\d{4,})(?:\D|$)/.test(text.trim()));
  return comma && !point ? "," : ".";
}

/** Other words for what is in our lists, where there can be no doubt. */
const OTHER_WORDS: ReadonlyMap<string, string> = new Map([
  ["imperial", "us"],
  ["english", "us"],
  ["us customary", "us"],
  ["si", "metric"],
  ["y", "yes"],
  ["true", "yes"],
  ["n", "no"],
  ["false", "no"],
  ["homeowner", "owner"],
  ["own", "owner"],
  ["owns", "owner"],
  ["rent", "renter"],
  ["rents", "renter"],
  ["tenant", "renter"],
  ["rooftop", "roof"],
  ["house roof", "roof"],
  ["garage roof", "roof"],
  ["driveway", "paving"],
  ["patio", "paving"],
  ["asphalt", "paving"],
  ["concrete", "paving"],
  ["sidewalk", "paving"],
  ["passed", "pass"],
  ["failed", "fail"],
]);

function choiceMeant({ choices = [], heading }: Column, typed: string): CellValue | { readonly sentence: string } {
  const bare = plainKey(typed).replace(/^(?:hsg|group|type|soil group|class)\s+/, "");
  const other = OTHER_WORDS.get(plainKey(typed));
  const key = keyAmong(choices, typed) ?? keyAmong(choices, bare) ?? (other === undefined ? undefined : keyAmong(choices, other));
  return key ?? { sentence: `${heading} "${short(typed)}" is not in the list: ${choices.join(", ")}.` };
}

function short(words: string): string {
  return words.length > 40 ? `${words.slice(0, 39)}…` : words;
}
