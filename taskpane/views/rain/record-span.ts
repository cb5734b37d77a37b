import type { RecordedRain } from "../../../addin/actions/rain-record/recorded-rain.ts";
import { momentWords } from "./rain-words.ts";
import { rainText } from "./text.ts";

const DAY_MINUTES = 1440;

/** From the first reading to the last, "2024-01-01 to 2026-12-31". */
export function spanWords({ firstBegan, lastBegan, stepMinutes }: RecordedRain): string {
  if (firstBegan === null || lastBegan === null) return rainText.sheet.unknown;
  return rainText.sheet.span(momentWords(firstBegan * DAY_MINUTES, stepMinutes), momentWords(lastBegan * DAY_MINUTES, stepMinutes));
}
