/** What each repair of the grid's engine is for: with it the grid is right, and without it the same check fails. */
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { Repair } from "../../../../../addin/workbook/embedded/repairs/list.ts";
import { columnLetters, type CellRange, type CellValue } from "../../../../../addin/workbook/port.ts";
import { bundleGrid, type BundledGrid, type GridModule } from "./grid-on-node.ts";
import type { GridOnNode, OF_THE_PAGE } from "./entry.ts";

type EngineRepair = Exclude<Repair, (typeof OF_THE_PAGE)[number]>;
type Check = (on: GridOnNode, module: GridModule) => Promise<void>;

const at = (row: number, column: number, rows = 1): CellRange => ({ sheet: "Sheet1", row, column, rows, columns: 1 });
const cell = (row: number, column: number) => `${columnLetters(column)}${row + 1}`;

async function put({ workbook }: GridOnNode, row: number, column: number, values: readonly CellValue[]): Promise<void> {
  await workbook.writeValues([{ range: at(row, column, values.length), values: values.map((value) => [value]) }]);
}
async function formula({ workbook }: GridOnNode, row: number, column: number, text: string): Promise<void> {
  await workbook.writeFormulas([{ range: at(row, column), formulas: [[text]] }]);
}
async function shown({ workbook }: GridOnNode, row: number, column: number, rows = 1): Promise<readonly CellValue[]> {
  await workbook.calculated();
  const [column_ = []] = await workbook.read([at(row, column, rows)]);
  return column_.map(([value]) => value ?? null);
}

const MANY = 400;
/** Texts in formulas that the grid's number of 32 bits, by which it keeps a long formula, takes for one. */
const OF_ONE_NUMBER = ["djtpyjm", "ydapurq"].map(
  (word) => `${word}, and further words until the formula is longer than sixty-four letters`,
);

interface IndexOfRanges {
  readonly _dependencyRTreeCache: { bulkInsert(ranges: readonly object[]): void };
}

const checks: Readonly<Record<EngineRepair, Check>> = {
  "blanks apart from zero": async (on) => {
    await put(on, 0, 1, [0, null, 3, 0, null]);
    const blank = [`=IF(${cell(0, 1)}:${cell(4, 1)}="","blank",1)`];
    // The second looks into what the grid kept of the column for the first.
    await on.workbook.writeFormulas([2, 3].map((column) => ({ range: at(0, column), formulas: [blank] })));
    expect(await shown(on, 0, 2, 5)).toEqual([1, "blank", 1, 1, "blank"]);
    expect(await shown(on, 0, 3, 5)).toEqual([1, "blank", 1, 1, "blank"]);
  },
  "texts found by index": async (on, { ArrayValueObject }) => {
    const ids = Array.from({ length: MANY }, (_, row) => `Y-${row % 200}`);
    await put(on, 0, 1, ids);
    const looks = vi.spyOn(ArrayValueObject.prototype, "mapValue");
    await formula(on, 0, 2, `=COUNTIFS(${cell(0, 1)}:${cell(MANY - 1, 1)},${cell(0, 1)}:${cell(MANY - 1, 1)})`);
    expect(await shown(on, 0, 2, MANY)).toEqual(ids.map(() => 2));
    const count = looks.mock.calls.length;
    looks.mockRestore();
    expect(count).toBeLessThan(MANY / 4);
  },
  "parsed formulas kept": async (on) => {
    await on.workbook.writeFormulas([{ range: at(0, 1, 2), formulas: OF_ONE_NUMBER.map((text) => [`="${text}"`]) }]);
    expect(await shown(on, 0, 1, 2)).toEqual(OF_ONE_NUMBER);
  },
  "names in a formula read anew": async (on) => {
    for (const summed of [
      [1, 2],
      [30, 40],
    ]) {
      on.grid.openBlank();
      await put(on, 0, 1, summed);
      await formula(on, 0, 2, `=LET(s,${cell(0, 1)}:${cell(1, 1)},SUM(s))`);
      expect(await shown(on, 0, 2)).toEqual([summed[0]! + summed[1]!]);
    }
  },
  "dependencies entered once": async (on, { IDependencyManagerService }) => {
    await formula(on, 0, 2, `=${cell(0, 1)}*2`);
    await on.workbook.calculated();
    const { _dependencyRTreeCache: index } = on.grid.injector.get(IDependencyManagerService) as unknown as IndexOfRanges;
    const entered = vi.spyOn(index, "bulkInsert");
    for (const value of [1, 2, 3]) {
      await put(on, 0, 1, [value]);
      expect(await shown(on, 0, 2)).toEqual([2 * value]);
    }
    expect(entered.mock.calls.flatMap(([ranges]) => ranges)).toEqual([]);
  },
  "chains of spills": async (on) => {
    await put(on, 0, 0, [1]);
    // Each reads cells that the one before has filled, and not its own; the last of the chain stands first.
    await on.workbook.writeFormulas([
      { range: at(0, 1), formulas: [[`=SUM(${cell(1, 2)}:${cell(2, 2)})`]] },
      { range: at(0, 2), formulas: [[`=${cell(1, 3)}:${cell(2, 3)}+1`]] },
      { range: at(0, 3), formulas: [[`=${cell(1, 4)}:${cell(3, 4)}*2`]] },
      { range: at(0, 4), formulas: [[`=SEQUENCE(4)*${cell(0, 0)}`]] },
    ]);
    expect(await shown(on, 0, 1)).toEqual([9]);
    await put(on, 0, 0, [10]);
    expect(await shown(on, 0, 1)).toEqual([81]);
  },
  "calculations in turn": async (on) => {
    const rows = Array.from({ length: MANY }, (_, row) => row);
    const reading = (input: number) => rows.map((row) => [`=${cell(input, 1)}+${row}`]);
    await on.workbook.writeFormulas([2, 3].map((column) => ({ range: at(0, column, MANY), formulas: reading(column - 2) })));
    for (let round = 1; round <= 12; round += 1) {
      await put(on, 0, 1, [round]);
      // The second comes while the first is computed.
      await new Promise((resolve) => setTimeout(resolve, 5 * round));
      await put(on, 1, 1, [-round]);
      expect(await shown(on, 0, 2, MANY)).toEqual(rows.map((row) => round + row));
      expect(await shown(on, 0, 3, MANY)).toEqual(rows.map((row) => row - round));
    }
  },
  "checks of what is open": async (on, { SheetsDataValidationValidatorService }) => {
    const checking = on.grid.injector.get(SheetsDataValidationValidatorService);
    const range = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };
    expect(await checking.validatorRanges("closed", "deleted", [range])).toEqual([]);
  },
};

describe("The grid's engine", { timeout: 60_000 }, () => {
  let bundled: BundledGrid;
  beforeAll(async () => {
    bundled = await bundleGrid();
  });
  afterAll(() => bundled.remove());

  const passes = async (check: Check, without: readonly Repair[]) => {
    const module = bundled.fresh();
    const on = module.startGrid(without);
    on.grid.openBlank();
    await check(on, module);
  };

  it.each(Object.entries(checks))("is right with its repairs: %s", async (_, check) => {
    await passes(check, []);
  });

  it.each(Object.entries(checks))("is not without the repair: %s", async (name, check) => {
    await expect(passes(check, [name as EngineRepair])).rejects.toThrow();
  });
});
