import { largestOf } from "../../../functions/extremes.ts";
import { WorkbookRefused, type FormulaWrite, type Workbook } from "../../workbook/port.ts";

/** How many formulas were written once more, and the sheets that refused it. */
export interface FormulaRepair {
  readonly written: number;
  readonly refused: readonly { readonly sheet: string; readonly sentence: string }[];
}

/**
 * Writes our formulas that show #NAME? once more, unchanged: a spreadsheet that met them before the add-in was there
 * keeps the error until somebody enters them again, and calculating anew does not help.
 */
export async function repairFormulas(workbook: Workbook): Promise<FormulaRepair> {
  const names = await workbook.sheetNames();
  const sheets = await workbook.readSheets(names);
  const refused: { sheet: string; sentence: string }[] = [];
  let written = 0;
  for (const [index, sheet] of names.entries()) {
    const writes = await unnamedFormulas(workbook, sheet, sheets[index] ?? []);
    if (writes.length === 0) continue;
    try {
      await workbook.writeFormulas(writes);
      written += writes.length;
    } catch (error) {
      if (!(error instanceof WorkbookRefused)) throw error;
      refused.push({ sheet, sentence: error.message });
    }
  }
  return { written, refused };
}

export function repairSentence({ written, refused }: FormulaRepair): string {
  const done =
    written === 0
      ? "No formula of Soakbook that could be written shows #NAME?."
      : `${written === 1 ? "1 formula was" : `${written} formulas were`} written again.`;
  return [done, ...refused.map(({ sheet, sentence }) => `Sheet ${sheet} was left as it is. ${sentence}`)].join(" ");
}

async function unnamedFormulas(
  workbook: Workbook,
  sheet: string,
  cells: readonly (readonly unknown[])[],
): Promise<readonly FormulaWrite[]> {
  const columns = largestOf([0, ...cells.map((row) => row.length)]);
  if (!cells.some((row) => row.includes("#NAME?"))) return [];
  const formulas = await workbook.readFormulas({ sheet, row: 0, column: 0, rows: cells.length, columns });
  return cells.flatMap((row, rowIndex) =>
    row.flatMap((shown, column): FormulaWrite[] => {
      const formula = formulas[rowIndex]?.[column] ?? "";
      return shown === "#NAME?" && /SOAK\./i.test(formula)
        ? [{ range: { sheet, row: rowIndex, column, rows: 1, columns: 1 }, formulas: [[formula]] }]
        : [];
    }),
  );
}
