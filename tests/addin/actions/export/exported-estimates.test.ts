import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { csvFile } from "../../../../addin/actions/export/csv-file.ts";
import { estimateSheets } from "../../../../addin/actions/export/estimate-sheets.ts";
import { exportFile } from "../../../../addin/actions/export/export-files.ts";
import { spreadsheetFile } from "../../../../addin/actions/export/spreadsheet-file.ts";
import { estimateOf, type Estimate } from "../../../../addin/actions/estimate/estimate.ts";
import type { Program } from "../../../../addin/actions/program/read-program.ts";
import { EstimateWorkbook, TODAY } from "../../estimate-workbook.ts";
import { HOSTILE, LONG } from "./hostile-text.ts";
import { CSV_WITH_FORMULAS, throughLibreOffice } from "./libreoffice.ts";

let program: Program;
let estimates: readonly Estimate[];

beforeAll(async () => {
  const book = await EstimateWorkbook.start();
  const prices = [
    ["compost", 32, 0.5, 2, 60],
    ["sand", 34.5, 0.5, null, 45],
    ["plant plug", 3.25, 1, null, null],
    ["volunteer hour", 31.8, null, null, null],
  ] as const;
  for (const [item, unitPrice, packageSize, minimumOrder, delivery] of prices)
    await book.price({ item, unitPrice, packageSize, minimumOrder, delivery, priceDate: TODAY - 10 });
  await book.setting("costSharePercent", 40);
  const [first, second, third] = [
    await book.yard("Lantern House"),
    await book.yard('=HYPERLINK("http://example.invalid","Kiln House")', "metric"),
    await book.yard("Weir End"),
  ];
  await book.lines(first, [
    { item: "compost", quantity: 2.6, unit: "cu yd", group: "Soil" },
    { item: "sand", quantity: 1.2, unit: "cu yd", group: "Soil", funder: "=1+1" },
    { item: "plant plug", quantity: 97, unit: "plant", note: '<img src=x onerror="alert(1)">' },
    { item: "volunteer hour", quantity: 9.38, unit: "h", kind: "in-kind" },
  ]);
  await book.lines(second, [
    { item: "plant plug", quantity: 40, note: "\u202eright to left" },
    { item: "gravel nobody prices", quantity: 1 },
  ]);
  await book.lines(third, []);
  program = await book.program();
  estimates = program.yards.map((yard) => estimateOf(program, yard, TODAY));
});

async function open(content: Uint8Array | Buffer): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(content.buffer.slice(content.byteOffset, content.byteOffset + content.byteLength) as ArrayBuffer);
  return workbook;
}

/** What stands in column H on the first row that begins so. */
function totalOn(workbook: ExcelJS.Workbook, sheet: string, label: string): number | undefined {
  let found: number | undefined;
  workbook.getWorksheet(sheet)?.eachRow((row) => {
    const cell = row.getCell(8);
    if (found === undefined && row.getCell(1).text === label)
      found = cell.formula === undefined ? (cell.value as number) : (cell.result as number);
  });
  return found;
}

const LABELS = {
  cash: "Cash lines",
  contingency: "Contingency, 15 %",
  cost: "Cost",
  costShare: "Cost share",
  ownPart: "Left to pay",
  inKind: "In-kind value, not part of the cost",
} as const;

function expectTotals(workbook: ExcelJS.Workbook): void {
  for (const estimate of estimates) {
    for (const [key, label] of Object.entries(LABELS) as [keyof typeof LABELS, string][]) {
      expect(totalOn(workbook, estimate.siteId, label), `${estimate.siteId} ${label}`).toBeCloseTo(estimate[key] ?? 0, 9);
    }
  }
}

async function spreadsheet(): Promise<Uint8Array> {
  const { content } = await exportFile("estimate.xlsx", program, program.yards, TODAY);
  return content as Uint8Array;
}

