import { wholePackages } from "./whole-packages.ts";

/**
 * What an order of one item costs.
 *
 *   bought = the larger of quantity and minimum order, rounded up to whole packages where it comes in packages
 *   amount = bought x unit price + delivery;  0 for an order of nothing
 *
 * Source  Definition; whole packages and minimum orders: common practice, no source.
 * Domain  quantity >= 0; unitPrice, minimumOrder and delivery >= 0; packageSize > 0 where there is one.
 * Limits  Quantity, package size and minimum order in the unit that is priced. Delivery is counted once an order.
 */
export function orderAmount(quantity: number, price: Price): number {
  return quantity === 0 ? 0 : orderedQuantity(quantity, price) * price.unitPrice + price.delivery;
}

export function orderedQuantity(quantity: number, { packageSize, minimumOrder }: Price): number {
  const wanted = Math.max(quantity, minimumOrder);
  return packageSize === undefined ? wanted : wholePackages(wanted, packageSize) * packageSize;
}

export interface Price {
  /** Money for one unit. */
  readonly unitPrice: number;
  /** Units in a package; undefined where any quantity is sold. */
  readonly packageSize: number | undefined;
  /** Units. */
  readonly minimumOrder: number;
  /** Money for one delivery. */
  readonly delivery: number;
}
