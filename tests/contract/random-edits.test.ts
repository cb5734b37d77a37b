/** Whatever people do to rows of typed sheets, Design shows for every yard what its typed cells come to. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { setUpWithRows } from "../many-yards.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";
import { edit, expectDesignRight, fewRows, firstRowOf, sheets, typeRow } from "./yard-edits.ts";

test("after any edits, insertions, deletions and sorts of every typed sheet Design is right for every yard", async () => {
  const cases = { edits: 0, basins: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 12 }), async (edits) => {
      const excel = new InMemoryExcel();
      const workbook = excelWorkbook((error) => expect.fail(String(error)));
      excel.book.calculationMode = "Manual";
      await setUpWithRows(workbook, fewRows);
      for (const sheet of sheets) for (let row = 0; row < 6; row += 1) await typeRow(workbook, sheet, row, row * 17 + 3);
      for (const one of edits) {
        const sheet = sheets[one.sheet]!;
        const stored = excel.book.sheetNamed(sheet.name)!;
        const first = firstRowOf(sheet);
        if (one.kind === "sort")
          excel.book.sortRows(
            stored,
            first,
            one.order.map((row) => first + row),
          );
        else if (one.kind === "type") await typeRow(workbook, sheet, one.row, one.pick);
        else if (one.kind === "insert") excel.book.insertRow(stored, first + one.row);
        else excel.book.deleteRow(stored, first + one.row);
        excel.book.calculate();
        cases.basins += await expectDesignRight(workbook);
        cases.edits += 1;
      }
    }),
    {
      numRuns: 12,
      examples: [
        [
          [
            { kind: "delete", sheet: 0, row: 0, pick: 0 },
            { kind: "insert", sheet: 0, row: 0, pick: 0 },
            { kind: "type", sheet: 0, row: 0, pick: 5 },
            { kind: "delete", sheet: 1, row: 0, pick: 0 },
            { kind: "insert", sheet: 1, row: 0, pick: 0 },
            { kind: "type", sheet: 1, row: 0, pick: 8 },
            { kind: "delete", sheet: 2, row: 0, pick: 0 },
          ],
        ],
      ],
    },
  );
  expect(cases.edits).toBeGreaterThan(50);
  expect(cases.basins).toBeGreaterThan(50);
});
