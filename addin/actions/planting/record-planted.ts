import type { ClumpRow } from "../../records/planting.ts";
import { isBlank } from "../../records/sheet.ts";
import type { Workbook } from "../../workbook/port.ts";
import type { Yard } from "../program/read-program.ts";
import { changesOfRow, writeUnlessChanged, type Conflict } from "../program/write-records.ts";

/** How many of a clump went into the ground. */
export interface PlantedClump {
  readonly row: ClumpRow;
  readonly planted: number;
}

/** Clumps of the plan that nobody has counted yet. */
export function clumpsToCount({ clumps }: Pick<Yard, "clumps">): readonly ClumpRow[] {
  return clumps.filter(({ record, cells }) => record.plant !== null && isBlank(cells.planted));
}

/** What is in the ground beside what was planned, over the clumps that were counted. */
export function plantedSoFar({ clumps }: Pick<Yard, "clumps">): {
  readonly planted: number;
  readonly planned: number;
  readonly clumps: number;
} {
  const counted = clumps.filter(({ record }) => record.planted !== null);
  const sum = (key: "planted" | "planned") => counted.reduce((plants, { record }) => plants + (record[key] ?? 0), 0);
  return { planted: sum("planted"), planned: sum("planned"), clumps: counted.length };
}

/** Writes count and day beside each clump; nothing if one of the rows has changed since it was read. */
export function recordPlanted(workbook: Workbook, date: number, counted: readonly PlantedClump[]): Promise<readonly Conflict[]> {
  return writeUnlessChanged(
    workbook,
    counted.flatMap(({ row, planted }) => changesOfRow(row, { planted, plantedOn: date })),
  );
}
