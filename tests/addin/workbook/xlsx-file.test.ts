import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { fillDemoProgram } from "../../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../../addin/actions/workbook/set-up-workbook.ts";
import { DraftedWorkbook } from "../../../addin/workbook/embedded/draft.ts";
import { cellValue } from "../../../addin/workbook/embedded/cells.ts";
import { WorkbookFileRefused, type WorkbookSnapshot } from "../../../addin/workbook/embedded/workbook-file.ts";
import { readXlsxFile } from "../../../addin/workbook/embedded/xlsx/read-xlsx.ts";
import { xlsxFile, type Looks, type SheetContents } from "../../../addin/workbook/embedded/xlsx/xlsx-file.ts";
import { writeManyYards } from "../../many-yards.ts";
import { throughLibreOffice } from "../actions/export/libreoffice.ts";
import { partsByExcel } from "./file-by-excel.ts";
import { zipped } from "./zipped.ts";

type Cells = Readonly<
  Record<string, Readonly<Record<string, { v?: unknown; t?: unknown; f?: string; s?: string; custom?: { note?: string } }>>>
>;

const SETTINGS = "settings";

async function demo(): Promise<WorkbookSnapshot> {
  const draft = new DraftedWorkbook();
  await setUpWorkbook(draft);
  await fillDemoProgram(draft);
  return draft.snapshot("Program", SETTINGS) as WorkbookSnapshot;
}

/** What an uncomputed workbook holds: typed cells, and formulas without answers. */
function contentsOf(snapshot: WorkbookSnapshot): readonly SheetContents[] {
  return snapshot.sheetOrder.map((id) => {
    const sheet = snapshot.sheets[id];
    const cells = (sheet?.cellData ?? {}) as Cells;
    const rows = Math.max(0, ...Object.keys(cells).map(Number)) + 1;
    const columns = Math.max(0, ...Object.values(cells).flatMap((row) => Object.keys(row).map(Number))) + 1;
    const each = <Answer>(of: (cell: Cells[string][string] | undefined) => Answer) =>
      Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => of(cells[row]?.[column])));
    return {
      name: sheet?.name ?? "",
      values: each((cell) => cellValue(cell as never)),
      formulas: each((cell) => cell?.f ?? ""),
      spills: [],
    };
  });
}

const save = (snapshot: WorkbookSnapshot) =>
  xlsxFile(
    snapshot as unknown as Looks,
    contentsOf(snapshot),
    (snapshot["custom"] as Record<string, [string, string][]>)[SETTINGS] ?? [],
    "with formulas",
  );

/** Typed cells, formulas, formats and notes of every sheet, by the sheet's name. */
function said(snapshot: WorkbookSnapshot) {
  return snapshot.sheetOrder.map((id) => {
    const sheet = snapshot.sheets[id];
    const cells = Object.entries((sheet?.cellData ?? {}) as Cells).flatMap(([row, line]) =>
      Object.entries(line).flatMap(([column, cell]) => {
        const style = snapshot.styles?.[cell.s ?? ""] as { n?: { pattern: string }; bg?: unknown; bl?: number } | undefined;
        const held = [
          cell.f ?? cellValue(cell as never),
          cell.custom?.note ?? null,
          style?.n?.pattern ?? null,
          style?.bg ?? null,
          style?.bl ?? null,
        ];
        return held.every((part) => part === null) ? [] : [[row, column, ...held]];
      }),
    );
    return { name: sheet?.name, freeze: sheet?.freeze, cells };
  });
}

function rulesOf(snapshot: WorkbookSnapshot) {
  const text = snapshot.resources?.find(({ name }) => name === "SHEET_DATA_VALIDATION_PLUGIN")?.data ?? "{}";
  const bySheet = JSON.parse(text) as Record<string, { type: string; formula1: string; ranges: Record<string, unknown>[] }[]>;
  return snapshot.sheetOrder.map((id) =>
    (bySheet[id] ?? []).map(({ type, formula1, ranges }) => [
      type,
      formula1,
      ranges.map(({ startRow, endRow, startColumn, endColumn }) => [startRow, endRow, startColumn, endColumn]),
    ]),
  );
}

