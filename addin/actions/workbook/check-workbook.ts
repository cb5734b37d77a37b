import { largestOf } from "../../../functions/extremes.ts";
import { addressOf, columnLetters, type CellRange, type CellValue, type FormulaWrite, type Workbook } from "../../workbook/port.ts";
import { workbookFormulas } from "../../records/formulas.ts";
import { findPlace, headingText, type MissingColumn } from "../../records/place.ts";
import { mostRowsOf, type PreparedRows } from "../../records/prepared-rows.ts";
import { readRecords } from "../../records/read-records.ts";
import { isBlank, type Sheet } from "../../records/sheet.ts";
import { recordSheets } from "../../records/program-sheets.ts";
import { placeSetting, programSettings, programSheet, type Places, type ProgramKey } from "../../records/program.ts";
import { readProgram } from "../program/read-program.ts";
import { earlierLayoutFindings } from "./earlier-layout.ts";
import { addAgain, backWords, keptSheets, renamedSheets } from "./deleted-sheets.ts";
import type { Finding } from "./finding.ts";
import { growSheets, neededRows, readPreparedRows, rowsInUse } from "./grow-sheet.ts";
import { placesIn } from "./places-in.ts";
import { plainFormula as plain } from "./plain-formula.ts";
import { readSettings } from "../program/read-settings.ts";
import { RECORDS_VERSION, RECORDS_VERSION_SETTING, recordsVersion, sheetNamesOfProgram } from "./set-up-workbook.ts";
import { appendRow } from "../program/write-records.ts";

/**
 * Looks over sheets, headings, settings, formulas and Site IDs. What stands in the way of the next look comes alone:
 * columns can be judged only on sheets that are there, formulas only where every column is.
 */
export async function checkWorkbook(workbook: Workbook): Promise<readonly Finding[]> {
  const missing = await missingSheets(workbook);
  if (missing.length > 0) return missing;
  const cells = await workbook.readSheets(recordSheets.map(({ name }) => name));
  const earlier = await earlierLayoutFindings(workbook, cells);
  if (earlier.length > 0) return earlier;
  const headings = recordSheets.flatMap((sheet, index) => headingFindings(sheet, cells[index] ?? []));
  if (headings.length > 0) return headings;
  const settings = settingFindings(cells[recordSheets.indexOf(programSheet)] ?? []);
  if (settings.length > 0) return settings;
  const version = await versionFinding(workbook);
  const lastRows = new Map(recordSheets.map((sheet, index) => [plain(sheet.name), lastRowInUse(sheet, cells[index] ?? [])]));
  const prepared = await readPreparedRows(workbook);
  const growth = growthFindings(cells, prepared);
  return [
    ...growth,
    ...(await formulaFindings(workbook, placesIn(cells, prepared), lastRows)),
    ...(await recordFindings(workbook)),
    ...version,
  ];
}

/** Runs the repairs in the order found, then looks again, because one repair can uncover the next; what is left has none. */
export async function repairWorkbook(workbook: Workbook, findings: readonly Finding[]): Promise<readonly Finding[]> {
  for (const { repair } of findings) await repair?.run(workbook);
  return checkWorkbook(workbook);
}

async function missingSheets(workbook: Workbook): Promise<Finding[]> {
  const present = await workbook.sheetNames();
  const gone = sheetNamesOfProgram.filter((name) => !present.includes(name));
  if (gone.length === 0) return [];
  const [kept, renamed] = await Promise.all([keptSheets(workbook, gone), renamedSheets(workbook, gone)]);
  return gone.map((name): Finding => {
    const other = renamed.get(name);
    if (other !== undefined) return { sentence: `Sheet "${other}" has the headings of ${name}: give it the name ${name} back.` };
    const own = kept.find((one) => one.name === name);
    return {
      sentence: `Sheet ${name} is missing.`,
      repair: { says: backWords(name, own), run: (target) => addAgain(target, name, own) },
    };
  });
}

/** Adds what sheets are missing, with what was kept of them, and writes the formulas that lost them; what is left is told. */
export async function bringSheetsBack(workbook: Workbook): Promise<readonly Finding[]> {
  const left = await repairWorkbook(workbook, await missingSheets(workbook));
  return repairWorkbook(
    workbook,
    left.filter(({ repair }) => repair?.isFormulaAlone === true),
  );
}

