import { toUs, type NumberKind, type UnitSystem } from "../../functions/quantities.ts";
import type { Finding } from "../records/follow-ups.ts";

/** An inspection item that a number decides: the last band whose lower end is reached gives the finding. */
export interface InspectionMeasure {
  readonly item: string;
  readonly label: string;
  readonly kind: Extract<NumberKind, "depth" | "hours" | "percent">;
  readonly bands: readonly Band[];
}

/** In US units. `from` counts the value itself in, `over` does not. */
export type Band = { readonly from: number; readonly finding: Finding } | { readonly over: number; readonly finding: Finding };

/**
 * The numbers that stand in words in inspection-items. Mulch over 4 in is watched, because a thick mat keeps rain and air
 * from the soil: common practice, no source.
 */
export const inspectionMeasures: readonly InspectionMeasure[] = [
  {
    item: "ponding",
    label: "Water stood for",
    kind: "hours",
    bands: [
      { from: 0, finding: "pass" },
      { over: 24, finding: "watch" },
      { over: 48, finding: "fail" },
    ],
  },
  {
    item: "sediment",
    label: "Sediment depth",
    kind: "depth",
    bands: [
      { from: 0, finding: "pass" },
      { from: 0.5, finding: "watch" },
      { over: 1, finding: "fail" },
    ],
  },
  {
    item: "mulch",
    label: "Mulch depth",
    kind: "depth",
    bands: [
      { from: 0, finding: "fail" },
      { from: 1, finding: "watch" },
      { from: 2, finding: "pass" },
      { over: 4, finding: "watch" },
    ],
  },
  {
    item: "plants",
    label: "Plants alive",
    kind: "percent",
    bands: [
      { from: 0, finding: "fail" },
      { from: 75, finding: "watch" },
      { from: 90, finding: "pass" },
    ],
  },
  {
    item: "weeds",
    label: "Covered by weeds",
    kind: "percent",
    bands: [
      { from: 0, finding: "pass" },
      { from: 10, finding: "watch" },
      { over: 25, finding: "fail" },
    ],
  },
];

/** What a reading in the yard's units comes to. A reading below zero is none. */
export function findingOf(measure: InspectionMeasure, reading: number, units: UnitSystem): Finding | null {
  const value = roundedOff(toUs(measure.kind, reading, units));
  return measure.bands.filter((band) => ("from" in band ? value >= band.from : value > band.over)).at(-1)?.finding ?? null;
}

/** 25.4 mm is an inch, whatever the last digits of the conversion say. */
function roundedOff(value: number): number {
  return Number(value.toPrecision(12));
}
