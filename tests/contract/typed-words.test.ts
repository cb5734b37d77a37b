/** Words are read one way: spaces around them, non-breaking ones too, and capitals change no number of the workbook. */
import { beforeAll, describe, expect, test } from "vitest";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { findPlace } from "../../addin/records/place.ts";
import { computedSheets, recordSheets } from "../../addin/records/program-sheets.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import type { CellValue, Workbook } from "../../addin/workbook/port.ts";
import { plainKey } from "../../functions/worksheet/calling/typed-words.ts";
import { misspellChoices, misspellNames } from "../agreement/misspelt.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

let excel: InMemoryExcel;
let workbook: Workbook;

beforeAll(async () => {
  excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  excel.book.calculationMode = "Manual";
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
});

/** Every cell of the sheets that formulas fill, and of the formulas in sheets that people type in. */
async function computed(): Promise<ReadonlyMap<string, CellValue>> {
  excel.book.calculate();
  const cells = await workbook.readSheets(recordSheets.map(({ name }) => name));
  return new Map(
    recordSheets.flatMap((sheet, index) => {
      const found = findPlace(sheet, cells[index] ?? []);
      if (!("place" in found)) throw new Error(`${sheet.name} has lost a heading.`);
      const { place } = found;
      const keys = Object.keys(sheet.columns).filter((key) => computedSheets.includes(sheet) || sheet.columns[key]?.role === "result");
      return (cells[index] ?? [])
        .slice(place.firstRow)
        .flatMap((row, line) =>
          keys.map((key): [string, CellValue] => [`${sheet.name} ${key} ${line}`, spoken(row[place.columnIndex(key)] ?? null)]),
        );
    }),
  );
}

/** Text that formulas pass on is as it was typed. */
function spoken(value: CellValue): CellValue {
  return typeof value === "string" ? plainKey(value) : value;
}

function differing(before: ReadonlyMap<string, CellValue>, after: ReadonlyMap<string, CellValue>): readonly string[] {
  return [...before].filter(([where, value]) => !same(value, after.get(where) ?? null)).map(([where]) => where);
}

function same(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return (one ?? "") === (other ?? "");
  return Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one));
}

describe("In the whole demo program", () => {
  test("choices with spaces around them and in other letters change no computed cell, and are no slips", async () => {
    const before = await computed();
    const slips = async () => (await readProgram(workbook)).yards.flatMap((yard) => yard.slips.map(({ sentence }) => sentence));
    const said = await slips();
    expect(await misspellChoices(workbook)).toBeGreaterThan(200);
    expect(differing(before, await computed())).toEqual([]);
    expect(await slips()).toEqual(said);
  });

  test("names of items, and Site IDs wherever a function or a look-up reads them, neither", async () => {
    const before = await computed();
    expect(await misspellNames(workbook)).toBeGreaterThan(200);
    expect(differing(before, await computed())).toEqual([]);
  });
});
