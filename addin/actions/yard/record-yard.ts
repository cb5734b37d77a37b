import type { CellValue, Workbook } from "../../workbook/port.ts";
import { holeTestsSheet, minutesKey, READINGS, waterKey, type HoleTestRow } from "../../records/hole-tests.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { sitesSheet } from "../../records/sites.ts";
import { surfacesSheet, type SurfaceRow } from "../../records/surfaces.ts";
import type { BasinChoices } from "../basin/draft-basin.ts";
import { readProgram, type Yard } from "../program/read-program.ts";
import { appendRow, changeRow, changesOfRow, writeUnlessChanged, type Conflict } from "../program/write-records.ts";
import { LAST_SITE_ID_SETTING, seriesOf, siteIdsAfter } from "./site-ids.ts";

export interface NewYard {
  readonly yard: string;
  readonly address: string;
  readonly units: UnitSystem;
  readonly soilGroup: string | null;
}

/** Adds a row to Sites under a Site ID that was never used, and returns the ID. */
export async function addYard(workbook: Workbook, yard: NewYard): Promise<string> {
  const [program, given, series] = await Promise.all([
    readProgram(workbook),
    workbook.readSetting(LAST_SITE_ID_SETTING),
    seriesOf(workbook),
  ]);
  const siteId = siteIdsAfter([...program.yards.map((known) => known.siteId), given ?? ""], series)();
  await appendRow(workbook, sitesSheet, { siteId, ...yard });
  await workbook.writeSetting(LAST_SITE_ID_SETTING, siteId);
  return siteId;
}

export interface SurfaceEntry {
  readonly surface: string;
  readonly cover: string;
  readonly area: CellValue;
  readonly share: CellValue;
  /** Left out: the sheet keeps what it holds. */
  readonly howMeasured?: CellValue;
}

export async function addSurface(workbook: Workbook, yard: Yard, entry: SurfaceEntry): Promise<void> {
  await appendRow(workbook, surfacesSheet, { siteId: yard.siteId, ...entry });
}

export function changeSurface(workbook: Workbook, row: SurfaceRow, entry: SurfaceEntry): Promise<readonly Conflict[]> {
  return changeRow(workbook, row, { ...entry });
}

export interface Reading {
  readonly minutes: CellValue;
  readonly waterDepth: CellValue;
}

export interface HoleTestEntry {
  readonly hole: string;
  readonly date: number | null;
  readonly tester: string;
  readonly soaked: "yes" | "no" | null;
  readonly holeDepth: CellValue;
  readonly holeDiameter: CellValue;
  /** In the order taken; at most READINGS. */
  readonly readings: readonly Reading[];
}

export async function addHoleTest(workbook: Workbook, yard: Yard, entry: HoleTestEntry): Promise<void> {
  await appendRow(workbook, holeTestsSheet, { siteId: yard.siteId, ...holeTestCells(entry) });
}

export function changeHoleTest(workbook: Workbook, row: HoleTestRow, entry: HoleTestEntry): Promise<readonly Conflict[]> {
  // What the form cannot show, because it is no date or no choice, is not written over with a blank.
  const kept = (key: "date" | "soaked") => entry[key] ?? (row.record[key] === null ? row.cells[key] : null);
  return changeRow(workbook, row, { ...holeTestCells(entry), date: kept("date"), soaked: kept("soaked") });
}

function holeTestCells({ readings, ...rest }: HoleTestEntry): Record<string, CellValue> {
  const cells: Record<string, CellValue> = { ...rest };
  for (let reading = 1; reading <= READINGS; reading++) {
    cells[minutesKey(reading)] = readings[reading - 1]?.minutes ?? null;
    cells[waterKey(reading)] = readings[reading - 1]?.waterDepth ?? null;
  }
  return cells;
}

/** The readings of a hole as typed, up to the last that holds anything. */
export function readingsOf(row: HoleTestRow): readonly Reading[] {
  const readings = Array.from({ length: READINGS }, (_, index) => ({
    minutes: row.cells[minutesKey(index + 1)],
    waterDepth: row.cells[waterKey(index + 1)],
  }));
  const last = readings.findLastIndex(({ minutes, waterDepth }) => minutes !== null || waterDepth !== null);
  return readings.slice(0, last + 1);
}

/** What the basin form writes: the choices, and the room that was measured for the basin. */
export interface BasinEntry extends BasinChoices {
  readonly roomLength: CellValue;
  readonly roomWidth: CellValue;
}

/** Writes the design inputs into the yard's row of Sites; the Design sheet answers. */
export function writeBasin(workbook: Workbook, yard: Yard, entry: BasinEntry): Promise<readonly Conflict[]> {
  return writeUnlessChanged(workbook, changesOfRow(yard.site, { ...entry }));
}
