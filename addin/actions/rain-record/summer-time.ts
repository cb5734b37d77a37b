import type { RainReading } from "./rain-readings.ts";

/** A clock that is put forward in spring leaves out an hour, and put back in autumn tells one twice. */
export interface ClockChange {
  readonly kind: "skipped" | "doubled";
  /** When the hour that is missing or told twice begins, in minutes since day 0. */
  readonly minutes: number;
}

const DAY_MINUTES = 1440;
const HOUR_MINUTES = 60;

/** Common practice, no source: no clock goes longer than about 34 weeks without a change. */
const LONGEST_WITHOUT_CHANGE_MINUTES = 260 * DAY_MINUTES;

/**
 * The changes of a clock that follows summer time, oldest first; none where the readings do not look like one. Common
 * practice, no source: clocks change on a Sunday between midnight and four, springs and autumns take turns, and no
 * year of the record is without them.
 */
export function clockChanges(readings: readonly RainReading[], stepMinutes: number): readonly ClockChange[] {
  if (HOUR_MINUTES % stepMinutes !== 0) return [];
  const found: ClockChange[] = [];
  const timesInHour = new Map<number, number>();
  readings.forEach(({ minutes }, index) => {
    const before = readings[index - 1]?.minutes;
    if (before === undefined) return;
    if (minutes - before === stepMinutes + HOUR_MINUTES && isWhenClocksChange(before + stepMinutes))
      found.push({ kind: "skipped", minutes: before + stepMinutes });
    if (minutes !== before) return;
    const hour = Math.floor(minutes / HOUR_MINUTES) * HOUR_MINUTES;
    const repeated = (timesInHour.get(hour) ?? 0) + 1;
    timesInHour.set(hour, repeated);
    if (repeated * stepMinutes === HOUR_MINUTES && isWhenClocksChange(hour)) found.push({ kind: "doubled", minutes: hour });
  });
  const takeTurns = found.every(({ kind }, index) => kind !== found[index - 1]?.kind);
  const moments = [readings[0]?.minutes ?? 0, ...found.map(({ minutes }) => minutes), readings.at(-1)?.minutes ?? 0];
  const noneIsLeftOut = moments.every((moment, index) => moment - (moments[index - 1] ?? moment) < LONGEST_WITHOUT_CHANGE_MINUTES);
  return takeTurns && noneIsLeftOut && found.some(({ kind }) => kind === "doubled") ? found : [];
}

function isWhenClocksChange(minutes: number): boolean {
  const day = Math.floor(minutes / DAY_MINUTES);
  // Day 1 of a spreadsheet's calendar, as the years after 1900 count, was a Sunday.
  return day % 7 === 1 && minutes - day * DAY_MINUTES <= 3 * HOUR_MINUTES;
}

/** The readings by standard time all year: an hour earlier while the clock was put forward. */
export function inStandardTime(readings: readonly RainReading[], changes: readonly ClockChange[]): readonly RainReading[] {
  const seen = new Set<number>();
  const moved = readings.map((reading) => {
    const { minutes } = reading;
    const isFirst = !seen.has(minutes);
    seen.add(minutes);
    return isPutForward(minutes, isFirst, changes) ? { ...reading, minutes: minutes - HOUR_MINUTES } : reading;
  });
  return moved.sort((one, other) => one.minutes - other.minutes);
}

/** Within the hour that is told twice, the first telling is still summer time. */
function isPutForward(minutes: number, isFirst: boolean, changes: readonly ClockChange[]): boolean {
  const latest = changes.findLast((change) => change.minutes <= minutes);
  if (latest === undefined) return changes[0]?.kind === "doubled";
  if (latest.kind === "skipped") return true;
  return minutes < latest.minutes + HOUR_MINUTES && isFirst;
}
