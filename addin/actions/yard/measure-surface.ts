import { circleArea, footprintArea, rectangleArea, trapezoidArea, triangleArea } from "../../../functions/runoff/surface-area.ts";
import { planLength } from "../../../functions/runoff/roof-plan.ts";
import { unitOf } from "../../../functions/quantities.ts";
import { isCellError } from "../../../functions/worksheet/calling/cell.ts";
import { widthsArea } from "../../../functions/worksheet/sizing-methods.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { Answer } from "../basin/draft-basin.ts";

/** One thing to measure. Its name stands in the sheet beside its number, so it is never changed once released. */
export interface Figure {
  readonly name: string;
  readonly kind: "length" | "rise or run" | "part";
  /** What a blank means; without one the figure has to be given. */
  readonly blank?: number;
}

interface Shape {
  readonly figures: readonly Figure[];
  readonly area: (...figures: number[]) => number;
}

const length = (name: string, blank?: number): Figure => ({ name, kind: "length", ...(blank === undefined ? {} : { blank }) });

const shapes = {
  rectangle: { figures: [length("length"), length("width")], area: rectangleArea },
  triangle: { figures: [length("base"), length("height")], area: triangleArea },
  circle: { figures: [length("diameter"), { name: "part", kind: "part", blank: 1 }], area: circleArea },
  trapezoid: { figures: [length("one side"), length("other side"), length("between them")], area: trapezoidArea },
  "roof footprint": { figures: [length("length"), length("width"), length("overhang", 0)], area: footprintArea },
  "roof slope": {
    figures: [
      length("along the eave"),
      length("up the slope"),
      { name: "rise", kind: "rise or run" },
      { name: "run", kind: "rise or run" },
    ],
    area: (eave: number, sloped: number, rise: number, run: number) => rectangleArea(eave, planLength(sloped, rise, run)),
  },
} as const satisfies Record<string, Shape>;

export type ShapeName = keyof typeof shapes;
export const SHAPE_NAMES = Object.keys(shapes) as readonly ShapeName[];

/** What was measured, in the yard's length unit: a shape's figures in order, or widths at equal steps. A blank is null. */
export type Measurement =
  | { readonly way: ShapeName; readonly figures: readonly (number | null)[] }
  | { readonly way: "widths"; readonly step: number | null; readonly widths: readonly (number | null)[] };

export const WIDTHS_STEP: Figure = length("step");

export function figuresOf(shape: ShapeName): readonly Figure[] {
  return shapes[shape].figures;
}

export interface MeasuredArea {
  readonly area: Answer;
  /** What the method says of itself, such as which rule it used. */
  readonly notes: readonly string[];
}

/** The area of a measurement, in the yard's area unit. */
export function measuredArea(measurement: Measurement, units: UnitSystem): MeasuredArea {
  if (measurement.way !== "widths") return { area: shapeArea(measurement.way, measurement.figures), notes: [] };
  const inputs = [measurement.widths.map((width) => [width]), measurement.step, units];
  const cell = widthsArea.evaluate(inputs)[0]?.[0];
  if (typeof cell === "number") return { area: { value: cell }, notes: widthsArea.cautionsFor(inputs) };
  return { area: { sentence: isCellError(cell) ? cell.sentence : "Widths are missing." }, notes: [] };
}

function shapeArea(name: ShapeName, given: readonly (number | null)[]): Answer {
  const { figures, area }: Shape = shapes[name];
  const values: number[] = [];
  for (const [place, figure] of figures.entries()) {
    const value = given[place] ?? figure.blank;
    const sentence = value === undefined ? `${capital(figure.name)} is missing.` : faultOf(figure, value);
    if (value === undefined || sentence !== null) return { sentence: sentence ?? "" };
    values.push(value);
  }
  return { value: area(...values) };
}

/** Square feet or square metres follow from any one unit of length, so only what cannot exist is refused. */
function faultOf({ name, kind }: Figure, value: number): string | null {
  if (value < 0) return `${capital(name)} must be 0 or more.`;
  if (kind === "part" && value > 1) return `${capital(name)} must be 1 or less.`;
  if (name === "run" && value === 0) return "Run must be more than 0.";
  return null;
}

/** "rectangle: length 40 ft, width 12 ft": what the sheet keeps, for people and for the form alike. */
export function howMeasured(measurement: Measurement, units: UnitSystem): string {
  const unit = unitOf("length", units);
  if (measurement.way === "widths") {
    return `widths: step ${spelled(measurement.step)} ${unit}, widths ${measurement.widths.map(spelled).join(" ")} ${unit}`;
  }
  const parts = figuresOf(measurement.way).flatMap(({ name, kind }, place) => {
    const value = measurement.figures[place] ?? null;
    return value === null ? [] : [`${name} ${value}${kind === "length" ? ` ${unit}` : ""}`];
  });
  return `${measurement.way}: ${parts.join(", ")}`;
}

/** The measurement that such a text tells, or null: what a person wrote in their own words stays their words. */
export function measurementFrom(text: string, units: UnitSystem): Measurement | null {
  const [, way, rest] = /^([a-z ]+): (.+)$/.exec(text.trim()) ?? [];
  const read =
    way === "widths"
      ? widthsFrom(rest ?? "", units)
      : shapeFrom(
          SHAPE_NAMES.find((name) => name === way),
          rest ?? "",
        );
  if (read === null || "sentence" in measuredArea(read, units).area) return null;
  // What does not come back in the very words, or is in another unit, is not what this form wrote.
  return howMeasured(read, units) === text.trim() ? read : null;
}

function shapeFrom(way: ShapeName | undefined, rest: string): Measurement | null {
  if (way === undefined) return null;
  const parts = rest.split(", ");
  const figures = figuresOf(way).map(({ name }) => {
    const said = parts.find((part) => part.startsWith(`${name} `));
    return said === undefined ? null : numberIn(said.slice(name.length + 1));
  });
  return { way, figures };
}

function widthsFrom(rest: string, units: UnitSystem): Measurement | null {
  const [, step, widths] = /^step (\S+) \S+, widths (.+)$/.exec(rest) ?? [];
  if (step === undefined || widths === undefined) return null;
  const listed = widths.slice(0, widths.lastIndexOf(` ${unitOf("length", units)}`)).split(" ");
  return { way: "widths", step: numberIn(step), widths: listed.map(numberIn) };
}

function numberIn(said: string): number | null {
  const value = Number(said.split(" ")[0]);
  return Number.isFinite(value) ? value : null;
}

function spelled(value: number | null): string {
  return value === null ? "-" : String(value);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Whether the area on the sheet is the one that its measurements give; null where there is nothing to compare. */
export function followsMeasurement(area: number | null, text: string | null, units: UnitSystem): boolean | null {
  const measurement = text === null ? null : measurementFrom(text, units);
  if (measurement === null || area === null) return null;
  const measured = measuredArea(measurement, units).area;
  return "value" in measured && Math.abs(measured.value - area) <= 1e-6 * Math.max(1, area);
}
