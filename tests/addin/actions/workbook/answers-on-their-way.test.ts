import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { turnIntoValues } from "../../../../addin/actions/workbook/turn-into-values.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const cell = { sheet: "Mine", row: 1, column: 0, rows: 1, columns: 1 };

async function mineWith(content: string): Promise<WorkbookInMemory> {
  const workbook = new WorkbookInMemory();
  await workbook.addSheets([
    {
      name: "Mine",
      headingRow: 0,
      columns: [{ heading: "Hours", widthPixels: 90, role: "input" }],
      rows: 0,
      frozenColumns: 0,
      preface: [],
    },
  ]);
  await workbook.writeValues([{ range: cell, values: [[content]] }]);
  await workbook.select(cell);
  return workbook;
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test("a copy as values waits for answers that are on their way", async () => {
  const workbook = await mineWith("#BUSY!");
  const copied = turnIntoValues(workbook);
  await vi.advanceTimersByTimeAsync(600);
  await workbook.writeValues([{ range: cell, values: [[12]] }]);
  await vi.advanceTimersByTimeAsync(600);
  const name = await copied;
  expect(await workbook.read([{ ...cell, sheet: name }])).toEqual([[[12]]]);
});

test("and says so, and copies nothing, where they do not come", async () => {
  const workbook = await mineWith("#BUSY!");
  const refused = expect(turnIntoValues(workbook)).rejects.toThrow('Sheet "Mine" is still being computed. Wait until no cell shows #BUSY!');
  await vi.advanceTimersByTimeAsync(60_000);
  await refused;
  expect(await workbook.sheetNames()).toEqual(["Mine"]);
});
