/** Puts the demo together twice inside a page, on the open grid and before the grid opens it, for comparison. */
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { DraftedWorkbook } from "../../addin/workbook/embedded/draft.ts";
import { EmbeddedGrid } from "../../addin/workbook/embedded/embedded-grid.ts";
import { EmbeddedWorkbook } from "../../addin/workbook/embedded/embedded-workbook.ts";
import type { Workbook, WorkbookWriting } from "../../addin/workbook/port.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";

type Shown = Awaited<ReturnType<Workbook["readSheets"]>>[number];

/** A sheet without the names and numbers that the grid gives at random. */
export interface ComparedSheet {
  readonly name: string;
  readonly shown: Shown;
  /** By address, what was put in and how it looks. */
  readonly cells: Readonly<Record<string, unknown>>;
  readonly layout: unknown;
  readonly dropDowns: readonly unknown[];
}

declare global {
  interface Window {
    demoBothWays?: () => Promise<{
      readonly onGrid: readonly ComparedSheet[];
      readonly drafted: readonly ComparedSheet[];
      readonly settings: readonly unknown[];
    }>;
  }
}

const container = document.getElementById("grid");
if (!container) throw new Error("The page has no place for the grid.");
const grid = new EmbeddedGrid({ container, functions: catalogue, dark: false });
const workbook = new EmbeddedWorkbook(grid);

window.demoBothWays = async () => {
  grid.openBlank();
  await demoOn(workbook);
  await workbook.calculated();
  const onGrid = await compared();
  const settings = [grid.settings];
  const draft = new DraftedWorkbook();
  await demoOn(draft);
  grid.openDraft(draft);
  await workbook.calculated();
  return { onGrid: onGrid.filter(({ name }) => name !== "Sheet1"), drafted: await compared(), settings: [...settings, grid.settings] };
};

async function demoOn(target: WorkbookWriting): Promise<void> {
  await setUpWorkbook(target);
  await fillDemoProgram(target);
}

async function compared(): Promise<ComparedSheet[]> {
  const { sheetOrder, sheets, styles, resources } = grid.snapshot();
  const rules = JSON.parse(resources?.find(({ name }) => name === "SHEET_DATA_VALIDATION_PLUGIN")?.data ?? "{}") as Record<
    string,
    Record<string, unknown>[] | undefined
  >;
  const shown = await workbook.readSheets(await workbook.sheetNames());
  return sheetOrder.map((id, index) => {
    const {
      name = "",
      cellData = {},
      rowCount,
      columnCount,
      columnData,
      rowData,
      freeze,
      defaultStyle,
      defaultRowHeight,
    } = sheets[id] ?? {};
    const cells = Object.entries(cellData).flatMap(([row, line]) =>
      Object.entries(line ?? {}).map(([column, cell]): [string, unknown] => {
        const { f, v, p, s, t, custom } = cell as Record<string, unknown>;
        const content = f ?? (p as { body?: { dataStream?: string } } | undefined)?.body?.dataStream ?? v;
        return [`${row} ${column}`, { content, type: f == null ? t : undefined, style: typeof s === "string" ? styles[s] : s, custom }];
      }),
    );
    const dropDowns = (rules[id] ?? []).map(({ uid: _uid, ranges, ...rule }) => ({
      ...rule,
      ranges: (ranges as Record<string, unknown>[]).map(({ unitId: _unit, sheetId: _sheet, ...range }) => range),
    }));
    return {
      name,
      shown: shown[index] ?? [],
      cells: Object.fromEntries(cells.filter(([, cell]) => JSON.stringify(cell) !== "{}")),
      layout: { rowCount, columnCount, columnData, rowData, freeze, defaultStyle, defaultRowHeight },
      dropDowns,
    };
  });
}
