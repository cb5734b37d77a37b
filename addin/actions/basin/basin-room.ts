import { DEEPEST_USUAL_PONDING_INCHES } from "../../../functions/basin/deepest-ponding.ts";
import { BASIN_SHAPES, USUAL_OUTLINE, type BasinShape } from "../../../functions/basin/basin-shape.ts";
import { fromUs } from "../../../functions/quantities.ts";
import type { SettingValues } from "../../records/program.ts";
import type { CellValue } from "../../workbook/port.ts";
import type { RimSize } from "./basin-earthwork.ts";
import { sizeBasin, type BasinInputs, type SizedBasin } from "./draft-basin.ts";

/** The room there is for the full water's edge, in ft or m; blank where nobody measured it. */
export interface Room {
  readonly length: CellValue;
  readonly width: CellValue;
}

/** Whether the basin fits, and what would where it does not. */
export type RoomCheck =
  | { readonly verdict: "no size" }
  | { readonly verdict: "not measured" }
  | { readonly verdict: "fits"; readonly rim: RimSize }
  | { readonly verdict: "too large"; readonly rim: RimSize; readonly remedy: Remedy | null };

export type RemedyKind = "proportions" | "shape" | "ponding" | "mix" | "storm";

/** Inputs that fit the room, the least change first. */
export interface Remedy {
  readonly kind: RemedyKind;
  readonly changes: Pick<BasinInputs, "shape" | "lengthToWidth"> & Partial<Pick<BasinInputs, "pondingDepth" | "mediaDepth" | "stormDepth">>;
  readonly rim: RimSize;
}

export function checkRoom(inputs: BasinInputs, room: Room, settings: SettingValues): RoomCheck {
  const sized = sizeBasin(inputs, settings);
  if (sized.rim === null) return { verdict: "no size" };
  if (typeof room.length !== "number" && typeof room.width !== "number") return { verdict: "not measured" };
  if (isWithin(sized.rim, room)) return { verdict: "fits", rim: sized.rim };
  return { verdict: "too large", rim: sized.rim, remedy: remedyFor(inputs, sized, room, settings) };
}

function isWithin(rim: RimSize, room: Room): boolean {
  const within = (side: number, there: CellValue) => typeof there !== "number" || side <= there * (1 + 1e-9);
  return within(rim.length, room.length) && within(rim.width, room.width);
}

function remedyFor(
  inputs: BasinInputs,
  { design, mediaDepth, stormDepth }: SizedBasin,
  room: Room,
  settings: SettingValues,
): Remedy | null {
  const present = BASIN_SHAPES.find((shape) => shape === inputs.shape) ?? USUAL_OUTLINE.shape;
  const other = BASIN_SHAPES.find((shape) => shape !== present) ?? present;
  const fitting = (kind: RemedyKind, changes: Partial<BasinInputs>, shapes: readonly BasinShape[]): Remedy | null => {
    for (const shape of shapes) {
      for (const lengthToWidth of ratiosFrom(inputs.lengthToWidth)) {
        const tried = sizeBasin({ ...inputs, ...changes, shape, lengthToWidth }, settings);
        if (tried.rim !== null && tried.design.at(-1) === "fits" && isWithin(tried.rim, room)) {
          return { kind, changes: { ...changes, shape, lengthToWidth }, rim: tried.rim };
        }
      }
    }
    return null;
  };
  const firstOf = (kind: RemedyKind, key: "pondingDepth" | "mediaDepth", depths: readonly number[]): Remedy | null => {
    for (const depth of depths) {
      const remedy = fitting(kind, { [key]: depth }, [present, other]);
      if (remedy !== null) return remedy;
    }
    return null;
  };
  return (
    fitting("proportions", {}, [present]) ??
    fitting("shape", {}, [other]) ??
    firstOf("ponding", "pondingDepth", stepsUp(design[1], 0.5, DEEPEST_USUAL_PONDING_INCHES, inputs)) ??
    firstOf("mix", "mediaDepth", stepsUp(mediaDepth, 3, DEEPEST_MIX_INCHES, inputs)) ??
    largestStorm(stormDepth, (storm) => fitting("storm", { stormDepth: storm }, [present, other]))
  );
}

/** Common practice, no source: deeper is rarely dug by hand. */
const DEEPEST_MIX_INCHES = 24;

/** Common practice, no source: longer than six times its width is a swale. */
const LONGEST_TO_WIDTH = 6;

/** 1 to 6 in quarters, those nearest to the present one first. */
function ratiosFrom(present: CellValue): readonly number[] {
  const from = typeof present === "number" ? present : USUAL_OUTLINE.lengthToWidth;
  const ratios = Array.from({ length: (LONGEST_TO_WIDTH - 1) * 4 + 1 }, (_, quarter) => 1 + quarter / 4);
  return ratios.sort((one, another) => Math.abs(one - from) - Math.abs(another - from));
}

/** Whole steps above what there is, in the yard's units: half inches are centimeters there, 3 in are 75 mm. */
function stepsUp(
  present: CellValue | object | undefined,
  stepInches: number,
  mostInches: number,
  { units }: BasinInputs,
): readonly number[] {
  if (typeof present !== "number") return [];
  const step = units === "metric" ? (stepInches < 1 ? 10 : 75) : stepInches;
  const most = fromUs("depth", mostInches, units);
  const depths: number[] = [];
  for (let depth = step * (Math.floor(present / step + 1e-9) + 1); depth <= most; depth += step) depths.push(depth);
  return depths;
}

/** The largest part of the storm, in hundredths, for which something fits; less rain never needs more room. */
function largestStorm(stormDepth: CellValue, fitting: (storm: number) => Remedy | null): Remedy | null {
  if (typeof stormDepth !== "number") return null;
  let found: Remedy | null = null;
  let [fits, tooMuch] = [0, 100];
  while (tooMuch - fits > 1) {
    const hundredths = Math.floor((fits + tooMuch) / 2);
    const remedy = fitting((stormDepth * hundredths) / 100);
    if (remedy === null) tooMuch = hundredths;
    else [fits, found] = [hundredths, remedy];
  }
  return found;
}
