import { unitOf, type NumberKind, type UnitSystem } from "../../functions/quantities.ts";

/** A computed number as a person reads it: thousands apart, at most the decimals that the sheet shows. */
export function shown(value: number, decimals: number): string {
  const said = value.toLocaleString("en-US", { maximumFractionDigits: decimals });
  return said === "-0" ? "0" : said;
}

/** "ft", "sq ft", "h", "%"; "" for a count. */
export function shownUnit(kind: NumberKind, units: UnitSystem): string {
  if (kind === "hours") return "h";
  if (kind === "percent") return "%";
  return unitOf(kind, units);
}