describe("An exported estimate", () => {
  // By hand: compost 2.6 is bought as 3: 3 x 32 + 60 = 156. Sand 1.2 as 1.5: 1.5 x 34.50 + 45 = 96.75. 97 x 3.25 = 315.25.
  // Cash 568.00, 15 % is 85.20, cost 653.20, 40 % of it 261.28, left 391.92. In kind 9.38 x 31.80 = 298.284.
  test("opens in exceljs with the totals that were worked out by hand", async () => {
    const workbook = await open(await spreadsheet());
    expect(Object.values(LABELS).map((label) => totalOn(workbook, "Y-001", label)?.toFixed(2))).toEqual([
      "568.00",
      "85.20",
      "653.20",
      "261.28",
      "391.92",
      "298.28",
    ]);
    expectTotals(workbook);
  });

  test("holds numbers of its own functions as numbers, and ordinary arithmetic as formulas that need no add-in", async () => {
    const workbook = await open(await spreadsheet());
    const formulas: string[] = [];
    workbook.eachSheet((sheet) =>
      sheet.eachRow((row) => row.eachCell((cell) => void (cell.formula !== undefined && formulas.push(cell.formula)))),
    );
    expect(formulas.filter((formula) => /SOAK|HYPERLINK|\bcmd\b/i.test(formula))).toEqual([]);
    expect(formulas).toEqual(expect.arrayContaining(["E5*F5+G5", "'Y-001'!H11"]));
    const line = workbook.getWorksheet("Y-001")?.getRow(5);
    expect([3, 5, 6, 7].map((column) => line?.getCell(column).type)).toEqual(Array(4).fill(ExcelJS.ValueType.Number));
  });

  test("opens in LibreOffice, which computes every formula anew, with the same totals", async () => {
    const wrong = await spreadsheetFile(
      "Control",
      [{ name: "Control", widths: [10], headingRow: 0, rows: [[{ value: 5, formula: "1+1" }]] }],
      "letter",
    );
    const [computed, control] = await throughLibreOffice({ "estimates.xlsx": await spreadsheet(), "control.xlsx": wrong });
    if (computed === undefined || control === undefined) throw new Error("LibreOffice gave no file.");
    // It does compute: a kept answer of 5 for 1+1 comes back as 2.
    expect((await open(control)).getWorksheet("Control")?.getCell("A1").result).toBe(2);
    const workbook = await open(computed);
    expectTotals(workbook);
    const sum = workbook.getWorksheet("All yards")?.getRow(8).getCell(5);
    expect(sum?.result).toBeCloseTo(
      estimates.reduce((total, { cost }) => total + cost, 0),
      9,
    );
  });

  test("puts no text of a person where it could run, in the file of one yard or of many", async () => {
    for (const yards of [program.yards, program.yards.slice(1, 2)]) {
      const { content } = await exportFile("estimate.xlsx", program, yards, TODAY);
      const title = (await open(content as Uint8Array)).getWorksheet("Y-002")?.getCell("A1");
      expect(title?.formula).toBeUndefined();
      expect(title?.text).toBe('Estimate Y-002, =HYPERLINK("http://example.invalid","Kiln House")');
    }
  });

  test("says what to look at again, and leaves a line without a price out of the sum in words", async () => {
    const texts: string[] = [];
    (await open(await spreadsheet())).getWorksheet("Y-002")?.eachRow((row) => row.eachCell((cell) => void texts.push(cell.text)));
    expect(texts).toContain("no price");
    expect(texts.join("\n")).toContain('gravel nobody prices: Item "gravel nobody prices" is not in the Prices table.');
  });

  test("lays out several yards with one that adds them up first, and one yard alone", () => {
    const made = program.yards.map((yard, index) => ({ yard, estimate: estimates[index]! }));
    expect(estimateSheets(made, TODAY).map(({ name }) => name)).toEqual(["All yards", "Y-001", "Y-002", "Y-003"]);
    expect(estimateSheets(made.slice(0, 1), TODAY).map(({ name }) => name)).toEqual(["Y-001"]);
  });
});

describe("An exported table of comma-separated text", () => {
  test("opens in LibreOffice as the same cells, and none of it as a formula, even when formulas are asked for", async () => {
    const texts = [...HOSTILE, ...LONG].map((typed) => [typed, "end"]);
    const [opened, control] = await throughLibreOffice({ "hostile.csv": csvFile(texts), "control.csv": "=1+1,end\r\n" }, CSV_WITH_FORMULAS);
    if (opened === undefined || control === undefined) throw new Error("LibreOffice gave no file.");
    // Opened like this, a text that was not made harmless does run.
    expect((await open(control)).worksheets[0]?.getCell("A1").formula).toBe("1+1");
    const sheet = (await open(opened)).worksheets[0];
    const formulas: string[] = [];
    sheet?.eachRow((row) => row.eachCell((cell) => void (cell.formula !== undefined && formulas.push(cell.formula))));
    expect(formulas).toEqual([]);
    expect(sheet?.actualRowCount).toBe(texts.length);
    expect(texts.every((_, index) => sheet?.getCell(index + 1, 2).text === "end")).toBe(true);
  });

  test("has every line and every total of every yard", async () => {
    const { content, fileName } = await exportFile("estimate.csv", program, program.yards, TODAY);
    expect(fileName).toBe("estimate-3-yards-2026-11-25.csv");
    const [file] = await throughLibreOffice({ "estimates.csv": content });
    const sheet = file === undefined ? undefined : (await open(file)).worksheets[0];
    const amounts = new Map<string, number>();
    sheet?.eachRow((row) => amounts.set(`${row.getCell(1).text} ${row.getCell(4).text}`, row.getCell(10).value as number));
    for (const estimate of estimates) {
      for (const [key, label] of Object.entries(LABELS) as [keyof typeof LABELS, string][])
        expect(amounts.get(`${estimate.siteId} ${label}`)).toBeCloseTo(estimate[key] ?? 0, 9);
    }
    expect(amounts.get("Y-001 compost")).toBe(156);
  });
});
