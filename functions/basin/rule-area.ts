/**
 * Garden area by the rule of thumb.
 *
 *   A = percent / 100 x contributing area      (sq ft)
 *
 * Source  Common practice, no source: 500 sq ft of roof and paving needs 50 to 60 sq ft of garden, 10 to 12 percent.
 *         Printed rules: one part of garden to 5 to 20 parts of paving in Ontario's guide, 10 to 30 percent in others.
 * Domain  contributingSquareFeet >= 0, 0 <= percent <= 100.
 * Limits  Knows nothing of the soil or the storm: a first look and a check, never the design.
 */
export function ruleAreaSquareFeet(contributingSquareFeet: number, percent: number): number {
  return (percent / 100) * contributingSquareFeet;
}

/** Common practice, no source. */
export const USUAL_RULE_PERCENT = 10;

/** From Ontario's 20 parts of paving to one of garden, to the 30 percent of homeowner workshops. */
export const PRINTED_RULE_PERCENTS = { least: 5, most: 30 } as const;
