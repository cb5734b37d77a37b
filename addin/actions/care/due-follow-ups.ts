import type { FollowUpRow } from "../../records/follow-ups.ts";
import type { Yard } from "../program/read-program.ts";

/** An open follow-up and how its day stands to today. */
export interface DueFollowUp {
  readonly siteId: string;
  readonly row: FollowUpRow;
  readonly state: "overdue" | "today" | "soon" | "later" | "no day";
  /** Days until it is due; negative when overdue, null without a day. */
  readonly inDays: number | null;
}

/** How far ahead a follow-up is called soon. */
export const SOON_DAYS = 14;

/** Every follow-up of the program that is not done, the longest overdue first; those without a day come last. */
export function dueFollowUps(
  { yards }: { readonly yards: readonly Pick<Yard, "siteId" | "followUps">[] },
  today: number,
): readonly DueFollowUp[] {
  return yards
    .flatMap(({ siteId, followUps }) => openFollowUps(followUps).map((row) => ({ siteId, row, ...standing(row, today) })))
    .sort((one, other) => (one.inDays ?? Infinity) - (other.inDays ?? Infinity) || 0);
}

export function openFollowUps(rows: readonly FollowUpRow[]): readonly FollowUpRow[] {
  return rows.filter(({ cells, record }) => record.kind !== null && (cells.done === null || cells.done === ""));
}

function standing({ record }: FollowUpRow, today: number): Pick<DueFollowUp, "state" | "inDays"> {
  if (record.due === null) return { state: "no day", inDays: null };
  const inDays = Math.floor(record.due) - today;
  if (inDays < 0) return { state: "overdue", inDays };
  if (inDays === 0) return { state: "today", inDays };
  return { state: inDays <= SOON_DAYS ? "soon" : "later", inDays };
}
