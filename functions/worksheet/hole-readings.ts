import { readingsWithWater, type HoleReading } from "../infiltration/drop-rate.ts";
import { invalid, isCellError, missing, type CellError } from "./calling/cell.ts";

/** A hole's readings as typed: a series of times and a series of depths that pair up cell by cell. */
export interface TypedReadings {
  readonly minutes: readonly (number | null)[];
  readonly waterDepths: readonly (number | null)[];
}

/** The readings in order, or the sentence that says which one is wrong. Pairs left blank are not there yet. */
export function readingsFrom({ minutes, waterDepths }: TypedReadings): readonly HoleReading[] | CellError {
  const readings: HoleReading[] = [];
  let before = 0;
  for (let place = 0; place < Math.max(minutes.length, waterDepths.length); place += 1) {
    const time = minutes[place] ?? null;
    const depth = waterDepths[place] ?? null;
    if (time === null && depth === null) continue;
    const here = place + 1;
    if (depth === null) return missing(`Reading ${here} has a time but no water depth.`);
    if (time === null) return missing(`Reading ${here} has a water depth but no time.`);
    const last = readings.at(-1);
    if (last === undefined) {
      if (depth === 0) return invalid(`Reading ${here} finds no water: fill the hole before the first reading.`);
    } else {
      if (time <= last.minutes) return invalid(`Reading ${here} is not later than reading ${before}.`);
      if (depth > last.waterDepthInches) {
        return invalid(`Reading ${here} stands higher than reading ${before}: water was added. Start a new series after refilling.`);
      }
    }
    readings.push({ minutes: time, waterDepthInches: depth });
    before = here;
  }
  return readings.length < 2 ? missing("A hole test needs at least two readings.") : readings;
}

/** Readings that can be used for a rate: none when any is wrong. */
export function usableReadings(typed: TypedReadings): readonly HoleReading[] {
  const readings = readingsFrom(typed);
  return isCellError(readings) ? [] : readingsWithWater(readings);
}
