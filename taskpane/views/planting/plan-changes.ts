import { clumpOf, type PlannedClump } from "../../../addin/actions/planting/plan.ts";
import type { SeenClump } from "../../../addin/actions/planting/record-planting.ts";

export interface PlanChanges {
  readonly added: number;
  readonly changed: number;
  readonly removed: number;
  /** Plants of rows taken out that hold more than a plan: planted, a date or a note. */
  readonly noted: readonly string[];
}

/** What writing the plan does to the sheet. */
export function planChanges(seen: readonly SeenClump[], plan: readonly PlannedClump[]): PlanChanges {
  const after = new Map(plan.map((clump) => [clump.row, clump]));
  const removed = seen.filter(({ row }) => !after.has(row));
  return {
    added: plan.filter(({ row }) => row === null).length,
    changed: seen.filter((row) => after.has(row.row) && !isSame(clumpOf(row), after.get(row.row))).length,
    removed: removed.length,
    noted: removed
      .filter(({ record: { planted, plantedOn, note } }) => planted !== null || plantedOn !== null || note !== null)
      .map(({ record: { plant } }) => plant ?? ""),
  };
}

function isSame(before: PlannedClump, after: PlannedClump | undefined): boolean {
  return after !== undefined && (Object.keys(before) as (keyof PlannedClump)[]).every((key) => before[key] === after[key]);
}
