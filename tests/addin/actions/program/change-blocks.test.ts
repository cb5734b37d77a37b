import { beforeEach, describe, expect, test } from "vitest";
import type { LoggedWorkbook } from "../../../../addin/actions/program/change-log.ts";
import { latestChanges } from "../../../../addin/actions/program/read-log.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import type { CellValue } from "../../../../addin/workbook/port.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { changeLogIn, loggedInMemory } from "./logged-workbook.ts";

const ROWS = 12_000;
const where = { sheet: "Rain record", row: 3, column: 1, rows: ROWS, columns: 2 };
const YEARS = { by: "Coordinator", what: "Years of rain" };

let host: WorkbookInMemory;
let logged: LoggedWorkbook;

beforeEach(async () => {
  ({ host, logged } = await loggedInMemory());
});

const cells = (of: (row: number) => readonly CellValue[]) => Array.from({ length: ROWS }, (_, row) => of(row));
const held = async () => (await host.read([where]))[0] ?? [];

/** 12,000 rows of two cells, over others that stood there; the number of the change. */
async function writeOver(before: (row: number) => readonly CellValue[], after: (row: number) => readonly CellValue[]): Promise<number> {
  await host.writeValues([{ range: where, values: cells(before) }]);
  await logged.workbook.writeValues([{ range: where, values: cells(after) }]);
  return (await logged.putOnLog(YEARS)) ?? 0;
}

describe("a write as large as years of rain", () => {
  test("takes a handful of rows of the Change log, none of whose cells holds more than a spreadsheet's cell can", async () => {
    const change = await writeOver(
      (row) => [row / 7, "in"],
      (row) => [row / 3, "mm"],
    );
    const rows = await changeLogIn(host);
    expect(rows.length).toBeGreaterThan(1);
    expect(rows.length).toBeLessThan(40);
    rows.forEach(({ before, after }) => [before, after].forEach((cell) => expect(String(cell).length).toBeLessThanOrEqual(32_767)));
    expect(rows[0]).toMatchObject({ change, sheet: "Rain record", heading: "Rain depth", beforeHolds: "values", afterHolds: "values" });
    expect((await latestChanges(host, 1))[0]?.cells).toBe(2 * ROWS);
  });

  test("is taken back whole: every number to its last digit, texts, blanks and words that look like formulas", async () => {
    const before = (row: number): CellValue[] => [row % 3 === 0 ? null : row / 7, row % 5 === 0 ? "=1+1" : "in"];
    const change = await writeOver(before, (row) => [0.1 * row, '["mm"]']);
    await undoChange(host, change);
    expect(await held()).toEqual(cells(before));
  });

  test("where nothing stood before leaves blank cells when it is taken back", async () => {
    const change = await writeOver(
      () => [null, null],
      (row) => [row, "in"],
    );
    expect((await changeLogIn(host)).every(({ before }) => before === null)).toBe(true);
    await undoChange(host, change);
    expect((await held()).flat().every((cell) => cell === null)).toBe(true);
  });

  test("is not taken back where one cell of it has changed since", async () => {
    const change = await writeOver(
      () => [null, null],
      (row) => [row, "in"],
    );
    await host.writeValues([{ range: { ...where, row: 9000, rows: 1, columns: 1 }, values: [[77]] }]);
    await expect(undoChange(host, change)).rejects.toThrow(
      /^Nothing was undone, because cells have changed since\. 'Rain record'!B\d+:C\d+ was left with/,
    );
    expect((await held())[11]).toEqual([11, "in"]);
  });

  test("is not taken back where a formula stands in its place by now, though it answers the same", async () => {
    const change = await writeOver(
      () => [null, null],
      (row) => [row, "in"],
    );
    await host.writeFormulas([{ range: { ...where, row: 500, rows: 1, columns: 1 }, formulas: [["=497"]] }]);
    await expect(undoChange(host, change)).rejects.toThrow(/^Nothing was undone/);
  });

  test("over a formula is kept cell by cell, so that the formula comes back", async () => {
    const formula = { ...where, row: 500, rows: 1, columns: 1 };
    await host.writeFormulas([{ range: formula, formulas: [["=2*3"]] }]);
    await logged.workbook.writeValues([{ range: { ...where, rows: 600 }, values: cells((row) => [row, "in"]).slice(0, 600) }]);
    await undoChange(host, (await logged.putOnLog(YEARS)) ?? 0);
    expect(await host.readFormulas(formula)).toEqual([["=2*3"]]);
  });

  test("of which only some rows change is on the log with those rows alone", async () => {
    await writeOver(
      (row) => [row, "in"],
      (row) => [row === 11_990 ? -1 : row, "in"],
    );
    expect(await changeLogIn(host)).toHaveLength(1);
  });

  test("of texts longer than a block can hold is kept cell by cell", async () => {
    const long = "a note ".repeat(300);
    const small = { ...where, rows: 600 };
    await host.writeValues([{ range: { ...small, rows: 1, columns: 1 }, values: [[long]] }]);
    await logged.workbook.writeValues([{ range: small, values: Array.from({ length: 600 }, () => [1, "in"]) }]);
    await undoChange(host, (await logged.putOnLog(YEARS)) ?? 0);
    expect((await held())[0]?.[0]).toBe(long);
  });
});
