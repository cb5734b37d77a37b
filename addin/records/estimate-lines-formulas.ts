import type { FormulaWrite } from "../workbook/port.ts";
import type { estimateLinesSheet } from "./estimate-lines.ts";
import { inEachRow } from "./formula-writes.ts";
import type { Place } from "./place.ts";
import type { pricesSheet } from "./prices.ts";

/** Amount and price date, in each line's own row. A line without an item stays blank. */
export function estimateLineFormulas(lines: Place<typeof estimateLinesSheet>, prices: Place<typeof pricesSheet>): readonly FormulaWrite[] {
  const table = prices.listTableReference("item", "priceDate");
  const dateColumn = prices.columnIndex("priceDate") - prices.columnIndex("item") + 1;
  const forItem = (row: number, formula: (item: string) => string) => {
    const item = lines.ownCell(row, "item");
    return `=IF(${item}="","",${formula(item)})`;
  };
  const priceDate = (item: string) => `VLOOKUP(${item},${table},${dateColumn},FALSE)`;
  return [
    inEachRow(lines, "amount", (row) => forItem(row, (item) => `SOAK.PRICED(${lines.ownCell(row, "quantity")},${item},${table})`)),
    // An item that is on no row shows its sentence as the amount; its date has nothing to add.
    inEachRow(lines, "priceDate", (row) => forItem(row, (item) => `IFERROR(IF(${priceDate(item)}="","",${priceDate(item)}),"")`)),
  ];
}
