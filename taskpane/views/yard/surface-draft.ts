import {
  figuresOf,
  followsMeasurement,
  howMeasured,
  measuredArea,
  measurementFrom,
  SHAPE_NAMES,
  type Figure,
  type Measurement,
  type ShapeName,
} from "../../../addin/actions/yard/measure-surface.ts";
import type { SurfaceEntry } from "../../../addin/actions/yard/record-yard.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { asTyped, isRefused, readTypedNumber, type NumberRule, type TypedNumber } from "../../parts/typed-number.ts";
import { surfacesText } from "./surfaces-text.ts";

export type SurfaceRow = Yard["surfaces"][number];

export type Way = "area" | "widths" | ShapeName;
export const WAYS: readonly Way[] = ["area", "rectangle", "triangle", "circle", "trapezoid", "widths", "roof footprint", "roof slope"];

/** A surface as typed: nothing is a number yet, and what was typed one way stays when another is chosen. */
export interface TypedSurface {
  readonly surface: string;
  readonly cover: string | null;
  readonly share: string;
  readonly way: Way;
  readonly area: string;
  /** How measured, in a person's own words. */
  readonly words: string;
  /** Of the shape, in the order of its figures. */
  readonly figures: readonly string[];
  readonly step: string;
  readonly widths: string;
}

export const BLANK_SURFACE: TypedSurface = {
  surface: "",
  cover: null,
  share: "",
  way: "area",
  area: "",
  words: "",
  figures: [],
  step: "",
  widths: "",
};

export function typedFrom({ cells, record }: SurfaceRow, units: UnitSystem): TypedSurface {
  const held: TypedSurface = {
    ...BLANK_SURFACE,
    surface: asTyped(cells.surface),
    cover: cells.cover === null ? null : String(cells.cover),
    share: asTyped(cells.share),
    area: asTyped(cells.area),
    words: asTyped(cells.howMeasured),
  };
  const measurement =
    followsMeasurement(record.area, record.howMeasured, units) === true ? measurementFrom(record.howMeasured ?? "", units) : null;
  if (measurement === null) return held;
  const measured = { ...held, way: measurement.way, words: "" };
  return measurement.way === "widths"
    ? { ...measured, step: spelled(measurement.step), widths: measurement.widths.map(spelled).join(" ") }
    : { ...measured, figures: measurement.figures.map(spelled) };
}

/** Says so where the area on the sheet and the measurements beside it tell two things; otherwise null. */
export function differenceWords({ record }: SurfaceRow, units: UnitSystem): string | null {
  const { area, howMeasured: text } = record;
  const measurement = measurementFrom(text ?? "", units);
  if (area === null || measurement === null || followsMeasurement(area, text, units) !== false) return null;
  const measured = measuredArea(measurement, units).area;
  return "value" in measured
    ? surfacesText.measuring.differs(quantityWords("area", measured.value, units), quantityWords("area", area, units))
    : null;
}

export interface SurfaceAsRead {
  /** What the sheet is to hold; null while something is at fault. */
  readonly entry: SurfaceEntry | null;
  /** The area that the measurements give; null while it is typed itself or cannot be told. */
  readonly measured: number | null;
  readonly notes: readonly string[];
  readonly faults: {
    readonly area: string | null;
    readonly share: string | null;
    readonly figures: readonly (string | null)[];
    readonly step: string | null;
    readonly widths: string | null;
    /** Of the measurement as a whole. */
    readonly measurement: string | null;
  };
}

export function readSurface(typed: TypedSurface, units: UnitSystem): SurfaceAsRead {
  const { measuring } = surfacesText;
  const isArea = typed.way === "area";
  const area = isArea ? readTypedNumber(typed.area, { label: measuring.area, required: true, atLeast: 0 }) : null;
  const share = readTypedNumber(typed.share, { label: surfacesText.shareLabel, atLeast: 0, atMost: 1 });
  const figures = isShape(typed.way)
    ? figuresOf(typed.way).map((figure, place) => readTypedNumber(typed.figures[place] ?? "", ruleOf(figure)))
    : [];
  const step = typed.way === "widths" ? readTypedNumber(typed.step, { label: measuring.step, required: true, moreThan: 0 }) : null;
  const widths = typed.way === "widths" ? readWidths(typed.widths) : null;

  const sentences = [area, ...figures, step].map(sentenceOf);
  const measurement =
    isArea || sentences.some((sentence) => sentence !== null) || sentenceOf(widths) !== null
      ? null
      : measurementOf(typed.way, figures, step, widths);
  const measured = measurement === null ? null : measuredArea(measurement, units);
  const value = measured === null ? numberOf(area) : "value" in measured.area ? measured.area.value : null;
  const faults = {
    area: sentenceOf(area),
    share: sentenceOf(share),
    figures: figures.map(sentenceOf),
    step: sentenceOf(step),
    widths: sentenceOf(widths),
    measurement: measured !== null && "sentence" in measured.area ? measured.area.sentence : null,
  };
  const words = measurement === null ? typed.words.trim() : howMeasured(measurement, units);
  const entry =
    value === null || isRefused(share)
      ? null
      : { surface: typed.surface.trim(), cover: typed.cover ?? "", area: value, share: share.value, howMeasured: words };
  return { entry, measured: measurement === null ? null : value, notes: measured?.notes ?? [], faults };
}

function measurementOf(
  way: Way,
  figures: readonly TypedNumber[],
  step: TypedNumber | null,
  widths: TypedWidths | null,
): Measurement | null {
  if (isShape(way)) return { way, figures: figures.map(numberOf) };
  return way === "widths" && widths !== null && "values" in widths ? { way, step: numberOf(step), widths: widths.values } : null;
}

type TypedWidths = { readonly values: readonly number[] } | { readonly sentence: string };

/** Widths in a row, apart by spaces, semicolons, or a comma with a space after it: a comma inside a number is asked about. */
function readWidths(typed: string): TypedWidths {
  const { measuring } = surfacesText;
  const values: number[] = [];
  for (const [place, width] of typed
    .split(/[\s;]+|,\s+/)
    .map((text) => text.replace(/,$/, ""))
    .filter((text) => text !== "")
    .entries()) {
    const read = readTypedNumber(width, { label: measuring.widthOf(place + 1), required: true, atLeast: 0 });
    if (isRefused(read)) return read;
    if (read.value !== null) values.push(read.value);
  }
  return values.length === 0 ? { sentence: `${measuring.widths} are missing.` } : { values };
}

function ruleOf({ name, kind, blank }: Figure): NumberRule {
  const rule = { label: figureLabel(name), required: blank === undefined };
  if (name === "run") return { ...rule, moreThan: 0 };
  return kind === "part" ? { ...rule, atLeast: 0, atMost: 1 } : { ...rule, atLeast: 0 };
}

/** "Between them". */
export function figureLabel(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

export function isShape(way: Way): way is ShapeName {
  return SHAPE_NAMES.some((name) => name === way);
}

function sentenceOf(typed: TypedNumber | TypedWidths | null): string | null {
  return typed !== null && "sentence" in typed ? typed.sentence : null;
}

function numberOf(typed: TypedNumber | null): number | null {
  return typed === null || isRefused(typed) ? null : typed.value;
}

function spelled(value: number | null): string {
  return value === null ? "" : String(value);
}