function headingFindings(sheet: Sheet, cells: readonly (readonly CellValue[])[]): Finding[] {
  const at = findPlace(sheet, cells);
  if ("place" in at)
    return readRecords(sheet, cells).place === null
      ? readRecords(sheet, cells).slips.map(({ where, sentence }) => ({ where, sentence }))
      : [];
  const headings = (cells[at.headingRow] ?? []).map(headingText);
  const taken = new Set(at.found.values());
  const isFree = (column: number) => !taken.has(column) && (headings[column] ?? "") === "";
  // What has its own place to come back to keeps it from those that have none.
  const awaited = new Set(at.missing.map(({ expectedAt }) => expectedAt.column).filter(isFree));
  let free = largestOf([headings.length, ...cells.map((row) => row.length)]) - 1;
  const nextFree = () => {
    do free += 1;
    while (awaited.has(free));
    return free;
  };
  return at.missing.map((column) => {
    const here = column.expectedAt.column;
    const renamed = !taken.has(here) && (headings[here] ?? "") !== "" && isBetweenNeighbors(sheet, column, at.found);
    if (renamed)
      return headingRepair(
        sheet,
        column,
        column.expectedAt,
        `Heading "${headings[here] ?? ""}" in ${addressOf(column.expectedAt)} becomes "${column.heading}" again. The cells below it stay as they are.`,
      );
    const beside = { ...column.expectedAt, column: isFree(here) ? here : nextFree() };
    return headingRepair(
      sheet,
      column,
      beside,
      `Put the heading "${column.heading}" into ${addressOf(beside)}. What stood in a deleted column does not come back; the Change log may hold what the pane wrote there.`,
    );
  });
}

/**
 * Whether the columns on either side are where set-up put them, so that the one between them can only be this one. Where a
 * neighbor is missing too, as those of a later version are, a column of somebody's own may stand there.
 */
function isBetweenNeighbors(sheet: Sheet, { key }: MissingColumn, found: ReadonlyMap<string, number>): boolean {
  const keys = Object.keys(sheet.columns);
  const own = keys.indexOf(key);
  return [own - 1, own + 1].every((place) => {
    const neighbor = keys[place];
    return neighbor === undefined || found.get(neighbor) === place;
  });
}

function headingRepair(sheet: Sheet, { heading }: MissingColumn, where: CellRange, says: string): Finding {
  return {
    sentence: `Sheet ${sheet.name} has no column "${heading}".`,
    where,
    repair: { says, run: (workbook) => workbook.writeValues([{ range: where, values: [[heading]] }]) },
  };
}

function settingFindings(cells: readonly (readonly CellValue[])[]): Finding[] {
  const found = readSettings(cells);
  const missing = (Object.keys(programSettings) as ProgramKey[]).filter((key) => !found.cells.has(key)).map((key) => programSettings[key]);
  const settings = [...missing, ...(found.oneCall.placeAt === null ? [{ ...placeSetting, value: null }] : [])];
  return settings.map(({ setting, value, unit, meaning }) => ({
    sentence: `Sheet Program has no row "${setting}".`,
    repair: {
      says: `Add the row "${setting}" ${value === null ? "without a value" : `with ${value} ${unit}`} below the others.`,
      run: async (workbook) => void (await appendRow(workbook, programSheet, { setting, value, unit, meaning })),
    },
  }));
}

/** Sheets that somebody typed into below the rows prepared, where neither formats and drop-downs nor formulas of other sheets reach. */
function growthFindings(cells: readonly (readonly (readonly CellValue[])[])[], prepared: PreparedRows): Finding[] {
  const needed = neededRows(cells, prepared);
  return recordSheets.flatMap((sheet, index): Finding[] => {
    const [own, found] = [prepared.get(sheet) ?? 0, findPlace(sheet, cells[index] ?? [])];
    const used = rowsInUse(sheet, cells[index] ?? []);
    if (used <= own || !("place" in found)) return [];
    const { firstRow } = found.place;
    const where = found.place.cell(firstRow + own, Object.keys(sheet.columns)[0] ?? "");
    const sentence = `Sheet ${sheet.name} is filled in down to row ${firstRow + used}, and is prepared down to row ${firstRow + own}: formulas, formats and drop-downs do not reach the rows below.`;
    const rows = needed.get(sheet) ?? 0;
    if (rows <= own)
      return [
        {
          where,
          sentence: `${sentence} ${mostRowsOf(sheet)} rows are the most. Keep further yards in a second workbook; clear only what somebody typed far down by mistake.`,
        },
      ];
    return [
      {
        where,
        sentence,
        repair: {
          says: `Prepare the sheet down to row ${firstRow + rows}. Nothing typed is changed.`,
          run: (workbook) => growSheets(workbook),
        },
      },
    ];
  });
}

/** The last row that holds a record, counted from 0. */
function lastRowInUse(sheet: Sheet, cells: readonly (readonly CellValue[])[]): number {
  return readRecords(sheet, cells).rows.at(-1)?.row ?? 0;
}

