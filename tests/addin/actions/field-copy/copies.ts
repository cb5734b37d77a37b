/** A small program in memory, copies of it that are taken along, and what is done to either. */
import { bringBack, type Chosen } from "../../../../addin/actions/field-copy/bring-back.ts";
import { copyIn, type CopySheet, type FieldCopy } from "../../../../addin/actions/field-copy/field-copy.ts";
import { homeRows } from "../../../../addin/actions/field-copy/home-rows.ts";
import type { Difference } from "../../../../addin/actions/field-copy/merge-rows.ts";
import { planBringBack, readHome, type BringBackPlan, type SharedIdAnswers } from "../../../../addin/actions/field-copy/plan-bring-back.ts";
import { takeAlong } from "../../../../addin/actions/field-copy/take-along.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { sheetsBroughtBack } from "../../../../addin/actions/field-copy/taken-sheets.ts";
import { asBuiltSheet } from "../../../../addin/records/as-built.ts";
import { digDaysSheet } from "../../../../addin/records/dig-days.ts";
import { followUpsSheet } from "../../../../addin/records/follow-ups.ts";
import { holeTestsSheet } from "../../../../addin/records/hole-tests.ts";
import { placeAsSetUp } from "../../../../addin/records/place.ts";
import { plantingSheet } from "../../../../addin/records/planting.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import type { KeyOf, Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import type { CellValue, Workbook } from "../../../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

export type Values<S extends Sheet> = { readonly [Key in KeyOf<S>]?: CellValue };

/** 4 May 2026, as a spreadsheet counts days. */
export const DAY = 46_146;

/** Three yards of an invented town, the third of which is never taken along. */
export async function home(): Promise<WorkbookInMemory> {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await put(workbook, sitesSheet, [
    { siteId: "Y-001", yard: "Hazel corner", address: "4 Hazel Row", units: "us", notes: "gate code at the office" },
    { siteId: "Y-002", yard: "Quay house", address: "9 Quay Lane", units: "metric" },
    { siteId: "Y-003", yard: "Mill yard", address: "1 Mill Lane", units: "us" },
  ]);
  await put(workbook, surfacesSheet, [
    { siteId: "Y-001", surface: "Roof", cover: "roof", area: 900 },
    { siteId: "Y-001", surface: "Drive", cover: "paving", area: 300 },
    { siteId: "Y-002", surface: "Roof", cover: "roof", area: 80 },
    { siteId: "Y-003", surface: "Roof", cover: "roof", area: 700 },
  ]);
  await put(workbook, visitsSheet, [
    { siteId: "Y-001", date: DAY, stage: "screening", step: "pets", answer: "no", by: "Ash" },
    { siteId: "Y-001", date: DAY, stage: "screening", step: "water in cellar", answer: "no", by: "Ash" },
    { siteId: "Y-002", date: DAY + 1, stage: "screening", step: "pets", answer: "yes", by: "Ash" },
  ]);
  await put(workbook, holeTestsSheet, [
    { siteId: "Y-001", hole: "A", date: DAY, holeDiameter: 8, minutes1: 0, water1: 12, minutes2: 30, water2: 10 },
    { siteId: "Y-002", hole: "A", date: DAY, holeDiameter: 200, minutes1: 0, water1: 300 },
  ]);
  await put(workbook, plantingSheet, [
    { siteId: "Y-001", plant: "Carex stricta", zone: "A", planned: 5, alongLength: 0, acrossWidth: 0 },
    { siteId: "Y-001", plant: "Carex stricta", zone: "A", planned: 3, alongLength: 2, acrossWidth: 1 },
  ]);
  await put(workbook, digDaysSheet, [{ siteId: "Y-002", date: DAY, entry: "sign-in", who: "Rowan", hours: 3 }]);
  await put(workbook, asBuiltSheet, [{ siteId: "Y-001", date: DAY, by: "Ash", floorLength: 12 }]);
  await put(workbook, followUpsSheet, [{ siteId: "Y-001", kind: "1 week", due: DAY + 30 }]);
  return workbook;
}

/** Below what stands there. */
export async function put<S extends Sheet>(workbook: WorkbookInMemory, sheet: S, rows: readonly Values<S>[]): Promise<void> {
  const place = placeAsSetUp(sheet);
  const [cells = []] = await workbook.readSheets([sheet.name]);
  const next = (readRecords(sheet, cells).rows.at(-1)?.row ?? place.headingRow) + 1;
  await workbook.writeValues(
    rows.flatMap((values, down) =>
      Object.entries(values).map(([key, value]) => ({ range: place.cell(next + down, key as KeyOf<S>), values: [[value as CellValue]] })),
    ),
  );
}

/** Types into the cells of a row, counted below the headings from 0. */
export async function type<S extends Sheet>(workbook: WorkbookInMemory, sheet: S, row: number, values: Values<S>): Promise<void> {
  const place = placeAsSetUp(sheet);
  await workbook.writeValues(
    Object.entries(values).map(([key, value]) => ({
      range: place.cell(place.firstRow + row, key as KeyOf<S>),
      values: [[value as CellValue]],
    })),
  );
}

export async function copyOf(workbook: WorkbookInMemory, siteIds: readonly string[]): Promise<WorkbookInMemory> {
  const copy = new WorkbookInMemory();
  await takeAlong(workbook, siteIds, copy);
  return copy;
}

export function cloned(workbook: WorkbookInMemory): WorkbookInMemory {
  const clone = new WorkbookInMemory();
  for (const [name, sheet] of workbook.sheets) clone.sheets.set(name, structuredClone(sheet));
  for (const [key, text] of workbook.settings) clone.settings.set(key, text);
  return clone;
}

/** The copy as it is read from its file. */
export async function asFieldCopy(copy: WorkbookInMemory): Promise<FieldCopy> {
  const names = [...copy.sheets.keys()];
  const cells = await copy.readSheets(names);
  const sheets = names.map(
    (name, index): CopySheet => ({
      name,
      cells: cells[index] ?? [],
      isFormula: (row, column) => (copy.sheets.get(name)?.formulas[row]?.[column] ?? "") !== "",
      isHiddenColumn: () => false,
    }),
  );
  const read = copyIn("copy.xlsx", sheets);
  if ("sentence" in read) throw new Error(read.sentence);
  return read;
}

export async function planned(workbook: Workbook, copy: FieldCopy, answers?: SharedIdAnswers): Promise<BringBackPlan> {
  const plan = planBringBack(await readHome(workbook), copy, answers);
  if ("sentence" in plan) throw new Error(plan.sentence);
  return plan;
}

export const differencesIn = ({ yards }: BringBackPlan): readonly Difference[] => yards.flatMap(({ differences }) => differences);

export async function broughtBack(workbook: Workbook, copy: WorkbookInMemory, chosen: Chosen = () => null): Promise<BringBackPlan> {
  const field = await asFieldCopy(copy);
  const asked = await planned(workbook, field);
  const plan = await planned(workbook, field, new Map(asked.sharedIds.map(({ siteId }) => [siteId.toLowerCase(), "same"] as const)));
  await bringBack(workbook, differencesIn(plan), chosen);
  return plan;
}

/** Every row of every sheet that comes back, in an order of their own: where a row stands is nobody's record. */
export async function rowsOf(workbook: Workbook): Promise<readonly string[]> {
  const rows = await homeRows(workbook);
  return sheetsBroughtBack
    .flatMap((taken) => (rows.get(taken)?.rows ?? []).map(({ fields }) => `${taken.sheet.name} ${JSON.stringify([...fields].sort())}`))
    .sort();
}
