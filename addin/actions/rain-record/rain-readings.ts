import { decimalMarkOf, readDepth, type DecimalMark, type WrittenDepth } from "./depth-reading.ts";
import { minutesOf, orderOf, readMoment, type DateOrder, type WrittenMoment } from "./moment-reading.ts";
import type { RainColumns, RainTable } from "./rain-table.ts";

/** One line of the file. */
export interface RainReading {
  readonly line: number;
  /** Since a spreadsheet's day 0, by the clock of the file. */
  readonly minutes: number;
  /** Null where nothing was measured. */
  readonly depth: number | null;
  readonly isTrace: boolean;
}

/** A line that could not be read, and what stands there. */
export interface LeftOut {
  readonly line: number;
  readonly words: string;
}

export interface ReadReadings {
  /** By time; readings of one time as they stand in the file. */
  readonly readings: readonly RainReading[];
  /** "open": only a person can say; "both": some dates can only be the one and some only the other. */
  readonly dateOrder: DateOrder | "open" | "both";
  /** Some dates have day and month in figures, and the year last. */
  readonly hasOpenDates: boolean;
  readonly hasTimes: boolean;
  /** All times carry their distance from Greenwich, and this is the least of them: standard time. */
  readonly standardOffsetMinutes: number | null;
  readonly decimalMark: DecimalMark;
  readonly badDates: readonly LeftOut[];
  readonly badDepths: readonly LeftOut[];
  /** Lines with a cell beyond the headings, whose depth is not believed: a decimal comma in a file that is parted by commas looks like this. */
  readonly tooWide: readonly LeftOut[];
  readonly traces: number;
  /** How often each word stands for "not measured"; "" for blank cells. */
  readonly codes: ReadonlyMap<string, number>;
  readonly wasSorted: boolean;
}

/** Reads dates and depths line by line, with the order of day and month that a person chose where the file leaves it open. */
export function readReadings(
  table: RainTable,
  columns: { readonly [Key in keyof RainColumns]: number | null },
  chosenOrder: DateOrder | null,
): ReadReadings {
  const { date, time, depth } = columns;
  const cellOf = (cells: readonly string[], column: number | null) => (column === null ? "" : (cells[column] ?? ""));
  const moments = table.rows.map(({ cells }) => readMoment(cellOf(cells, date), time === null ? null : cellOf(cells, time)));
  const dateOrder = orderOf(moments);
  const order = dateOrder === "open" ? (chosenOrder ?? "month first") : dateOrder === "day first" ? "day first" : "month first";
  const decimalMark = decimalMarkOf(table.rows.map(({ cells }) => cellOf(cells, depth)));
  const standardOffsetMinutes = standardOffset(moments);
  const readings: RainReading[] = [];
  const [badDates, badDepths, tooWide]: [LeftOut[], LeftOut[], LeftOut[]] = [[], [], []];
  const codes = new Map<string, number>();
  let traces = 0;
  table.rows.forEach(({ line, cells }, index) => {
    const moment = moments[index] ?? null;
    const minutes = moment === null ? null : standardMinutes(moment, order, standardOffsetMinutes);
    if (minutes === null) return void badDates.push({ line, words: [cellOf(cells, date), cellOf(cells, time)].join(" ").trim() });
    const words = cellOf(cells, depth);
    const isTooWide = cells.slice(table.headings.length).some((cell) => cell !== "");
    if (isTooWide) tooWide.push({ line, words: cells.join(" ") });
    const read: WrittenDepth = isTooWide ? { kind: "unreadable" } : readDepth(words, decimalMark);
    if (read.kind === "unreadable" && !isTooWide) badDepths.push({ line, words });
    if (read.kind === "not measured") codes.set(read.code, (codes.get(read.code) ?? 0) + 1);
    if (read.kind === "trace") traces += 1;
    readings.push({
      line,
      minutes,
      depth: read.kind === "depth" ? read.depth : read.kind === "trace" ? 0 : null,
      isTrace: read.kind === "trace",
    });
  });
  const wasSorted = readings.every(({ minutes }, index) => index === 0 || minutes >= (readings[index - 1]?.minutes ?? minutes));
  return {
    readings: wasSorted ? readings : readings.toSorted((one, other) => one.minutes - other.minutes),
    dateOrder,
    hasOpenDates: moments.some((moment) => moment?.order === "open"),
    hasTimes: moments.some((moment) => moment !== null && moment.minutes !== null),
    standardOffsetMinutes,
    decimalMark,
    badDates,
    badDepths,
    tooWide,
    traces,
    codes,
    wasSorted,
  };
}

/** Null unless every time says its distance from Greenwich. */
function standardOffset(moments: readonly (WrittenMoment | null)[]): number | null {
  let least: number | null = null;
  for (const moment of moments) {
    if (moment === null) continue;
    if (moment.offsetMinutes === null) return null;
    least = Math.min(least ?? moment.offsetMinutes, moment.offsetMinutes);
  }
  return least;
}

function standardMinutes(moment: WrittenMoment, order: DateOrder, standardOffsetMinutes: number | null): number | null {
  const minutes = minutesOf(moment, order);
  return minutes === null || standardOffsetMinutes === null ? minutes : minutes - (moment.offsetMinutes ?? 0) + standardOffsetMinutes;
}
