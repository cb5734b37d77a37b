import type { Yard } from "../../../addin/actions/program/read-program.ts";
import type { PlantedClump } from "../../../addin/actions/planting/record-planted.ts";
import { asTyped, isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { buildText } from "./text.ts";

type ClumpRow = Yard["clumps"][number];

/** Counts as typed; a clump that is not among them went in as planned. */
export type TypedPlanted = readonly (readonly [clump: string, typed: string])[];

/** A clump to count: what it is known by wherever its row is sorted to, what is typed for it, and what is wrong with that. */
export interface CountedClump {
  readonly row: ClumpRow;
  readonly key: string;
  readonly typed: string;
  readonly fault: string | null;
  /** Null for a fault, and for a blank: not in the ground yet. */
  readonly planted: number | null;
}

export function countedClumps(typed: TypedPlanted, rows: readonly ClumpRow[]): readonly CountedClump[] {
  const names = rows.map(({ record: { plant, zone, alongLength, acrossWidth } }) =>
    JSON.stringify([plant, zone, alongLength, acrossWidth]),
  );
  return rows.map((row, place) => {
    const name = names[place] ?? "";
    const key = `${name} ${names.slice(0, place).filter((earlier) => earlier === name).length}`;
    return { row, key, ...counted(typed.find(([clump]) => clump === key)?.[1] ?? asTyped(row.record.planned)) };
  });
}

export function withCount(typed: TypedPlanted, key: string, count: string): TypedPlanted {
  return [...typed.filter(([clump]) => clump !== key), [key, count]];
}

/** What can be written: clumps with a count. */
export function plantedClumps(clumps: readonly CountedClump[]): readonly PlantedClump[] {
  return clumps.flatMap(({ row, planted }) => (planted === null ? [] : [{ row, planted }]));
}

function counted(typed: string): Pick<CountedClump, "typed" | "fault" | "planted"> {
  const read = readTypedNumber(typed, { label: buildText.planted.count, atLeast: 0 });
  if (isRefused(read)) return { typed, fault: read.sentence, planted: null };
  const whole = read.value === null || Number.isInteger(read.value);
  return { typed, fault: whole ? null : buildText.planted.whole, planted: whole ? read.value : null };
}
