/**
 * Plants one fault at a time in the Excel adapter and asks whether the agreement cases and the checks below find it.
 * A contract test that a broken adapter passes proves nothing.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { describe, expect, test } from "vitest";
import type { Workbook } from "../../addin/workbook/port.ts";
import { cases } from "../agreement/cases.ts";
import { expectEqual, expectSoon, pause } from "../agreement/expectations.ts";
import { excelLookAt } from "../agreement/looks.ts";
import { picture } from "../agreement/picture-cases.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

interface Check {
  readonly title: string;
  run(workbook: Workbook, excel: InMemoryExcel): Promise<void>;
}

const cell = (row: number, column = 0) => ({ sheet: "Sheet1", row, column, rows: 1, columns: 1 });

/** As many rows as no single request may hold. */
const ROWS = 45_000;

/** What the cases, which know no host, cannot ask. */
const excelChecks: readonly Check[] = [
  {
    title: "any number of ranges is one round trip, and nothing stays held",
    async run(workbook, excel) {
      const before = excel.roundTrips;
      await workbook.read([cell(0), cell(1), cell(2)]);
      expectEqual(excel.roundTrips - before, 1, "round trips");
      await expectSoon(() => excel.heldReferences === 0, "giving up the ranges");
    },
  },
  {
    title: "a large write is split below 5 MB",
    async run(workbook) {
      const values = Array.from({ length: ROWS }, (_, row) => [
        `Ölmühlweg ${row}, a yard with a long description that was typed in full, house, barn, north and south terrace and the lane to the ferry`,
        row,
      ]);
      await workbook.writeValues([{ range: { sheet: "Sheet1", row: 0, column: 0, rows: values.length, columns: 2 }, values }]);
      expectEqual((await workbook.read([cell(ROWS - 1, 1)]))[0], [[ROWS - 1]], "the last cell");
    },
  },
  {
    title: "a missing sheet stops a write of several requests before the first",
    async run(workbook) {
      const values = Array.from({ length: ROWS }, (_, row) => [`${row} ${"x".repeat(60)}`]);
      const refused = await workbook
        .writeValues([
          { range: { ...cell(0), rows: ROWS }, values },
          { range: { ...cell(0), sheet: "Basins" }, values: [[1]] },
        ])
        .catch((error: unknown) => String(error));
      expectEqual(refused, 'SheetMissing: This workbook has no sheet named "Basins".', "what is said");
      expectEqual((await workbook.read([cell(0)]))[0], [[null]], "the first cell");
    },
  },
  {
    title: "a sheet is read from A1, wherever its first cell stands",
    async run(workbook) {
      await workbook.writeValues([{ range: cell(4, 2), values: [["far"]] }]);
      const [rows = []] = await workbook.readSheets(["Sheet1"]);
      expectEqual([rows.length, rows[4]], [5, [null, null, "far"]], "the rows");
    },
  },
  {
    title: "a protected sheet is said in words",
    async run(workbook, excel) {
      excel.book.sheetNamed("Sheet1")!.isProtected = true;
      const refused = await workbook.writeValues([{ range: cell(0), values: [[1]] }]).catch((error: unknown) => String(error));
      expectEqual(
        refused,
        'WorkbookRefused: The sheet "Sheet1" is protected. Unprotect on the Review tab, then try again.',
        "what is said",
      );
    },
  },
  {
    title: "in manual mode answers come when they are waited for",
    async run(workbook, excel) {
      excel.book.calculationMode = "Manual";
      await workbook.writeFormulas([{ range: cell(0), formulas: [["=2*3"]] }]);
      await workbook.calculated();
      expectEqual((await workbook.read([cell(0)]))[0], [[6]], "the answer");
      expectEqual(excel.book.calculationMode, "Manual", "the mode");
    },
  },
  {
    title: "a selected chart is no selection of cells",
    async run(workbook, excel) {
      excel.select("Sheet1", []);
      expectEqual(await workbook.selection(), null, "the selection");
    },
  },
  {
    title: "nobody listens after the last listener stopped",
    async run(workbook, excel) {
      const stops = [workbook.onCellsChanged(() => undefined), workbook.onSelectionChanged(() => undefined)];
      await pause(20);
      expectEqual(excel.listenedTo.length, 4, "events listened to");
      for (const stop of stops) stop();
      await pause(20);
      expectEqual(excel.listenedTo, [], "events listened to");
    },
  },
  {
    title: "a picture stands at its cell in Excel 2019",
    async run(workbook, excel) {
      await workbook.placePicture({ ...picture("Y-001"), sheet: "Sheet1", row: 4, column: 2 });
      const [{ left, top, width, height } = { left: 0, top: 0, width: 0, height: 0 }] = excel.book.sheetNamed("Sheet1")!.shapes;
      expectEqual([left, top, width, height], [96, 60, 45, 30], "its place in points");
    },
  },
];

