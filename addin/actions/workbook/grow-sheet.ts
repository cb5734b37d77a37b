import { largestOf } from "../../../functions/extremes.ts";
import { designSheet } from "../../records/design.ts";
import { workbookFormulas } from "../../records/formulas.ts";
import { rowsCovering } from "../../records/place.ts";
import { PREPARED_ROWS_SETTING, mostRowsOf, preparedRows, preparedRowsText, type PreparedRows } from "../../records/prepared-rows.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import type { Places } from "../../records/program.ts";
import { readRecords } from "../../records/read-records.ts";
import { reportYardsSheet } from "../../records/report-yards.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import { sitesSheet } from "../../records/sites.ts";
import { addressOf, type CellRange, type CellValue, type FormulaWrite, type Workbook } from "../../workbook/port.ts";
import { placesIn } from "./places-in.ts";
import { plainFormula } from "./plain-formula.ts";

type Cells = readonly (readonly (readonly CellValue[])[])[];

/** Sheets that hold a row for each row of Sites. */
const besideSites: ReadonlySet<Sheet> = new Set([designSheet, reportYardsSheet]);

/**
 * Prepares further rows where sheets have outgrown theirs, or are about to: formats and drop-downs, and every formula that
 * reads the sheet. A cell where somebody put something else than the formula that belonged there keeps it: checking the
 * workbook shows it.
 */
export async function growSheets(workbook: Workbook, wanted: PreparedRows = new Map()): Promise<void> {
  const prepared = await readPreparedRows(workbook);
  if (wanted.size > 0 && [...wanted].every(([sheet, rows]) => rows <= (prepared.get(sheet) ?? 0))) return;
  const cells = await workbook.readSheets(recordSheets.map(({ name }) => name));
  const needed = neededRows(cells, prepared, wanted);
  const [before, after] = [placesIn(cells, prepared), placesIn(cells, needed)];
  const grown = recordSheets.filter((sheet) => (needed.get(sheet) ?? 0) > (prepared.get(sheet) ?? 0));
  if (grown.length === 0) return;
  await workbook.continueLayout(grown.map((sheet) => addedRows(sheet, before, after)));
  const writes = await formulasToWrite(workbook, cells, before, after);
  if (writes.length > 0) await workbook.writeFormulas(inColumns(writes));
  await workbook.writeSetting(PREPARED_ROWS_SETTING, preparedRowsText(needed));
}

export async function readPreparedRows(workbook: Workbook): Promise<PreparedRows> {
  return preparedRows(await workbook.readSetting(PREPARED_ROWS_SETTING));
}

/** The rows that every sheet needs, by what is typed on it and what is wanted beyond. */
export function neededRows(cells: Cells, prepared: PreparedRows, wanted: PreparedRows = new Map()): PreparedRows {
  const own = new Map(
    recordSheets.map((sheet, index) => {
      const rows = Math.max(rowsInUse(sheet, cells[index] ?? []), wanted.get(sheet) ?? 0);
      const there = prepared.get(sheet) ?? 0;
      return [sheet, rows > mostRowsOf(sheet) ? there : Math.min(rowsCovering(rows, there), Math.max(there, mostRowsOf(sheet)))];
    }),
  );
  return new Map(
    recordSheets.map((sheet) => [sheet, Math.max(own.get(sheet) ?? 0, besideSites.has(sheet) ? (own.get(sitesSheet) ?? 0) : 0)]),
  );
}

/** From the first row below the headings to the last that somebody typed into. */
export function rowsInUse(sheet: Sheet, cells: readonly (readonly CellValue[])[]): number {
  const { place, rows } = readRecords(sheet, cells);
  return place === null ? 0 : (rows.at(-1)?.row ?? place.headingRow) - place.headingRow;
}

function addedRows(sheet: Sheet, before: Places, after: Places): CellRange {
  const { rows, firstRow } = before.of(sheet);
  const place = after.of(sheet);
  const columns = largestOf(Object.keys(sheet.columns).map((key) => place.columnIndex(key))) + 1;
  return { sheet: sheet.name, row: firstRow + rows, column: 0, rows: place.rows - rows, columns };
}

/** The formulas that reach further now, where the cell holds the one that belongs there, however far that reaches, or nothing. */
async function formulasToWrite(workbook: Workbook, cells: Cells, before: Places, after: Places): Promise<readonly FormulaWrite[]> {
  const belonged = new Map(eachFormula(workbookFormulas(before)));
  const changed = eachFormula(workbookFormulas(after)).filter(([address, { formula }]) => belonged.get(address)?.formula !== formula);
  const present = await formulasAt(
    workbook,
    changed.map(([, { where }]) => where),
  );
  const values = new Map(recordSheets.map(({ name }, index) => [name, cells[index] ?? []]));
  return changed.flatMap(([address, { where, formula }], index): FormulaWrite[] => {
    const there = present[index] ?? "";
    const isOurs = openEnded(there) === openEnded(belonged.get(address)?.formula ?? "");
    const isTyped = there === "" && !isBlank(values.get(where.sheet)?.[where.row]?.[where.column] ?? null);
    return isOurs && !isTyped ? [{ range: where, formulas: [[formula]] }] : [];
  });
}

/** The formula without the last row of its ranges, which moves as people insert and delete rows. */
function openEnded(formula: string): string {
  return plainFormula(formula).replace(/(\$[A-Z]+\$\d+:\$[A-Z]+\$)\d+/g, "$1");
}

interface CellFormula {
  readonly where: CellRange;
  readonly formula: string;
}

function eachFormula(writes: readonly FormulaWrite[]): (readonly [string, CellFormula])[] {
  return writes.flatMap(({ range, formulas }) =>
    formulas.flatMap((line, row) =>
      line.map((formula, column): readonly [string, CellFormula] => {
        const where = { sheet: range.sheet, row: range.row + row, column: range.column + column, rows: 1, columns: 1 };
        return [addressOf(where), { where, formula }];
      }),
    ),
  );
}

/** One question a sheet. */
async function formulasAt(workbook: Workbook, cells: readonly CellRange[]): Promise<readonly string[]> {
  const sheets = [...new Set(cells.map(({ sheet }) => sheet))];
  const blocks = new Map(
    await Promise.all(
      sheets.map(async (sheet) => {
        const own = cells.filter((cell) => cell.sheet === sheet);
        const rows = largestOf(own.map(({ row }) => row)) + 1;
        const columns = largestOf(own.map(({ column }) => column)) + 1;
        return [sheet, await workbook.readFormulas({ sheet, row: 0, column: 0, rows, columns })] as const;
      }),
    ),
  );
  return cells.map(({ sheet, row, column }) => blocks.get(sheet)?.[row]?.[column] ?? "");
}

/** Cells that stand under each other as one range, so that a thousand rows are one write. */
function inColumns(writes: readonly FormulaWrite[]): readonly FormulaWrite[] {
  const joined: { range: CellRange; formulas: string[][] }[] = [];
  for (const { range, formulas } of writes) {
    const last = joined.at(-1);
    const goesOn =
      last !== undefined &&
      last.range.sheet === range.sheet &&
      last.range.column === range.column &&
      last.range.row + last.range.rows === range.row;
    if (!goesOn) joined.push({ range, formulas: formulas.map((line) => [...line]) });
    else {
      last.range = { ...last.range, rows: last.range.rows + 1 };
      for (const line of formulas) last.formulas.push([...line]);
    }
  }
  return joined;
}
