/** Whatever people do to rows of typed sheets, Design shows for every yard what its typed cells come to. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../addin/records/design.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { placeAsSetUp } from "../../addin/records/place.ts";
import type { Sheet as RecordSheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import type { CellValue, Workbook } from "../../addin/workbook/port.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";
import { expectedYards } from "./typed-design.ts";

const FIRST = 3;
/** Rows that the edits move about in. */
const ROWS = 14;
const IDS = ["Y-001", "Y-002", 7, "__proto__", "Y-001", "constructor"] as const;

type Edit =
  | { readonly kind: "insert" | "delete" | "type"; readonly sheet: number; readonly row: number; readonly pick: number }
  | { readonly kind: "sort"; readonly sheet: number; readonly order: readonly number[] };

const sheets: readonly RecordSheet[] = [sitesSheet, surfacesSheet, holeTestsSheet];

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({
    kind: fc.constantFrom("insert", "delete", "type", "type"),
    sheet: fc.nat(2),
    // The first row above all.
    row: fc.oneof(fc.constant(0), fc.nat(ROWS - 1)),
    pick: fc.nat(1000),
  }),
  fc.record({
    kind: fc.constant("sort" as const),
    sheet: fc.nat(2),
    order: fc.shuffledSubarray(
      Array.from({ length: ROWS }, (_, place) => place),
      { minLength: ROWS, maxLength: ROWS },
    ),
  }),
);

function rowOf(sheet: RecordSheet, pick: number): Readonly<Record<string, CellValue>> {
  const siteId = IDS[pick % IDS.length] ?? null;
  if (sheet.name === "Sites")
    return {
      siteId,
      yard: `Yard ${pick}`,
      units: [null, "us", "metric"][pick % 3] ?? null,
      soilGroup: ["A", "C", null][pick % 3] ?? null,
      stormDepth: pick % 4 === 0 ? 2 + (pick % 3) : null,
    };
  if (sheet.name === "Surfaces")
    return {
      siteId: pick % 7 === 0 ? "Y-900" : siteId,
      cover: ["roof", "good lawn", "paving", null][pick % 4] ?? null,
      area: 100 + pick,
      share: pick % 2 === 0 ? null : 0.5,
    };
  return { siteId, holeDiameter: 8, minutes1: 0, water1: 20, minutes2: 30 + (pick % 50), water2: 10 + (pick % 7) };
}

async function typeRow(workbook: Workbook, sheet: RecordSheet, row: number, pick: number): Promise<void> {
  const place = placeAsSetUp(sheet);
  await workbook.writeValues(
    Object.entries(rowOf(sheet, pick)).map(([key, value]) => ({ range: place.cell(FIRST + row, key), values: [[value]] })),
  );
}

/** Rows of Design in their order, against the yards of Sites in theirs. */
async function expectRight(workbook: Workbook, excel: InMemoryExcel): Promise<void> {
  excel.book.calculate();
  const [design = []] = await workbook.readSheets(["Design"]);
  const place = placeAsSetUp(designSheet);
  const cell = (row: readonly CellValue[], key: keyof typeof designSheet.columns) => row[place.columnIndex(key)] ?? null;
  const shown = design.slice(FIRST).filter((row) => String(cell(row, "siteId") ?? "") !== "");
  const expected = await expectedYards(workbook);
  expect(shown.map((row) => String(cell(row, "siteId")))).toEqual(expected.map(({ siteId }) => siteId));
  const near = (value: CellValue, wanted: number | "") =>
    wanted === ""
      ? value === "" || value === null
      : typeof value === "number" && Math.abs(value - wanted) <= 1e-9 * Math.max(1, Math.abs(wanted));
  shown.forEach((row, place_) => {
    const wanted = expected[place_]!;
    for (const [key, value] of [
      ["contributingArea", wanted.contributingArea],
      ["surfaceRunoff", wanted.runoff],
      ["holes", wanted.holes],
      ["testedRate", wanted.testedRate],
    ] as const)
      expect([wanted.siteId, key, cell(row, key), value, near(cell(row, key), value)]).toEqual([
        wanted.siteId,
        key,
        cell(row, key),
        value,
        true,
      ]);
    expect(cell(row, "yard") ?? "").toBe(wanted.yard ?? "");
  });
}

test("after any edits, insertions, deletions and sorts of Sites, Surfaces and Hole tests Design is right for every yard", async () => {
  const cases = { edits: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 12 }), async (edits) => {
      const excel = new InMemoryExcel();
      const workbook = excelWorkbook((error) => expect.fail(String(error)));
      excel.book.calculationMode = "Manual";
      await setUpWorkbook(workbook);
      for (const sheet of sheets) for (let row = 0; row < 6; row += 1) await typeRow(workbook, sheet, row, row * 17 + 3);
      for (const one of edits) {
        const sheet = sheets[one.sheet]!;
        const stored = excel.book.sheetNamed(sheet.name)!;
        if (one.kind === "sort")
          excel.book.sortRows(
            stored,
            FIRST,
            one.order.map((row) => FIRST + row),
          );
        else if (one.kind === "type") await typeRow(workbook, sheet, one.row, one.pick);
        else if (one.kind === "insert") excel.book.insertRow(stored, FIRST + one.row);
        else excel.book.deleteRow(stored, FIRST + one.row);
        await expectRight(workbook, excel);
        cases.edits += 1;
      }
    }),
    {
      numRuns: 12,
      examples: [
        [
          [
            { kind: "delete", sheet: 0, row: 0, pick: 0 },
            { kind: "insert", sheet: 0, row: 0, pick: 0 },
            { kind: "type", sheet: 0, row: 0, pick: 5 },
            { kind: "delete", sheet: 1, row: 0, pick: 0 },
            { kind: "insert", sheet: 1, row: 0, pick: 0 },
            { kind: "type", sheet: 1, row: 0, pick: 8 },
            { kind: "delete", sheet: 2, row: 0, pick: 0 },
          ],
        ],
      ],
    },
  );
  expect(cases.edits).toBeGreaterThan(50);
}, 240_000);
