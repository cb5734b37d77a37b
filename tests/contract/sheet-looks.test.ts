/** What sheets say and show before anything of ours is asked: refusals, filters, colors, printed pages and names. */
import { beforeAll, describe, expect, test } from "vitest";
import { growSheets } from "../../addin/actions/workbook/grow-sheet.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../addin/records/design.ts";
import { columnOf, firstRow, headingRow } from "../../addin/records/place.ts";
import { computedSheets, recordSheets } from "../../addin/records/program-sheets.ts";
import { programLayout, programSettings, programSheet, settingCell } from "../../addin/records/program.ts";
import { layoutOf, type Sheet } from "../../addin/records/sheet.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { visitsSheet } from "../../addin/records/visits.ts";
import { absolute, addressOf } from "../../addin/workbook/port.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

async function setUp() {
  const excel = new InMemoryExcel();
  const workbook = excelWorkbook((error) => expect.fail(String(error)));
  await setUpWorkbook(workbook);
  const sheetOf = ({ name }: { readonly name: string }) => excel.book.sheetNamed(name) ?? expect.fail(`no ${name}`);
  return { excel, workbook, sheetOf };
}

type SetUp = Awaited<ReturnType<typeof setUp>>;

/** One workbook as it was set up, which no test here changes but by typing into cells of its own. */
let usual: SetUp;
/** One whose sheets have outgrown their rows, while somebody had filtered Visits. */
let grown: SetUp;

beforeAll(async () => {
  usual = await setUp();
  grown = await setUp();
  grown.sheetOf(visitsSheet).isDataFiltered = true;
  await growSheets(grown.workbook, new Map([designSheet, surfacesSheet, visitsSheet].map((sheet) => [sheet, sheet.rows + 1])));
});

describe("Typing over a result", () => {
  test("is stopped on every result column, first row to last, in words that say where to type instead", () => {
    const { sheetOf } = usual;
    const results = recordSheets.flatMap((sheet) => layoutOf(sheet).columns.map((column, place) => ({ sheet, column, place })));
    expect(results.filter(({ column }) => column.role === "result").length).toBeGreaterThan(70);
    for (const { sheet, column, place } of results.filter(({ sheet: { rows } }) => rows > 0)) {
      for (const row of [firstRow(sheet), firstRow(sheet) + sheet.rows - 1]) {
        const { rule, errorAlert } = sheetOf(sheet).validationAt(row, place) ?? {};
        const where = `${sheet.name}, ${column.heading}`;
        if (column.role === "input") expect(rule ?? {}, where).not.toHaveProperty("custom");
        else {
          expect(rule, where).toEqual({ custom: { formula: "=FALSE" } });
          expect(errorAlert, where).toMatchObject({ style: "Stop", showAlert: true, message: column.typedInstead });
          expect(column.typedInstead, where).toMatch(/^[A-Z].{20,}\.$/);
        }
      }
    }
  });

  test("is stopped in the rows that a sheet grows by as well", () => {
    const last = firstRow(designSheet) + 2 * designSheet.rows - 1;
    expect(grown.sheetOf(designSheet).validationAt(last, columnOf(designSheet, "status"))).toMatchObject({
      rule: { custom: { formula: "=FALSE" } },
      errorAlert: { style: "Stop" },
    });
  });
});

describe("The filter", () => {
  test("stands over headings and rows of every sheet that people type in, but where rows keep their order", () => {
    const { sheetOf } = usual;
    const unfiltered = ["Program", "Rain record", "Change log", ...computedSheets.map(({ name }) => name)];
    for (const sheet of recordSheets) {
      const area = { row: headingRow(sheet), column: 0, rows: sheet.rows + 1, columns: Object.keys(sheet.columns).length };
      expect(sheetOf(sheet).filtered, sheet.name).toEqual(unfiltered.includes(sheet.name) ? null : area);
    }
  });

  test("goes on over the rows that a sheet grows by, and stays as it is while it hides rows", () => {
    expect(grown.sheetOf(surfacesSheet).filtered?.rows).toBe(2 * surfacesSheet.rows + 1);
    expect(grown.sheetOf(visitsSheet).filtered?.rows).toBe(visitsSheet.rows + 1);
  });
});

