import { workbookFormulas } from "../records/formulas.ts";
import { recordSheets } from "../records/program-sheets.ts";
import type { Sheet } from "../records/sheet.ts";
import { addressOf } from "../workbook/workbook.ts";
import type { CellRange, FormulaWrite, Workbook } from "../workbook/workbook.ts";
import { placesIn } from "./places-in.ts";
import { plainFormula } from "./plain-formula.ts";

/**
 * Lets every formula that reads the sheet cover so many rows. A cell where somebody put something else than the formula
 * that belonged there keeps it: checking the workbook shows it.
 */
export async function growSheet(workbook: Workbook, sheet: Sheet, rows: number): Promise<void> {
  const cells = await workbook.readSheets(recordSheets.map(({ name }) => name));
  const before = new Map(eachFormula(workbookFormulas(placesIn(cells))));
  const wider = eachFormula(workbookFormulas(placesIn(cells, new Map([[sheet, rows]]))));
  const changed = wider.filter(([address, { formula }]) => before.get(address)?.formula !== formula);
  const present = await formulasAt(workbook, changed.map(([, { where }]) => where));
  const writes = changed.flatMap(([address, { where, formula }], index): FormulaWrite[] => {
    const stands = plainFormula(present[index] ?? "");
    return stands === plainFormula(before.get(address)?.formula ?? "") ? [{ range: where, formulas: [[formula]] }] : [];
  });
  if (writes.length > 0) await workbook.writeFormulas(inColumns(writes));
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
  const blocks = new Map(await Promise.all(sheets.map(async (sheet) => {
    const own = cells.filter((cell) => cell.sheet === sheet);
    const rows = Math.max(...own.map(({ row }) => row)) + 1;
    const columns = Math.max(...own.map(({ column }) => column)) + 1;
    return [sheet, await workbook.readFormulas({ sheet, row: 0, column: 0, rows, columns })] as const;
  })));
  return cells.map(({ sheet, row, column }) => blocks.get(sheet)?.[row]?.[column] ?? "");
}

/** Cells that stand under each other as one range, so that a thousand rows are one write. */
function inColumns(writes: readonly FormulaWrite[]): readonly FormulaWrite[] {
  const joined: { range: CellRange; formulas: string[][] }[] = [];
  for (const { range, formulas } of writes) {
    const last = joined.at(-1);
    const goesOn = last !== undefined && last.range.sheet === range.sheet && last.range.column === range.column && last.range.row + last.range.rows === range.row;
    if (!goesOn) joined.push({ range, formulas: formulas.map((line) => [...line]) });
    else {
      last.range = { ...last.range, rows: last.range.rows + 1 };
      last.formulas.push(...formulas.map((line) => [...line]));
    }
  }
  return joined;
}
