import { dateColumn, numberColumn, textColumn } from "./column.ts";
import type { RecordOf, Sheet, SheetRow } from "./sheet.ts";

/** What things cost, a row an item. The first seven columns are those SOAK.PRICED reads. */
export const pricesSheet = {
  name: "Prices",
  preface: [
    "Prices: your own price list. Estimates read it; a price older than six months is pointed out, never changed",
    "An amount buys whole packages, at least the minimum order, and pays the delivery once. All money is in the program's own currency.",
  ],
  columns: {
    item: textColumn("Item", { widthPixels: 230 }),
    unitPrice: numberColumn("Unit price", { label: "Unit price", atLeast: 0 }, { numberFormat: "#,##0.00" }),
    unit: textColumn("Unit", { widthPixels: 80 }),
    packageSize: numberColumn("Package size", { label: "Package size", moreThan: 0 }, { note: "Smallest amount that is sold, in the unit. Blank: any amount." }),
    minimumOrder: numberColumn("Minimum order", { label: "Minimum order", atLeast: 0 }, { note: "In the unit. Blank: none." }),
    delivery: numberColumn("Delivery", { label: "Delivery", atLeast: 0 }, { numberFormat: "#,##0.00", note: "Paid once for each line. Blank: none." }),
    priceDate: dateColumn("Price date", "Price date", { widthPixels: 92 }),
    supplier: textColumn("Supplier", { widthPixels: 170 }),
    note: textColumn("Note", { widthPixels: 260 }),
  },
  rows: 120,
  frozenColumns: 1,
} as const satisfies Sheet;

export type Price = RecordOf<typeof pricesSheet>;
export type PriceRow = SheetRow<typeof pricesSheet>;
