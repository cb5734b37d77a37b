import { unitOf, type NumberKind } from "../../../functions/quantities.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { Answer } from "../basin/draft-basin.ts";

/** "1,234.5": at most so many decimals, thousands apart. */
export function numberWords(value: number, decimals = 2): string {
  return value.toLocaleString("en-US", { maximumFractionDigits: decimals });
}

export function moneyWords(value: number): string {
  return value.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
}

/** "97.4 sq ft", or a dash where there is no number. */
export function quantityWords(kind: NumberKind, quantity: Answer | number | null, units: UnitSystem): string {
  const value = typeof quantity === "number" || quantity === null ? quantity : "value" in quantity ? quantity.value : null;
  return value === null ? "–" : `${numberWords(value, decimalsOf(kind, units))} ${unitOf(kind, units)}`;
}

/** As finely as a tape, a level or a truck can tell. */
function decimalsOf(kind: NumberKind, units: UnitSystem): number {
  if (kind === "depth") return units === "metric" ? 0 : 1;
  if (kind === "earthVolume" || (units === "metric" && kind !== "area")) return 2;
  return 1;
}