type Fault = readonly [title: string, file: string, find: string, replacement: string];

const faults: readonly Fault[] = [
  ["a sync that is missing", "excel-workbook", "await context.sync();\n    return cells.map((each)", "return cells.map((each)"],
  [
    "a sync for each range",
    "excel-workbook",
    'const cells = pieces.map(({ range }) => rangeIn(context, range).load("values"));',
    'const cells: Excel.Range[] = []; for (const { range } of pieces) { cells.push(rangeIn(context, range).load("values")); await context.sync(); }',
  ],
  [
    "a property that was not loaded",
    "excel-workbook",
    'rangeIn(context, range).load("values")',
    'rangeIn(context, range).load("formulas")',
  ],
  ["another property loaded than is read", "excel-workbook", 'setting.load("value")', 'setting.load("key")'],
  ["a wrong sheet", "run", "worksheets.getItem(range.sheet)", 'worksheets.getItem("Sheet1")'],
  ["a wrong setting", "excel-workbook", "settings.add(key, text)", 'settings.add("soakbook", text)'],
  ["a text that Excel reads as a formula", "cells", ": `'${value}`", ": value"],
  [
    "a blank that is read as a text",
    "cells",
    'typeof value === "string" && value !== "" ? value : null',
    'typeof value === "string" ? value : null',
  ],
  ["a text that is read as a formula", "cells", "|| formula === value", ""],
  ["a taken name that is not looked for", "add-sheets", "present[index]?.isNullObject === false", "present[index] === undefined"],
  [
    "an array of another shape than its range",
    "excel-workbook",
    "rows: rows.map((row) => [...row])",
    "rows: rows.slice(1).map((row) => [...row])",
  ],
  [
    "a range selected on a sheet that is not in front",
    "excel-workbook",
    "context.workbook.worksheets.getItem(range.sheet).activate();",
    "",
  ],
  ["a used range taken for a range from A1", "excel-workbook", "rows: cells.rowIndex + cells.rowCount", "rows: cells.rowCount"],
  [
    "a missing sheet found after half was written",
    "excel-workbook",
    "for (const sheet of sheets) context.workbook.worksheets.getItem(sheet);",
    "",
  ],
  ["a missing sheet that is not named", "run", 'case "ItemNotFound": {', 'case "SheetNotFound": {'],
  ["a protected sheet that is not named", "run", 'case "AccessDenied":', 'case "Denied":'],
  ["an earlier picture that stays", "pictures", "if (shape.name === name) shape.delete();", "if (shape.name === name) shape.top = 0;"],
  ["proportions that change each other", "pictures", "placed.lockAspectRatio = false;", ""],
  [
    "a member above the requirement sets",
    "excel-workbook",
    "const area = context.workbook.getSelectedRanges().areas.getItemAt(0);",
    "const area = context.workbook.getActiveCell().getSpillParent();",
  ],
  ["a request that is too large", "requests", "CHARACTERS_PER_REQUEST = 1_000_000", "CHARACTERS_PER_REQUEST = 1_000_000_000"],
  ["a manual mode that nobody minds", "excel-workbook", "if (state.manual) {", "if (state.manual && state.done === undefined) {"],
  ["a selected chart that is an error", "excel-workbook", '=== "InvalidSelection"', '=== "NoSelection"'],
  ["a listener that stays", "excel-workbook", "for (const handler of handlers) handler.remove();", ""],
  [
    "changes told one by one",
    "bursts",
    "timer ??= setTimeout(() => void answer().catch(onTrouble), BURST_MILLISECONDS);",
    "void answer().catch(onTrouble);",
  ],
  ["formats that do not go on", "layout", 'rangeIn(context, range).copyFrom(rangeIn(context, rowAbove(range)), "Formats");', "void range;"],
  ["contents that are copied along with formats", "layout", '"Formats"', '"All"'],
  ["a drop-down that does not go on", "layout", "dataValidation.rule = above.rule;", ""],
  ["a drop-down that is read without having been loaded", "layout", 'load("type, rule, errorAlert")', 'load("type")'],
  [
    "formulas of changed sheets that nobody hears of",
    "excel-workbook",
    "[sheets.onChanged.add(note), sheets.onCalculated.add(note)]",
    "[sheets.onCalculated.add(note)]",
  ],
];

