import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { findPlace, type Place } from "../../records/place.ts";
import { rainRecordSheet } from "../../records/rain-record.ts";
import { isBlank } from "../../records/sheet.ts";
import { absolute, addressOf, WorkbookRefused, type CellRange, type CellValue, type Workbook } from "../../workbook/port.ts";
import type { DepthUnit } from "./rain-table.ts";

export const RAIN_RECORD_NAME = rainRecordSheet.name;

/** The Rain record as it stands on its sheet. */
export interface RecordedRain {
  readonly place: Place<typeof rainRecordSheet>;
  /** The row after the last that holds anything. */
  readonly endRow: number;
  /** Rows that hold anything. */
  readonly readings: number;
  /** Day numbers with the share of the day that has passed; null where the cell holds no moment. */
  readonly firstBegan: number | null;
  readonly lastBegan: number | null;
  readonly stepMinutes: number | null;
  /** The unit of every row; null where they differ, or a row says none. */
  readonly unit: DepthUnit | null;
  readonly notMeasured: number;
  /** Of all depths, in the unit; null without one. */
  readonly total: number | null;
  /** What is wrong with the record for those who compute from it, with the first cell that shows it. */
  readonly faults: readonly RecordFault[];
  readonly depths: readonly (number | null)[];
  /** The depths, as a formula reads them. */
  readonly reference: string;
  /** What the sheet's own columns hold, row by row, to see whether anybody has changed them since. */
  readonly seen: string;
}

export type RecordFaultKind = "bad depth" | "blank depth" | "no unit" | "two units" | "bad moment" | "uneven steps";

export interface RecordFault {
  readonly kind: RecordFaultKind;
  readonly where: CellRange;
  readonly count: number;
}

/** Rejects with WorkbookRefused where a heading is gone. */
export async function readRecordedRain(workbook: Workbook): Promise<RecordedRain> {
  const [cells = []] = await workbook.readSheets([rainRecordSheet.name]);
  const found = findPlace(rainRecordSheet, cells);
  if (!("place" in found)) {
    throw new WorkbookRefused(
      `Sheet ${rainRecordSheet.name} has no column "${found.missing[0]?.heading ?? ""}", so nothing on it is read. Check the workbook to see a repair, or put the heading back.`,
    );
  }
  const { place } = found;
  const rows = rowsInUse(place, cells);
  const endRow = place.firstRow + rows.length;
  const began = rows.map((row) => row.began);
  const stepMinutes = stepOf(began);
  const units = new Set(rows.map(({ unit }) => plainKey(String(unit ?? ""))));
  const [only] = units;
  const unit = units.size === 1 && (only === "in" || only === "mm") ? only : null;
  const depths = rows.map(({ depth }) => (typeof depth === "number" && depth >= 0 ? depth : null));
  return {
    place,
    endRow,
    readings: rows.length,
    firstBegan: momentIn(began[0]),
    lastBegan: momentIn(began.at(-1)),
    stepMinutes,
    unit,
    notMeasured: rows.filter(({ depth }) => isBlank(depth)).length,
    total: unit === null ? null : depths.reduce<number>((sum, depth) => sum + (depth ?? 0), 0),
    faults: faultsOf(place, rows, stepMinutes),
    depths,
    reference: absolute(addressOf({ ...place.column("depth"), rows: Math.max(1, rows.length) })),
    seen: JSON.stringify(rows),
  };
}

/** What the sheet's own columns hold in one row. */
type RainCells = { readonly [Key in keyof typeof rainRecordSheet.columns]: CellValue };

const KEYS = Object.keys(rainRecordSheet.columns) as (keyof RainCells)[];

function rowsInUse(place: Place<typeof rainRecordSheet>, cells: readonly (readonly CellValue[])[]): readonly RainCells[] {
  const columns = KEYS.map((key) => [key, place.columnIndex(key)] as const);
  const rows = cells
    .slice(place.firstRow)
    .map((row) => Object.fromEntries(columns.map(([key, column]) => [key, row[column] ?? null])) as RainCells);
  return rows.slice(0, rows.findLastIndex((row) => KEYS.some((key) => !isBlank(row[key]))) + 1);
}

function momentIn(cell: CellValue | undefined): number | null {
  return typeof cell === "number" && cell >= 1 ? cell : null;
}

const DAY_MINUTES = 1440;

/** A tenth of a minute: closer than a spreadsheet keeps a moment. */
const SAME_MINUTES = 0.1;

/** From the first reading to the second: whether the others keep to it is looked at apart. */
function stepOf([first, second]: readonly CellValue[]): number | null {
  const [began, next] = [momentIn(first), momentIn(second)];
  if (began === null || next === null || next <= began) return null;
  return Math.round((next - began) * DAY_MINUTES * 100) / 100;
}

function faultsOf(place: Place<typeof rainRecordSheet>, rows: readonly RainCells[], stepMinutes: number | null): readonly RecordFault[] {
  const fault = (kind: RecordFaultKind, key: keyof RainCells, isWrong: (row: RainCells, index: number) => boolean): RecordFault[] => {
    const wrong = rows.flatMap((row, index) => (isWrong(row, index) ? [index] : []));
    const [first] = wrong;
    return first === undefined ? [] : [{ kind, where: place.cell(place.firstRow + first, key), count: wrong.length }];
  };
  const unitOf = ({ unit }: RainCells) => plainKey(String(unit ?? ""));
  const isUneven = ({ began }: RainCells, index: number) => {
    const before = rows[index - 1]?.began;
    return (
      typeof began === "number" &&
      typeof before === "number" &&
      Math.abs((began - before) * DAY_MINUTES - (stepMinutes ?? Infinity)) > SAME_MINUTES
    );
  };
  return [
    ...fault("bad moment", "began", ({ began }) => momentIn(began) === null),
    ...fault("uneven steps", "began", isUneven),
    ...fault("bad depth", "depth", ({ depth }) => !isBlank(depth) && !(typeof depth === "number" && depth >= 0)),
    ...fault("blank depth", "depth", ({ depth }) => isBlank(depth)),
    ...fault("no unit", "unit", (row) => unitOf(row) !== "in" && unitOf(row) !== "mm"),
    ...fault("two units", "unit", (row, index) => index > 0 && rows[0] !== undefined && unitOf(row) !== unitOf(rows[0])),
  ];
}
