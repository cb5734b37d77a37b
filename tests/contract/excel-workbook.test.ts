import * as fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import type { CellRange, SheetLayout, Workbook } from "../../addin/workbook/port.ts";
import { addinDescription } from "../../manifest/addin-description.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const range = (sheet: string, row: number, column: number, rows = 1, columns = 1): CellRange => ({ sheet, row, column, rows, columns });
const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

const sites: SheetLayout = {
  name: "Sites",
  headingRow: 1,
  preface: ["Yards of the program"],
  rows: 10,
  frozenColumns: 1,
  columns: [
    { heading: "Yard", widthPixels: 200, role: "input", note: "The address." },
    { heading: "Soil", widthPixels: 80, role: "input", choices: ["sand", "loam", "clay"] },
    { heading: "Floor area", widthPixels: 96, role: "result", numberFormat: "0.0" },
  ],
};

let excel: InMemoryExcel;
let workbook: Workbook;
let troubles: unknown[];

beforeEach(() => {
  excel = new InMemoryExcel();
  troubles = [];
  workbook = excelWorkbook((error) => troubles.push(error));
});

/** Round trips that the work takes. */
async function tripsOf(work: () => Promise<unknown>): Promise<number> {
  const before = excel.roundTrips;
  await work();
  return excel.roundTrips - before;
}

test("a setting that the page without Excel wrote into the file is read until Excel's own takes its place", async () => {
  excel.book.customProperties.set("soakbook.rows", "Sites\t400");
  expect(await workbook.readSetting("soakbook.rows")).toBe("Sites\t400");
  await workbook.writeSetting("soakbook.rows", "Sites\t600");
  expect(await workbook.readSetting("soakbook.rows")).toBe("Sites\t600");
});

describe("Excel is asked", () => {
  test("once to read any number of ranges of any number of sheets", async () => {
    await workbook.addSheets([sites, { ...sites, name: "Rules" }]);
    const ranges = Array.from({ length: 40 }, (_, row) => range(row % 2 === 0 ? "Sites" : "Rules", row, 0, 2, 3));
    expect(await tripsOf(() => workbook.read(ranges))).toBe(1);
  });

  test("once to write values or formulas into several sheets", async () => {
    await workbook.addSheets([sites, { ...sites, name: "Rules" }]);
    const writes = ["Sites", "Rules"].map((sheet) => ({ range: range(sheet, 2, 0), values: [["Alder Row 4"]] }));
    expect(await tripsOf(() => workbook.writeValues(writes))).toBe(1);
    expect(await tripsOf(() => workbook.writeFormulas([{ range: range("Sites", 3, 0), formulas: [["=1+1"]] }]))).toBe(1);
    expect(await tripsOf(() => workbook.readFormulas(range("Sites", 3, 0)))).toBe(1);
  });

  test("twice to add any number of sheets: whether a name is taken, then everything", async () => {
    const layouts = Array.from({ length: 8 }, (_, index) => ({ ...sites, name: `Sheet of ${index}` }));
    expect(await tripsOf(() => workbook.addSheets(layouts))).toBe(2);
  });

  test("for no more than it takes at once, however much is written", async () => {
    const rows = Array.from({ length: 30_000 }, (_, row) => [
      `Ölmühlweg ${row}, a yard with a long description that was typed in full`,
      row,
      null,
    ]);
    const where = range("Sheet1", 0, 0, rows.length, 3);
    await workbook.writeValues([{ range: where, values: rows }]);
    expect(await workbook.read([where])).toEqual([rows]);
    expect(excel.largestRequestBytes).toBeLessThan(5 * 1024 * 1024);
  });

  test("to give up every range it held for us", async () => {
    await workbook.addSheets([sites]);
    await workbook.writeValues([{ range: range("Sites", 2, 0), values: [["Alder Row 4"]] }]);
    await workbook.read([range("Sites", 2, 0)]);
    await workbook.select(range("Sites", 2, 0));
    await workbook.selection();
    await pause(20);
    expect(excel.heldReferences).toBe(0);
  });
});

