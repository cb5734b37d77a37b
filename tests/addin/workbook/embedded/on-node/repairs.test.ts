/** What each repair of the grid's engine is for: with it the grid is right, and without it the same check fails. */
import { describe, expect, it, vi } from "vitest";
import type { Repair } from "../../../../../addin/workbook/embedded/repairs/list.ts";
import { columnLetters, type CellRange, type CellValue } from "../../../../../addin/workbook/port.ts";
import { freshModule, type GridModule } from "./grid-on-node.ts";
import type { GridOnNode, OF_THE_PAGE } from "./entry.ts";

type PageRepair = (typeof OF_THE_PAGE)[number];
type EngineRepair = Exclude<Repair, PageRepair>;
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
    // Two rows an ID: 0 and 1, 2 and 3 and so on, one of them named as a wildcard would have it.
    const ids = Array.from({ length: MANY }, (_, row) => `Y-${row % 200}`);
    const amounts = ids.map((_, row) => row);
    await put(on, 0, 1, ids);
    await put(on, 0, 2, amounts);
    await put(
      on,
      0,
      3,
      ids.map((_, row) => (row < 200 ? "cash" : row === 399 ? null : "in-kind")),
    );
    const column = (place: number) => `${cell(0, place)}:${cell(MANY - 1, place)}`;
    const [id, amount, kind] = [1, 2, 3].map(column);
    const asked: readonly (readonly [formula: string, answer: (row: number) => CellValue])[] = [
      [`=COUNTIFS(${id},${id})`, () => 2],
      [`=COUNTIFS(${id},${id},${amount},">=200")`, () => 1],
      [`=COUNTIFS(${id},${id},${kind},"<>")`, (row) => (row === 199 ? 1 : 2)],
      [`=SUMIFS(${amount},${id},${id},${kind},"*in-kind*")`, (row) => (row === 199 ? 0 : row + 200)],
      [`=SUMIFS(${amount},${kind},"<>*in-kind*",${id},${id})`, (row) => (row === 199 ? 199 + 399 : row)],
      [`=MAXIFS(${amount},${id},${id})`, (row) => row + 200],
      [`=MINIFS(${amount},${id},${id},${amount},">0")`, (row) => (row === 0 ? 200 : row)],
      [`=MAXIFS(${amount},${id},${id}&"x")`, () => 0],
      [`=XLOOKUP("y-"&MOD(ROW(${id})-1,200),${id},${amount})`, (row) => row],
      [`=XLOOKUP("y-"&MOD(ROW(${id})-1,200),${id},${amount},"none",0,-1)`, (row) => row + 200],
      [`=XLOOKUP("z-"&MOD(ROW(${id})-1,200),${id},${amount},"none",0,-1)`, () => "none"],
      [`=MATCH("y-"&MOD(ROW(${id})-1,200),${id},0)`, (row) => row + 1],
    ];
    const looks = vi.spyOn(ArrayValueObject.prototype, "compare");
    const cellsCompared = () =>
      (looks.mock.contexts as { getRowCount(): number }[]).reduce((sum, compared) => sum + compared.getRowCount(), 0);
    for (const [text, answer] of asked) {
      looks.mockClear();
      await formula(on, 0, 5, text);
      expect(await shown(on, 0, 5, MANY), text).toEqual(ids.map((_, row) => answer(row % 200)));
      // Every criterion against every cell would be 160,000.
      expect(cellsCompared(), text).toBeLessThan(4 * MANY);
    }
    looks.mockRestore();
    await on.workbook.writeFormulas([{ range: at(0, 6, MANY), formulas: ids.map((one) => [`=XLOOKUP("${one}",${id},${amount})`]) }]);
    const equal = vi.spyOn(ArrayValueObject.prototype, "get");
    equal.mockClear();
    await put(on, 0, 2, [7]);
    expect(await shown(on, 0, 6, MANY)).toEqual(ids.map((_, row) => (row % 200 === 0 ? 7 : row % 200)));
    const read = equal.mock.calls.length;
    equal.mockRestore();
    expect(read).toBeLessThan(20 * MANY);
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

