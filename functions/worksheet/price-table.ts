import type { Price } from "../cost/order-amount.ts";
import { invalid, isCellError, missing, type Cell, type CellError } from "./calling/cell.ts";
import { nearestKeys } from "./calling/nearest-keys.ts";
import { isBlank } from "./calling/reading.ts";
import { orList, quoted } from "./calling/sentences.ts";
import { RowsByName, type Table } from "./rows-by-name.ts";

/**
 * The columns of the Prices table, in order: Item | Unit price | Unit | Package size | Minimum order | Delivery | Price date.
 * The unit is for people. Quantity, package size and minimum order are in it; a blank package size means any quantity is
 * sold, a blank minimum or delivery means none.
 */
const ITEM = 0;
const UNIT_PRICE = 1;
const PACKAGE_SIZE = 3;
const MINIMUM_ORDER = 4;
const DELIVERY = 5;
const PRICE_DATE = 6;

const COLUMN_NAMES = {
  [UNIT_PRICE]: "unit price",
  [PACKAGE_SIZE]: "package size",
  [MINIMUM_ORDER]: "minimum order",
  [DELIVERY]: "delivery",
} as const;

export interface TablePrice extends Price {
  readonly isDated: boolean;
}

/** The one row of the Prices table that prices an item, or the sentence that says what is wrong. */
export function priceOf(item: string, table: Table): TablePrice | CellError {
  const rows = items.named(item, table);
  const [row] = rows;
  if (row === undefined) return unknownItem(item, items.names(table));
  if (rows.length > 1) return invalid(`Item ${quoted(item)} stands in the Prices table ${rows.length} times; keep one row.`);
  const unitPrice = amountIn(row, UNIT_PRICE);
  const packageSize = amountIn(row, PACKAGE_SIZE);
  const minimumOrder = amountIn(row, MINIMUM_ORDER);
  const delivery = amountIn(row, DELIVERY);
  if (isCellError(unitPrice)) return unitPrice;
  if (isCellError(packageSize)) return packageSize;
  if (isCellError(minimumOrder)) return minimumOrder;
  if (isCellError(delivery)) return delivery;
  if (unitPrice === undefined) return missing(`Item ${quoted(item)} has no unit price.`);
  if (packageSize === 0) return invalid(`Item ${quoted(item)}: package size must be more than 0.`);
  return { unitPrice, packageSize, minimumOrder: minimumOrder ?? 0, delivery: delivery ?? 0, isDated: !isBlank(row[PRICE_DATE]) };
}

/** The number in a column of an item's row; undefined where it is blank. */
function amountIn(row: readonly Cell[], column: keyof typeof COLUMN_NAMES): number | undefined | CellError {
  const cell = row[column] ?? null;
  if (isBlank(cell)) return undefined;
  if (isCellError(cell) || (typeof cell === "number" && cell >= 0 && cell < Infinity)) return cell;
  return invalid(`Item ${quoted(String(row[ITEM]))}: ${COLUMN_NAMES[column]} must be a number, 0 or more; it is ${quoted(cell)}.`);
}

const items = new RowsByName((row) => typeof row[UNIT_PRICE] === "number");

function unknownItem(item: string, known: readonly string[]): CellError {
  if (known.length === 0) return invalid(`Item ${quoted(item)} is not in the Prices table, which holds no prices.`);
  return invalid(`Item ${quoted(item)} is not in the Prices table. The nearest are ${orList(nearestKeys(item, known), "and")}.`);
}