describe("The demo's workbook as an .xlsx file", () => {
  let before: WorkbookSnapshot;
  let bytes: Uint8Array;
  let after: WorkbookSnapshot;

  beforeAll(async () => {
    before = await demo();
    bytes = await save(before);
    after = (await readXlsxFile("demo.xlsx", bytes, SETTINGS)).workbook;
  });

  test("comes back cell for cell: contents, formulas, formats, fills, notes and panes", () => {
    expect(said(before).flatMap(({ cells }) => cells).length).toBeGreaterThan(2000);
    expect(said(after)).toEqual(said(before));
  });

  test("comes back with every drop-down and setting, and without the columns in which long lists stood", () => {
    expect(rulesOf(before).flat().length).toBeGreaterThan(20);
    expect(rulesOf(after)).toEqual(rulesOf(before));
    expect(after["custom"]).toEqual(before["custom"]);
  });

  test("comes back with widths to the pixel, and heights", () => {
    const sizes = (snapshot: WorkbookSnapshot) =>
      snapshot.sheetOrder.map((id) => [
        Object.entries(snapshot.sheets[id]?.columnData ?? {}).map(([column, data]) => [column, data?.w]),
        Object.entries(snapshot.sheets[id]?.rowData ?? {}).map(([row, data]) => [row, data?.h]),
      ]);
    expect(sizes(after)).toEqual(sizes(before));
    expect(JSON.stringify(Object.values(after.sheets).map(({ columnData }) => columnData))).not.toContain('"hd"');
  });

  test("comes back the same from a second saving", async () => {
    expect(said((await readXlsxFile("again.xlsx", await save(after), SETTINGS)).workbook)).toEqual(said(before));
  });
});

test("a program of a thousand yards comes back cell for cell", async () => {
  const draft = new DraftedWorkbook();
  await writeManyYards(draft, 1000);
  const before = draft.snapshot("Program", SETTINGS) as WorkbookSnapshot;
  const { workbook: after } = await readXlsxFile("thousand.xlsx", await save(before), SETTINGS);
  expect(said(before).flatMap(({ cells }) => cells).length).toBeGreaterThan(50_000);
  expect(said(after)).toEqual(said(before));
  expect(rulesOf(after)).toEqual(rulesOf(before));
  expect(after["custom"]).toEqual(before["custom"]);
});

