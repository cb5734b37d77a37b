import { invalid, isCellError, type Cell, type CellError } from "./calling/cell.ts";
import type { ArgumentRule } from "./calling/arguments.ts";
import { blankValue, isBlank, readerOf, refused } from "./calling/reading.ts";
import { isMissing, whyRefused } from "./calling/sentences.ts";
import { plainKey } from "./calling/typed-words.ts";
import type { UnitSystem } from "../quantities.ts";

type Table = readonly (readonly Cell[])[];

/**
 * The rows of a list that belong to each Site ID. A call asks once for every yard: the list is looked through the first
 * time alone, so that yards and rows cost what they are, and never one times the other.
 */
export function rowsOfSite(listSiteIds: Table, siteId: string): readonly number[] {
  let bySite = grouped.get(listSiteIds);
  if (bySite === undefined) {
    bySite = new Map();
    for (const [row, cells] of listSiteIds.entries()) {
      const id = siteIdIn(cells[0]);
      const rows = bySite.get(id);
      if (rows === undefined) bySite.set(id, [row]);
      else rows.push(row);
    }
    grouped.set(listSiteIds, bySite);
  }
  return bySite.get(plainKey(siteId)) ?? NONE;
}

/** A spreadsheet hands a list over anew for every call. */
const grouped = new WeakMap<Table, Map<string, number[]>>();
const NONE: readonly number[] = [];

/** An ID as it is compared, a number's too; "" where there is none. */
function siteIdIn(cell: Cell | undefined): string {
  return cell === null || cell === undefined || isCellError(cell) ? "" : plainKey(String(cell));
}

/** Columns of one list stand beside each other: as many rows each. */
export function listsDiffer(first: string, one: Table, second: string, other: Table): CellError | undefined {
  if (other.length === 0 || one.length === other.length) return undefined;
  return invalid(`${first} has ${one.length} rows and ${second} has ${other.length}: take both over the same rows.`);
}

/** One cell of a list in US units, by the rule of a single argument; a blank is its fallback, or an error that names it. */
export function readIn<Value>(rule: ArgumentRule, cell: Cell | undefined, system: UnitSystem, label: string): Value | CellError {
  const given = cell ?? null;
  if (isCellError(given)) return given;
  if (isBlank(given)) return blankValue(rule) === refused ? isMissing(label) : (blankValue(rule) as Value);
  const value = readerOf(rule, system)(given);
  return value === refused ? whyRefused(rule, given, system, label) : (value as Value);
}
