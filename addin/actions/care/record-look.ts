import { largestOf } from "../../../functions/extremes.ts";
import { itemOfStep, lookOf } from "../../checklist/looks.ts";
import { LONG_PONDINGS_TO_RETEST, LONGEST_PONDING_HOURS } from "../../checklist/retest.ts";
import type { Stage, Step } from "../../checklist/stage.ts";
import { followUpsSheet, type FollowUpRow, type Finding } from "../../records/follow-ups.ts";
import { visitsSheet, type Verdict } from "../../records/visits.ts";
import { WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { isoDate } from "../dates.ts";
import { openFollowUps } from "./due-follow-ups.ts";
import { nextFollowUp, writeFollowUps, type PlannedFollowUp } from "./plan-follow-ups.ts";
import { meetChecklist } from "../program/checklist-days.ts";
import type { Yard } from "../program/read-program.ts";
import { appendRows, changesOfRow, whereItStands, writeUnlessChanged, type Conflict } from "../program/write-records.ts";

/** What was seen at one step of a look. */
export interface LookAnswer {
  readonly step: Step;
  readonly answer: CellValue;
  readonly unit: string | null;
  /** Null for what is on record and judged by nobody. */
  readonly verdict: Verdict | null;
  readonly note: string;
}

export interface LookEntry {
  readonly done: number;
  readonly by: string;
  readonly note: string;
  /** One a step of the look's stage; for a look that asks one question, its answer alone. */
  readonly answers: readonly LookAnswer[];
  /** The day by which each failed step is put right, by step id. */
  readonly repairDays: ReadonlyMap<string, number>;
}

/** Everything that one look writes, to be shown before it is written. */
export interface LookPlan {
  readonly finding: Finding;
  readonly action: string | null;
  readonly next: readonly PlannedFollowUp[];
}

/** Common practice, no source: two weeks to put right what failed, unless a person sets another day. */
export const REPAIR_DAYS = 14;

export function planLook(yard: Yard, row: FollowUpRow, entry: LookEntry): LookPlan {
  const look = row.record.kind === null ? null : lookOf(row.record.kind);
  const stage = look !== null && "stage" in look ? look.stage : null;
  const onFail = look !== null && "onFail" in look ? look.onFail : null;
  const failed = entry.answers.filter(({ verdict }) => findingOfVerdict(verdict) === "fail");
  const watched = entry.answers.filter(({ verdict }) => findingOfVerdict(verdict) === "watch");
  const repairs = failed.flatMap(({ step }): PlannedFollowUp[] => {
    if (onFail !== null) return [];
    const due = entry.repairDays.get(step.id) ?? entry.done + REPAIR_DAYS;
    return [
      {
        kind: "repair",
        due,
        action: stage === null ? row.record.action : repairWords(stage, step),
        note: `Found on ${isoDate(entry.done)}.`,
      },
    ];
  });
  const actions = [
    ...(failed.length > 0 && onFail !== null ? [onFail] : []),
    ...repairs.map(({ action, due }) => `${action ?? "Put it right."} By ${isoDate(due)}.`),
    ...(watched.length > 0 && stage !== null ? [`Watch: ${watched.map(({ step }) => step.title).join(", ")}.`] : []),
  ];
  const scheduled = nextFollowUp(yard, row, entry.done);
  const retest = plannedRetest(yard, entry, stage);
  return {
    finding: failed.length > 0 ? "fail" : watched.length > 0 ? "watch" : "pass",
    action: actions.length > 0 ? actions.join(" ") : row.record.action,
    next: [...repairs, ...(retest === null ? [] : [retest]), ...(scheduled === null ? [] : [scheduled])],
  };
}

/** Writes the look into its row, what was seen into Visits, and what is due next; or nothing if the row changed meanwhile. */
export async function recordLook(workbook: Workbook, yard: Yard, seen: FollowUpRow, entry: LookEntry): Promise<readonly Conflict[]> {
  const row = await whereItStands(workbook, seen);
  if (row.record.kind !== kindIn(seen))
    throw new WorkbookRefused(
      `Row ${row.row + 1} of ${followUpsSheet.name} is another look than the one you opened. Nothing was written: close the look, and open the one you made.`,
    );
  const { finding, action, next } = planLook(yard, row, entry);
  const note = [row.record.note, entry.note].filter((words) => words !== null && words !== "").join(" ");
  const conflicts = await writeUnlessChanged(workbook, changesOfRow(row, { done: entry.done, by: entry.by, finding, action, note }));
  if (conflicts.length > 0) return conflicts;
  const look = row.record.kind === null ? null : lookOf(row.record.kind);
  if (look !== null && "stage" in look) {
    const { stage } = look;
    const common = { siteId: yard.siteId, date: entry.done, stage: stage.id, by: entry.by };
    const rows = entry.answers.map(({ step, answer, unit, verdict, note: seen }) => ({
      ...common,
      step: step.id,
      answer,
      unit,
      verdict,
      note: seen,
    }));
    await meetChecklist(workbook);
    await appendRows(workbook, visitsSheet, rows);
  }
  await writeFollowUps(workbook, yard, next);
  return [];
}

/** The kind as the row held it when the look was opened. */
function kindIn({ cells }: FollowUpRow): FollowUpRow["record"]["kind"] {
  const kind = followUpsSheet.columns.kind.cell.safeParse(cells.kind);
  return kind.success ? kind.data : null;
}

/** A stop or a fail fails the look; what is referred, watched or not seen keeps it from passing. Null is not judged. */
export function findingOfVerdict(verdict: Verdict | null): Finding | null {
  if (verdict === null) return null;
  if (verdict === "fail" || verdict === "stop") return "fail";
  return verdict === "pass" ? "pass" : "watch";
}

function repairWords(stage: Stage, step: Step): string {
  const item = itemOfStep(stage, step);
  return item === null ? `${step.title}: put it right.` : `${step.title}: ${item.action}`;
}

/** Days on which water was found standing too long since the soil was last tested. The newest answer of a day's look counts. */
export function longPondingDays({ visits, followUps, holeTests }: Pick<Yard, "visits" | "followUps" | "holeTests">): ReadonlySet<number> {
  const retested = followUps.flatMap(({ record }) => (record.kind === "re-test" ? [record.done ?? 0] : []));
  const tested = largestOf([0, ...retested, ...holeTests.map(({ record }) => record.date ?? 0)]);
  const looks = visits.filter(({ record }) => record.step?.endsWith(PONDING_STEP) === true && (record.date ?? 0) > tested);
  const newest = new Map(looks.map(({ record }) => [`${record.date} ${record.step}`, record]));
  return new Set([...newest.values()].flatMap(({ date, verdict }) => (verdict === "fail" ? [date ?? 0] : [])));
}

const PONDING_STEP = "-ponding";
const REGRADED_STEP = "-regraded";

/** A test hole to dig again: water stood too long twice, or the ground was changed. Null where one is planned already. */
function plannedRetest(yard: Yard, entry: LookEntry, stage: Stage | null): PlannedFollowUp | null {
  if (stage === null || openFollowUps(yard.followUps).some(({ record }) => record.kind === "re-test")) return null;
  const seen = (ending: string, ...verdicts: readonly Verdict[]) =>
    entry.answers.some(({ step, verdict }) => step.id.endsWith(ending) && verdict !== null && verdicts.includes(verdict));
  const days = new Set(longPondingDays(yard));
  if (seen(PONDING_STEP, "fail")) days.add(entry.done);
  const reasons = [
    ...(seen(PONDING_STEP, "fail") && days.size >= LONG_PONDINGS_TO_RETEST
      ? [`Water stood over ${LONGEST_PONDING_HOURS} hours, ${days.size} times.`]
      : []),
    ...(seen(REGRADED_STEP, "watch", "refer", "fail") ? ["The ground was changed."] : []),
  ];
  if (reasons.length === 0) return null;
  return {
    kind: "re-test",
    due: entry.done + REPAIR_DAYS,
    action: "Have the lines marked, then test the hole again.",
    note: reasons.join(" "),
  };
}
