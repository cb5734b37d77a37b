/** How every verb of the port speaks to Excel, and how Excel's errors become the port's. */
import { codeOf, protectedRefusal, refusal } from "./refusals.ts";
import { SheetExists, SheetMissing, type CellRange } from "../port.ts";

export const POINTS_PER_PIXEL = 0.75;

/** Runs the batch; `Excel.run` sends what is still waiting when it ends. Excel's errors become the port's. */
export async function inExcel<Answer>(
  sheets: readonly string[],
  batch: (context: Excel.RequestContext) => Promise<Answer>,
): Promise<Answer> {
  try {
    return await Excel.run(batch);
  } catch (error) {
    throw await explained(error, sheets);
  }
}

async function explained(error: unknown, sheets: readonly string[]): Promise<unknown> {
  const code = codeOf(error);
  switch (code) {
    case null:
      return error;
    case "ItemNotFound": {
      const names = await Excel.run(namesIn);
      const missing = sheets.find((sheet) => !names.some((name) => sameSheet(name, sheet)));
      return missing === undefined ? error : new SheetMissing(missing);
    }
    case "ItemAlreadyExists": {
      const names = await Excel.run(namesIn);
      const taken = sheets.find((sheet) => names.some((name) => sameSheet(name, sheet)));
      return taken === undefined ? error : new SheetExists(taken);
    }
    case "AccessDenied":
      return protectedRefusal(await protectedAmong(sheets));
    default:
      return refusal(code) ?? error;
  }
}

async function protectedAmong(sheets: readonly string[]): Promise<readonly string[]> {
  return Excel.run(async (context) => {
    const all = context.workbook.worksheets;
    all.load("items/name, items/protection/protected");
    await context.sync();
    return all.items
      .filter((sheet) => sheet.protection.protected && sheets.some((name) => sameSheet(name, sheet.name)))
      .map((sheet) => sheet.name);
  });
}

export function rangeIn(context: Excel.RequestContext, range: CellRange): Excel.Range {
  return context.workbook.worksheets.getItem(range.sheet).getRangeByIndexes(range.row, range.column, range.rows, range.columns);
}

/** Excel holds "Sites" and "sites" for the same name. */
export function sameSheet(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}

export async function namesIn(context: Excel.RequestContext): Promise<readonly string[]> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  await context.sync();
  return sheets.items.map((sheet) => sheet.name);
}