const folder = fileURLToPath(new URL("../../addin/workbook/excel/", import.meta.url));

async function adapterWith(file: string, find: string, replacement: string): Promise<(onTrouble: (error: unknown) => void) => Workbook> {
  const plant: esbuild.Plugin = {
    name: "plant-a-fault",
    setup: ({ onLoad }) =>
      onLoad({ filter: /[\\/]excel[\\/][a-z-]+\.ts$/ }, ({ path }) => {
        const source = readFileSync(path, "utf8");
        return { loader: "ts", contents: path.endsWith(`/${file}.ts`) ? source.replace(find, () => replacement) : source };
      }),
  };
  const { outputFiles } = await esbuild.build({
    entryPoints: [`${folder}excel-workbook.ts`],
    bundle: true,
    write: false,
    format: "esm",
    plugins: [plant],
    logLevel: "silent",
  });
  const script: { excelWorkbook: (onTrouble: (error: unknown) => void) => Workbook } = await import(
    `data:text/javascript;base64,${Buffer.from(outputFiles[0]?.contents ?? []).toString("base64")}`
  );
  return script.excelWorkbook;
}

const agreed = cases.map(({ title, run }): Check => ({ title, run: (workbook, { book }) => run(workbook, excelLookAt(book)) }));
/** How long each check took the last time it was passed: the quick ones go first, because most faults fail one of those. */
const taken = new Map<string, number>();
const byTime = () => [...excelChecks, ...agreed].sort((one, other) => (taken.get(one.title) ?? 0) - (taken.get(other.title) ?? 0));

/** The first check that the adapter fails, and why; null when it passes all. */
async function firstFailure(adapter: (onTrouble: (error: unknown) => void) => Workbook): Promise<string | null> {
  for (const { title, run } of byTime()) {
    const excel = new InMemoryExcel();
    const begun = performance.now();
    const troubles: unknown[] = [];
    try {
      await run(
        adapter((error) => troubles.push(error)),
        excel,
      );
      expectEqual(troubles.map(String), [], "what went wrong unheard");
      taken.set(title, performance.now() - begun);
    } catch (error) {
      return `${title}: ${String(error)}`;
    }
  }
  return null;
}

describe("A fault in the Excel adapter is caught", () => {
  test("where there is one: as it is, the adapter passes every check", async () => {
    expect(await firstFailure(await adapterWith("", "", ""))).toBeNull();
  });

  test.each(faults)("%s", async (_title, file, find, replacement) => {
    expect(readFileSync(`${folder}${file}.ts`, "utf8").split(find)).toHaveLength(2);
    expect(await firstFailure(await adapterWith(file, find, replacement))).not.toBeNull();
  });
});
