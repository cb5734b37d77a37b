import { beforeAll, describe, expect, test } from "vitest";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { columnLetters, type CellValue, type Workbook } from "../../addin/workbook/port.ts";
import { freshModule } from "../addin/workbook/embedded/on-node/grid-on-node.ts";
import { InMemoryExcel } from "../contract/in-memory-excel.ts";
import { actionCases } from "./action-cases.ts";
import { excelLookAt } from "./looks.ts";
import { actionOutcome, type ActionOutcome } from "./action-outcome.ts";

const titles = actionCases.map(({ title }) => title);

describe("Every action", () => {
  const grid = freshModule("agreement");
  let excel: InMemoryExcel;
  let workbook: Workbook;
  const troubles: unknown[] = [];

  beforeAll(() => {
    grid.beginActionCases();
    excel = new InMemoryExcel();
    workbook = excelWorkbook((error) => troubles.push(error));
  });

  test.each(titles)("on both spreadsheets: %s", async (title) => {
    const found = actionCases.find((one) => one.title === title)!;
    const inExcel = await actionOutcome(workbook, excelLookAt(excel.book), found);
    const inGrid = await grid.runActionCase(title);
    expect(inGrid.answer).toBe(inExcel.answer);
    expect(inGrid.looks).toEqual(inExcel.looks);
    expect(differences(inExcel, inGrid, (name, column) => excel.book.sheetNamed(name)?.hiddenColumns.has(column) ?? false)).toEqual([]);
  });

  test("asked Excel for no requirement set above the manifests', and nothing went wrong unheard", () => {
    // The object model asks about sets of its own too, which are for no manifest.
    const excelApi = (sets: InMemoryExcel["askedSets"]) => sets.filter(({ name }) => name === "ExcelApi").map(({ version }) => version);
    expect(excelApi(excel.askedSets)).toContain("1.9");
    // Whether 1.10 is there is asked where pictures are placed, and its absence is no refusal.
    expect(excelApi(excel.refusedSets)).toEqual(["1.10"]);
    expect(troubles).toEqual([]);
  });
});

/** "Sites!B4: Excel 3, embedded 4". In Excel a long list of choices stands in a hidden column. */
function differences(
  inExcel: ActionOutcome,
  embedded: ActionOutcome,
  isHidden: (sheet: string, column: number) => boolean,
): readonly string[] {
  const names = [...new Set([...Object.keys(inExcel.sheets), ...Object.keys(embedded.sheets)])];
  return names.flatMap((name) => {
    const [one = [], other = []] = [inExcel.sheets[name], embedded.sheets[name]];
    const found: string[] = [];
    for (let row = 0; row < Math.max(one.length, other.length); row += 1) {
      for (let column = 0; column < Math.max(one[row]?.length ?? 0, other[row]?.length ?? 0); column += 1) {
        const [here = null, there = null]: (CellValue | undefined)[] = [one[row]?.[column], other[row]?.[column]];
        if (here !== there && !isHidden(name, column))
          found.push(`${name}!${columnLetters(column)}${row + 1}: Excel ${JSON.stringify(here)}, embedded ${JSON.stringify(there)}`);
      }
    }
    return found;
  });
}
