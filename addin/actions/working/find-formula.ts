import type { CellRange, Workbook } from "../../workbook/port.ts";
import { functionCalled } from "./follow-formula.ts";
import { readFormula, type CallExpression, type Expression } from "./read-formula.ts";

/** A formula that may give a cell its value, and how far below and right of the formula the cell stands. */
export interface FormulaFound {
  readonly where: CellRange;
  readonly formula: string;
  readonly expression: Expression;
  readonly down: number;
  readonly across: number;
}

/** How far up and left the formula of a spilled cell is looked for. */
export const FARTHEST = { rows: 5000, columns: 45 };

/**
 * Our formula in the cell or, where the cell holds none, those up and to the left whose spill could reach it, the
 * nearest first: a spill fills a block that holds no other formula.
 */
export async function formulasReaching(workbook: Workbook, cell: CellRange): Promise<readonly FormulaFound[]> {
  const [[own = ""] = []] = await workbook.readFormulas(cell);
  if (own !== "") return found(own, cell, cell);
  const area = upAndLeftOf(cell);
  const formulas = await workbook.readFormulas(area);
  const reaching: FormulaFound[] = [];
  // Columns to the left of this one are shut off for every row at and above a formula nearer to the cell.
  let openColumn = area.column;
  for (let row = cell.row; row >= area.row && openColumn <= cell.column; row -= 1) {
    const line = formulas[row - area.row] ?? [];
    const nearest = line.findLastIndex(
      (formula, place) => formula !== "" && area.column + place >= openColumn && area.column + place <= cell.column,
    );
    if (nearest === -1) continue;
    for (const each of found(line[nearest] ?? "", { ...cell, row, column: area.column + nearest }, cell)) reaching.push(each);
    openColumn = area.column + nearest + 1;
  }
  return reaching;
}

function upAndLeftOf(cell: CellRange): CellRange {
  const row = Math.max(0, cell.row - FARTHEST.rows);
  const column = Math.max(0, cell.column - FARTHEST.columns);
  return { sheet: cell.sheet, row, column, rows: cell.row - row + 1, columns: cell.column - column + 1 };
}

function found(formula: string, where: CellRange, cell: CellRange): FormulaFound[] {
  // Reading a formula costs more than looking for the two ways our functions are written in it.
  if (!/SOAK[._]/i.test(formula)) return [];
  const expression = readFormula(formula, where.sheet);
  if (expression === null || !callsIn(expression).some((call) => functionCalled(call) !== undefined)) return [];
  return [{ where, formula, expression, down: cell.row - where.row, across: cell.column - where.column }];
}

export function callsIn(expression: Expression): readonly CallExpression[] {
  return [...(expression.kind === "call" ? [expression] : []), ...partsOf(expression).flatMap(callsIn)];
}

/** The ranges that a formula reads. */
export function rangesIn(expression: Expression): readonly CellRange[] {
  return [...(expression.kind === "reference" ? [expression.range] : []), ...partsOf(expression).flatMap(rangesIn)];
}

function partsOf(expression: Expression): readonly Expression[] {
  if (expression.kind === "call") return expression.inputs;
  if (expression.kind === "operation") return expression.operands;
  return expression.kind === "array" ? expression.rows.flat() : [];
}