describe("A sheet that was added", () => {
  const sheet = () => excel.book.sheetNamed("Sites")!;

  test("has its title, headings, widths, formats and frozen panes", async () => {
    await workbook.addSheets([sites]);
    expect(sheet().contentAt(0, 0)).toBe("Yards of the program");
    expect([0, 1, 2].map((column) => sheet().contentAt(1, column))).toEqual(["Yard", "Soil", "Floor area"]);
    expect(sheet().formatAt(1, 1, "Bold")).toBe(true);
    expect(sheet().formatAt(1, 1, "WrapText")).toBe(true);
    // 64 pixels are 48 points: Excel's standard column.
    expect(sheet().columnWidths.get(2)).toBe(72);
    expect(sheet().formatAt(11, 2, "NumberFormat")).toBe("0.0");
    expect(sheet().formatAt(12, 2, "NumberFormat")).toBeUndefined();
    expect(sheet().formatAt(2, 2, "Fill")).not.toBe(sheet().formatAt(2, 0, "Fill"));
    expect(sheet().frozen).toEqual({ row: 0, column: 0, rows: 2, columns: 1 });
  });

  test("freezes its headings alone when no column is frozen", async () => {
    await workbook.addSheets([{ ...sites, frozenColumns: 0 }]);
    expect(sheet().frozen).toMatchObject({ rows: 2, columns: 0 });
  });

  test("shows the note of a heading when the heading is selected, cut to what Excel shows", async () => {
    await workbook.addSheets([
      { ...sites, columns: [{ ...sites.columns[0]!, heading: "A heading that is longer than 32 characters", note: "n".repeat(300) }] },
    ]);
    const prompt = sheet().validationAt(1, 0)?.prompt as { title: string; message: string };
    expect(prompt.title).toBe("A heading that is longer than 3…");
    expect(prompt.message).toHaveLength(255);
  });

  test("offers the choices of a column in every prepared row and refuses others", async () => {
    await workbook.addSheets([sites]);
    expect(sheet().validationAt(11, 1)).toMatchObject({
      rule: { list: { inCellDropDown: true, source: "sand,loam,clay" } },
      errorAlert: { showAlert: true, style: "Stop" },
    });
    expect(sheet().validationAt(12, 1)).toBeUndefined();
  });

  test.each([
    ["that are too long together for Excel", Array.from({ length: 30 }, (_, index) => `a long kind of cover ${index}`)],
    ["of which one holds a comma", ["lawn, good", "lawn, poor"]],
  ])("offers choices %s from a hidden column of its own", async (_what, choices) => {
    await workbook.addSheets([{ ...sites, columns: [sites.columns[0]!, { heading: "Cover", widthPixels: 100, role: "input", choices }] }]);
    expect(sheet().validationAt(2, 1)).toMatchObject({ rule: { list: { source: `=Sites!$E$3:$E$${choices.length + 2}` } } });
    expect(choices.map((_, row) => sheet().contentAt(row + 2, 4))).toEqual(choices);
    expect([...sheet().hiddenColumns]).toEqual([4]);
  });
});

describe("A text", () => {
  test("of any kind reads back as it was written and is never a formula", async () => {
    const text = fc.oneof(
      fc.string({ minLength: 1, unit: "grapheme" }),
      fc.constantFrom("=A1", "'", "''x", "TRUE", "false", "1e5", "½", "３", "#N/A", "+", "@", "Mar 5", "\t=1"),
    );
    await fc.assert(
      fc.asyncProperty(text, async (typed) => {
        const where = range("Sheet1", 0, 0);
        await workbook.writeValues([{ range: where, values: [[typed]] }]);
        expect(await workbook.read([where])).toEqual([[[typed]]]);
        expect(await workbook.readFormulas(where)).toEqual([[""]]);
      }),
      { numRuns: 200 },
    );
  });

  test("leaves the number format of its cell alone, so that a formula written there later computes", async () => {
    const where = range("Sheet1", 0, 0);
    await workbook.writeValues([{ range: where, values: [["=typed as text"]] }]);
    await workbook.writeFormulas([{ range: where, formulas: [["=2*3"]] }]);
    expect(await workbook.read([where])).toEqual([[[6]]]);
  });
});

