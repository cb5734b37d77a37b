/** Excel's commands and the pane over the demo inside a page, with as much of Excel as the commands ask for. */
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { associateCommands } from "../../addin/excel-commands.ts";
import { DraftedWorkbook } from "../../addin/workbook/embedded/draft.ts";
import { EmbeddedGrid } from "../../addin/workbook/embedded/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../addin/workbook/embedded/embedded-workbook.ts";
import type { CellRange } from "../../addin/workbook/port.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { mountPane } from "../../taskpane/pane.tsx";

declare global {
  interface Window {
    /** The command as Excel runs it, until it says that it is done; the sentences told so far and how often the pane was shown. */
    runCommand?: (id: string) => Promise<{ readonly told: readonly string[]; readonly shown: number }>;
    selectCell?: (range: CellRange) => Promise<void>;
    sheetNames?: () => Promise<readonly string[]>;
  }
}

const commands = new Map<string, (event: { completed(): void }) => void>();
const told: string[] = [];
let shown = 0;
const showAsTaskpane = (): Promise<void> => {
  shown += 1;
  return Promise.resolve();
};
Object.assign(window, {
  Office: {
    addin: { showAsTaskpane },
    actions: { associate: (id: string, run: (event: { completed(): void }) => void) => commands.set(id, run) },
  },
});

const container = document.getElementById("grid");
if (!container) throw new Error("The page has no place for the grid.");
const grid = new EmbeddedGrid({ container, functions: catalogue, dark: false });
const workbook = new EmbeddedWorkbook(grid);
const demo = new DraftedWorkbook();
await setUpWorkbook(demo);
await fillDemoProgram(demo);
grid.openDraft(demo);
const pane = document.body.appendChild(document.createElement("main"));
pane.id = "pane";
mountPane(pane, workbook, "light");
associateCommands(workbook, (sentence) => told.push(sentence));
await workbook.calculated();

window.selectCell = (range) => workbook.select(range);
window.sheetNames = () => workbook.sheetNames();
window.runCommand = (id) =>
  new Promise((resolve) => {
    commands.get(id)?.({ completed: () => resolve({ told: [...told], shown }) });
  });
