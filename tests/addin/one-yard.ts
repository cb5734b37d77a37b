/** A workbook that is set up and holds one yard, for the tests of what is written for it. */
import { readProgram, type Yard } from "../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { addYard } from "../../addin/actions/yard/record-yard.ts";
import type { Workbook } from "../../addin/workbook/port.ts";
import { WorkbookInMemory } from "./workbook-in-memory.ts";

export const ONE_YARD = { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: "B" } as const;

export async function workbookOfOneYard(): Promise<WorkbookInMemory> {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await addYard(workbook, ONE_YARD);
  return workbook;
}

/** The yard as the workbook holds it now. */
export async function yardIn(workbook: Workbook, siteId = "Y-001"): Promise<Yard> {
  const yard = (await readProgram(workbook)).yards.find((one) => one.siteId === siteId);
  if (yard === undefined) throw new Error(`There is no yard ${siteId}.`);
  return yard;
}