interface Need {
  readonly says: string;
  /** The repairs that are left out all the same, where not all of the page's are. */
  readonly left?: (module: GridModule) => readonly Repair[];
  /** Takes something that the repair needs out of the grid; what it answers puts it back. */
  readonly takeAway: (module: GridModule) => () => void;
}

const taken = (from: object, member: PropertyKey) => {
  const held = Object.getOwnPropertyDescriptor(from, member);
  Reflect.deleteProperty(from, member);
  return () => {
    if (held) Object.defineProperty(from, member, held);
  };
};

function without(member: string, part: string, of: (module: GridModule) => object): Need {
  return {
    says: `The grid's ${part} has no "${member}", which a repair needs`,
    takeAway(module) {
      const putBack: (() => void)[] = [];
      for (let each: object | null = of(module); each !== null; each = Object.getPrototypeOf(each) as object | null)
        putBack.push(taken(each, member));
      return () => putBack.forEach((put) => put());
    },
  };
}

/** Nothing that draws is there on Node. */
function notDrawn(repair: PageRepair, member: string, part: string): Need {
  return {
    says: `The grid's ${part} has no "${member}", which a repair needs`,
    left: ({ OF_THE_PAGE }) => OF_THE_PAGE.filter((each) => each !== repair),
    takeAway: () => () => undefined,
  };
}

/** A part of a first grid: what it has in common with the next is changed. */
const partOf = (part: (on: GridOnNode, module: GridModule) => object) => (module: GridModule) => {
  const on = module.startGrid();
  on.grid.openBlank();
  return part(on, module);
};
const store = ({ FORMULA_REF_TO_ARRAY_CACHE }: GridModule) => FORMULA_REF_TO_ARRAY_CACHE;
const dependencies = partOf(({ grid }, module) => grid.injector.get(module.IDependencyManagerService));
const engine = partOf(({ grid }, module) => grid.injector.get(module.ICalculateFormulaService));

/** The one that is not here asks for nothing that the grid does not promise. */
const needed: Readonly<Record<Exclude<Repair, "selected cell in view">, Need>> = {
  "blanks apart from zero": without("canUseCache", "index of cells", ({ CELL_INVERTED_INDEX_CACHE }) => CELL_INVERTED_INDEX_CACHE),
  "texts found by index": {
    says: "The grid has no function COUNTIFS.",
    takeAway({ functionStatistical }) {
      const entry = functionStatistical.find((each) => (each as readonly unknown[])[1] === "COUNTIFS") as unknown[];
      entry[1] = "GONE";
      return () => (entry[1] = "COUNTIFS");
    },
  },
  "parsed formulas kept": without("_hash", "store of parsed formulas", store),
  "names in a formula read anew": without("set", "store of parsed formulas", store),
  "dependencies entered once": without("reset", "dependencies", dependencies),
  "chains of spills": without("_apply", "calculation", engine),
  "calculations in turn": without("execute", "formula engine", engine),
  "checks of what is open": without(
    "validatorRanges",
    "check of drop-downs",
    partOf(({ grid }, module) => grid.injector.get(module.SheetsDataValidationValidatorService)),
  ),
  "editor placed by its cell": {
    ...notDrawn("editor placed by its cell", "getViewPort", "selection"),
    takeAway: ({ BaseSelectionRenderService }) => taken(BaseSelectionRenderService.prototype, "getViewPort"),
  },
  "typing kept": notDrawn("typing kept", "refreshEditCellState", "cell editor"),
  "Enter takes what was typed": notDrawn("Enter takes what was typed", "registerShortcut", "keyboard"),
  "errors explained": notDrawn("errors explained", "showAlert", "alerts"),
};

describe("The grid's engine", () => {
  const passes = async (check: Check, without: readonly Repair[]) => {
    const module = freshModule("grid");
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

  it.each(Object.entries(needed))("does not start, and says why, where a member is gone that a repair needs: %s", (_, need) => {
    const module = freshModule("grid");
    const putBack = need.takeAway(module);
    expect(() => {
      module.startGrid([], need.left?.(module)).grid.openBlank();
    }).toThrow(need.says);
    putBack();
  });
});
