/** The sheets of an .xlsx file as cells. It is loaded when a file is chosen. */
import { readXlsx, type CellValue as FileValue } from "hucre/xlsx";
import { refusalOfParts } from "../../workbook/file/packed-file.ts";
import type { CellValue } from "../../workbook/port.ts";

export interface FileSheet {
  readonly name: string;
  readonly cells: readonly (readonly CellValue[])[];
  readonly isFormula: (row: number, column: number) => boolean;
  readonly isHiddenColumn: (column: number) => boolean;
}

const MILLISECONDS_A_DAY = 86_400_000;
const DAY_ZERO_MILLISECONDS = Date.UTC(1899, 11, 30);

export async function sheetsOfFile(fileName: string, bytes: Uint8Array): Promise<readonly FileSheet[] | { readonly sentence: string }> {
  const refusal = refusalOfParts(fileName, bytes);
  if (refusal !== null) return { sentence: refusal };
  try {
    const { sheets } = await readXlsx(bytes, { readStyles: true });
    return sheets.map(({ name, rows, cells, columns }) => ({
      name,
      cells: rows.map((row) => row.map(plain)),
      isFormula: (row, column) => cells?.get(`${row},${column}`)?.formula !== undefined,
      isHiddenColumn: (column) => columns?.[column]?.hidden === true,
    }));
  } catch {
    return { sentence: `"${fileName}" cannot be read as an .xlsx workbook: it is damaged, cut off or of another kind.` };
  }
}

/** Formulas come as the answers that the file has of them: whatever they say, nothing of a list is computed here. */
function plain(value: FileValue): CellValue {
  return value instanceof Date ? (value.getTime() - DAY_ZERO_MILLISECONDS) / MILLISECONDS_A_DAY : value;
}
