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

const checks: Readonly<Record<EngineRepair, Check>> = {
  "blanks apart from zero": async (on) => {
    await put(on, 0, 1, [0, null, 3, 0, null]);
    await formula(on, 0, 2, `=IF(${cell(0, 1)}:${cell(4, 1)}="","blank",1)`);
    expect(await shown(on, 0, 2, 5)).toEqual([1, "blank", 1, 1, "blank"]);
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
  "parsed formulas kept": async (on, { hashAlgorithm }) => {
    const [one, other] = ofOneHash(hashAlgorithm);
    await on.workbook.writeFormulas([{ range: at(0, 1, 2), formulas: [[one.formula], [other.formula]] }]);
    expect(await shown(on, 0, 1, 2)).toEqual([one.value, other.value]);
  },
  "dependencies entered once": async (on, { IDependencyManagerService }) => {
    const enter = vi.spyOn(on.grid.injector.get(IDependencyManagerService), "addDependencyRTreeCache");
    void enter;
    await formula(on, 0, 2, `=${cell(0, 1)}*2`);
    for (const value of [1, 2, 3]) await put(on, 0, 1, [value]).then(() => on.workbook.calculated());
    expect(await shown(on, 0, 2)).toEqual([6]);
  },
  "chains of spills": async (on) => {
    await put(on, 0, 0, [1]);
    await formula(on, 0, 1, `=SEQUENCE(3)*${cell(0, 0)}`);
    await formula(on, 0, 2, `=${cell(0, 1)}:${cell(2, 1)}*2`);
    await formula(on, 0, 3, `=SUM(${cell(1, 2)}:${cell(2, 2)})`);
    expect(await shown(on, 0, 3)).toEqual([10]);
    await put(on, 0, 0, [10]);
    expect(await shown(on, 0, 3)).toEqual([100]);
  },
  "calculations in turn": async (on) => {
    await formula(on, 0, 2, `=SUM(${cell(0, 1)}:${cell(3, 1)})`);
    for (let round = 1; round <= 10; round += 1) {
      for (const row of [0, 1, 2, 3]) void put(on, row, 1, [round + row]);
      expect(await shown(on, 0, 2)).toEqual([4 * round + 6]);
    }
  },
  "checks of what is open": async (on, { SheetsDataValidationValidatorService }) => {
    const checking = on.grid.injector.get(SheetsDataValidationValidatorService);
    const range = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };
    expect(await checking.validatorRanges("closed", "deleted", [range])).toEqual([]);
  },
};

/** Two formulas that the grid's own short number takes for one. */
function ofOneHash(hash: (text: string) => number) {
  const seen = new Map<number, number>();
  const text = (value: number) => `=${value}+0*LEN("a text that is long enough to be kept under a number made from it")`;
  for (let value = 1; value < 1_000_000; value += 1) {
    const key = hash(text(value));
    const before = seen.get(key);
    if (before !== undefined) return [{ formula: text(before), value: before }, { formula: text(value), value }] as const;
    seen.set(key, value);
  }
  throw new Error("No two of a million formulas have one number.");
}

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
