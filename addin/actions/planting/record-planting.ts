import { plantingSheet, type ClumpRow } from "../../records/planting.ts";
import { isBlank } from "../../records/sheet.ts";
import { WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { clumpOf, type PlannedClump } from "./plan.ts";
import type { Yard } from "../program/read-program.ts";
import { appendRows, changesOfRow, rowAsSeen, writeUnlessChanged, type CellChange, type Conflict } from "../program/write-records.ts";

/** A row of Planting as it was when the plan was begun, in plain data. */
export type SeenClump = Pick<ClumpRow, "row" | "record" | "cells">;

export function seenClumps(yard: Yard): readonly SeenClump[] {
  return yard.clumps.map(({ row, record, cells }) => ({ row, record, cells }));
}

/** The clumps of a plan whose rows somebody has removed from the sheet since it was begun: a person says what becomes of them. */
export function removedMeanwhile(yard: Yard, seen: readonly SeenClump[], plan: readonly PlannedClump[]): readonly PlannedClump[] {
  const present = rowsNow(seen, yard.clumps);
  return plan.filter(({ row }) => row !== null && !present.has(row));
}

/** The rows that were seen and that the sheet still holds, wherever they stand by now. */
export function stillOnSheet(yard: Yard, seen: readonly SeenClump[]): readonly SeenClump[] {
  const present = rowsNow(seen, yard.clumps);
  return seen.filter(({ row }) => present.has(row));
}

/**
 * Writes the plan into Planting: what changed in a clump, the clumps that are new, and blank rows for those taken out.
 * A row taken out lends itself to a new clump, unless somebody noted something on it. Nothing is written if a row has
 * changed since it was seen, or was removed while its clump is still in the plan: nobody's removal is undone unasked.
 */
export async function writePlan(
  workbook: Workbook,
  yard: Yard,
  seen: readonly SeenClump[],
  plan: readonly PlannedClump[],
): Promise<readonly Conflict[]> {
  if (removedMeanwhile(yard, seen, plan).length > 0)
    throw new WorkbookRefused(
      "Nothing was written: clumps of this plan were removed from Planting meanwhile. Say first what becomes of them.",
    );
  const present = rowsNow(seen, yard.clumps);
  const rowOf = ({ row }: { readonly row: number | null }) => (row === null ? undefined : present.get(row));
  const changed: CellChange[] = [];
  const added = plan.filter(({ row }) => row === null);
  for (const before of seen) {
    const row = rowOf(before);
    if (row === undefined) continue;
    const after = plan.find((clump) => clump.row === before.row) ?? (isPlanAlone(before) ? added.shift() : undefined);
    const changes = changesOfRow(
      { ...row, cells: before.cells },
      after === undefined ? blankCells() : { ...changedCells(yard, before, after), ...notedBefore(seen, after) },
    );
    for (const change of changes) changed.push(change);
  }
  const conflicts = await writeUnlessChanged(workbook, changed);
  if (conflicts.length === 0)
    await appendRows(
      workbook,
      plantingSheet,
      added.map((clump) => ({ ...cellsOf(yard, clump), ...notedBefore(seen, clump) })),
    );
  return conflicts;
}

/** Where each row that was seen stands now: the sheet may be sorted while a plan is worked on. */
function rowsNow(seen: readonly SeenClump[], clumps: readonly ClumpRow[]): ReadonlyMap<number, ClumpRow> {
  const now = new Map<number, ClumpRow>();
  const free = new Set(clumps);
  const atItsPlace = ({ row }: SeenClump) => clumps.filter((present) => present.row === row && free.has(present));
  const passes = [
    (before: SeenClump) => rowAsSeen(before, atItsPlace(before)),
    (before: SeenClump) => rowAsSeen(before, [...free]),
    (before: SeenClump) => atItsPlace(before)[0],
  ];
  for (const find of passes) {
    for (const before of seen) {
      const row = now.has(before.row) ? undefined : find(before);
      if (row === undefined) continue;
      now.set(before.row, row);
      free.delete(row);
    }
  }
  return now;
}

type ClumpCells = { readonly [Key in keyof typeof plantingSheet.columns]?: CellValue };

function cellsOf({ siteId }: Yard, { plant, zone, planned, spacing, along, across }: PlannedClump): ClumpCells {
  return { siteId, plant, zone, planned, spacing, alongLength: along, acrossWidth: across };
}

/** Only what differs from the row as it was read: a cell that holds a slip keeps it until somebody puts it right. */
function changedCells(yard: Yard, before: SeenClump, after: PlannedClump): ClumpCells {
  const read = cellsOf(yard, clumpOf(before));
  return Object.fromEntries(Object.entries(cellsOf(yard, after)).filter(([key, value]) => value !== read[key as keyof ClumpCells]));
}

/** What a clump that is put back had on its row beside the plan. */
function notedBefore(seen: readonly SeenClump[], { id, row }: PlannedClump): ClumpCells {
  const before = row === null ? seen.find((one) => clumpOf(one).id === id) : undefined;
  if (before === undefined) return {};
  const { planted, plantedOn, note } = before.cells;
  return { planted, plantedOn, note };
}

function blankCells(): ClumpCells {
  return Object.fromEntries(Object.keys(plantingSheet.columns).map((key) => [key, null]));
}

/** Nothing on the row tells of plants in the ground, and nobody noted anything. */
function isPlanAlone({ cells: { planted, plantedOn, note } }: SeenClump): boolean {
  return [planted, plantedOn, note].every(isBlank);
}
