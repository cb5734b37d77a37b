/** What is bundled for Node: the embedded spreadsheet with everything that computes and nothing that draws. */
import { Univer, type Plugin, type PluginCtor } from "@univerjs/core";
import {
  CellAlertManagerService,
  FormulaReorderController,
  IEditorBridgeService,
  IMenuManagerService,
  IRenderManagerService,
  IShortcutService,
} from "@univerjs/preset-sheets-core";
import { NEVER } from "rxjs";
import { computedSheets, sheetsKeptInOrder } from "../../../../../addin/records/program-sheets.ts";
import { DraftedWorkbook } from "../../../../../addin/workbook/embedded/draft.ts";
import { EmbeddedGrid } from "../../../../../addin/workbook/embedded/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../../../../addin/workbook/embedded/embedded-workbook.ts";
import type { Repair } from "../../../../../addin/workbook/embedded/repairs/list.ts";
import type { WorkbookWriting } from "../../../../../addin/workbook/port.ts";
import { catalogue } from "../../../../../functions/worksheet/catalogue.ts";

/** The workbook's file: its writer takes what the grid of this bundle holds. */
export { SETTINGS } from "../../../../../addin/workbook/embedded/embedded-grid.ts";
export { answersIn, withAnswers } from "../../../../../addin/workbook/embedded/kept-answers.ts";
export { readWorkbookFile, writeWorkbookFile } from "../../../../../addin/workbook/embedded/workbook-file.ts";
export { contentsOf } from "../../../../../addin/workbook/embedded/xlsx/contents.ts";
export { readXlsxFile } from "../../../../../addin/workbook/embedded/xlsx/read-xlsx.ts";
export { xlsxFile } from "../../../../../addin/workbook/embedded/xlsx/xlsx-file.ts";
/** What the tests of repairs look into. */
export {
  ArrayValueObject,
  BaseSelectionRenderService,
  CELL_INVERTED_INDEX_CACHE,
  FORMULA_REF_TO_ARRAY_CACHE,
  ICalculateFormulaService,
  IDependencyManagerService,
  functionStatistical,
} from "@univerjs/preset-sheets-core";
export { SheetsDataValidationValidatorService } from "@univerjs/preset-sheets-data-validation";

/** They mend what is drawn and typed: their tests open a page. */
export const OF_THE_PAGE = [
  "selected cell in view",
  "editor placed by its cell",
  "typing kept",
  "Enter takes what was typed",
  "errors explained",
] as const satisfies readonly Repair[];

const DRAWS = /(-ui|\/ui|engine-render|network)$/;
/** The commands of menu entries, by the entries' names. */
const commands = new Map<string, string>();

const menus = {
  mergeMenu(menu: object): void {
    for (const [name, entry] of Object.entries(menu)) {
      const { menuItemFactory } = entry as { readonly menuItemFactory?: () => { readonly commandId: string } };
      if (menuItemFactory) commands.set(name, menuItemFactory().commandId);
      else this.mergeMenu(entry as object);
    }
  },
};

/** Answers whatever is asked of a part that draws: nothing, now and later. */
const nothing: unknown = new Proxy(
  {},
  { get: (_, member) => (typeof member === "symbol" ? undefined : member.endsWith("$") ? NEVER : () => ({ dispose: () => undefined })) },
);

const register = Univer.prototype.registerPlugin;
const started = new WeakSet<Univer>();
Univer.prototype.registerPlugin = function <P extends PluginCtor<Plugin>>(this: Univer, plugin: P, options?: ConstructorParameters<P>[0]) {
  if (!started.has(this)) {
    started.add(this);
    const injector = this.__getInjector();
    injector.add([IMenuManagerService, { useValue: menus as unknown as IMenuManagerService }]);
    for (const part of [IRenderManagerService, CellAlertManagerService, IEditorBridgeService, IShortcutService])
      injector.add([part as typeof IRenderManagerService, { useValue: nothing as IRenderManagerService }]);
  }
  if (!DRAWS.test(plugin.packageName)) register.call(this, plugin, options);
};

export interface GridOnNode {
  readonly grid: EmbeddedGrid;
  readonly workbook: EmbeddedWorkbook;
  /** Opens what is put together before the grid has it. */
  open(write: (workbook: WorkbookWriting) => Promise<void>): Promise<void>;
  /** What a person does by an entry of the grid's menus, or by a command of the grid. */
  menu(name: string): Promise<void>;
}

/** With the repairs of the page it does not start: the parts that they mend are not there. */
export function startGrid(without: readonly Repair[] = [], ofThePage: readonly Repair[] = OF_THE_PAGE): GridOnNode {
  const grid = new EmbeddedGrid({
    container: nothing as HTMLElement,
    functions: catalogue,
    dark: false,
    without: [...ofThePage, ...without],
    sheetRules: {
      computed: new Map(computedSheets.map(({ name, columns }) => [name, Object.keys(columns).length])),
      keptInOrder: new Set(sheetsKeptInOrder.map(({ name }) => name)),
    },
  });
  return {
    grid,
    workbook: new EmbeddedWorkbook(grid),
    async open(write) {
      const draft = new DraftedWorkbook();
      await write(draft);
      grid.openDraft(draft);
      // It moves the formulas of sorted rows, and comes with the parts that draw.
      if (!grid.injector.has(FormulaReorderController)) {
        grid.injector.add([FormulaReorderController]);
        grid.injector.get(FormulaReorderController);
      }
      await grid.calculated();
    },
    async menu(name) {
      await grid.api.executeCommand(commands.get(name) ?? name);
    },
  };
}
