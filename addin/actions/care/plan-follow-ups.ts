import { largestOf } from "../../../functions/extremes.ts";
import { followUpsSheet, type FollowUpKind, type FollowUpRow } from "../../records/follow-ups.ts";
import { WorkbookRefused, type Workbook } from "../../workbook/port.ts";
import { monthsAfter } from "../dates.ts";
import { yardNow, type Yard } from "../program/read-program.ts";
import { newestAsBuilt } from "../build/record-as-built.ts";
import { appendRows } from "../program/write-records.ts";

/** A row of Follow-ups to be. */
export interface PlannedFollowUp {
  readonly kind: FollowUpKind;
  readonly due: number;
  readonly action: string | null;
  readonly note: string | null;
}

/** Common practice, no source: a look at the watering each week, until roots have gone down. */
export const WATERING_WEEKS = 8;
export const DAYS_A_WEEK = 7;

/** Minnesota Stormwater Manual, as read in the handbook: twice in the first six months, after more than half an inch of rain. */
export const STORM_LOOKS = 2;
export const SECOND_STORM_LOOK_MONTHS = 6;

const STORM_NOTE = "Within two days of 0.5 in (13 mm) of rain or more.";

/** The day the first look counts from: planted, or measured as built where nobody noted the planting. */
export function followUpsCountFrom(yard: Pick<Yard, "clumps" | "asBuilt">): number | null {
  const planted = yard.clumps.flatMap(({ record }) => (record.plantedOn === null ? [] : [record.plantedOn]));
  return planted.length > 0 ? Math.floor(largestOf(planted)) : wholeDay(newestAsBuilt(yard.asBuilt)?.record.date ?? null);
}

/** The first looks at a garden. A kind that already stands on Follow-ups is not proposed again. */
export function proposedFollowUps(followUps: readonly FollowUpRow[], from: number): readonly PlannedFollowUp[] {
  const there = new Set(followUps.map(({ record }) => record.kind));
  return (["watering", "1 week", "1 month", "1 year", "yearly"] as const)
    .filter((kind) => !there.has(kind))
    .map((kind) => scheduled(kind, from));
}

function scheduled(kind: "watering" | "1 week" | "1 month" | "1 year" | "yearly", from: number): PlannedFollowUp {
  const due = {
    watering: from + DAYS_A_WEEK,
    "1 week": from + DAYS_A_WEEK,
    "1 month": monthsAfter(from, 1),
    "1 year": monthsAfter(from, 12),
    yearly: monthsAfter(from, 24),
  };
  return { kind, due: due[kind], action: null, note: kind === "1 month" ? STORM_NOTE : null };
}

/** Writes the first looks, or none of them where somebody has planned one meanwhile: every look would be due twice. */
export async function planFirstLooks(
  workbook: Workbook,
  { siteId }: Pick<Yard, "siteId">,
  planned: readonly PlannedFollowUp[],
): Promise<void> {
  const now = await yardNow(workbook, siteId);
  const there = planned.filter(({ kind }) => now.followUps.some(({ record }) => record.kind === kind));
  if (there.length > 0)
    throw new WorkbookRefused(
      `${there.map(({ kind }) => `"${kind}"`).join(", ")} was planned on ${followUpsSheet.name} meanwhile. Nothing was written: look at what is planned again.`,
    );
  await writeFollowUps(workbook, now, planned);
}

export async function writeFollowUps(workbook: Workbook, yard: Pick<Yard, "siteId">, planned: readonly PlannedFollowUp[]): Promise<void> {
  await appendRows(
    workbook,
    followUpsSheet,
    planned.map((row) => ({ siteId: yard.siteId, ...row })),
  );
}

/**
 * The look that comes after this one, once it is done; null where none does, or where it is planned already. The first
 * looks count from the planting, so that a late one does not move the rest; yearly looks are a year apart.
 */
export function nextFollowUp(
  yard: Pick<Yard, "clumps" | "asBuilt" | "followUps">,
  { row, record }: FollowUpRow,
  done: number,
): PlannedFollowUp | null {
  const from = followUpsCountFrom(yard) ?? done;
  const others = yard.followUps.filter((other) => other.row !== row);
  const open = (kind: FollowUpKind) => others.some((other) => other.record.kind === kind && other.record.done === null);
  const count = (kind: FollowUpKind) => yard.followUps.filter((other) => other.record.kind === kind).length;
  switch (record.kind) {
    case "watering":
      return open("watering") || count("watering") >= WATERING_WEEKS ? null : { ...scheduled("watering", from), due: done + DAYS_A_WEEK };
    case "1 week":
      return count("1 month") > 0 ? null : laterThan(done, scheduled("1 month", from));
    case "1 month":
      if (open("1 month")) return null;
      if (count("1 month") < STORM_LOOKS)
        return laterThan(done, { ...scheduled("1 month", from), due: monthsAfter(from, SECOND_STORM_LOOK_MONTHS) });
      return count("1 year") > 0 ? null : laterThan(done, scheduled("1 year", from));
    case "1 year":
    case "yearly":
      return open("yearly") ? null : { ...scheduled("yearly", from), due: monthsAfter(done, 12) };
    case "re-test":
    case "repair":
    case null:
      return null;
  }
}

/** A look that would be due before this one was even made is due a month after it. */
function laterThan(done: number, planned: PlannedFollowUp): PlannedFollowUp {
  return planned.due > done ? planned : { ...planned, due: monthsAfter(done, 1) };
}

function wholeDay(day: number | null): number | null {
  return day === null ? null : Math.floor(day);
}
