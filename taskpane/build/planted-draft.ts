import { dayNumberOf } from "../../addin/actions/dates.ts";
import type { Yard } from "../../addin/actions/read-program.ts";
import type { PlantedClump } from "../../addin/actions/record-planted.ts";
import { asTyped, isRefused, readTypedNumber } from "../typed-number.ts";
import { buildText } from "./text.ts";

type ClumpRow = Yard["clumps"][number];

/** Counts as typed, by the clump's row; a clump that is not among them went in as planned. */
export interface TypedPlanted {
  readonly date: string;
  readonly counts: readonly (readonly [row: number, typed: string])[];
}

export interface ReadPlanted {
  readonly date: number | null;
  /** A clump whose count was blanked is not in the ground yet, and is left out. */
  readonly counted: readonly PlantedClump[];
  /** By the clump's row. */
  readonly faults: ReadonlyMap<number, string>;
}

export function typedCount({ counts }: TypedPlanted, { row, record }: ClumpRow): string {
  return counts.find(([of]) => of === row)?.[1] ?? asTyped(record.planned);
}

export function withCount(typed: TypedPlanted, { row }: ClumpRow, count: string): TypedPlanted {
  return { ...typed, counts: [...typed.counts.filter(([of]) => of !== row), [row, count]] };
}

export function readPlanted(typed: TypedPlanted, clumps: readonly ClumpRow[]): ReadPlanted {
  const words = buildText.planted;
  const faults = new Map<number, string>();
  const counted = clumps.flatMap((row): PlantedClump[] => {
    const read = readTypedNumber(typedCount(typed, row), { label: words.count, atLeast: 0 });
    const fault = isRefused(read) ? read.sentence : read.value !== null && !Number.isInteger(read.value) ? words.whole : null;
    if (fault !== null) faults.set(row.row, fault);
    return fault !== null || isRefused(read) || read.value === null ? [] : [{ row, planted: read.value }];
  });
  return { date: dayNumberOf(typed.date), counted, faults };
}
