import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellText, sheetNames, spreadsheetFile, type FileSheet } from "../../../../addin/actions/export/spreadsheet-file.ts";
import { HOSTILE, hostileText, LONG } from "./hostile-text.ts";

// exceljs is not ours, and shares no code with what wrote the file.
async function open(sheets: readonly FileSheet[], paper: "letter" | "a4" = "letter"): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load((await spreadsheetFile("Estimates", sheets, paper)).buffer as ArrayBuffer);
  return workbook;
}

const sheetOf = (texts: readonly string[], name = "Y-001"): FileSheet => ({
  name,
  widths: [20],
  headingRow: 0,
  rows: [[{ value: "Item", look: "heading" }], ...texts.map((value) => [{ value }])],
});

describe("A spreadsheet file", () => {
  test("holds every text as text and runs none of it, and every number as a number", async () => {
    const texts = [...HOSTILE, ...LONG];
    const sheet = (await open([sheetOf(texts)])).getWorksheet("Y-001");
    texts.forEach((typed, index) => {
      const cell = sheet?.getCell(index + 2, 1);
      expect([ExcelJS.ValueType.String, ExcelJS.ValueType.RichText, ExcelJS.ValueType.Null], typed).toContain(cell?.type);
      expect(cell?.formula, typed).toBeUndefined();
    });
  });

  test("gives back what was typed, but for characters that no such file can hold", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(hostileText, { minLength: 1, maxLength: 8 }), async (texts) => {
        const sheet = (await open([sheetOf(texts)])).getWorksheet("Y-001");
        texts.forEach((typed, index) => {
          const { text } = sheet?.getCell(index + 2, 1) ?? {};
          // The escape that keeps "_x0041_" from turning into "A" is part of the file, not of the text.
          expect(text).toBe(cellText(typed).replace(/_x005F_/g, "_"));
        });
      }),
      { numRuns: 40 },
    );
  });

  test("prints one page wide, on Letter or A4, with its headings on every page, in a named font", async () => {
    for (const [paper, size] of [
      ["letter", 1],
      ["a4", 9],
    ] as const) {
      const sheet = (await open([sheetOf(["sand"])], paper)).getWorksheet("Y-001");
      expect(sheet?.pageSetup).toMatchObject({
        paperSize: size,
        fitToPage: true,
        fitToWidth: 1,
        fitToHeight: 0,
        orientation: "landscape",
        printTitlesRow: "1:1",
      });
      expect(sheet?.getCell(1, 1).font).toMatchObject({ name: "Calibri", size: 11, bold: true });
      expect(sheet?.getCell(2, 1).font).toMatchObject({ name: "Calibri", size: 11 });
      expect(sheet?.getColumn(1).width).toBe(20);
    }
  });

  test("keeps a formula beside the answer it is known to have", async () => {
    const rows = [[{ value: 3 }, { value: 4 }, { value: 12, formula: "A1*B1", format: "#,##0.00" }]];
    const cell = (await open([{ name: "Sums", widths: [10, 10, 10], headingRow: 0, rows }])).getWorksheet("Sums")?.getCell("C1");
    expect({ formula: cell?.formula, result: cell?.result, format: cell?.numFmt }).toEqual({
      formula: "A1*B1",
      result: 12,
      format: "#,##0.00",
    });
  });
});

describe("Names of its sheets", () => {
  // Excel: at most 31 characters, none of [ ] : * ? / \, no apostrophe at either end, no two alike whatever the case,
  // and never "History" (from memory).
  test("are accepted by every spreadsheet, one for each yard, whatever the Site IDs are", () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(hostileText, fc.constantFrom("Y-001", "y-001", "History", "", "[a]", "'x'")), { maxLength: 8 }),
        (texts) => {
          const names = sheetNames(texts);
          expect(names).toHaveLength(texts.length);
          expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(texts.length);
          for (const name of names) {
            expect(name.length).toBeGreaterThan(0);
            expect(name.length).toBeLessThanOrEqual(31);
            expect(name).not.toMatch(/[[\]:*?/\\]|^'|'$/);
            expect(name.toLowerCase()).not.toBe("history");
          }
        },
      ),
    );
  });

  test("keep an ordinary Site ID", () => {
    expect(sheetNames(["Y-001", "Y-002"])).toEqual(["Y-001", "Y-002"]);
  });
});
