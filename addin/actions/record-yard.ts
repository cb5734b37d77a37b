import { groundSlopePercent } from "../../functions/siting/ground-slope.ts";
import { addressOf } from "../workbook/workbook.ts";
import type { CellValue, Workbook } from "../workbook/workbook.ts";
import type { Stage, Step } from "../checklist/stage.ts";
import { verdictFormula } from "../records/formulas.ts";
import { holeTestsSheet, minutesKey, READINGS, waterKey } from "../records/hole-tests.ts";
import type { HoleTestRow } from "../records/hole-tests.ts";
import type { UnitSystem } from "../records/site-terms.ts";
import { rulesSheet } from "../records/rules.ts";
import { sitesSheet } from "../records/sites.ts";
import { surfacesSheet } from "../records/surfaces.ts";
import type { SurfaceRow } from "../records/surfaces.ts";
import { visitsSheet } from "../records/visits.ts";
import type { Verdict } from "../records/visits.ts";
import { today } from "./dates.ts";
import { readProgram } from "./read-program.ts";
import type { Program, Yard } from "./read-program.ts";
import { appendRow, changesOfRow, placeOf, writeUnlessChanged } from "./write-records.ts";
import type { Conflict } from "./write-records.ts";

export interface NewYard {
  readonly yard: string;
  readonly address: string;
  readonly units: UnitSystem;
  readonly soilGroup: string | null;
}

/** Adds a row to Sites under a Site ID that was never used, and returns the ID. */
export async function addYard(workbook: Workbook, yard: NewYard): Promise<string> {
  const siteId = nextSiteId(await readProgram(workbook));
  await appendRow(workbook, sitesSheet, { siteId, ...yard });
  return siteId;
}

/** One above the highest number in use, "Y-017" after "Y-016", so that an ID in the records never means two yards. */
export function nextSiteId(program: Program): string {
  const numbers = program.yards.map(({ siteId }) => Number(/^Y-(\d+)$/.exec(siteId)?.[1] ?? 0));
  return `Y-${String(Math.max(0, ...numbers) + 1).padStart(3, "0")}`;
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
  return writeUnlessChanged(workbook, changesOfRow(row, { ...entry }));
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
  return writeUnlessChanged(workbook, changesOfRow(row, holeTestCells(entry)));
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

export type StepAnswer =
  | { readonly kind: "measured"; readonly value: number; readonly note: string; readonly by: string }
  | { readonly kind: "none"; readonly note: string; readonly by: string }
  | { readonly kind: "slope"; readonly drop: number; readonly run: number; readonly note: string; readonly by: string }
  | { readonly kind: "chosen"; readonly says: string; readonly note: string; readonly by: string };

/** Adds the answer as a row of Visits. A measured one gets a verdict formula, so a changed rule changes the verdict. */
export async function recordAnswer(workbook: Workbook, yard: Yard, stage: Stage, step: Step, answer: StepAnswer): Promise<readonly Conflict[]> {
  if (answer.kind === "slope") {
    const slope = changesOfRow(yard.site, { slopeDrop: answer.drop, slopeRun: answer.run });
    const conflicts = await writeUnlessChanged(workbook, slope);
    if (conflicts.length > 0) return conflicts;
  }
  const rule = "rule" in step.answer && answer.kind !== "none" ? step.answer.rule : null;
  const common = { siteId: yard.siteId, date: today(), stage: stage.id, step: step.id, note: answer.note, by: answer.by };
  const rules = rule === null ? null : await placeOf(workbook, rulesSheet);
  await appendRow(
    workbook,
    visitsSheet,
    { ...common, rule, answer: answerCell(step, answer), unit: answerUnit(yard, step, answer), verdict: fixedVerdict(step, answer) },
    (row, visits) =>
      rule === null || rules === null
        ? []
        : [{ range: visits.cell(row, "verdict"), formulas: [[verdictFormula(rule, addressOf(visits.cell(row, "answer")).replace(/^.*!/, ""), yard.units, rules)]] }],
  );
  return [];
}

function answerCell(step: Step, answer: StepAnswer): CellValue {
  switch (answer.kind) {
    case "measured":
      return answer.value;
    case "slope":
      return groundSlopePercent(answer.drop, answer.run);
    case "chosen":
      return answer.says;
    case "none":
      return step.answer.kind === "measured" ? (step.answer.orNone ?? null) : null;
  }
}

function answerUnit(yard: Yard, step: Step, answer: StepAnswer): string | null {
  if (answer.kind === "slope") return "%";
  if (answer.kind !== "measured" || step.answer.kind !== "measured") return null;
  if (step.answer.quantity === "length") return yard.units === "metric" ? "m" : "ft";
  return yard.units === "metric" ? "mm" : "in";
}

function fixedVerdict(step: Step, answer: StepAnswer): Verdict | null {
  if (answer.kind === "none") return "pass";
  if (answer.kind !== "chosen" || step.answer.kind !== "chosen") return null;
  return step.answer.options.find(({ says }) => says === answer.says)?.verdict ?? "not measured";
}

export interface BasinEntry {
  readonly stormDepth: CellValue;
  readonly pondingDepth: CellValue;
  readonly mediaDepth: CellValue;
  readonly sideSlope: CellValue;
  readonly mixRecipe: CellValue;
}

/** Writes the design inputs into the yard's row of Sites; the Design sheet answers. */
export function writeBasin(workbook: Workbook, yard: Yard, entry: BasinEntry): Promise<readonly Conflict[]> {
  return writeUnlessChanged(workbook, changesOfRow(yard.site, { ...entry }));
}

