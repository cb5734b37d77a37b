/** A deleted sheet of ours comes back with what was typed on it, now and after a reload; until then nothing shows 0. */
import { beforeEach, describe, expect, test } from "vitest";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { bringSheetsBack, checkWorkbook } from "../../addin/actions/workbook/check-workbook.ts";
import { whatGoes } from "../../addin/actions/workbook/deleted-sheets.ts";
import { setUpWorkbook, sheetNamesOfProgram } from "../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../addin/records/design.ts";
import { placeAsSetUp } from "../../addin/records/place.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { isErrorCode, type CellValue, type Workbook } from "../../addin/workbook/port.ts";
import { ProgramWatch, type Reading } from "../../taskpane/program-watch.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

let excel: InMemoryExcel;
let workbook: Workbook;

beforeEach(async () => {
  excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
});

async function watching(): Promise<{ readonly readings: Reading[]; readonly watch: ProgramWatch }> {
  const readings: Reading[] = [];
  const watch = new ProgramWatch(workbook, (reading) => readings.push(reading));
  await watch.readAgain();
  return { readings, watch };
}

const remove = (name: string) => {
  const sheet = excel.book.sheetNamed(name);
  if (sheet === undefined) throw new Error(`There is no sheet ${name}.`);
  excel.book.removeSheet(sheet);
};

async function cellsOf(names: readonly string[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
  excel.book.calculate();
  return workbook.readSheets(names);
}

const SHOWN = ["Sites", "Surfaces", "Hole tests", "Design", "As-built", "Report yards", "Report"];

describe("A sheet that people type in", () => {
  test("comes back with every row that the pane had read, and every number is what it was", async () => {
    const { readings, watch } = await watching();
    const before = await cellsOf(SHOWN);
    remove("Surfaces");
    await watch.readAgain();
    expect(readings.at(-1)).toEqual({ state: "incomplete", missing: ["Surfaces"] });
    const [finding] = await checkWorkbook(workbook);
    expect(finding?.sentence).toBe("Sheet Surfaces is missing.");
    expect(finding?.repair?.says).toMatch(
      /^Bring sheet Surfaces back with the \d\d+ rows typed on it, as they stood on \d{4}-\d\d-\d\d\.$/,
    );
    const left = await bringSheetsBack(workbook);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    expect(await cellsOf(SHOWN)).toEqual(before);
    await watch.readAgain();
    expect(readings.at(-1)?.state).toBe("ready");
  });

  test("comes back after a reload, and with columns where people had moved them", async () => {
    const surfaces = excel.book.sheetNamed("Surfaces");
    if (surfaces === undefined) throw new Error("no Surfaces");
    excel.type("Surfaces", 2, 7, "Our own column");
    excel.type("Surfaces", 3, 7, "our own words");
    const { watch } = await watching();
    const before = await cellsOf(["Surfaces", "Design"]);
    remove("Surfaces");
    await watch.readAgain();
    // Another session of the pane, which never read the sheet.
    const reloaded = await watching();
    expect(reloaded.readings.at(-1)).toEqual({ state: "incomplete", missing: ["Surfaces"] });
    await bringSheetsBack(workbook);
    expect(await cellsOf(["Surfaces", "Design"])).toEqual(before);
  });

  test("that nobody read is said not to come back", async () => {
    remove("Surfaces");
    const [finding] = await checkWorkbook(workbook);
    expect(finding?.repair?.says).toBe(
      "Add sheet Surfaces with its headings, blank. What stood on it is kept nowhere, and does not come back.",
    );
  });

  test("that was given another name is known by its headings, and no second one is offered", async () => {
    const { watch } = await watching();
    const surfaces = excel.book.sheetNamed("Surfaces");
    if (surfaces === undefined) throw new Error("no Surfaces");
    excel.book.renameSheet(surfaces, "Roofs");
    await watch.readAgain();
    expect(await checkWorkbook(workbook)).toEqual([
      { sentence: 'Sheet "Roofs" has the headings of Surfaces: give it the name Surfaces back.' },
    ]);
    excel.book.renameSheet(surfaces, "Surfaces");
    expect((await readProgram(workbook)).yards.length).toBeGreaterThan(3);
  });
});

describe("Design", () => {
  const numbersOn = (cells: readonly (readonly CellValue[])[]) =>
    cells
      .slice(3)
      .flatMap((row) => row.slice(1, 3))
      .filter((cell) => typeof cell === "number");

  test("that is gone is an error on Report, never 0, and comes back in one tap", async () => {
    const { watch } = await watching();
    const before = await cellsOf(SHOWN);
    remove("Design");
    await watch.readAgain();
    const [report = []] = await cellsOf(["Report"]);
    expect(numbersOn(report)).toEqual([]);
    expect(
      report
        .slice(3)
        .flat()
        .some((cell) => isErrorCode(cell)),
    ).toBe(true);
    expect((await checkWorkbook(workbook))[0]?.repair?.says).toBe("Add sheet Design again. Nothing is typed there: its formulas fill it.");
    const left = await bringSheetsBack(workbook);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    expect(await cellsOf(SHOWN)).toEqual(before);
  });

  test.each([
    ["its Site IDs are cleared", "siteId", null],
    ["its Status is cleared", "status", null],
    ["its functions are not there", "designRate", "#NAME?"],
  ] as const)("is an error on Report, never 0, where %s", async (_, key, value) => {
    const place = placeAsSetUp(designSheet);
    const own = key === "status" ? "designRate" : key;
    const range = place.cell(place.firstRow, own);
    if (value === null) await workbook.writeValues([{ range, values: [[null]] }]);
    else await workbook.writeFormulas([{ range: { ...range }, formulas: [["=SOAK.GONE(1)"]] }]);
    const [report = []] = await cellsOf(["Report"]);
    expect(numbersOn(report)).toEqual([]);
    // The first line is the number of yards.
    expect(isErrorCode(report[3]?.[1] ?? null)).toBe(true);
  });
});

test("what goes with a sheet is counted before it is asked", async () => {
  const [surfaces = [], design = []] = await workbook.readSheets(["Surfaces", "Design"]);
  expect(whatGoes("Surfaces", surfaces)).toMatch(
    /^\d\d+ rows are typed on it\. Design, As-built, Report yards, Report and Hole tests will show errors, because they are computed from it\. One tap in the pane brings it back, after a reload too\.$/,
  );
  expect(whatGoes("Design", design)).toMatch(/^Nothing that the pane knows of is typed on it\. .*Report yards.* will show errors/);
  expect(whatGoes("Surfaces", [...surfaces, ["x".repeat(2_000_001)]])).toContain("too long to be kept: save the workbook to a file first");
  expect(sheetNamesOfProgram).toContain("Surfaces");
});
