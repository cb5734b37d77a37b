import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { holeTestsSheet } from "../../../addin/records/hole-tests.ts";
import { findPlace } from "../../../addin/records/place.ts";
import { MOST_READINGS } from "../../../addin/records/rain-record.ts";
import { readRecords } from "../../../addin/records/read-records.ts";
import type { Sheet } from "../../../addin/records/sheet.ts";
import { recordSheets } from "../../../addin/records/program-sheets.ts";
import { sitesSheet } from "../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../addin/records/surfaces.ts";
import { addressOf, type CellValue } from "../../../addin/workbook/port.ts";

const headings = (sheet: Sheet) => Object.values(sheet.columns).map(({ heading }) => heading);
const cellsOf = (sheet: Sheet, ...rows: CellValue[][]): CellValue[][] => [...sheet.preface.map((line) => [line]), headings(sheet), ...rows];
const firstRowOf = (sheet: Sheet) => sheet.preface.length + 1;
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
    const moved = [
      ["a line"],
      ["another"],
      ["and a third"],
      [null, second ?? "", first ?? "", ...rest],
      [null, "Roof", "Y-001", "roof", 620, 1],
    ];
    const { rows, slips } = readRecords(surfacesSheet, moved);
    expect(slips).toEqual([]);
    expect(rows[0]?.record).toMatchObject({ siteId: "Y-001", surface: "Roof", area: 620 });
    expect(addressOf(rows[0]?.at("siteId") ?? { sheet: "", row: 0, column: 0, rows: 0, columns: 0 })).toBe("Surfaces!C5");
  });

  test("headings are found above as many rows as a sheet can hold, and in the first row; where there are none, they are looked for where set-up put them", () => {
    const rows = Array.from({ length: MOST_READINGS }, (): CellValue[] => ["Y-001", "Roof"]);
    expect(findPlace(surfacesSheet, surfaceRows(...rows.slice(0, 2)).concat(rows))).toMatchObject({ place: { headingRow: 2 } });
    expect(findPlace(surfacesSheet, [headings(surfacesSheet), ...rows.slice(0, 2)])).toMatchObject({ place: { headingRow: 0 } });
    expect(findPlace(surfacesSheet, rows)).toMatchObject({ headingRow: 2 });
  });

  test("a heading that is nowhere is named, and nothing on the sheet is taken for another column", () => {
    const [first, second, cover, ...rest] = headings(surfacesSheet);
    const { rows, slips } = readRecords(surfacesSheet, [
      ["a line"],
      ["another"],
      [first ?? "", second ?? "", `${cover} kind`, ...rest],
      ["Y-001", "Roof", "roof", 620, 1],
    ]);
    expect(rows).toEqual([]);
    expect(slips.map(({ where, sentence }) => [addressOf(where), sentence])).toEqual([
      [
        "Surfaces!C3",
        'Sheet Surfaces has no column "Cover", so nothing on it is read. Check the workbook to see a repair, or put the heading back.',
      ],
    ]);
  });

  test("many missing headings are one line, which has a repair", () => {
    const [first = "", second = ""] = headings(surfacesSheet);
    const { slips } = readRecords(surfacesSheet, [[], [], [first, second], ["Y-001", "Roof"]]);
    expect(slips.map(({ where, sentence, isRepaired }) => [addressOf(where), sentence, isRepaired])).toEqual([
      [
        "Surfaces!C3",
        'Sheet Surfaces has no columns "Cover", "Area (sq ft | m²)", "Share draining here", "How measured" and 1 more, so nothing on it is read. Check the workbook to see a repair, or put the headings back.',
        true,
      ],
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
  expect(slips[0]?.sentence).toBe(
    'Columns "Water 1" to "Water 10" of sheet Hole tests must stand side by side in their first order, because formulas read them by place. Nothing on the sheet is read until they do.',
  );
});

test("units and soil group are read whatever their case", () => {
  const row: CellValue[] = ["Y-001", "Yard", null, "Metric", "b"];
  expect(readRecords(sitesSheet, cellsOf(sitesSheet, row)).rows[0]?.record).toMatchObject({ units: "metric", soilGroup: "B" });
});

/** A row in which every column holds something it takes. */
function goodRow(sheet: Sheet): CellValue[] {
  const candidates: CellValue[] = ["Y-001", 1, 46_100];
  return Object.values(sheet.columns).map(
    ({ cell, choices }) => choices?.[0] ?? candidates.find((value) => cell.safeParse(value).success) ?? null,
  );
}

const columnsTyped = recordSheets.flatMap((sheet) =>
  Object.keys(sheet.columns)
    .filter((key) => sheet.columns[key]?.role === "input")
    .map((key) => ({ sheet, key, name: `${sheet.name}, ${sheet.columns[key]?.heading ?? key}` })),
);
const isNumber = ({ sheet, key }: (typeof columnsTyped)[number]) =>
  sheet.columns[key]?.cell.safeParse(1).success === true && sheet.columns[key].cell.safeParse("12 in").success === false;
const isDate = ({ sheet, key }: (typeof columnsTyped)[number]) => sheet.columns[key]?.numberFormat?.startsWith("yyyy") === true;

/** The slips of a row that is good but for one cell, after checking that the rest of the row was read all the same. */
function slipsWith(sheet: Sheet, key: string, value: CellValue): readonly (readonly [string, string])[] {
  const keys = Object.keys(sheet.columns);
  const good = goodRow(sheet);
  const {
    rows: [before],
  } = readRecords(sheet, cellsOf(sheet, good));
  const {
    rows: [row],
    slips,
  } = readRecords(sheet, cellsOf(sheet, good.with(keys.indexOf(key), value), good));
  const others = keys.filter((other) => other !== key);
  expect(others.map((other) => row?.record[other])).toEqual(others.map((other) => before?.record[other]));
  expect(row?.cells[key]).toBe(value);
  if (slips.length > 0) expect(row?.record[key]).toBeNull();
  return slips.map(({ where, sentence }) => [addressOf(where), sentence]);
}

const says = (sheet: Sheet, key: string) => `${sheet.columns[key]?.heading ?? ""} ${sheet.columns[key]?.note ?? ""}`.toLowerCase();

describe("What was pasted into a column that people type", () => {
  test.each(columnsTyped.filter(isNumber).filter((column) => !isDate(column)))(
    "$name: text is a slip at its cell that names the column, and the rest of the row is read",
    ({ sheet, key }) => {
      for (const pasted of ["12 in", "5 %", "1,200", "about 3", "1/2", "<img src=x onerror=alert(1)>"]) {
        const slips = slipsWith(sheet, key, pasted);
        expect(slips).toEqual([
          [
            addressOf({
              sheet: sheet.name,
              row: sheet.preface.length + 1,
              column: Object.keys(sheet.columns).indexOf(key),
              rows: 1,
              columns: 1,
            }),
            expect.stringContaining(`must be a number; it is the text "${pasted}".`),
          ],
        ]);
      }
    },
  );

  test.each(columnsTyped.filter(isDate))(
    "$name: a text, a number that is no day and one past all days are slips; a day with a time is that day",
    ({ sheet, key }) => {
      for (const pasted of ["next week", "5/4/26", "2026-05-04", 0, -3, 1e308, 2_958_466]) {
        expect(slipsWith(sheet, key, pasted)).toEqual([[expect.any(String), expect.stringContaining("must be a date")]]);
      }
      expect(slipsWith(sheet, key, 46_100.6)).toEqual([]);
      const [row] = readRecords(sheet, cellsOf(sheet, goodRow(sheet).with(Object.keys(sheet.columns).indexOf(key), 46_100.6))).rows;
      expect(Math.floor(Number(row?.record[key]))).toBe(46_100);
    },
  );

  test.each(columnsTyped.filter(isNumber))(
    "$name: a number too large for any yard is a slip, so that no total runs out of numbers",
    ({ sheet, key }) => {
      for (const huge of [1e308, -1e308]) expect(slipsWith(sheet, key, huge)).toHaveLength(1);
    },
  );

  test.each(columnsTyped.filter(({ sheet, key }) => !["answer", "before", "after"].includes(key) && sheet.columns[key] !== undefined))(
    "$name: an error of a formula is a slip that names the column and the error",
    ({ sheet, key }) => {
      for (const code of ["#N/A", "#REF!", "#VALUE!", "#DIV/0!"]) {
        const slips = slipsWith(sheet, key, code);
        expect(slips).toEqual([[expect.any(String), expect.stringContaining(`shows the error ${code}.`)]]);
        const [label = ""] = slips[0]?.[1].split(" shows") ?? [];
        expect(says(sheet, key)).toContain(label.split(" ")[0]?.toLowerCase());
      }
    },
  );

  test.each(["Planned", "Planted", "Hours", "Quantity", "Unit price", "Limit"])(
    "a negative count or amount in %s is refused by name",
    (heading) => {
      const found = columnsTyped.filter(({ sheet, key }) => sheet.columns[key]?.heading === heading);
      expect(found).not.toEqual([]);
      for (const { sheet, key } of found)
        expect(slipsWith(sheet, key, -1)).toEqual([[expect.any(String), `${heading} must be 0 or more.`]]);
    },
  );
});

test.each(recordSheets)("whatever $name holds, reading gives records and sentences, never a crash", (sheet) => {
  const anyCell = fc.oneof(
    fc.string(),
    fc.double(),
    fc.boolean(),
    fc.constant(null),
    fc.constantFrom("#N/A", "__proto__", "=1+1", "<img src=x onerror=alert(1)>", "constructor", "x".repeat(10_000)),
  );
  const width = headings(sheet).length;
  fc.assert(
    fc.property(fc.array(fc.array(anyCell, { minLength: width, maxLength: width }), { maxLength: 6 }), (cells) => {
      const { rows, slips } = readRecords(sheet, cellsOf(sheet, ...cells));
      for (const { sentence } of slips) expect(sentence).toMatch(/\.$/);
      rows.forEach(({ row, cells: raw }) => expect(Object.values(raw)).toEqual(cells[row - firstRowOf(sheet)]));
    }),
  );
});
