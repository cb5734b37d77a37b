/** A page with a small workbook in the grid and nothing beside it; its address names the repairs that are left out. */
import { layoutOf } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { DraftedWorkbook } from "../../addin/workbook/embedded/draft.ts";
import { EmbeddedGrid } from "../../addin/workbook/embedded/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../addin/workbook/embedded/embedded-workbook.ts";
import type { Repair } from "../../addin/workbook/embedded/repairs/list.ts";
import { drawdown } from "../../functions/worksheet/basin.ts";

const container = document.getElementById("grid");
if (!container) throw new Error("The page has no place for the grid.");
const without = new URLSearchParams(location.search).getAll("without") as Repair[];
const grid = new EmbeddedGrid({ container, functions: [drawdown], dark: false, without });
const workbook = new EmbeddedWorkbook(grid);

const ROWS = 200;
// A narrow column that is frozen, and beside it more wide ones than the window shows.
const columns = Array.from({ length: 12 }, (_, index) => ({
  heading: `Column ${index + 1}`,
  widthPixels: index === 0 ? 120 : 320,
  role: "input" as const,
}));
const own = ["Typed", "Elsewhere"].map((name) => ({ name, headingRow: 0, columns, rows: ROWS, frozenColumns: 1, preface: [] }));
const draft = new DraftedWorkbook();
await draft.addSheets([...own, layoutOf(sitesSheet)]);
// A column of errors, so that there is one wherever it is pointed at.
await draft.writeFormulas([
  {
    range: { sheet: "Elsewhere", row: 1, column: 1, rows: ROWS, columns: 1 },
    formulas: Array.from({ length: ROWS }, () => ["=SOAK.DRAWDOWN(6,0)"]),
  },
]);
grid.openDraft(draft);
await grid.drawn();
await workbook.calculated();
window.soakbook = { workbook };
