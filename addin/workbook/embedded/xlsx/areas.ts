/** Areas of a sheet as a file writes them: "B4:C9", or one cell. */
import type { IRange } from "@univerjs/core";
import { addressOf } from "../../port.ts";

export interface Area {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
}

export function addressIn({ startRow, startColumn, endRow, endColumn }: IRange): string {
  const range = { sheet: "", row: startRow, column: startColumn, rows: endRow - startRow + 1, columns: endColumn - startColumn + 1 };
  return addressOf(range).replace(/^.*!/, "");
}

export function areasIn(reference: string): readonly Area[] {
  const [, firstColumn, firstRow, lastColumn, lastRow] = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(reference) ?? [];
  if (firstColumn === undefined) return [];
  const [startRow, startColumn] = [Number(firstRow) - 1, columnOf(firstColumn)];
  return [
    {
      startRow,
      startColumn,
      endRow: lastRow === undefined ? startRow : Number(lastRow) - 1,
      endColumn: lastColumn === undefined ? startColumn : columnOf(lastColumn),
    },
  ];
}

function columnOf(letters: string): number {
  return [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}
