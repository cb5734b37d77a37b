/** A hole's clock: kept as its start, so that it goes on while the pane shows something else or loads again. */
export interface Clock {
  readonly startedAtMilliseconds: number;
  readonly intervalMinutes: number;
}

/** Sandy soil falls fast and is read often; tight soil is read seldom. */
export const READING_INTERVALS_MINUTES = [5, 10, 15, 30, 60] as const;

export const USUAL_INTERVAL_MINUTES = 15;

/** To a tenth of a minute, six seconds: as near as a stick can be read. */
export function elapsedMinutes(clock: Clock, nowMilliseconds: number): number {
  return Math.round(elapsedSeconds(clock, nowMilliseconds) / 6) / 10;
}

/** "0:07", "42:07" or "1:02:07". A device clock that was set back shows the start, never a negative time. */
export function clockFace(clock: Clock, nowMilliseconds: number): string {
  const seconds = Math.floor(elapsedSeconds(clock, nowMilliseconds));
  return timeFace(seconds);
}

/** The same face for a time on the clock, such as the next reading's. */
export function minutesFace(minutes: number): string {
  return timeFace(Math.round(minutes * 60));
}

/** When the water is to be read next: one interval after the last reading, or after the start. */
export function nextReadingMinutes(clock: Clock, lastReadingMinutes: number | null): number {
  return (lastReadingMinutes ?? 0) + clock.intervalMinutes;
}

export function isReadingDue(clock: Clock, lastReadingMinutes: number | null, nowMilliseconds: number): boolean {
  return elapsedSeconds(clock, nowMilliseconds) >= 60 * nextReadingMinutes(clock, lastReadingMinutes);
}

function elapsedSeconds(clock: Clock, nowMilliseconds: number): number {
  return Math.max(0, nowMilliseconds - clock.startedAtMilliseconds) / 1000;
}

function timeFace(seconds: number): string {
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  const twoDigits = (part: number) => String(part).padStart(2, "0");
  return hours === 0 ? `${minutes}:${twoDigits(seconds % 60)}` : `${hours}:${twoDigits(minutes)}:${twoDigits(seconds % 60)}`;
}