describe("A formula", () => {
  test("of ours is read by its own name where Excel stored the name of a missing add-in", async () => {
    const where = range("Sheet1", 0, 0, 1, 2);
    await workbook.writeFormulas([
      { range: where, formulas: [["=_xldudf_SOAK_DRAWDOWN(A1,_xldudf_SOAK_HOLERATE(B1:B4,C1:C4))", "=_xldudf_OTHER_NAME(1)"]] },
    ]);
    expect(await workbook.readFormulas(where)).toEqual([["=SOAK.DRAWDOWN(A1,SOAK.HOLERATE(B1:B4,C1:C4))", "=_xldudf_OTHER_NAME(1)"]]);
  });

  test("must start with =, or nothing is written", async () => {
    const where = range("Sheet1", 0, 0);
    await expect(workbook.writeFormulas([{ range: where, formulas: [["1+1"]] }])).rejects.toThrow(
      'A formula for Sheet1!A1 does not start with "=".',
    );
    expect(await workbook.read([where])).toEqual([[[null]]]);
  });

  test("is calculated once in manual mode, which stays manual", async () => {
    excel.book.calculationMode = "Manual";
    const where = range("Sheet1", 0, 0);
    await workbook.writeFormulas([{ range: where, formulas: [["=2*3"]] }]);
    expect(await workbook.read([where])).toEqual([[[0]]]);
    await workbook.calculated();
    expect(await workbook.read([where])).toEqual([[[6]]]);
    expect(excel.book.calculationMode).toBe("Manual");
  });

  test("is waited for while Excel calculates", async () => {
    excel.book.calculationState = "Calculating";
    let done = false;
    const waiting = workbook.calculated().then(() => {
      done = true;
    });
    await pause(120);
    expect(done).toBe(false);
    excel.book.calculationState = "Done";
    await waiting;
  });
});

describe("What Excel refuses", () => {
  const write = () => workbook.writeValues([{ range: range("Sites", 2, 0), values: [["Alder Row 4"]] }]);

  test("while a cell is edited says which key to press", async () => {
    await workbook.addSheets([sites]);
    excel.isEditingCell = true;
    await expect(write()).rejects.toMatchObject({
      name: "WorkbookRefused",
      message: "Excel is waiting for a cell that is being edited. Press Enter or Esc in the sheet, then try again.",
    });
  });

  test("on a protected sheet names the sheet", async () => {
    await workbook.addSheets([sites, { ...sites, name: "Rules" }]);
    excel.book.sheetNamed("Sites")!.isProtected = true;
    await expect(write()).rejects.toMatchObject({
      name: "WorkbookRefused",
      message: 'The sheet "Sites" is protected. Unprotect on the Review tab, then try again.',
    });
  });

  test("in a protected workbook says that it is the workbook", async () => {
    excel.book.structureIsProtected = true;
    await expect(workbook.addSheets([sites])).rejects.toMatchObject({
      name: "WorkbookRefused",
      message: "This workbook is protected or read-only. Unprotect it on the Review tab, then try again.",
    });
    expect(await workbook.sheetNames()).toEqual(["Sheet1"]);
  });

  test("without a connection says so, and the next try works", async () => {
    await workbook.addSheets([sites]);
    excel.isDisconnected = true;
    await expect(write()).rejects.toMatchObject({
      name: "WorkbookRefused",
      message: "Excel did not answer. Check the connection, then try again.",
    });
    excel.isDisconnected = false;
    await write();
    expect(await workbook.read([range("Sites", 2, 0)])).toEqual([[["Alder Row 4"]]]);
  });

  test("for a reason we do not know stays Excel's own error", async () => {
    excel.refuseNext("GeneralException", "There was an internal error.");
    await expect(workbook.sheetNames()).rejects.toMatchObject({ code: "GeneralException", message: "There was an internal error." });
  });

  test("because somebody added the sheet a moment earlier is a sheet that exists", async () => {
    excel.afterNextRequest(() => excel.book.addSheet("Sites"));
    await expect(workbook.addSheets([sites])).rejects.toMatchObject({ name: "SheetExists", sheet: "Sites" });
  });

  test("by the case of a sheet's name is nothing: Excel holds Sites and SITES for one", async () => {
    await workbook.addSheets([sites]);
    await expect(workbook.addSheets([{ ...sites, name: "SITES" }])).rejects.toMatchObject({ name: "SheetExists", sheet: "SITES" });
  });
});