describe("A file that another spreadsheet saved", () => {
  async function foreign(): Promise<ExcelJS.Workbook> {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet("Yards & more");
    sheet.getCell("A1").value = 2;
    sheet.getCell("A2").value = 3;
    sheet.getCell("B1").value = { formula: "A1*2", result: 4 } as ExcelJS.CellFormulaValue;
    sheet.getCell("B2").value = { sharedFormula: "B1", result: 6 } as ExcelJS.CellSharedFormulaValue;
    sheet.getCell("C1").value = new Date(Date.UTC(2026, 4, 4));
    sheet.getCell("C1").numFmt = "yyyy-mm-dd";
    sheet.getCell("D1").value = "=1+1";
    sheet.getCell("D2").value = { richText: [{ text: "two " }, { font: { bold: true }, text: "parts" }] };
    sheet.getCell("E1").value = "0551";
    sheet.getCell("E2").value = true;
    sheet.getCell("F1").value = "#N/A";
    sheet.getCell("F1").note = "typed";
    return workbook;
  }

  const valuesOf = (snapshot: WorkbookSnapshot) => {
    const cells = (snapshot.sheets[snapshot.sheetOrder[0] ?? ""]?.cellData ?? {}) as Cells;
    return (row: number, column: number) => cellValue(cells[row]?.[column] as never);
  };

  // 4 May 2026 is day 46,146 as spreadsheets count from 1900: computed by hand, 126 years of 365 days, 31 leap days, 1900's own and 123 days.
  test.each(["exceljs", "LibreOffice"])("opens as it stands when %s wrote it last", async (writer) => {
    const own = new Uint8Array(await (await foreign()).xlsx.writeBuffer());
    const bytes = writer === "exceljs" ? own : ((await throughLibreOffice({ "foreign.xlsx": own }))[0] ?? own);
    const { workbook: snapshot } = await readXlsxFile("foreign.xlsx", new Uint8Array(bytes), SETTINGS);
    const at = valuesOf(snapshot);
    expect(snapshot.sheets[snapshot.sheetOrder[0] ?? ""]?.name).toBe("Yards & more");
    expect([at(0, 0), at(1, 0)]).toEqual([2, 3]);
    expect(at(0, 2)).toBe(46_146);
    expect([at(0, 3), at(1, 3), at(0, 4)]).toEqual(["=1+1", "two parts", "0551"]);
    const cells = snapshot.sheets[snapshot.sheetOrder[0] ?? ""]?.cellData as Cells;
    expect(cells["0"]?.["1"]?.f).toBe("=A1*2");
    // LibreOffice keeps a truth as a formula that gives it.
    expect(cells["1"]?.["4"]?.f ?? at(1, 4)).toBe(writer === "exceljs" ? true : "=TRUE()");
    expect(cells["0"]?.["3"]?.f).toBeUndefined();
  });

  test("a name that belongs to every object is the name of a sheet like any other, or refused in words", async () => {
    const workbook = new ExcelJS.Workbook();
    workbook.addWorksheet("__proto__").getCell("A1").value = "here";
    const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
    await expect(readXlsxFile("odd.xlsx", bytes, SETTINGS)).rejects.toThrow(WorkbookFileRefused);
    expect(({} as Record<string, unknown>)["A1"]).toBeUndefined();
  });

  test.each([
    [
      "cut off",
      async () => new Uint8Array(await (await foreign()).xlsx.writeBuffer()).slice(0, 900),
      /cannot be read as an \.xlsx workbook: it is damaged, cut off/,
    ],
    ["empty", () => Promise.resolve(new Uint8Array()), /cannot be read/],
    ["a picture", () => Promise.resolve(Uint8Array.from([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13])), /cannot be read/],
    [
      "protected by a password",
      () => Promise.resolve(Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0])),
      /protected by a password/,
    ],
    [
      "packed so that it would fill the memory",
      () => Promise.resolve(zipped({ ...partsByExcel, "xl/bomb.xml": "0" }, { "xl/bomb.xml": 600_000_000 })),
      /unpacks to more than 500 MB/,
    ],
    [
      "packed with a part that does not say how large it is",
      () => Promise.resolve(zipped(partsByExcel, { "xl/worksheets/sheet1.xml": 0 })),
      /unpacks to more than 500 MB/,
    ],
    ["larger than its own list says", () => Promise.resolve(zipped(partsByExcel, { "xl/worksheets/sheet1.xml": 40 })), /cannot be read/],
    ["with macros", () => Promise.resolve(zipped({ ...partsByExcel, "xl/vbaProject.bin": "0" })), /holds macros, which do not run here/],
    [
      "with links to other files",
      () => Promise.resolve(zipped({ ...partsByExcel, "xl/externalLinks/externalLink1.xml": "<externalLink/>" })),
      /takes values from other files or programs/,
    ],
    ["larger than 50 MB", () => Promise.resolve(new Uint8Array(50_000_001)), /larger than 50 MB/],
  ] as const)("that is %s is refused in words", async (_, made, words) => {
    const reading = readXlsxFile("broken.xlsx", await made(), SETTINGS);
    await expect(reading).rejects.toThrow(WorkbookFileRefused);
    await expect(reading).rejects.toThrow(words);
  });
});
