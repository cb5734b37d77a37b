import type { CellValue } from "../workbook/port.ts";
import type { Column } from "./column.ts";
import { findPlace, type MissingColumn, type Place } from "./place.ts";
import { isBlank, type KeyOf, type RecordOf, type Sheet, type SheetRow, type Slip } from "./sheet.ts";

export interface SheetRecords<S extends Sheet> {
  readonly rows: readonly SheetRow<S>[];
  /** Null where a column is missing. */
  readonly place: Place<S> | null;
  readonly slips: readonly Slip[];
}

/**
 * Reads the cells of a sheet, from A1, into records. Columns are found by their headings, wherever people have moved
 * them. Rows whose input cells are all blank are no records. A heading that is nowhere is a slip and nothing is read,
 * so that one column is never taken for another.
 */
export function readRecords<S extends Sheet>(sheet: S, values: readonly (readonly CellValue[])[]): SheetRecords<S> {
  const at = findPlace(sheet, values);
  if (!("place" in at)) return { rows: [], place: null, slips: [missingColumnsSlip(sheet, at.missing)] };
  const { place } = at;
  const apart = columnsApart(place);
  if (apart.length > 0) return { rows: [], place: null, slips: apart };
  const columns = (Object.entries(sheet.columns) as [KeyOf<S>, Column][]).map(([key, column]) => ({
    key,
    at: place.columnIndex(key),
    isInput: column.role === "input",
    read: readerOf(column),
  }));
  const slips: Slip[] = [];
  const rows: SheetRow<S>[] = [];
  values.forEach((cells, row) => {
    if (row < place.firstRow || !columns.some(({ at, isInput }) => isInput && !isBlank(cells[at] ?? null))) return;
    const record: Record<string, unknown> = {};
    const raw: Record<string, CellValue> = {};
    for (const { key, at, read } of columns) {
      raw[key] = cells[at] ?? null;
      const { data, sentence } = read(raw[key]);
      record[key] = data;
      if (sentence !== null) slips.push({ where: place.cell(row, key), sentence });
    }
    rows.push({ sheet, row, record: record as RecordOf<S>, cells: raw as SheetRow<S>["cells"], at: (key) => place.cell(row, key) });
  });
  return { rows, place, slips };
}

interface ReadCell {
  readonly data: unknown;
  readonly sentence: string | null;
}

/** Columns of a hundred thousand rows hold few different values: each is checked once. */
function readerOf({ cell }: Column): (value: CellValue) => ReadCell {
  const read = new Map<CellValue, ReadCell>();
  return (value) => {
    const known = read.get(value);
    if (known !== undefined) return known;
    const { success, data = null, error } = cell.safeParse(value);
    const sentence = success ? null : (error.issues[0]?.message ?? "This cell does not hold what its column asks for.");
    const checked = { data, sentence };
    read.set(value, checked);
    return checked;
  };
}

const HEADINGS_NAMED = 4;

/** One slip however many are missing: a workbook of an earlier version lacks all that came since, and one repair brings them. */
function missingColumnsSlip(sheet: Sheet, missing: readonly MissingColumn[]): Slip {
  const named = missing.slice(0, HEADINGS_NAMED).map(({ heading }) => `"${heading}"`);
  const others = missing.length - named.length;
  const [noun, back] = missing.length === 1 ? ["column", "the heading"] : ["columns", "the headings"];
  return {
    where: missing[0]?.expectedAt ?? { sheet: sheet.name, row: 0, column: 0, rows: 1, columns: 1 },
    sentence: `Sheet ${sheet.name} has no ${noun} ${named.join(", ")}${others === 0 ? "" : ` and ${others} more`}, so nothing on it is read. Check the workbook to see a repair, or put ${back} back.`,
    isRepaired: true,
  };
}

/** Columns that must stand side by side and do not. */
function columnsApart<S extends Sheet>(place: Place<S>): Slip[] {
  const { sheet } = place;
  return (sheet.together ?? []).flatMap(([first, last]): Slip[] => {
    if (place.isTable(first, last)) return [];
    const headings = [first, last].map((key) => `"${sheet.columns[key]?.heading ?? key}"`).join(" to ");
    return [
      {
        where: place.cell(place.headingRow, first),
        sentence: `Columns ${headings} of sheet ${sheet.name} must stand side by side in their first order, because formulas read them by place. Nothing on the sheet is read until they do.`,
      },
    ];
  });
}
