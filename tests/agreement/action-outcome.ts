import { isoDate, today } from "../../addin/actions/dates.ts";
import type { CellValue, Workbook } from "../../addin/workbook/port.ts";
import type { ActionCase } from "./action-cases.ts";
import { looksOf, type LookAt } from "./looks.ts";

/** What an action handed back, as JSON, and every cell of the workbook after it, by sheet. */
export interface ActionOutcome {
  readonly answer: string;
  readonly sheets: Readonly<Record<string, readonly (readonly CellValue[])[]>>;
  /** Formats and drop-downs of the sheets asked for. */
  readonly looks: Readonly<Record<string, readonly string[]>>;
}

export async function actionOutcome(workbook: Workbook, lookAt: LookAt, { run, looksAt }: ActionCase): Promise<ActionOutcome> {
  const answer = await run(workbook);
  await workbook.calculated();
  // The first sheet is the one that a new workbook comes with: each spreadsheet names it in its own way.
  const [, ...names] = await workbook.sheetNames();
  const sheets = await workbook.readSheets(names);
  const looks = Object.fromEntries((looksAt ?? []).map((range) => [range.sheet, looksOf(lookAt, range)]));
  return {
    looks,
    answer: JSON.stringify(answer, (_key, value: unknown) => comparable(value)) ?? "",
    sheets: Object.fromEntries(names.map((name, index) => [name, (sheets[index] ?? []).map((row) => row.map(comparable))])),
  };
}

/** Two engines may add up in another order, and midnight may fall between the two runs of an action. */
function comparable<Value>(value: Value): Value | number | string {
  const day = today();
  if (typeof value === "number")
    return Math.floor(value) === day || Math.floor(value) === day - 1 ? "today" : Number(value.toPrecision(12));
  return typeof value === "string" ? value.replaceAll(isoDate(day), "today").replaceAll(isoDate(day - 1), "today") : value;
}
