import { beforeEach, describe, expect, it } from "vitest";
import { startingSheets } from "../../../../../addin/actions/workbook/set-up-workbook.ts";
import type { CellValue } from "../../../../../addin/workbook/port.ts";
import { at } from "../../../../browser/grid.ts";
import type { GridOnNode } from "./entry.ts";
import { onGrid } from "./grid-on-node.ts";

describe("The worksheet functions in the embedded spreadsheet", () => {
  let workbook: GridOnNode["workbook"];

  onGrid(
    (on) => (workbook = on.workbook),
    (draft) => draft.addSheets(startingSheets().flatMap(({ layout }) => (layout.name === "Program" ? [layout] : []))),
  );

  beforeEach(() => workbook.writeValues([{ range: at("Program!H21:M32"), values: Array.from({ length: 12 }, () => Array(6).fill(null)) }]));

  const write = (address: string, ...cells: readonly CellValue[]) =>
    workbook.writeValues([{ range: { ...at(address), rows: cells.length }, values: cells.map((cell) => [cell]) }]);
  const compute = async (address: string, formula: string, rows = 1): Promise<readonly CellValue[]> => {
    const cell = at(address);
    await workbook.writeFormulas([{ range: cell, formulas: [[formula]] }]);
    await workbook.calculated();
    const [answers = []] = await workbook.read([{ ...cell, rows }]);
    return answers.map(([answer = null]) => answer);
  };

  // TR-55 (SCS, 2nd ed., 1986), table 2-1: 4.0 in of rain on curve number 80 run off 2.04 in, printed to 0.01 in.
  it("show the runoff that TR-55 prints for 4 inches on curve number 80, and keep their formula", async () => {
    const [runoff] = await compute("Program!H21", "=SOAK.RUNOFFDEPTH(4,80)");
    expect(runoff).toBeCloseTo(2.04, 2);
    expect(await workbook.readFormulas(at("Program!H21"))).toEqual([["=SOAK.RUNOFFDEPTH(4,80)"]]);
  });

  it("compute with a measured 0, and leave a blank in the same place blank", async () => {
    // Three cells of ponding depth against three of design rate: 0 in, nothing, 6 in at 1 in/h.
    await write("Program!H21", 0, null, 6);
    await write("Program!I21", 1, null, 1);
    expect(await compute("Program!K21", "=SOAK.DRAWDOWN(H21:H23,I21:I23)", 3)).toEqual([0, null, 6]);
  });

  it("name a blank where a number is required, and not a 0 there", async () => {
    expect(await compute("Program!H21", "=SOAK.DRAWDOWN(H25,1)")).toEqual(["#N/A"]);
    expect(workbook.sentenceAt(at("Program!H21"))).toBe("Ponding depth is missing.");
    await write("Program!H25", 0);
    expect(await compute("Program!H21", "=SOAK.DRAWDOWN(H25,1)")).toEqual([0]);
  });

  it("answer every row of a column by one formula", async () => {
    await write("Program!H21", 1, 2, 4);
    const answers = await compute("Program!I21", "=SOAK.RUNOFFDEPTH(H21:H23,80)", 3);
    // TR-55, table 2-1, curve number 80: 0.08, 0.56 and 2.04 in.
    [0.08, 0.56, 2.04].forEach((printed, index) => {
      expect(answers[index]).toBeCloseTo(printed, 2);
    });
    expect(await workbook.readFormulas(at("Program!I22"))).toEqual([[""]]);
  });

  it("explain the error of a function inside another by the one that refused", async () => {
    expect(await compute("Program!H21", "=SOAK.RUNOFFVOLUME(1000,SOAK.RUNOFFDEPTH(4,180))")).toEqual(["#VALUE!"]);
    expect(workbook.sentenceAt(at("Program!H21"))).toContain("Curve number must be");
  });
});
