import { dayNumberOf } from "../../addin/actions/dates.ts";
import type { AsBuiltEntry, AsBuiltMeasures } from "../../addin/actions/record-as-built.ts";
import type { BasinShape } from "../../functions/basin/basin-shape.ts";
import { isRefused, readTypedNumber } from "../typed-number.ts";
import { buildText } from "./text.ts";

/** Measurements as typed: nothing is a number yet. */
export interface TypedAsBuilt {
  readonly date: string;
  readonly shape: BasinShape;
  readonly floorLength: string;
  readonly floorWidth: string;
  readonly pondingDepth: string;
  readonly sideSlope: string;
  readonly mediaDepth: string;
  readonly sillWidth: string;
  readonly lowestBerm: string;
  readonly drainHours: string;
  readonly note: string;
}

export type MeasureKey = Exclude<keyof TypedAsBuilt, "date" | "shape" | "note">;

export function blankAsBuilt(date: string, shape: BasinShape): TypedAsBuilt {
  return { date, shape, floorLength: "", floorWidth: "", pondingDepth: "", sideSlope: "", mediaDepth: "", sillWidth: "", lowestBerm: "", drainHours: "", note: "" };
}

const MEASURES: readonly { readonly key: MeasureKey; readonly label: string; readonly moreThan?: number; readonly atLeast?: number }[] = [
  { key: "floorLength", label: buildText.asBuilt.floorLength, moreThan: 0 },
  { key: "floorWidth", label: buildText.asBuilt.floorWidth, moreThan: 0 },
  { key: "pondingDepth", label: buildText.asBuilt.pondingDepth, moreThan: 0 },
  { key: "sideSlope", label: buildText.asBuilt.sideSlope, atLeast: 0 },
  { key: "mediaDepth", label: buildText.asBuilt.mediaDepth, atLeast: 0 },
  { key: "sillWidth", label: buildText.asBuilt.sillWidth, moreThan: 0 },
  { key: "lowestBerm", label: buildText.asBuilt.lowestBerm },
  { key: "drainHours", label: buildText.asBuilt.drainHours, moreThan: 0 },
];

export interface ReadAsBuilt {
  /** What can be read so far, for the comparison beside the form; null where nothing or no number was typed. */
  readonly measures: AsBuiltMeasures;
  readonly faults: Readonly<Partial<Record<MeasureKey | "date" | "nothing", string>>>;
}

export function readAsBuilt(typed: TypedAsBuilt): ReadAsBuilt {
  const faults: Partial<Record<MeasureKey | "date" | "nothing", string>> = {};
  const values: Partial<Record<MeasureKey, number | null>> = {};
  for (const { key, ...rule } of MEASURES) {
    const read = readTypedNumber(typed[key], rule);
    if (isRefused(read)) faults[key] = read.sentence;
    else values[key] = read.value;
  }
  if (dayNumberOf(typed.date) === null) faults.date = buildText.asBuilt.dateMissing;
  if (MEASURES.every(({ key }) => typed[key].trim() === "")) faults.nothing = buildText.asBuilt.nothing;
  const of = (key: MeasureKey) => values[key] ?? null;
  const measures: AsBuiltMeasures = {
    shape: typed.shape,
    floorLength: of("floorLength"),
    floorWidth: of("floorWidth"),
    pondingDepth: of("pondingDepth"),
    sideSlope: of("sideSlope"),
    mediaDepth: of("mediaDepth"),
    sillWidth: of("sillWidth"),
    lowestBerm: of("lowestBerm"),
    drainHours: of("drainHours"),
  };
  return { measures, faults };
}

/** The row to write, or null while anything is at fault. */
export function asBuiltEntry(typed: TypedAsBuilt, by: string): AsBuiltEntry | null {
  const { measures, faults } = readAsBuilt(typed);
  const date = dayNumberOf(typed.date);
  return date === null || Object.keys(faults).length > 0 ? null : { ...measures, date, by: by.trim(), note: typed.note.trim() };
}
