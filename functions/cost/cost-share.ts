/**
 * The part of a garden's cost that a program pays.
 *
 *   per area, per volume   rate x basis             (basis the garden's area or the water it holds; rate money for one unit)
 *   percent                rate / 100 x basis       (basis the cost)
 *   flat                   rate
 *
 * never more than the cap, and nothing when the basis is under the smallest that counts.
 *
 * Source  The forms of two programs: District of Columbia rebate page, Seine-Rat Roseau Watershed District page (read).
 * Domain  basis, rate, smallestBasis >= 0; rate at most 100 for percent; cap >= 0 where there is one.
 * Limits  Programs ask for more than a size: read their terms.
 */
export function programShare(kind: CostShareKind, basis: number, rate: number, cap: number | undefined, smallestBasis: number): number {
  if (basis < smallestBasis) return 0;
  const earned = kind === "flat" ? rate : kind === "percent" ? (rate / 100) * basis : rate * basis;
  return cap === undefined ? earned : Math.min(earned, cap);
}

export type CostShareKind = "per area" | "per volume" | "percent" | "flat";

export const COST_SHARE_KINDS: readonly CostShareKind[] = ["per area", "per volume", "percent", "flat"];