describe("The selection", () => {
  test("is null when a chart is selected", async () => {
    excel.select("Sheet1", []);
    expect(await workbook.selection()).toBeNull();
  });

  test("is the first of several areas", async () => {
    excel.select("Sheet1", [
      { row: 4, column: 1, rows: 2, columns: 2 },
      { row: 9, column: 0, rows: 1, columns: 1 },
    ]);
    expect(await workbook.selection()).toEqual(range("Sheet1", 4, 1, 2, 2));
  });

  test("is told once when it moves quickly, and when another sheet comes to the front", async () => {
    await workbook.addSheets([sites]);
    const heard: CellRange[] = [];
    const stop = workbook.onSelectionChanged((selected) => heard.push(selected));
    await pause(20);
    for (const row of [1, 2, 3]) excel.select("Sites", [{ row, column: 0, rows: 1, columns: 1 }]);
    await pause(200);
    expect(heard).toEqual([range("Sites", 3, 0)]);
    stop();
    await pause(20);
    expect(excel.listenedTo).toEqual([]);
  });
});

describe("Changed cells", () => {
  test("are told by sheet when a coauthor types and when a formula answers anew", async () => {
    await workbook.addSheets([sites, { ...sites, name: "Design" }]);
    await workbook.writeFormulas([{ range: range("Design", 2, 0), formulas: [["=Sites!A3*2"]] }]);
    await pause(20);
    const heard: (readonly string[])[] = [];
    const stop = workbook.onCellsChanged((sheets) => heard.push([...sheets].sort()));
    await pause(20);
    excel.type("Sites", 2, 0, 21);
    await pause(200);
    expect(heard).toEqual([["Design", "Sites"]]);
    expect(await workbook.read([range("Design", 2, 0)])).toEqual([[[42]]]);
    stop();
    await pause(20);
    expect(excel.listenedTo).toEqual([]);
  });

  test("are not lost when Excel cannot be asked at that moment", async () => {
    await workbook.addSheets([sites, { ...sites, name: "Rules" }]);
    await pause(20);
    const heard: (readonly string[])[] = [];
    const stop = workbook.onCellsChanged((sheets) => heard.push([...sheets].sort()));
    await pause(20);
    excel.isEditingCell = true;
    excel.type("Sites", 2, 0, 1);
    await pause(200);
    expect(heard).toEqual([]);
    expect(troubles).toMatchObject([{ name: "WorkbookRefused" }]);
    excel.isEditingCell = false;
    excel.type("Rules", 2, 0, 1);
    await pause(200);
    expect(heard).toEqual([["Rules", "Sites"]]);
    stop();
  });

  test("that cannot be listened to are a trouble, told once", async () => {
    excel.isDisconnected = true;
    const stop = workbook.onCellsChanged(() => undefined);
    await pause(20);
    stop();
    await pause(20);
    expect(troubles).toMatchObject([{ name: "WorkbookRefused" }]);
  });
});

describe("The requirement sets of the manifests", () => {
  test("are enough, and ExcelApi 1.8 would not be", async () => {
    new InMemoryExcel(addinDescription.requirementSets.map((set) => (set.name === "ExcelApi" ? { ...set, minimumVersion: "1.8" } : set)));
    await expect(workbook.selection()).rejects.toMatchObject({ code: "ApiNotFound" });
    const stop = workbook.onCellsChanged(() => undefined);
    await pause(20);
    expect(troubles).toMatchObject([{ code: "ApiNotFound" }]);
    stop();
  });
});
