/** Rows as what people typed into them, field by field, whatever column a field stands in. */
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { holeTestsSheet, minutesKey, READINGS, waterKey } from "../../records/hole-tests.ts";
import { ownColumnsIn } from "../../records/own-columns.ts";
import type { Place } from "../../records/place.ts";
import { readRecords } from "../../records/read-records.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import { visitsSheet } from "../../records/visits.ts";
import type { CellValue } from "../../workbook/port.ts";
import type { TakenSheet } from "./taken-sheets.ts";

/** By the name of the field. What is blank is not there. */
export type Fields = ReadonlyMap<string, Exclude<CellValue, null>>;

export interface TakenRow {
  /** Where it stands on its sheet. */
  readonly row: number;
  /** As IDs are compared; "" where the row has none. */
  readonly siteId: string;
  readonly key: string;
  readonly fields: Fields;
  /** The whole row as it stood on its sheet; none of a row that stands on no sheet any more. */
  readonly cells: readonly CellValue[];
}

export interface TakenRows {
  readonly place: Place;
  readonly cells: readonly (readonly CellValue[])[];
  readonly rows: readonly TakenRow[];
}

/** Whether the cell holds a formula. */
export type IsFormula = (row: number, column: number) => boolean;

/** The rows of one sheet, or why it cannot be read. */
export function takenRows(
  { sheet, knownBy }: TakenSheet,
  cells: readonly (readonly CellValue[])[],
  isFormula: IsFormula,
): TakenRows | { readonly sentence: string } {
  const { place, rows, slips } = readRecords(sheet, cells);
  if (place === null) return { sentence: slips[0]?.sentence ?? `Sheet ${sheet.name} cannot be read.` };
  const own = ownFields(sheet, cells[place.headingRow] ?? []);
  return {
    place,
    cells,
    rows: rows.map(({ row }) => {
      const at = (column: number): CellValue => cells[row]?.[column] ?? null;
      const held = inputKeys(sheet)
        // The verdict of a measured answer is worked out from the rule wherever the row stands.
        .filter((key) => !(sheet.name === visitsSheet.name && key === "verdict" && isFormula(row, place.columnIndex(key))))
        .map((key): readonly [string, CellValue] => [key, at(place.columnIndex(key))]);
      const theirs = [...own].map(([field, column]): readonly [string, CellValue] => [field, at(column)]);
      return rowOf({ sheet, knownBy }, row, apart(sheet, new Map([...held, ...theirs])), cells[row]);
    }),
  };
}

/** A row with these fields, as it is known again. */
export function rowOf(
  { knownBy }: Pick<TakenSheet, "sheet" | "knownBy">,
  row: number,
  fields: Fields,
  cells: readonly CellValue[] = [],
): TakenRow {
  const known = (key: string) => {
    const value = fields.get(key) ?? "";
    // Of a day with a time the day counts.
    return plainKey(String(typeof value === "number" && /^(?:date|due)$/.test(key) ? Math.floor(value) : value));
  };
  return { row, siteId: plainKey(String(fields.get("siteId") ?? "")), key: JSON.stringify(knownBy.map(known)), fields, cells };
}

export function inputKeys(sheet: Sheet): readonly string[] {
  return Object.entries(sheet.columns).flatMap(([key, { role }]) => (role === "input" ? [key] : []));
}

const OWN = "own ";

/** The column of each field in a column of their own. Of several with one heading each is a field. */
export function ownFields(sheet: Sheet, headings: readonly CellValue[]): ReadonlyMap<string, number> {
  const fields = new Map<string, number>();
  for (const { heading, column } of ownColumnsIn(sheet, headings)) {
    let field = OWN + heading;
    for (let again = 2; fields.has(field); again += 1) field = `${OWN}${heading} (${again})`;
    fields.set(field, column);
  }
  return fields;
}

export function isOwnField(field: string): boolean {
  return field.startsWith(OWN);
}

/** What people call the field. */
export function headingOf(sheet: Sheet, field: string): string {
  if (isOwnField(field)) return field.slice(OWN.length);
  const [, kind, minutes = ""] = READING.exec(field) ?? [];
  if (kind !== undefined) return kind === "minutes" ? `Reading at ${minutes}` : `Water at ${minutes} min`;
  return sheet.columns[field]?.heading ?? field;
}

const READING = /^(minutes|water) at (.*?)(?: again \d+)?$/;

/** The readings of a hole by their minutes, so that those of two people add up; everything else by its column. */
function apart(sheet: Sheet, held: ReadonlyMap<string, CellValue>): Fields {
  const fields = new Map<string, Exclude<CellValue, null>>();
  const put = (field: string, value: CellValue = null) => {
    if (!isBlank(value) && value !== null) fields.set(field, value);
  };
  const isReading = (key: string) => sheet.name === holeTestsSheet.name && /^(?:minutes|water)\d+$/.test(key);
  for (const [key, value] of held) if (!isReading(key)) put(key, value);
  if (sheet.name !== holeTestsSheet.name) return fields;
  const seen = new Map<string, number>();
  for (let reading = 1; reading <= READINGS; reading += 1) {
    const [minutes = null, water = null] = [held.get(minutesKey(reading)), held.get(waterKey(reading))];
    if (isBlank(minutes) && isBlank(water)) continue;
    const at = String(minutes ?? "?");
    const before = seen.get(at) ?? 0;
    seen.set(at, before + 1);
    const name = before === 0 ? at : `${at} again ${before}`;
    put(`minutes at ${name}`, minutes);
    put(`water at ${name}`, water);
  }
  return fields;
}

/** The fields by the keys of the sheet's own columns, a blank as null; null where more readings were taken than a row holds. */
export function valuesOf(sheet: Sheet, fields: Fields): Readonly<Record<string, CellValue>> | null {
  const values: Record<string, CellValue> = Object.fromEntries(inputKeys(sheet).map((key) => [key, fields.get(key) ?? null]));
  const names = new Set([...fields.keys()].flatMap((field) => (READING.test(field) ? [field.replace(/^\w+ at /, "")] : [])));
  if (names.size > READINGS) return null;
  const minutesOf = (name: string) => Number(fields.get(`minutes at ${name}`) ?? Number.POSITIVE_INFINITY);
  [...names]
    .sort((one, other) => minutesOf(one) - minutesOf(other) || 0)
    .forEach((name, index) => {
      values[minutesKey(index + 1)] = fields.get(`minutes at ${name}`) ?? null;
      values[waterKey(index + 1)] = fields.get(`water at ${name}`) ?? null;
    });
  return values;
}

/** The row with these fields changed; null empties one. */
export function withFields(row: Fields, changed: ReadonlyMap<string, CellValue>): Fields {
  const joined = new Map(row);
  for (const [field, value] of changed) {
    if (value === null) joined.delete(field);
    else joined.set(field, value);
  }
  return joined;
}

/** Files keep a moment to the millisecond and some programs fifteen digits of a number. */
const SAME_SHARE = 1e-12;

export function sameValue(one: CellValue | undefined, other: CellValue | undefined): boolean {
  if (typeof one === "number" && typeof other === "number") return Math.abs(one - other) <= SAME_SHARE * Math.abs(one);
  return (one ?? null) === (other ?? null);
}

export function sameFields(one: Fields, other: Fields): boolean {
  return one.size === other.size && [...one].every(([field, value]) => sameValue(value, other.get(field)));
}
