import { afterEach, describe, expect, test } from "vitest";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { InMemoryExcel } from "../contract/in-memory-excel.ts";
import { cases } from "./cases.ts";
import { excelLookAt } from "./looks.ts";

describe("The port on Excel's object model", () => {
  const troubles: unknown[] = [];
  afterEach(() => {
    expect(troubles.splice(0)).toEqual([]);
  });

  test.each(cases.map(({ title, run }) => [title, run] as const))("%s", async (_title, run) => {
    const { book } = new InMemoryExcel();
    await run(
      excelWorkbook((error) => troubles.push(error)),
      excelLookAt(book),
    );
  });
});
