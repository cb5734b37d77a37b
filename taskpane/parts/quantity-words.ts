import type { NumberKind, UnitSystem } from "../../functions/quantities.ts";
import { shown, shownUnit } from "./numbers.ts";

type SpokenKind = Extract<
  NumberKind,
  "depth" | "length" | "rate" | "area" | "waterVolume" | "earthVolume" | "hours" | "percent" | "weight"
>;

/** About as many decimals as the sheet shows of the same quantity, so that the two never seem to disagree. */
const DECIMALS: Readonly<Record<SpokenKind, Readonly<Record<UnitSystem, number>>>> = {
  depth: { us: 2, metric: 0 },
  length: { us: 1, metric: 2 },
  rate: { us: 2, metric: 1 },
  area: { us: 1, metric: 1 },
  waterVolume: { us: 1, metric: 2 },
  earthVolume: { us: 2, metric: 2 },
  hours: { us: 1, metric: 1 },
  percent: { us: 1, metric: 1 },
  weight: { us: 2, metric: 2 },
};

/** "97.4 sq ft": a value already in the yard's units, with its unit. */
export function quantityWords(kind: SpokenKind, value: number, units: UnitSystem): string {
  return `${numberWords(kind, value, units)} ${shownUnit(kind, units)}`;
}

export function numberWords(kind: SpokenKind, value: number, units: UnitSystem): string {
  return shown(value, DECIMALS[kind][units]);
}

/** The same for a column of a table: as many decimals in every row, so that they stand under each other. */
export function columnWords(kind: SpokenKind, value: number, units: UnitSystem): string {
  const decimals = DECIMALS[kind][units];
  return value.toLocaleString("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
}
