import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { newestAsBuilt, type AsBuiltEntry, type AsBuiltMeasures } from "../../../addin/actions/build/record-as-built.ts";
import type { BasinShape } from "../../../functions/basin/basin-shape.ts";
import { isRefused, readTypedNumber } from "../../parts/typed-number.ts";
import { buildText } from "./text.ts";

/** Measurements as typed: nothing is a number yet. */
export interface TypedAsBuilt {
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

export type MeasureKey = Exclude<keyof TypedAsBuilt, "shape" | "note">;

/** Built in the shape it was last measured in, or else was designed in, until somebody says otherwise. */
export function startingAsBuilt({ asBuilt, site }: Pick<Yard, "asBuilt" | "site">): TypedAsBuilt {
  return blankAsBuilt(newestAsBuilt(asBuilt)?.record.shape ?? site.record.shape ?? "ellipse");
}

export function blankAsBuilt(shape: BasinShape): TypedAsBuilt {
  return {
    shape,
    floorLength: "",
    floorWidth: "",
    pondingDepth: "",
    sideSlope: "",
    mediaDepth: "",
    sillWidth: "",
    lowestBerm: "",
    drainHours: "",
    note: "",
  };
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
  readonly faults: Readonly<Partial<Record<MeasureKey | "nothing", string>>>;
}

export function readAsBuilt(typed: TypedAsBuilt): ReadAsBuilt {
  const faults: Partial<Record<MeasureKey | "nothing", string>> = {};
  const values: Partial<Record<MeasureKey, number | null>> = {};
  for (const { key, ...rule } of MEASURES) {
    const read = readTypedNumber(typed[key], rule);
    if (isRefused(read)) faults[key] = read.sentence;
    else values[key] = read.value;
  }
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
export function asBuiltEntry(typed: TypedAsBuilt, date: number, by: string): AsBuiltEntry | null {
  const { measures, faults } = readAsBuilt(typed);
  return Object.keys(faults).length > 0 ? null : { ...measures, date, by, note: typed.note.trim() };
}
