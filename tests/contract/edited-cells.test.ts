/**
 * People type spaces, capitals, patterns and blanks, and go on below the prepared rows. After any of it each yard's design
 * is right, or says what it does without.
 */
import fc from "fast-check";
import { beforeAll, expect, test } from "vitest";
import { dayNumber } from "../../addin/actions/dates.ts";
import { readProgram } from "../../addin/actions/program/read-program.ts";
import { whatIsNext } from "../../addin/actions/program/what-is-next.ts";
import { basinStatusOf } from "../../addin/actions/visits/stage-standing.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { holeTestsSheet } from "../../addin/records/hole-tests.ts";
import { placeAsSetUp } from "../../addin/records/place.ts";
import type { Sheet as RecordSheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { addressOf, type CellRange, type CellValue, type Workbook } from "../../addin/workbook/port.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const NBSP = "\u00a0";
const IDS = ["Y-001", "Y-002", "Y-003"] as const;
/** The same to every reader. */
const SPELLINGS: readonly ((word: string) => string)[] = [
  (word) => word,
  (word) => `${word} `,
  (word) => ` ${word.toUpperCase()}`,
  (word) => `${NBSP}${word.toLowerCase()}${NBSP}`,
];
const ROWS = 8;

interface TypedSurface {
  readonly yard: number;
  readonly area: number;
  readonly spelling: number;
  /** What stands in place of the yard's ID, the cover, the number. */
  readonly slip: "none" | "none " | "blank ID" | "pattern" | "nobody's ID" | "no cover" | "unknown cover" | "text for a number" | "below";
}

interface TypedYard {
  readonly metric: boolean;
  readonly spelling: number;
  readonly units: "typed" | "typed " | "typed  " | "blank" | "unknown";
}

const typedSurface: fc.Arbitrary<TypedSurface> = fc.record({
  yard: fc.nat(IDS.length - 1),
  area: fc.integer({ min: 50, max: 900 }),
  spelling: fc.nat(SPELLINGS.length - 1),
  slip: fc.constantFrom("none", "none ", "blank ID", "pattern", "nobody's ID", "no cover", "unknown cover", "text for a number", "below"),
});
const typedYard: fc.Arbitrary<TypedYard> = fc.record({
  metric: fc.boolean(),
  spelling: fc.nat(SPELLINGS.length - 1),
  units: fc.constantFrom("typed", "typed ", "typed  ", "blank", "unknown"),
});

let excel: InMemoryExcel;
let workbook: Workbook;

beforeAll(async () => {
  excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  excel.book.calculationMode = "Manual";
  await setUpWorkbook(workbook);
});

const spelled = (word: string, spelling: number) => (SPELLINGS[spelling] ?? String)(word);

function cellsOf(sheet: RecordSheet, row: number, cells: Readonly<Record<string, CellValue>>) {
  const place = placeAsSetUp(sheet);
  return Object.entries(cells).map(([key, value]) => ({ range: place.cell(place.firstRow + row, key), values: [[value]] }));
}

/** Surfaces stand one under the other, those "below" under the prepared rows. */
function rowOf(surface: TypedSurface, place: number): number {
  return surface.slip === "below" ? surfacesSheet.rows + place : place;
}

async function type(yards: readonly TypedYard[], surfaces: readonly TypedSurface[]): Promise<void> {
  const blankRow = { siteId: null, surface: null, cover: null, area: null };
  const ids: Partial<Record<TypedSurface["slip"], CellValue>> = { "blank ID": null, pattern: "Y-00*", "nobody's ID": "Y-099" };
  await workbook.writeValues([
    ...yards.flatMap(({ metric, spelling, units }, place) => {
      const typed = units === "blank" ? null : units === "unknown" ? "meters" : spelled(metric ? "metric" : "us", spelling);
      return cellsOf(sitesSheet, place, {
        siteId: spelled(IDS[place] ?? "", spelling),
        yard: `Yard ${place}`,
        units: typed,
        soilGroup: spelled("B", spelling),
      });
    }),
    ...yards.flatMap(({ spelling }, place) =>
      cellsOf(holeTestsSheet, place, {
        siteId: spelled(IDS[place] ?? "", (spelling + 1) % SPELLINGS.length),
        holeDiameter: 200,
        minutes1: 0,
        water1: 300,
        minutes2: 30,
        water2: 150,
      }),
    ),
    ...Array.from({ length: ROWS }, (_, row) => row).flatMap((row) => [
      ...cellsOf(surfacesSheet, row, blankRow),
      ...cellsOf(surfacesSheet, surfacesSheet.rows + row, blankRow),
    ]),
    ...surfaces.flatMap((surface, place) =>
      cellsOf(surfacesSheet, rowOf(surface, place), {
        siteId: surface.slip in ids ? (ids[surface.slip] ?? null) : spelled(IDS[surface.yard] ?? "", surface.spelling),
        surface: `Surface ${place}`,
        cover: surface.slip === "no cover" ? null : surface.slip === "unknown cover" ? "rooff" : spelled("roof", surface.spelling),
        area: surface.slip === "text for a number" ? `${surface.area} sq ft` : surface.area,
      }),
    ),
  ]);
  excel.book.calculate();
}

async function expectRightOrSaid(yards: readonly TypedYard[], surfaces: readonly TypedSurface[]): Promise<void> {
  const program = await readProgram(workbook);
  const slips = [...program.slips, ...program.yards.flatMap((yard) => yard.slips)];
  const next = whatIsNext(program, dayNumber(2026, 5, 10)).filter(({ kind }) => kind === "not counted");
  const siteIdOf = (surface: TypedSurface, place: number): CellRange => {
    const sheet = placeAsSetUp(surfacesSheet);
    return sheet.cell(sheet.firstRow + rowOf(surface, place), "siteId");
  };
  expect(program.yards).toHaveLength(yards.length);
  for (const [place, yard] of program.yards.entries()) {
    const typed = yards[place]!;
    const meant = surfaces.filter((surface) => surface.yard === place);
    const sum = meant.reduce((all, { area }) => all + area, 0);
    const shown = yard.design.contributingArea;
    const hasUnits = typed.units.startsWith("typed");
    const isRight = hasUnits && yard.units === (typed.metric ? "metric" : "us") && (shown === sum || (sum === 0 && (shown ?? "") === ""));
    // Whose row without a yard's ID is nobody can tell: it stands on Next and in Check. All else is told by the yard itself.
    const isTheYards = meant.every(({ slip }) => slip !== "nobody's ID" && slip !== "blank ID");
    if (!isRight && isTheYards) expect([yard.siteId, basinStatusOf(yard)]).not.toEqual([yard.siteId, "fits"]);
    const isBelow = meant.some(({ slip, spelling }) => slip === "below" && spelling === 0);
    if (isBelow || !hasUnits) expect([yard.siteId, yard.design.status]).not.toEqual([yard.siteId, "fits"]);
    if (hasUnits && surfaces.every(({ slip }) => slip.startsWith("none")))
      expect([yard.siteId, isRight, yard.uncounted]).toEqual([yard.siteId, true, []]);
  }
  surfaces.forEach((surface, place) => {
    if (surface.slip.startsWith("none") || surface.slip === "no cover") return;
    const id = siteIdOf(surface, place);
    const at = (where: CellRange | undefined) => where?.sheet === id.sheet && where.row === id.row;
    // The slips of program and yards are what Check workbook lists and the yard's view names.
    expect([surface.slip, slips.some(({ where }) => at(where)) || isNamedWithOthers(surface, slips)]).toEqual([surface.slip, true]);
    if (["below", "blank ID", "pattern"].includes(surface.slip))
      expect([surface.slip, next.some(({ sentence }) => sentence.includes(addressOf(id)))]).toEqual([surface.slip, true]);
    if (surface.slip === "nobody's ID") expect(next.some(({ sentence }) => sentence.includes('Site ID "Y-099"'))).toBe(true);
  });
}

/** An ID of no yard is one sentence, at the first of its rows. */
function isNamedWithOthers({ slip }: TypedSurface, said: readonly { readonly sentence: string }[]): boolean {
  return slip === "nobody's ID" && said.some(({ sentence }) => sentence.includes('Site ID "Y-099" stands here'));
}

test("whatever is typed into Sites and Surfaces, every yard is right or says what it does without", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(typedYard, { minLength: IDS.length, maxLength: IDS.length }),
      fc.array(typedSurface, { minLength: 1, maxLength: ROWS }),
      async (yards, surfaces) => {
        await type(yards, surfaces);
        await expectRightOrSaid(yards, surfaces);
      },
    ),
    { numRuns: 25 },
  );
});
