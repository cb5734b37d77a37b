import { expect, test } from "vitest";
import { checkWorkbook } from "../../addin/actions/workbook/check-workbook.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { setUpWorkbook, sheetNamesOfProgram } from "../../addin/actions/workbook/set-up-workbook.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const wellBehaved = () => excelWorkbook((error) => expect.fail(String(error)));

test("the program's workbook is set up in Excel within the declared requirement sets, in at most ten round trips", async () => {
  const excel = new InMemoryExcel();
  await setUpWorkbook(wellBehaved());
  expect(excel.book.sheets.map((sheet) => sheet.name)).toEqual(["Sheet1", ...sheetNamesOfProgram]);
  expect(excel.roundTrips).toBeLessThanOrEqual(10);
  const formulas = excel.book.sheets.flatMap((sheet) => [...sheet.cells.values()].flatMap((cell) => cell.formula ?? []));
  expect(formulas.some((formula) => formula.includes("SOAK.SITEDESIGN("))).toBe(true);
});

test("the demo program's formulas answer in Excel: nothing is unknown or in another's way, and nothing is left to repair", async () => {
  const excel = new InMemoryExcel();
  const workbook = wellBehaved();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  const shown = excel.book.sheets.flatMap((sheet) => [
    ...[...sheet.cells.values()].map(({ content }) => content),
    ...sheet.spilled.values(),
  ]);
  expect(shown.filter((content) => typeof content === "string" && ["#NAME?", "#SPILL!", "#REF!", "#CALC!"].includes(content))).toEqual([]);
  expect((await checkWorkbook(workbook)).filter(({ repair }) => repair !== undefined)).toEqual([]);
  const { yards } = await readProgram(workbook);
  expect(yards.length).toBeGreaterThan(10);
  expect(yards.filter(({ design }) => design.status === "fits").length).toBeGreaterThan(5);
});
