/**
 * One measured value against the siting rules that bear on it.
 *
 *   "at least": passes when value >= limit;  "at most": passes when value <= limit
 *   where several rules bear on the value, the worst verdict stands: stop, then refer, then pass
 *
 * Source  None of its own: every rule row carries its limit, its source and when that was checked.
 * Domain  value and limits in one unit; at least one rule.
 * Limits  Says what the rows say. Local codes, health and building departments decide.
 */
export function siteVerdict(value: number, rules: readonly SiteRule[]): SiteVerdict {
  const failed = rules.filter((rule) => !meets(value, rule)).map((rule) => rule.ifNotMet);
  if (failed.includes("stop")) return "stop";
  return failed.length > 0 ? "refer" : "pass";
}

export interface SiteRule {
  readonly comparison: Comparison;
  readonly limit: number;
  readonly ifNotMet: Consequence;
}

export type Comparison = "at least" | "at most";
export type Consequence = "refer" | "stop";
export type SiteVerdict = "pass" | Consequence;

function meets(value: number, { comparison, limit }: SiteRule): boolean {
  // A value on the limit passes in either unit: 3.048 m is 10 ft.
  const hair = 1e-9 * Math.abs(limit);
  return comparison === "at least" ? value >= limit - hair : value <= limit + hair;
}
