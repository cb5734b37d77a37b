/**
 * An Excel in memory inside the page that Excel shows, in place of the connection to a real one: it follows Microsoft's
 * own script of the object model. The demo's workbook is open in it, and the pane starts when that is set up.
 */
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { firstRow } from "../../addin/records/place.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { InMemoryExcel } from "../contract/in-memory-excel.ts";

declare global {
  interface Window {
    excelInMemory?: InMemoryExcel;
    /** What the buttons of the ribbon run, by their ids. */
    excelCommands?: Record<string, (event: { completed(): void }) => void>;
  }
}

const excel = new InMemoryExcel();
const workbook = excelWorkbook((error) => {
  throw error;
});
const isReady = (async () => {
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  excel.select(sitesSheet.name, [{ row: firstRow(sitesSheet), column: 0, rows: 1, columns: 1 }]);
})();

const excelCommands: Record<string, (event: { completed(): void }) => void> = {};

/** What Excel has beside its object model. */
Object.defineProperties(Office, {
  HostType: { value: { Excel: "Excel" } },
  StartupBehavior: { value: { none: "None", load: "Load" } },
  actions: { value: { associate: (id: string, run: (event: { completed(): void }) => void) => void (excelCommands[id] = run) } },
  addin: {
    value: {
      showAsTaskpane: () => Promise.resolve(),
      getStartupBehavior: () => Promise.resolve("None"),
      setStartupBehavior: () => Promise.resolve(),
    },
  },
  onReady: { value: () => isReady.then(() => ({ host: "Excel" })) },
});
Object.assign(window, {
  // Excel in memory calls the functions by themselves.
  CustomFunctions: { associate: () => undefined },
  excelInMemory: excel,
  excelCommands,
  soakbook: { workbook },
});
