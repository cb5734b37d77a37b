import { fromUs, unitOf, type NumberKind, type UnitSystem } from "../../quantities.ts";
import type { ValueKind } from "./arguments.ts";
import { isCellError, type CellError } from "./cell.ts";
import { isNumberKind } from "./reading.ts";

/** An intermediate value of a calculation, in US units, as a reviewer writes it down on the way to the result. */
export interface WorkingStep {
  readonly label: string;
  readonly value: number | string;
  /** What kind of number it is, so that a metric sheet shows it in metric units. */
  readonly kind?: NumberKind;
  /** The unit of a number that is of no kind. It is the same on a metric sheet. */
  readonly unit?: string;
}

/** An intermediate value in the units of the call. */
export interface ShownStep {
  readonly label: string;
  readonly value: number | string;
  readonly unit: string;
}

/** The steps in the units of the call. A number that outgrew arithmetic is left out. */
export function shownSteps(steps: readonly WorkingStep[], system: UnitSystem): readonly ShownStep[] {
  return steps
    .map(({ label, value, kind, unit }): ShownStep => {
      if (typeof value === "string" || kind === undefined) return { label, value, unit: unit ?? "" };
      return { label, value: fromUs(kind, value, system), unit: writtenUnit(kind, system) };
    })
    .filter(({ value }) => typeof value === "string" || Number.isFinite(value));
}

/** The unit beside a value on paper. Hours, minutes and percent have one there, although no sheet converts them. */
export function writtenUnit(kind: ValueKind, system: UnitSystem): string {
  if (!isNumberKind(kind)) return "";
  return UNCONVERTED_UNITS[kind] ?? unitOf(kind, system);
}

const UNCONVERTED_UNITS: Partial<Record<NumberKind, string>> = { hours: "h", minutes: "min", percent: "%" };

/** The steps of what was found; none where the cell says in words why nothing was. */
export function stepsOf<Found>(
  found: Found | CellError | undefined,
  steps: (found: Found) => readonly WorkingStep[],
): readonly WorkingStep[] {
  return found === undefined || isCellError(found) ? [] : steps(found);
}
