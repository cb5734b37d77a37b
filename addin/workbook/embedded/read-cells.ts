import { FormulaDataModel } from "@univerjs/preset-sheets-core";
import type { CellValue } from "../port.ts";
import type { EmbeddedGrid } from "./embedded-grid.ts";

interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export function valuesIn(grid: EmbeddedGrid, sheetId: string, block: Block): CellValue[][] {
  return eachCell(block, (row, column) => grid.valueAt(sheetId, row, column));
}

/** "" where a cell holds none. */
export function formulasIn(grid: EmbeddedGrid, sheetId: string, block: Block): string[][] {
  const formulas = grid.injector.get(FormulaDataModel);
  const unitId = grid.workbook().getId();
  return eachCell(block, (row, column) => formulas.getFormulaStringByCell(row, column, sheetId, unitId) ?? "");
}

function eachCell<Answer>({ row, column, rows, columns }: Block, answer: (row: number, column: number) => Answer): Answer[][] {
  return Array.from({ length: rows }, (_row, down) =>
    Array.from({ length: columns }, (_column, across) => answer(row + down, column + across)),
  );
}
