/** Files as gauges, loggers and spreadsheets write them; all invented. */
import { NOTHING_CHOSEN, readRainFile, type RainChoices, type RainFile } from "../../../../addin/actions/rain-record/read-rain-file.ts";
import { readRainTable } from "../../../../addin/actions/rain-record/rain-table.ts";
import type { RainSeries } from "../../../../addin/actions/rain-record/rain-series.ts";
import { dayNumberOf, isoDate } from "../../../../addin/actions/dates.ts";

/** Reads the text with what a person chose of it. */
export function fileOf(text: string, chosen: Partial<RainChoices> = {}): RainFile {
  const table = readRainTable(text);
  if ("sentence" in table) throw new Error(table.sentence);
  return readRainFile(table, { ...NOTHING_CHOSEN, columns: table.guess, ...chosen });
}

export function seriesOf(text: string, chosen: Partial<RainChoices> = {}): RainSeries {
  const { series, open, refusal } = fileOf(text, chosen);
  if (series === null) throw new Error(`No series: ${JSON.stringify({ open, refusal })}`);
  return series;
}

/** "2026-05-04 13:30" of minutes since day 0. */
export function clock(minutes: number): string {
  const two = (part: number) => String(part).padStart(2, "0");
  const ofDay = ((minutes % 1440) + 1440) % 1440;
  return `${isoDate(Math.floor(minutes / 1440))} ${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

/** Local times of every hour from one day to another (not included), by a clock that follows summer time between two hours given in standard time. */
export function localHours(from: string, until: string, summers: readonly (readonly [from: string, until: string])[]): readonly string[] {
  const hour = (moment: string) => (dayNumberOf(moment.slice(0, 10)) ?? 0) * 24 + Number(moment.slice(11, 13));
  const spans = summers.map(([start, end]) => [hour(start), hour(end)] as const);
  const [first, last] = [hour(`${from} 00`), hour(`${until} 00`)];
  return Array.from({ length: last - first }, (_, index) => {
    const standard = first + index;
    const isSummer = spans.some(([start, end]) => standard >= start && standard < end);
    return clock((standard + (isSummer ? 1 : 0)) * 60);
  });
}
