/**
 * Whole packages that hold a quantity: bags, loads, trays.
 *
 *   n = quantity / package size, rounded up      (both in one unit)
 *
 * Source  Definition.
 * Domain  quantity >= 0, packageSize > 0.
 * Limits  A part of a package smaller than a millionth of the whole order is rounding, and buys no package.
 */
export function wholePackages(quantity: number, packageSize: number): number {
  if (quantity === 0) return 0;
  return Math.ceil(packagesBeforeRounding(quantity, packageSize) * (1 - ROUNDING_SHARE));
}

export function packagesBeforeRounding(quantity: number, packageSize: number): number {
  return quantity / packageSize;
}

/** What a chain of conversions may have added; far below what anyone can measure. */
export const ROUNDING_SHARE = 1e-6;
