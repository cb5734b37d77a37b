import type { FormulaWrite } from "../workbook/port.ts";
import { asWord } from "./as-word.ts";
import type { estimateLinesSheet } from "./estimate-lines.ts";
import { inEachRow } from "./formula-writes.ts";
import type { Place } from "./place.ts";
import type { pricesSheet } from "./prices.ts";

/** Amount and price date, in each line's own row. A line without an item stays blank. */
export function estimateLineFormulas(lines: Place<typeof estimateLinesSheet>, prices: Place<typeof pricesSheet>): readonly FormulaWrite[] {
  const table = prices.listTableReference("item", "priceDate");
  const forItem = (row: number, formula: (item: string) => string) => {
    const item = lines.ownCell(row, "item");
    return `=IF(TRIM(${item})="","",${formula(item)})`;
  };
  const priceDate = (item: string) =>
    `XLOOKUP(${asWord(item)},${asWord(prices.listReference("item"))},${prices.listReference("priceDate")},"")`;
  return [
    inEachRow(lines, "amount", (row) => forItem(row, (item) => `SOAK.PRICED(${lines.ownCell(row, "quantity")},${item},${table})`)),
    // An item that is on no row shows its sentence as the amount; its date has nothing to add.
    inEachRow(lines, "priceDate", (row) => forItem(row, (item) => `LET(d,${priceDate(item)},IF(ISNUMBER(d)*(d>0),d,""))`)),
  ];
}
