/**
 * Totals of an estimate.
 *
 *   contingency = cash x percent / 100
 *   cost        = cash + contingency
 *   own part    = cost - cost share
 *   cost a unit = cost / quantity            (a square foot treated, a gallon held)
 *
 * Source  Definitions. A contingency of 10 to 20 percent on cash: common practice, no source.
 * Domain  cash, contingencyPercent, costShare >= 0; quantity > 0.
 * Limits  In-kind value is no part of the cost: funders count it apart.
 */
export function estimateTotals(cash: number, contingencyPercent: number, costShare: number): EstimateTotals {
  const contingency = (cash * contingencyPercent) / 100;
  const cost = cash + contingency;
  return { contingency, cost, ownPart: cost - costShare };
}

export function costOfUnit(cost: number, quantity: number): number {
  return cost / quantity;
}

/** Money. */
export interface EstimateTotals {
  readonly contingency: number;
  readonly cost: number;
  readonly ownPart: number;
}

/** Common practice, no source: a price older than this is asked for again. */
export const STALE_PRICE_DAYS = 180;
