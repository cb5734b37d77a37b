import { beforeEach, expect, test } from "vitest";
import { repairFormulas, repairSentence } from "../../addin/actions/workbook/repair-formulas.ts";
import { turnIntoValues } from "../../addin/actions/workbook/turn-into-values.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import type { Workbook } from "../../addin/workbook/port.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const OURS = "=SOAK.DRAWDOWN(6,0.5)";
const cell = (sheet: string, row: number) => ({ sheet, row, column: 0, rows: 1, columns: 1 });

let excel: InMemoryExcel;
let workbook: Workbook;

/** Each sheet holds our formula and one of another add-in that is not there; both show #NAME?, as without any add-in. */
beforeEach(async () => {
  excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  for (const sheet of ["Sheet1", "Design"]) {
    if (sheet === "Design") excel.book.addSheet(sheet);
    await workbook.writeFormulas([{ range: { ...cell(sheet, 0), rows: 2 }, formulas: [[OURS], ["=OTHER.RATE(1)"]] }]);
    for (const stored of excel.book.sheetNamed(sheet)!.cells.values()) stored.content = "#NAME?";
  }
});

const shown = async () => (await workbook.read([cell("Sheet1", 0), cell("Sheet1", 1), cell("Design", 0)])).flat(2);

test("our formulas that show #NAME? are written once more and answer; those of others stay as they are", async () => {
  const repair = await repairFormulas(workbook);
  expect(repairSentence(repair)).toBe("2 formulas were written again.");
  expect(await shown()).toEqual([12, "#NAME?", 12]);
});

test("a protected sheet is named and left alone, and the others are repaired", async () => {
  excel.book.sheetNamed("Design")!.isProtected = true;
  expect(repairSentence(await repairFormulas(workbook))).toBe(
    '1 formula was written again. Sheet Design was left as it is. The sheet "Design" is protected. Unprotect on the Review tab, then try again.',
  );
  expect(await shown()).toEqual([12, "#NAME?", "#NAME?"]);
});

test("a copy as values holds what the cells show and no formula, comes to the front, and takes no name twice", async () => {
  await repairFormulas(workbook);
  expect([await turnIntoValues(workbook), (await workbook.select(cell("Sheet1", 0)), await turnIntoValues(workbook))]).toEqual([
    "Sheet1 as values",
    "Sheet1 as values 2",
  ]);
  expect((await workbook.selection())?.sheet).toBe("Sheet1 as values 2");
  expect((await workbook.read([cell("Sheet1 as values", 0)]))[0]).toEqual([[12]]);
  expect(await workbook.readFormulas(cell("Sheet1 as values", 0))).toEqual([[""]]);
  expect(await workbook.readFormulas(cell("Sheet1", 0))).toEqual([[OURS]]);
});

test("a connection dropped after the first of two requests leaves what was written, and the next try starts from there", async () => {
  const rows = 45_000;
  const range = { sheet: "Sheet1", row: 4, column: 0, rows, columns: 1 };
  const values = Array.from({ length: rows }, (_, row) => [`${row} ${"x".repeat(40)}`]);
  excel.afterNextRequest(() => {
    excel.isDisconnected = true;
  });
  await expect(workbook.writeValues([{ range, values }])).rejects.toMatchObject({
    name: "WorkbookRefused",
    message: "Excel did not answer. Check the connection, then try again.",
  });
  excel.isDisconnected = false;
  const last = cell("Sheet1", 4 + rows - 1);
  expect((await workbook.read([cell("Sheet1", 4), last])).flat(2)).toEqual([values[0]![0], null]);
  await workbook.writeValues([{ range, values }]);
  expect((await workbook.read([last])).flat(2)).toEqual(values.at(-1));
});
