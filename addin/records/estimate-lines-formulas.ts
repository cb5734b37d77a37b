import type { FormulaWrite } from "../workbook/port.ts";
import type { estimateLinesSheet } from "./estimate-lines.ts";
import type { Place } from "./place.ts";
import type { pricesSheet } from "./prices.ts";

/** Amount and price date of every line, one spilled formula each. A line without an item stays blank. */
export function estimateLineFormulas(lines: Place<typeof estimateLinesSheet>, prices: Place<typeof pricesSheet>): readonly FormulaWrite[] {
  const item = lines.ownColumn("item");
  const table = prices.tableReference("item", "priceDate");
  const date = prices.columnIndex("priceDate") - prices.columnIndex("item") + 1;
  const priceDate = `VLOOKUP(${item},${table},${date},FALSE)`;
  const forItems = (formula: string) => `=IF(${item}="","",${formula})`;
  return [
    formulaAt(lines, "amount", forItems(`SOAK.PRICED(${lines.ownColumn("quantity")},${item},${table})`)),
    // An item that is on no row shows its sentence as the amount; its date has nothing to add.
    formulaAt(lines, "priceDate", forItems(`IFERROR(IF(${priceDate}="","",${priceDate}),"")`)),
  ];
}

function formulaAt(lines: Place<typeof estimateLinesSheet>, key: "amount" | "priceDate", formula: string): FormulaWrite {
  return { range: lines.cell(lines.firstRow, key), formulas: [[formula]] };
}
