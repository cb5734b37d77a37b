/** A program of many yards, put together without the grid: three surfaces and a hole a yard, rows prepared for all of them. */
import { startingSheets } from "../addin/actions/workbook/set-up-workbook.ts";
import { workbookFormulas } from "../addin/records/formulas.ts";
import { holeTestsSheet } from "../addin/records/hole-tests.ts";
import { placeAsSetUp, rowsCovering } from "../addin/records/place.ts";
import { PREPARED_ROWS_SETTING, preparedRowsText } from "../addin/records/prepared-rows.ts";
import { recordSheets } from "../addin/records/program-sheets.ts";
import { placesAsSetUp } from "../addin/records/program.ts";
import type { KeyOf, Sheet } from "../addin/records/sheet.ts";
import { sitesSheet } from "../addin/records/sites.ts";
import { surfacesSheet } from "../addin/records/surfaces.ts";
import type { CellValue, ValueWrite, WorkbookWriting } from "../addin/workbook/port.ts";
import { designSheet } from "../addin/records/design.ts";
import { reportYardsSheet } from "../addin/records/report-yards.ts";

export const COVERS = ["roof", "paving", "good lawn"] as const;

/** Set up with as many rows prepared as `rows` says, on the sheets that it names. */
export async function setUpWithRows(workbook: WorkbookWriting, rows: ReadonlyMap<Sheet, number>): Promise<void> {
  const rowsOf = new Map([...rows].map(([{ name }, count]) => [name, count]));
  const sheets = startingSheets();
  await workbook.addSheets(sheets.map(({ layout }) => ({ ...layout, rows: rowsOf.get(layout.name) ?? layout.rows })));
  await workbook.writeValues(sheets.flatMap(({ values }) => values));
  await workbook.writeFormulas(
    workbookFormulas({ ...placesAsSetUp, of: (sheet) => placeAsSetUp(sheet).over(rowsOf.get(sheet.name) ?? sheet.rows) }),
  );
}

export async function writeManyYards(workbook: WorkbookWriting, yards: number): Promise<void> {
  const wanted = new Map<Sheet, number>([
    [sitesSheet, yards],
    [designSheet, yards],
    [reportYardsSheet, yards],
    [surfacesSheet, COVERS.length * yards],
    [holeTestsSheet, yards],
  ]);
  const rows = new Map(recordSheets.map((sheet) => [sheet, rowsCovering(wanted.get(sheet) ?? 0, sheet.rows)]));
  await setUpWithRows(workbook, rows);
  await workbook.writeValues([...sites(yards), ...surfaces(yards), ...holes(yards)]);
  await workbook.writeSetting(PREPARED_ROWS_SETTING, preparedRowsText(rows));
}

export const siteIdOf = (yard: number): string => `Y-${String(yard + 1).padStart(4, "0")}`;

function sites(yards: number): readonly ValueWrite[] {
  const ids = Array.from({ length: yards }, (_, yard) => siteIdOf(yard));
  return columnWrites(sitesSheet, {
    siteId: ids,
    yard: ids.map((siteId) => `Yard ${siteId}`),
    units: ids.map((_, yard) => (yard % 10 === 9 ? "metric" : "us")),
    soilGroup: ids.map((_, yard) => ["A", "B", "C"][yard % 3] ?? null),
    mixRecipe: ids.map(() => "fast soil"),
  });
}

function surfaces(yards: number): readonly ValueWrite[] {
  const rows = Array.from({ length: COVERS.length * yards }, (_, row) => Math.floor(row / COVERS.length));
  return columnWrites(surfacesSheet, {
    siteId: rows.map(siteIdOf),
    surface: rows.map((_, row) => `Part ${row % COVERS.length}`),
    cover: rows.map((_, row) => COVERS[row % COVERS.length] ?? null),
    area: rows.map((yard, row) => (400 + ((row * 37) % 500)) * (yard % 10 === 9 ? 0.1 : 1)),
  });
}

function holes(yards: number): readonly ValueWrite[] {
  const rows = Array.from({ length: yards }, (_, yard) => (yard % 10 === 9 ? 25 : 1));
  return columnWrites(holeTestsSheet, {
    siteId: rows.map((_, yard) => siteIdOf(yard)),
    hole: rows.map(() => "A"),
    holeDiameter: rows.map((inches) => 8 * inches),
    minutes1: rows.map(() => 0),
    water1: rows.map((inches) => 12 * inches),
    minutes2: rows.map(() => 60),
    water2: rows.map((inches, yard) => (9 + (yard % 5) * 0.5) * inches),
  });
}

function columnWrites<S extends Sheet>(sheet: S, columns: Partial<Record<KeyOf<S>, readonly CellValue[]>>): readonly ValueWrite[] {
  const place = placeAsSetUp(sheet);
  return Object.entries<readonly CellValue[] | undefined>(columns).map(([key, values = []]) => ({
    range: { ...place.cell(place.firstRow, key as KeyOf<S>), rows: values.length },
    values: values.map((value) => [value]),
  }));
}
