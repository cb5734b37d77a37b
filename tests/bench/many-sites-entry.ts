/** Runs inside a page with a grid: a sheet of many yards whose basins are sized by one wide call or by a function a cell. */
import { DraftedWorkbook } from "../../addin/workbook/embedded/draft.ts";
import { EmbeddedGrid } from "../../addin/workbook/embedded/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../addin/workbook/embedded/embedded-workbook.ts";
import type { CellValue } from "../../addin/workbook/port.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";

export type Calls = "one wide call" | "a function a cell";

declare global {
  interface Window {
    manySites?: {
      /** Opens the sheet; the milliseconds until every basin is sized. */
      open(yards: number, calls: Calls): Promise<number>;
      /** Changes one yard's contributing area; the milliseconds until its basin is sized anew. */
      edit(yard: number, contributingAreaSquareFeet: number): Promise<number>;
      basinAreas(yards: number): Promise<readonly CellValue[]>;
    };
  }
}

const SHEET = "Yards";
const HEADINGS = ["Contributing area (sq ft)", "Design rate (in/h)", "Ponding depth (in)", "Storm depth (in)", "Basin area (sq ft)"];

const container = document.getElementById("grid");
if (!container) throw new Error("The page has no place for the grid.");
const grid = new EmbeddedGrid({ container, functions: catalogue, dark: false });
const workbook = new EmbeddedWorkbook(grid);

const cell = (row: number, column: number) => ({ sheet: SHEET, row, column, rows: 1, columns: 1 });

window.manySites = {
  async open(yards, calls) {
    const draft = new DraftedWorkbook();
    const columns = HEADINGS.map((heading, index) => ({
      heading,
      widthPixels: 120,
      role: index < 4 ? ("input" as const) : ("result" as const),
    }));
    await draft.addSheets([{ name: SHEET, headingRow: 0, columns, rows: yards, frozenColumns: 0, preface: [] }]);
    const inputs = Array.from({ length: yards }, (_, yard) => [
      600 + (yard % 97) * 25,
      0.25 + (yard % 13) * 0.1,
      4 + (yard % 5),
      1 + (yard % 3) * 0.25,
    ]);
    await draft.writeValues([{ range: { ...cell(1, 0), rows: yards, columns: 4 }, values: inputs }]);
    const wide = calls === "one wide call";
    const formulas = wide
      ? [[`=SOAK.BASINAREA(A2:A${yards + 1},B2:B${yards + 1},C2:C${yards + 1},D2:D${yards + 1})`]]
      : inputs.map((_, yard) => [`=SOAK.BASINAREA(A${yard + 2},B${yard + 2},C${yard + 2},D${yard + 2})`]);
    await draft.writeFormulas([{ range: { ...cell(1, 4), rows: formulas.length }, formulas }]);
    const start = performance.now();
    grid.openDraft(draft);
    await workbook.calculated();
    return performance.now() - start;
  },
  async edit(yard, contributingAreaSquareFeet) {
    const start = performance.now();
    await workbook.writeValues([{ range: cell(yard + 1, 0), values: [[contributingAreaSquareFeet]] }]);
    await workbook.calculated();
    return performance.now() - start;
  },
  async basinAreas(yards) {
    const [column = []] = await workbook.read([{ ...cell(1, 4), rows: yards }]);
    return column.map(([area]) => area ?? null);
  },
};
