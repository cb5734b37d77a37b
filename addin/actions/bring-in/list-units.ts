/**
 * Units in which people's lists measure, and what they come to in the unit of one of our columns.
 *
 * Source  the factors of quantities.ts; 1 cm = 10 mm; 1 yd = 3 ft; an acre is 43,560 sq ft (NIST Special Publication 811,
 *         2008, appendix B, from memory).
 */
import { fromUs, INCHES_PER_FOOT, toUs, type UnitSystem } from "../../../functions/quantities.ts";

export type Dimension = "length" | "area";

export interface ListUnit {
  readonly name: string;
  readonly dimension: Dimension;
  /** As they are written, in small letters without points or spaces. */
  readonly spellings: readonly string[];
  /** Lengths in inches, areas in square feet. */
  readonly toUs: (value: number) => number;
}

const SQUARE_FEET_PER_ACRE = 43_560;
const FEET_PER_YARD = 3;
const MILLIMETRES_PER_CENTIMETRE = 10;

const lengthUnit = (name: string, spellings: readonly string[], toInches: (value: number) => number): ListUnit => ({
  name,
  dimension: "length",
  spellings: [name, ...spellings],
  toUs: toInches,
});
const areaUnit = (name: string, spellings: readonly string[], toSquareFeet: (value: number) => number): ListUnit => ({
  name,
  dimension: "area",
  spellings: [name.replaceAll(" ", ""), ...spellings],
  toUs: toSquareFeet,
});

export const LIST_UNITS: readonly ListUnit[] = [
  lengthUnit("in", ["inch", "inches", '"', "″", "”"], (value) => value),
  lengthUnit("ft", ["foot", "feet", "'", "′", "’"], (value) => value * INCHES_PER_FOOT),
  lengthUnit("yd", ["yard", "yards"], (value) => value * FEET_PER_YARD * INCHES_PER_FOOT),
  lengthUnit("mm", ["millimeter", "millimeters", "millimetre", "millimetres"], (value) => toUs("depth", value, "metric")),
  lengthUnit("cm", ["centimeter", "centimeters", "centimetre", "centimetres"], (value) =>
    toUs("depth", value * MILLIMETRES_PER_CENTIMETRE, "metric"),
  ),
  lengthUnit("m", ["meter", "meters", "metre", "metres"], (value) => toUs("length", value, "metric") * INCHES_PER_FOOT),
  areaUnit("sq ft", ["sqft", "ft2", "ft²", "sf", "squarefeet", "squarefoot", "sqfeet"], (value) => value),
  areaUnit("sq yd", ["yd2", "yd²", "squareyards", "squareyard"], (value) => value * FEET_PER_YARD ** 2),
  areaUnit("m²", ["m2", "sqm", "squaremeters", "squaremetres", "squaremeter", "squaremetre"], (value) => toUs("area", value, "metric")),
  areaUnit("acres", ["acre", "ac"], (value) => value * SQUARE_FEET_PER_ACRE),
];

export function unitNamed(words: string): ListUnit | undefined {
  const plain = words.toLowerCase().replace(/[\s.]+/g, "");
  return LIST_UNITS.find(({ spellings }) => spellings.includes(plain));
}

/** The unit that a heading names: in brackets, or as its last word or two. */
export function unitInHeading(heading: string): ListUnit | undefined {
  const inBrackets = /[([]([^)\]]+)[)\]]/.exec(heading)?.[1];
  const words = heading.trim().split(/[\s_,]+/);
  // A word alone that is also a name of something ("yard") is no unit.
  const last = words.length > 1 ? [words.slice(-2).join(" "), words.at(-1) ?? ""].filter((each) => !/^yards?$/i.test(each)) : [];
  return [inBrackets ?? "", ...last].map(unitNamed).find((unit) => unit !== undefined);
}

/** What our column is measured in, by its heading: "Area (sq ft | m²)"; one unit alone holds for both systems. */
export function unitOfColumn(heading: string, system: UnitSystem): ListUnit | undefined {
  const [, written = ""] = /\(([^)]+)\)\s*$/.exec(heading) ?? [];
  const [us = "", metric = us] = written.split("|");
  return unitNamed(system === "us" ? us : metric);
}

/** The value in another unit of the same dimension. The same unit leaves it digit for digit. */
export function converted(value: number, from: ListUnit, to: ListUnit): number {
  if (from === to) return value;
  const us = from.toUs(value);
  return rounded(fromUsIn(to, us));
}

function fromUsIn({ name, toUs: inUs }: ListUnit, us: number): number {
  switch (name) {
    case "mm":
      return fromUs("depth", us, "metric");
    case "m":
      return fromUs("length", us / INCHES_PER_FOOT, "metric");
    case "m²":
      return fromUs("area", us, "metric");
    default:
      return us / inUs(1);
  }
}

/** What a conversion adds behind the twelfth digit is nobody's measurement. */
function rounded(value: number): number {
  return Number(value.toPrecision(12));
}
