/** Random edits of every sheet that people type rows on, and what Design must show after each. */
import fc from "fast-check";
import { expect } from "vitest";
import { designSheet } from "../../addin/records/design.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { placeAsSetUp } from "../../addin/records/place.ts";
import { computedSheets, recordSheets, sheetsKeptInOrder } from "../../addin/records/program-sheets.ts";
import type { Sheet as RecordSheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import type { CellValue, Workbook, WorkbookWriting } from "../../addin/workbook/port.ts";
import { expectedYards } from "./typed-design.ts";

/** Rows that the edits move about in. */
const ROWS = 14;
const IDS = ["Y-001", "Y-002", 7, "__proto__", "Y-001", "constructor"] as const;

/** Enough for the edits, because every formula is computed anew when a row is inserted or deleted. */
export const fewRows: ReadonlyMap<RecordSheet, number> = new Map(
  recordSheets.filter(({ columns }) => "siteId" in columns).map((sheet) => [sheet, 24]),
);

export type Edit =
  | { readonly kind: "insert" | "delete" | "type"; readonly sheet: number; readonly row: number; readonly pick: number }
  | { readonly kind: "sort"; readonly sheet: number; readonly order: readonly number[] };

/** Those that a design rests on, and then all others: whatever happens there changes no design. */
const restedOn: readonly RecordSheet[] = [sitesSheet, surfacesSheet, holeTestsSheet];
export const sheets: readonly RecordSheet[] = [
  ...restedOn,
  ...recordSheets.filter((sheet) => ![...restedOn, ...computedSheets, ...sheetsKeptInOrder].includes(sheet)),
];

const anySheet = fc.oneof({ weight: 2, arbitrary: fc.nat(restedOn.length - 1) }, { weight: 1, arbitrary: fc.nat(sheets.length - 1) });

export const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({
    kind: fc.constantFrom("insert", "delete", "type", "type"),
    sheet: anySheet,
    // The first row above all.
    row: fc.oneof(fc.constant(0), fc.nat(ROWS - 1)),
    pick: fc.nat(1000),
  }),
  fc.record({
    kind: fc.constant("sort" as const),
    sheet: anySheet,
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
      stormDepth: pick % 4 === 0 ? (pick % 3 === 2 ? 40 : 1 + (pick % 2)) : null,
      pondingDepth: pick % 5 === 0 ? (pick % 3 === 2 ? 150 : 6) : null,
      shape: pick % 5 === 1 ? "rectangle" : null,
      slopeDrop: pick % 2 === 0 ? 3 : null,
      slopeRun: pick % 2 === 0 ? 100 : null,
    };
  if (sheet.name === "Surfaces")
    return {
      siteId: pick % 7 === 0 ? "Y-900" : siteId,
      cover: ["roof", "good lawn", "paving", null][pick % 4] ?? null,
      area: 100 + pick,
      share: pick % 2 === 0 ? null : 0.5,
    };
  if (sheet.name !== "Hole tests") return anyRow(sheet, siteId, pick);
  return { siteId, holeDiameter: 8, minutes1: 0, water1: 20, minutes2: 30 + (pick % 50), water2: 10 + (pick % 7) };
}

/** Something in every second cell: a number, a word, or one of the choices. */
function anyRow(sheet: RecordSheet, siteId: CellValue, pick: number): Readonly<Record<string, CellValue>> {
  return Object.fromEntries(
    Object.entries(sheet.columns).flatMap(([key, { role, choices }], at): [string, CellValue][] => {
      if (role !== "input") return [];
      if (key === "siteId") return [[key, siteId]];
      return [[key, [null, pick % 50, choices?.[pick % choices.length] ?? `w${pick}`, null][(pick + at) % 4] ?? null]];
    }),
  );
}

export function firstRowOf(sheet: RecordSheet): number {
  return placeAsSetUp(sheet).firstRow;
}

export async function typeRow(
  workbook: Pick<WorkbookWriting, "writeValues">,
  sheet: RecordSheet,
  row: number,
  pick: number,
): Promise<void> {
  const place = placeAsSetUp(sheet);
  await workbook.writeValues(
    Object.entries(rowOf(sheet, pick)).map(([key, value]) => ({ range: place.cell(place.firstRow + row, key), values: [[value]] })),
  );
}

/** Rows of Design in their order, against the yards of Sites in theirs. How many of them have a basin. */
export async function expectDesignRight(workbook: Workbook): Promise<number> {
  const [design = []] = await workbook.readSheets(["Design"]);
  const place = placeAsSetUp(designSheet);
  const cell = (row: readonly CellValue[], key: keyof typeof designSheet.columns) => row[place.columnIndex(key)] ?? null;
  const shown = design.slice(place.firstRow).filter((row) => String(cell(row, "siteId") ?? "") !== "");
  const expected = await expectedYards(workbook);
  expect(shown.map((row) => String(cell(row, "siteId")))).toEqual(expected.map(({ siteId }) => siteId));
  const near = (value: CellValue, wanted: number | "") =>
    wanted === ""
      ? value === "" || value === null
      : typeof value === "number" && Math.abs(value - wanted) <= 1e-7 * Math.max(1, Math.abs(wanted));
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
    const { basin } = wanted;
    const status = String(cell(row, "status") ?? "");
    // A row that could not be read is said in the status, in place of what the rest come to.
    if (!/^Not all counted/.test(status))
      expect([wanted.siteId, status, status === "fits"]).toEqual([wanted.siteId, status, basin?.fits === true]);
    for (const key of ["pondingDepth", "floorArea", "waterHeld", "digVolume"] as const) {
      const value = cell(row, key);
      if (basin?.size) expect([wanted.siteId, key, value, near(value, basin.size[key])]).toEqual([wanted.siteId, key, value, true]);
      else if (key !== "pondingDepth") expect([wanted.siteId, key, typeof value]).not.toEqual([wanted.siteId, key, "number"]);
    }
  });
  return expected.filter(({ basin }) => basin?.size).length;
}
