import { isBlank } from "../records/sheet.ts";
import type { VisitAnswerRow } from "../records/visits.ts";
import type { Refusal } from "./refusal.ts";

/** A person's word that a stage may be begun against a refusal. */
export interface Override {
  readonly refusalId: string;
  readonly by: string;
  readonly reason: string;
  readonly date: number | null;
  readonly row: VisitAnswerRow;
}

export const OVERRIDDEN = "Overridden";
export const WITHDRAWN = "Withdrawn";

export function overrideStep(refusalId: string): string {
  return `${OVERRIDE_PREFIX}${refusalId}`;
}

/**
 * The override in force against a refusal, or null. The newest word on it decides. One without a name or a reason is
 * none, one that is older than the answer it was given against is none, and a refusal that nobody may override has none
 * whatever is typed into the sheet.
 */
export function overrideOf(refusal: Refusal, visits: readonly VisitAnswerRow[]): Override | null {
  if (refusal.neverOverridden !== null) return null;
  const place = visits.findLastIndex(({ record }) => record.step === overrideStep(refusal.id) && !isBlank(record.answer));
  const row = visits[place];
  if (row === undefined) return null;
  const { answer, by, note, date } = row.record;
  if (answer !== OVERRIDDEN || by === null || note === null) return null;
  if (refusal.step !== undefined && visits.findLastIndex(({ record }) => record.step === refusal.step) > place) return null;
  return { refusalId: refusal.id, by, reason: note, date, row };
}

const OVERRIDE_PREFIX = "override: ";
