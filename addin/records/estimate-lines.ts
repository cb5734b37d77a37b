import { choiceColumn, nameColumn, numberColumn, resultColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** What a line stands for in the totals: money spent, or something given that a funder may count. */
export const LINE_KINDS = ["cash", "in-kind"] as const;

/** One row a line of a yard's estimate: what is needed, how much of it, and who pays. */
export const estimateLinesSheet = {
  name: "Estimate lines",
  preface: [
    "Estimate lines: one row a line of a yard's estimate. The item is looked up on Prices, which makes the amount",
    "A quantity is in the unit of its price. In-kind lines are kept apart from cash. A funder's name puts a line in that source's total.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    group: textColumn("Group", { widthPixels: 120, note: "Soil, stone, plants, tools, hire, labor, fees: your own words." }),
    item: nameColumn("Item", { widthPixels: 230, note: "As it stands on Prices." }),
    quantity: numberColumn("Quantity", { label: "Quantity", atLeast: 0 }, { numberFormat: "#,##0.0#" }),
    unit: textColumn("Unit", { widthPixels: 80 }),
    kind: choiceColumn("Cash or in-kind", "Cash or in-kind", LINE_KINDS, { note: "Blank counts as cash." }),
    funder: textColumn("Funder", { widthPixels: 150 }),
    note: textColumn("Note", { widthPixels: 240 }),
    amount: resultColumn("Amount", {
      numberFormat: "#,##0.00",
      typedInstead: "The amount is computed: type the quantity in this row, and the price of the item on Prices.",
    }),
    priceDate: resultColumn("Price date", {
      numberFormat: "yyyy-mm-dd",
      widthPixels: 92,
      typedInstead: "The date of a price is typed beside it on Prices.",
    }),
  },
  rows: 600,
  frozenColumns: 3,
} as const satisfies Sheet;

export type EstimateLine = RecordOf<typeof estimateLinesSheet>;
export type EstimateLineRow = SheetRow<typeof estimateLinesSheet>;
