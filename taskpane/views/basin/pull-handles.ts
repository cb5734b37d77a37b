import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import type { UnitSystem } from "../../../functions/quantities.ts";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { valueOf } from "./basin-checks.ts";
import type { TypedBasin } from "./basin-form.ts";
import { lengthAsDepth } from "./depths.ts";
import { basinText } from "./text.ts";

/** What of a basin can be pulled in its drawing. */
export type Pulled = "length" | "width" | "ponding" | "sides";

/** What a pull changes: the number of one field of the form, with its bounds, and what a step of the keyboard is. */
export interface PulledNumber {
  readonly field: "lengthToWidth" | "pondingDepth" | "sideSlope";
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly says: string;
}

/** How finely a pull sets a number: as finely as somebody digs. Common practice, no source. */
const RATIO_STEP = 0.05;
const SIDES_STEP = 0.25;
const PONDING_STEP: Readonly<Record<UnitSystem, number>> = { us: 0.25, metric: 5 };

/** Farther than anybody pulls a garden bed; a number beyond is typed. */
const MOST_RATIO = 10;
const MOST_SIDES = 10;
const MOST_PONDING: Readonly<Record<UnitSystem, number>> = { us: 24, metric: 600 };

/** The number behind a handle as the basin has it now; null while the basin has no size. */
export function pulledNumber(pulled: Pulled, draft: BasinDraft): PulledNumber | null {
  const { units, sideSlope, lengthToWidth } = draft;
  const ponding = valueOf(draft.pondingDepth);
  const [length, width] = [valueOf(draft.floorLength), valueOf(draft.floorWidth)];
  if (ponding === null || length === null || width === null || sideSlope === null) return null;
  const { perRise } = basinText.fields;
  const ratio = { field: "lengthToWidth", value: lengthToWidth, least: 1, most: MOST_RATIO, step: RATIO_STEP } as const;
  switch (pulled) {
    case "length":
      return { ...ratio, says: quantityWords("length", length, units) };
    case "width":
      return { ...ratio, says: quantityWords("length", width, units) };
    case "ponding":
      return {
        field: "pondingDepth",
        value: ponding,
        least: PONDING_STEP[units],
        most: MOST_PONDING[units],
        step: PONDING_STEP[units],
        says: quantityWords("depth", ponding, units),
      };
    case "sides":
      return {
        field: "sideSlope",
        value: sideSlope,
        least: 0,
        most: MOST_SIDES,
        step: SIDES_STEP,
        says: `${shown(sideSlope, 2)} ${perRise}`,
      };
  }
}

/**
 * The form after a handle was pulled so far outward, in the yard's length unit, from where the basin was as the pull began.
 * The floor holds the same storm whatever its outline: a longer one is narrower, by the square of its length.
 */
export function pulledTo(pulled: Pulled, from: BasinDraft, outward: number): Partial<TypedBasin> {
  const number = pulledNumber(pulled, from);
  if (number === null) return {};
  const [length, width] = [valueOf(from.floorLength) ?? 0, valueOf(from.floorWidth) ?? 0];
  const ponding = valueOf(from.pondingDepth) ?? 0;
  switch (pulled) {
    case "length":
      return typedAs(number, number.value * (Math.max(length + 2 * outward, 0) / length) ** 2);
    case "width":
      return typedAs(number, number.value * (width / Math.max(width + 2 * outward, width / MOST_RATIO)) ** 2);
    case "ponding":
      return typedAs(number, number.value + lengthAsDepth(outward, from.units));
    case "sides":
      return typedAs(number, number.value + lengthAsDepth(outward, from.units) / ponding);
  }
}

/** The form after steps of the arrow keys; a step of the width goes the other way than one of the length. */
export function steppedBy(pulled: Pulled, from: BasinDraft, steps: number): Partial<TypedBasin> {
  const number = pulledNumber(pulled, from);
  return number === null ? {} : typedAs(number, number.value + (pulled === "width" ? -steps : steps) * number.step);
}

/** Rounded to whole steps and within the handle's ends, as a person would type it. */
function typedAs({ field, least, most, step }: PulledNumber, value: number): Partial<TypedBasin> {
  const whole = Math.round(Math.min(Math.max(value, least), most) / step) * step;
  return { [field]: String(Number(whole.toFixed(2))) };
}