/** The formulas of the record sheets, cell by cell beside what they should be. What-if belongs to whoever lays tables out on it. */
async function formulaFindings(workbook: Workbook, places: Places, lastRows: ReadonlyMap<string, number>): Promise<Finding[]> {
  const names = new Set(recordSheets.map(({ name }) => name));
  const expected = workbookFormulas(places).filter(({ range }) => names.has(range.sheet));
  const findings = await Promise.all(
    [...new Set(expected.map(({ range }) => range.sheet))].map(async (sheet): Promise<Finding[]> => {
      const own = expected.filter(({ range }) => range.sheet === sheet);
      const rows = largestOf(own.map(({ range }) => range.row + range.rows));
      const columns = largestOf(own.map(({ range }) => range.column + range.columns));
      const whole = { sheet, row: 0, column: 0, rows, columns };
      const [formulas, [values = []]] = await Promise.all([workbook.readFormulas(whole), workbook.read([whole])]);
      const same = (one: string, other: string) => covering(plain(one), sheet, lastRows) === covering(plain(other), sheet, lastRows);
      return own.flatMap((write) => formulaFinding(write, formulas, values, same));
    }),
  );
  return findings.flat();
}

function formulaFinding(
  { range, formulas }: FormulaWrite,
  present: readonly (readonly string[])[],
  values: readonly (readonly CellValue[])[],
  same: (one: string, other: string) => boolean,
): Finding[] {
  const differing = formulas.flatMap(([formula = ""], index) => {
    const row = range.row + index;
    return same(present[row]?.[range.column] ?? "", formula) ? [] : [{ row, formula }];
  });
  if (differing.length === 0) return [];
  const writes = differing.map(({ row, formula }): FormulaWrite => ({ range: { ...range, row, rows: 1 }, formulas: [[formula]] }));
  const typed = differing.filter(({ row }) => (present[row]?.[range.column] ?? "") === "" && !isBlank(values[row]?.[range.column] ?? null));
  const first = writes[0]?.range ?? range;
  const cells =
    differing.length === 1
      ? addressOf(first)
      : `${differing.length} cells of column ${columnLetters(range.column)} on ${range.sheet}, from ${addressOf(first)} on,`;
  return [
    {
      where: first,
      sentence: `${cells} ${differing.length === 1 ? "does" : "do"} not hold the formula that belongs there.`,
      repair: {
        isFormulaAlone: typed.length === 0,
        says:
          typed.length === 0
            ? "Write the formula again."
            : `Write the formula again. It takes the place of ${typed.length === 1 ? `"${String(values[typed[0]?.row ?? 0]?.[range.column]).slice(0, 40)}"` : `${typed.length} values`} typed there, which the Change log keeps.`,
        run: (workbook) => workbook.writeFormulas(writes),
      },
    },
  ];
}

/**
 * A plain formula with the last row of each range left open where it covers every row in use: rows that people insert or
 * delete stretch and shrink the ranges of a formula, which then still says what it should. The sheet's own name, which
 * some spreadsheets drop, is left out.
 */
function covering(formula: string, sheet: string, lastRows: ReadonlyMap<string, number>): string {
  return formula.replace(
    /((?:'[^']+'|[A-Za-z_]\w*)!)?(\$[A-Z]+\$\d+:\$[A-Z]+\$)(\d+)/g,
    (_, named: string | undefined, start: string, end: string) => {
      const name = plain(named === undefined ? sheet : named.slice(0, -1).replaceAll("'", ""));
      const prefix = name === plain(sheet) ? "" : `${name}!`;
      return Number(end) > (lastRows.get(name) ?? 0) ? `${prefix}${start}` : `${prefix}${start}${end}`;
    },
  );
}

async function recordFindings(workbook: Workbook): Promise<Finding[]> {
  const program = await readProgram(workbook);
  const full = program.nearlyFull.map((sentence): Finding => ({ sentence }));
  const slips = [...program.slips, ...program.yards.flatMap((yard) => yard.slips)].map(
    ({ where, sentence, instead }): Finding => ({
      where,
      sentence: `${addressOf(where)}: ${sentence}`,
      ...(instead === undefined
        ? {}
        : {
            repair: {
              says: `Type "${instead}" into ${addressOf(where)}.`,
              run: (target: Workbook) => target.writeValues([{ range: where, values: [[instead]] }]),
            },
          }),
    }),
  );
  return [...full, ...slips];
}

async function versionFinding(workbook: Workbook): Promise<Finding[]> {
  const version = await recordsVersion(workbook);
  if (version === RECORDS_VERSION) return [];
  return [
    {
      sentence:
        version === null
          ? "The workbook does not say which version of the records it holds."
          : `The workbook was set up for records version ${version}; this is version ${RECORDS_VERSION}.`,
      repair: {
        says: `Mark the workbook as version ${RECORDS_VERSION}, now that its sheets are all there.`,
        run: (target) => target.writeSetting(RECORDS_VERSION_SETTING, String(RECORDS_VERSION)),
      },
    },
  ];
}
