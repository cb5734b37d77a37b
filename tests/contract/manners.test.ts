/** How Soakbook behaves in a workbook that is somebody's: what it writes, what it leaves, and what it hears. */
import { beforeAll, describe, expect, test } from "vitest";
import { setUpWorkbook, sheetNamesOfProgram } from "../../addin/actions/workbook/set-up-workbook.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { addressOf, SheetExists, type CellRange, type Workbook } from "../../addin/workbook/port.ts";
import { actionCases } from "../agreement/action-cases.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const OWN = "Budget";
const wellBehaved = () => excelWorkbook((error) => expect.fail(String(error)));

/** The workbook, and every range and sheet that is written through it. */
function watched(workbook: Workbook): { readonly workbook: Workbook; readonly written: CellRange[]; readonly added: Set<string> } {
  const written: CellRange[] = [];
  const added = new Set<string>();
  return {
    written,
    added,
    workbook: {
      ...workbook,
      addSheets: async (layouts) => {
        await workbook.addSheets(layouts);
        layouts.forEach(({ name }) => added.add(name));
      },
      writeValues: (writes) => {
        written.push(...writes.map(({ range }) => range));
        return workbook.writeValues(writes);
      },
      writeFormulas: (writes) => {
        written.push(...writes.map(({ range }) => range));
        return workbook.writeFormulas(writes);
      },
      placePicture: (picture) => {
        written.push({ ...picture, rows: 1, columns: 1 });
        return workbook.placePicture(picture);
      },
    },
  };
}

describe("After every action of the product, in a workbook with a sheet of the person's own", () => {
  let excel: InMemoryExcel;
  let seen: ReturnType<typeof watched>;
  const contentsOfOwn = () => ["Sheet1", OWN].map((name) => JSON.stringify([...(excel.book.sheetNamed(name)?.cells ?? [])]));
  let before: readonly string[];

  beforeAll(async () => {
    excel = new InMemoryExcel();
    excel.book.calculationMode = "Manual";
    seen = watched(wellBehaved());
    await seen.workbook.addSheets([
      {
        name: OWN,
        headingRow: 0,
        columns: [{ heading: "Site ID", widthPixels: 80, role: "input" }],
        rows: 5,
        frozenColumns: 0,
        preface: [],
      },
    ]);
    excel.type(OWN, 1, 0, "Y-017");
    excel.type("Sheet1", 0, 0, 12);
    seen.added.clear();
    seen.written.length = 0;
    before = contentsOfOwn();
    for (const { run } of actionCases) await run(seen.workbook);
  });

  test("every range written is on a sheet of the program, or on one that the action added", () => {
    expect(seen.written.length).toBeGreaterThan(100);
    const ours = new Set([...sheetNamesOfProgram, ...seen.added]);
    expect(seen.written.filter(({ sheet }) => !ours.has(sheet)).map(addressOf)).toEqual([]);
    expect(seen.added.has(OWN)).toBe(false);
  });

  test("what the person has on sheets of their own is as it was", () => {
    expect(before.every((contents) => contents.length > 2)).toBe(true);
    expect(contentsOfOwn()).toEqual(before);
  });

  test("the person calculates by hand as before", () => {
    expect(excel.book.calculationMode).toBe("Manual");
  });
});

test("a workbook that has a sheet of a name of ours is not set up over it: nothing is written before the person has chosen", async () => {
  const excel = new InMemoryExcel();
  const { workbook, written } = watched(wellBehaved());
  await workbook.addSheets([
    {
      name: "Prices",
      headingRow: 1,
      columns: [{ heading: "Item", widthPixels: 80, role: "input" }],
      rows: 0,
      frozenColumns: 0,
      preface: ["Mine"],
    },
  ]);
  await expect(setUpWorkbook(workbook)).rejects.toThrow(SheetExists);
  expect(written).toEqual([]);
  expect(excel.book.sheets.map(({ name }) => name)).toEqual(["Sheet1", "Prices"]);
});

describe("Listening", () => {
  test("what another person types in the shared workbook is heard like one's own", async () => {
    const excel = new InMemoryExcel();
    const heard: (readonly string[])[] = [];
    const stop = wellBehaved().onCellsChanged((sheets) => heard.push(sheets));
    await expect.poll(() => excel.listenedTo).toContain("changed");
    excel.type("Sheet1", 0, 0, "by somebody else", "Remote");
    await expect.poll(() => heard).toEqual([["Sheet1"]]);
    stop();
  });

  test("a hundred changes and selections in a row are asked about once each", async () => {
    const excel = new InMemoryExcel();
    const changed: (readonly string[])[] = [];
    const selected: CellRange[] = [];
    const workbook = wellBehaved();
    const stops = [workbook.onCellsChanged((sheets) => changed.push(sheets)), workbook.onSelectionChanged((range) => selected.push(range))];
    await expect.poll(() => excel.listenedTo).toEqual(expect.arrayContaining(["changed", "selected"]));
    const before = excel.roundTrips;
    for (let row = 0; row < 100; row += 1) {
      excel.type("Sheet1", row, 0, row);
      excel.select("Sheet1", [{ row, column: 0, rows: 1, columns: 1 }]);
    }
    await expect.poll(() => [changed.length, selected.at(-1)?.row]).toEqual([1, 99]);
    expect(selected).toHaveLength(1);
    expect(excel.roundTrips - before).toBe(2);
    for (const stop of stops) stop();
  });
});
