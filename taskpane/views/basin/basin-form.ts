import type { Remedy } from "../../../addin/actions/basin/basin-room.ts";
import { basinInputsOf, type BasinInputs } from "../../../addin/actions/basin/draft-basin.ts";
import type { BasinEntry } from "../../../addin/actions/yard/record-yard.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import type { CellValue } from "../../../addin/workbook/port.ts";
import { asTyped, isRefused, readTypedNumber, type NumberRule } from "../../parts/typed-number.ts";
import { basinText } from "./text.ts";

/** The design inputs of a yard as typed; blank takes the default in force. */
export interface TypedBasin {
  readonly stormDepth: string;
  readonly pondingDepth: string;
  readonly mediaDepth: string;
  readonly sideSlope: string;
  readonly shape: string | null;
  readonly lengthToWidth: string;
  readonly mixRecipe: string | null;
  readonly roomLength: string;
  readonly roomWidth: string;
}

export type BasinField = keyof TypedBasin;

/** In the order of the form. */
export const BASIN_FIELDS = [
  "stormDepth",
  "pondingDepth",
  "mediaDepth",
  "sideSlope",
  "shape",
  "lengthToWidth",
  "mixRecipe",
  "roomLength",
  "roomWidth",
] as const satisfies readonly BasinField[];

export type NumberInput = Exclude<BasinField, "mixRecipe" | "shape">;

/** As the Sites sheet checks the same cells. */
const RULES: Readonly<Record<NumberInput, NumberRule>> = {
  stormDepth: { label: basinText.fields.stormDepth, moreThan: 0 },
  pondingDepth: { label: basinText.fields.pondingDepth, moreThan: 0 },
  mediaDepth: { label: basinText.fields.mediaDepth, atLeast: 0 },
  sideSlope: { label: basinText.fields.sideSlope, atLeast: 0 },
  lengthToWidth: { label: basinText.fields.lengthToWidth, atLeast: 1 },
  roomLength: { label: basinText.fields.roomLength, moreThan: 0 },
  roomWidth: { label: basinText.fields.roomWidth, moreThan: 0 },
};

/** What the yard has no number for yet, tried out and never written. */
export interface Assumed {
  readonly contributingArea: string;
  readonly testedRate: string;
}

export const NOTHING_ASSUMED: Assumed = { contributingArea: "", testedRate: "" };

export function typedFrom(yard: Yard): TypedBasin {
  const { cells } = yard.site;
  return {
    stormDepth: asTyped(cells.stormDepth),
    pondingDepth: asTyped(cells.pondingDepth),
    mediaDepth: asTyped(cells.mediaDepth),
    sideSlope: asTyped(cells.sideSlope),
    shape: asChosen(cells.shape),
    lengthToWidth: asTyped(cells.lengthToWidth),
    mixRecipe: asChosen(cells.mixRecipe),
    roomLength: asTyped(cells.roomLength),
    roomWidth: asTyped(cells.roomWidth),
  };
}

function asChosen(cell: CellValue): string | null {
  return cell === null ? null : String(cell);
}

/** The inputs of a remedy, typed into the form. */
export function typedWith(typed: TypedBasin, { changes }: Remedy): TypedBasin {
  const depths = Object.entries(changes)
    .filter(([, value]) => typeof value === "number")
    .map(([key, value]) => [key, String(Number(Number(value).toPrecision(8)))]);
  return { ...typed, ...Object.fromEntries(depths), shape: asChosen(changes.shape) };
}

export interface BasinAsRead {
  readonly entry: BasinEntry;
  readonly faults: Readonly<Partial<Record<NumberInput, string>>>;
}

export function readBasin(typed: TypedBasin): BasinAsRead {
  const faults: Partial<Record<NumberInput, string>> = {};
  const numberOf = (field: NumberInput): CellValue => {
    const read = readTypedNumber(typed[field], RULES[field]);
    if (!isRefused(read)) return read.value;
    faults[field] = read.sentence;
    return null;
  };
  return {
    entry: {
      stormDepth: numberOf("stormDepth"),
      pondingDepth: numberOf("pondingDepth"),
      mediaDepth: numberOf("mediaDepth"),
      sideSlope: numberOf("sideSlope"),
      shape: typed.shape,
      lengthToWidth: numberOf("lengthToWidth"),
      mixRecipe: typed.mixRecipe,
      roomLength: numberOf("roomLength"),
      roomWidth: numberOf("roomWidth"),
    },
    faults,
  };
}

/** Which of the two numbers a basin rests on are missing, and what was assumed in their place. */
export interface Grounds {
  readonly contributingArea: number | null;
  readonly testedRate: number | null;
  readonly areaMissing: boolean;
  readonly rateMissing: boolean;
  readonly faults: Readonly<Partial<Record<keyof Assumed, string>>>;
}

export function groundsOf(yard: Yard, assumed: Assumed): Grounds {
  const { contributingArea, testedRate } = yard.design;
  const areaMissing = typeof contributingArea !== "number";
  const rateMissing = typeof testedRate !== "number";
  const area = readTypedNumber(assumed.contributingArea, { label: basinText.assumed.contributingArea, moreThan: 0 });
  const rate = readTypedNumber(assumed.testedRate, { label: basinText.assumed.testedRate, atLeast: 0 });
  return {
    contributingArea: areaMissing ? (isRefused(area) ? null : area.value) : contributingArea,
    testedRate: rateMissing ? (isRefused(rate) ? null : rate.value) : testedRate,
    areaMissing,
    rateMissing,
    faults: {
      ...(areaMissing && isRefused(area) ? { contributingArea: area.sentence } : {}),
      ...(rateMissing && isRefused(rate) ? { testedRate: rate.sentence } : {}),
    },
  };
}

export function inputsFor(yard: Yard, entry: BasinEntry, grounds: Grounds): BasinInputs {
  const inputs = { ...basinInputsOf(yard), ...entry, contributingArea: grounds.contributingArea, testedRate: grounds.testedRate };
  return grounds.areaMissing ? { ...inputs, surfaces: [] } : inputs;
}

export interface Difference {
  readonly field: BasinField;
  readonly onSheet: CellValue;
  readonly here: CellValue;
}

/** What writing would change, cell by cell. */
export function differencesFrom(yard: Yard, entry: BasinEntry): readonly Difference[] {
  const { cells } = yard.site;
  return BASIN_FIELDS.flatMap((field) =>
    sameCell(cells[field], entry[field]) ? [] : [{ field, onSheet: cells[field], here: entry[field] }],
  );
}

function sameCell(one: CellValue, other: CellValue): boolean {
  return one === other || ((one === null || one === "") && (other === null || other === ""));
}
