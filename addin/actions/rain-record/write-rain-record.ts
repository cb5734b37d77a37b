import { MOST_READINGS, rainRecordSheet } from "../../records/rain-record.ts";
import { WorkbookRefused, type CellValue, type ValueWrite, type Workbook } from "../../workbook/port.ts";
import { growSheets } from "../workbook/grow-sheet.ts";
import { nobodyWaits } from "../program/progress.ts";
import { writeWhole } from "../program/long-write.ts";
import { unlogged } from "../program/unlogged.ts";
import type { Remark, RainSeries } from "./rain-series.ts";
import { readRecordedRain, type RecordedRain } from "./recorded-rain.ts";

/** "replace" puts the series in place of what stands there; "add" puts what is newer below it. */
export type WayOfWriting = "replace" | "add";

const DAY_MINUTES = 1440;

/** Why a series cannot be added below a record, or how much of it is newer than the record. */
export type Addition =
  | { readonly newer: number; readonly between: number }
  | { readonly why: "step" | "unit" | "nothing newer" | "not in step" | "too long" };

/** How a series goes on from a record: only what begins after the record's last reading is added. */
export function additionTo(present: RecordedRain, series: RainSeries, mostReadings = MOST_READINGS): Addition {
  if (present.unit !== series.unit) return { why: "unit" };
  if (present.lastBegan === null || (present.stepMinutes !== null && present.stepMinutes !== series.stepMinutes)) return { why: "step" };
  const stepsOn = (series.beganMinutes - present.lastBegan * DAY_MINUTES) / series.stepMinutes;
  if (Math.abs(stepsOn - Math.round(stepsOn)) * series.stepMinutes > 0.1) return { why: "not in step" };
  const known = Math.max(0, 1 - Math.round(stepsOn));
  const newer = series.depths.length - known;
  const between = Math.max(0, Math.round(stepsOn) - 1);
  if (newer <= 0) return { why: "nothing newer" };
  return present.readings + between + newer > mostReadings ? { why: "too long" } : { newer, between };
}

/** About as many as the spreadsheet takes within seconds. */
export const ROWS_AT_A_TIME = 10_000;

/**
 * Writes the series onto the Rain record, piece by piece, as one change that an undo takes back whole. Rejects with
 * WorkbookRefused, and writes nothing, where the record has changed since it was shown.
 */
export async function writeRainRecord(
  workbook: Workbook,
  series: RainSeries,
  way: WayOfWriting,
  gauge: string,
  shown: RecordedRain,
  progress = nobodyWaits,
): Promise<void> {
  const present = await readRecordedRain(workbook);
  if (present.seen !== shown.seen)
    throw new WorkbookRefused(
      `The sheet ${rainRecordSheet.name} has changed since it was shown here, so nothing was written. Look at what stands there now, and write again.`,
    );
  const { row, rows, columns } = way === "add" ? added(present, series, gauge) : inPlaceOf(present, series, gauge);
  const rowsInAll = row + rows - present.place.firstRow;
  if (rowsInAll > rainRecordSheet.rows) await growSheets(unlogged(workbook), new Map([[rainRecordSheet, rowsInAll]]));
  // Pieces of one size: a short one at the end would stand on the Change log cell by cell.
  const size = Math.ceil(rows / Math.ceil(rows / ROWS_AT_A_TIME));
  await writeWhole(
    workbook,
    { count: Math.ceil(rows / size), piece: (index) => columns(index * size, Math.min((index + 1) * size, rows)) },
    progress,
  );
}

type Key = keyof typeof rainRecordSheet.columns;

/** What is to stand on the sheet from a row on, to be had piece by piece: one write a column. */
interface Lines {
  readonly row: number;
  readonly rows: number;
  readonly columns: (from: number, until: number) => readonly ValueWrite[];
}

function inPlaceOf({ place, readings }: RecordedRain, series: RainSeries, gauge: string): Lines {
  return linesFrom(place.firstRow, series, gauge, 0, 0, Math.max(readings, series.depths.length), { place });
}

function added(present: RecordedRain, series: RainSeries, gauge: string): Lines {
  const addition = additionTo(present, series, Infinity);
  if ("why" in addition) throw new WorkbookRefused("Nothing was written: these readings do not go on from the record that stands there.");
  const { newer, between } = addition;
  return linesFrom(present.endRow, series, gauge, series.depths.length - newer, between, between + newer, present);
}

/** From a row on: `between` blank steps first, then the series from a place on, then blank cells. */
function linesFrom(
  row: number,
  series: RainSeries,
  gauge: string,
  from: number,
  between: number,
  rows: number,
  { place }: Pick<RecordedRain, "place">,
): Lines {
  const { depths, remarks, unit, beganMinutes, stepMinutes } = series;
  const count = between + depths.length - from;
  const placeOf = (index: number) => index - between + from;
  const held: Readonly<Record<Key, (place: number) => CellValue>> = {
    began: (at) => (beganMinutes + at * stepMinutes) / DAY_MINUTES,
    depth: (at) => (at < from ? null : (depths[at] ?? null)),
    unit: () => unit,
    gauge: () => (gauge === "" ? null : gauge),
    note: (at) => (at < from ? WORDS["no reading"] : remarkWords(remarks.get(at))),
  };
  const columns = (first: number, until: number) =>
    (Object.keys(held) as Key[]).map(
      (key): ValueWrite => ({
        range: { ...place.cell(row + first, key), rows: until - first },
        values: Array.from({ length: until - first }, (_, index) => [first + index < count ? held[key](placeOf(first + index)) : null]),
      }),
    );
  return { row, rows, columns };
}

const WORDS: Readonly<Record<Remark, string>> = {
  trace: "trace",
  "not measured": "not measured",
  "no reading": "no reading in the file",
  "taken as dry": "not measured, taken as dry",
};

function remarkWords(remark: Remark | undefined): string | null {
  return remark === undefined ? null : WORDS[remark];
}