describe("Colors", () => {
  const toneOf: Readonly<Record<string, string>> = { "#DDEFE3": "good", "#FBEFD5": "caution", "#F8DEDC": "stop" };

  /** Which rules hold for the first cell of a column that shows this, worked out by the spreadsheet's own arithmetic. */
  function tonesOf(sheet: Sheet, heading: string, content: string) {
    const { excel, sheetOf } = usual;
    const stored = sheetOf(sheet);
    const row = firstRow(sheet);
    const column = Object.values(sheet.columns).findIndex((one) => one.heading === heading);
    const put = (at: number, entry: string | number) => {
      excel.book.write(stored, { row, column: at, rows: 1, columns: 1 }, [[entry]], "as typed");
    };
    put(column, content);
    const rules = stored.colorRules.filter(({ area }) => area.column === column);
    rules.forEach(({ formula }, place) => {
      put(60 + place, formula);
    });
    excel.book.settle();
    return rules.flatMap(({ fill }, place) => (stored.contentAt(row, 60 + place) === true ? [toneOf[fill ?? ""]] : []));
  }

  test.each([
    ["fits", ["good"]],
    ["Drains too slowly: 8 in is too deep.", ["caution"]],
    ["", []],
    ["=NA()", []],
  ])("tell a Status that shows %j", (status, tones) => {
    expect(tonesOf(designSheet, "Status", status)).toEqual(tones);
  });

  test.each([
    ["pass", ["good"]],
    [" PASS ", ["good"]],
    ["refer", ["caution"]],
    ["watch", ["caution"]],
    ["stop", ["stop"]],
    ["fail", ["stop"]],
    ["not measured", []],
    ["", []],
  ])("tell a verdict of %j", (verdict, tones) => {
    expect(tonesOf(visitsSheet, "Verdict", verdict)).toEqual(tones);
  });

  test("go on in the rows that a sheet grows by", () => {
    const rules = grown.sheetOf(visitsSheet).colorRules;
    expect(rules.length).toBe(3);
    for (const { area } of rules) expect(area.rows).toBe(2 * visitsSheet.rows);
  });
});

test("every sheet is printed one page wide, its own columns alone, with the headings on each page", () => {
  const { sheetOf } = usual;
  for (const sheet of recordSheets) {
    const columns = Object.keys(sheet.columns).length;
    expect(sheetOf(sheet).page, sheet.name).toMatchObject({
      Zoom: { horizontalFitToPages: 1 },
      PrintArea: { row: 0, column: 0, columns },
      PrintTitleRows: { row: headingRow(sheet), column: 0, rows: 1, columns },
    });
    expect(["Portrait", "Landscape"]).toContain(sheetOf(sheet).page["Orientation"]);
  }
});

describe("A named setting", () => {
  test("answers in anybody's formula with the value on Program, for every setting", () => {
    const { excel, sheetOf } = usual;
    const own = excel.book.sheetNamed("Sheet1")!;
    const keys = Object.keys(programSettings) as (keyof typeof programSettings)[];
    keys.forEach((key, row) => {
      excel.book.write(own, { row, column: 0, rows: 1, columns: 1 }, [[`=SOAK_${key}`]], "as typed");
    });
    excel.book.settle();
    const shown = keys.map((_, row) => own.contentAt(row, 0) ?? 0);
    expect(shown).toEqual(keys.map((key) => programSettings[key].value ?? 0));
    expect(excel.book.names.get("SOAK_place")).toMatch(/^=Program!\$B\$\d+$/);
    expect(sheetOf(programSheet).contentAt(firstRow(programSheet), 0)).toBe("Design storm");
  });

  test("goes with its row when one is inserted above it, and comes back with a sheet that was deleted", async () => {
    const { excel, workbook, sheetOf } = grown;
    const own = excel.book.sheetNamed("Sheet1")!;
    excel.book.write(own, { row: 0, column: 0, rows: 1, columns: 1 }, [["=24*SOAK_drainHours"]], "as typed");
    excel.book.settle();
    excel.book.insertRow(sheetOf(programSheet), firstRow(programSheet));
    expect(own.contentAt(0, 0)).toBe(24 * 48);
    excel.book.removeSheet(sheetOf(programSheet));
    expect(own.contentAt(0, 0)).toBe("#REF!");
    await workbook.addSheets([programLayout()]);
    expect(excel.book.names.get("SOAK_drainHours")).toBe(`=${absolute(addressOf(settingCell("drainHours")))}`);
  });
});
