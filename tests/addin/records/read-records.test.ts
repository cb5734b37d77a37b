import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { holeTestsSheet } from "../../../addin/records/hole-tests.ts";
import { readRecords } from "../../../addin/records/read-records.ts";
import type { Sheet } from "../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../addin/records/surfaces.ts";
import { addressOf } from "../../../addin/workbook/workbook.ts";
import type { CellValue } from "../../../addin/workbook/workbook.ts";

const headings = (sheet: Sheet) => Object.values(sheet.columns).map(({ heading }) => heading);
const cellsOf = (sheet: Sheet, ...rows: CellValue[][]): CellValue[][] => [...sheet.preface.map((line) => [line]), headings(sheet), ...rows];
const surfaceRows = (...rows: CellValue[][]) => cellsOf(surfacesSheet, ...rows);

describe("reading the Surfaces sheet", () => {
  test("a row of a roof becomes a record with its row in the sheet", () => {
    const { rows, slips } = readRecords(surfacesSheet, surfaceRows(["Y-001", "Roof", "roof", 620, 0.5, 310]));
    expect(slips).toEqual([]);
    expect(rows[0]?.record).toMatchObject({ siteId: "Y-001", surface: "Roof", cover: "roof", area: 620, share: 0.5 });
    expect(rows[0]?.row).toBe(3);
  });

  test("a row with nothing typed in it is no record, even when a formula answers there", () => {
    expect(readRecords(surfacesSheet, surfaceRows([null, " ", null, null, null, ""])).rows).toEqual([]);
  });

  test.each<[string, CellValue[], string, string]>([
    ["text in an area", ["Y-001", "Roof", "roof", "620 sq ft", 1], "Surfaces!D4", 'Area must be a number; it is the text "620 sq ft".'],
    ["a negative area", ["Y-001", "Roof", "roof", -5, 1], "Surfaces!D4", "Area must be 0 or more."],
    ["a share over 1", ["Y-001", "Roof", "roof", 620, 95], "Surfaces!E4", "Share draining here must be 1 or less."],
    ["a yes in a number", ["Y-001", "Roof", "roof", true, 1], "Surfaces!D4", "Area must be a number."],
  ])("%s is a slip that says where and why, and the cell stays as typed", (_, cells, address, sentence) => {
    const { rows, slips } = readRecords(surfacesSheet, surfaceRows(cells));
    expect(slips.map((slip) => [addressOf(slip.where), slip.sentence])).toEqual([[address, sentence]]);
    expect(Object.values(rows[0]?.cells ?? {}).slice(0, cells.length)).toEqual(cells);
  });

  test("a cover that is not in the list names the covers there are", () => {
    const { slips } = readRecords(surfacesSheet, surfaceRows(["Y-001", "Roof", "thatch", 620, 1]));
    expect(slips[0]?.sentence).toMatch(/^Cover "thatch" is not in the list: roof or paving, roof, paving, /);
  });

  test("a column that people moved is read where it stands now", () => {
    const [first, second, ...rest] = headings(surfacesSheet);
    const moved = [["a line"], ["another"], ["and a third"], [null, second ?? "", first ?? "", ...rest], [null, "Roof", "Y-001", "roof", 620, 1]];
    const { rows, slips } = readRecords(surfacesSheet, moved);
    expect(slips).toEqual([]);
    expect(rows[0]?.record).toMatchObject({ siteId: "Y-001", surface: "Roof", area: 620 });
    expect(addressOf(rows[0]?.at("siteId") ?? { sheet: "", row: 0, column: 0, rows: 0, columns: 0 })).toBe("Surfaces!C5");
  });

  test("a heading that is nowhere is named, and nothing on the sheet is taken for another column", () => {
    const [first, second, cover, ...rest] = headings(surfacesSheet);
    const { rows, slips } = readRecords(surfacesSheet, [["a line"], ["another"], [first ?? "", second ?? "", `${cover} kind`, ...rest], ["Y-001", "Roof", "roof", 620, 1]]);
    expect(rows).toEqual([]);
    expect(slips.map(({ where, sentence }) => [addressOf(where), sentence])).toEqual([
      ["Surfaces!C3", 'Sheet Surfaces has no column "Cover", so nothing on it is read. Check the workbook to see a repair, or put the heading back.'],
    ]);
  });

  test("a heading with a line break or a space too many is still that heading", () => {
    const broken = headings(surfacesSheet).map((heading) => ` ${heading.replace(" ", "\n")} `);
    expect(readRecords(surfacesSheet, [broken, ["Y-001", "Roof", "roof", 620, 1]]).rows[0]?.record.area).toBe(620);
  });
});

test("readings that no longer stand side by side are not read, because the formulas take them by place", () => {
  const [first, ...rest] = headings(holeTestsSheet);
  const { rows, slips } = readRecords(holeTestsSheet, [[...rest.slice(0, -1), first ?? "", ...rest.slice(-1)], ["A"]]);
  expect(rows).toEqual([]);
  expect(slips[0]?.sentence).toBe('Columns "Water 1" to "Water 10" of sheet Hole tests must stand side by side in their first order, because formulas read them by place. Nothing on the sheet is read until they do.');
});

test("units and soil group are read whatever their case", () => {
  const row: CellValue[] = ["Y-001", "Yard", null, "Metric", "b"];
  expect(readRecords(sitesSheet, cellsOf(sitesSheet, row)).rows[0]?.record).toMatchObject({ units: "metric", soilGroup: "B" });
});

test.each([sitesSheet, surfacesSheet, holeTestsSheet] as const)("whatever $name holds, reading gives records and sentences, never a crash", (sheet) => {
  const anyCell = fc.oneof(
    fc.string(), fc.double(), fc.boolean(), fc.constant(null),
    fc.constantFrom("#N/A", "__proto__", "=1+1", "<img src=x onerror=alert(1)>", "constructor", "x".repeat(10_000)),
  );
  const width = headings(sheet).length;
  fc.assert(fc.property(fc.array(fc.array(anyCell, { minLength: width, maxLength: width }), { maxLength: 6 }), (cells) => {
    const { rows, slips } = readRecords(sheet, cellsOf(sheet, ...cells));
    for (const { sentence } of slips) expect(sentence).toMatch(/\.$/);
    rows.forEach(({ row, cells: raw }) => expect(Object.values(raw)).toEqual(cells[row - 3]));
  }));
});
