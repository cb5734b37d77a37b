import { expect, test } from "vitest";
import { sheetNamesOfProgram, setUpWorkbook } from "../../addin/actions/set-up-workbook.ts";
import { excelWorkbook } from "../../addin/workbook/excel-workbook.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

test("the program's workbook is set up in Excel within the declared requirement sets, in at most ten round trips", async () => {
  const excel = new InMemoryExcel();
  // What the formulas answer is the embedded spreadsheet's test; here it is whether they arrive.
  excel.book.calculationMode = "Manual";
  await setUpWorkbook(excelWorkbook((error) => expect.fail(String(error))));
  expect(excel.book.sheets.map((sheet) => sheet.name)).toEqual(["Sheet1", ...sheetNamesOfProgram]);
  expect(excel.roundTrips).toBeLessThanOrEqual(10);
  const formulas = excel.book.sheets.flatMap((sheet) => [...sheet.cells.values()].flatMap((cell) => cell.formula ?? []));
  expect(formulas.some((formula) => formula.includes("SOAK.BASINDESIGN("))).toBe(true);
});
