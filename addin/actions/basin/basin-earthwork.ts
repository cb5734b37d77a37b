import { USUAL_SIDE_SLOPE } from "../../../functions/basin/basin-volume.ts";
import { LEAST_FREEBOARD_INCHES } from "../../../functions/earthwork/berm-volume.ts";
import { fromUs, INCHES_PER_FOOT, type UnitSystem } from "../../../functions/quantities.ts";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { cutFill } from "../../../functions/worksheet/earthwork.ts";
import { zoneAreas } from "../../../functions/worksheet/plants.ts";
import type { CellValue } from "../../workbook/port.ts";
import { answer, rowOf, type Answer } from "../worksheet-answers.ts";

/** Of the full water's edge, in ft or m. */
export interface RimSize {
  /** Across the slope. */
  readonly length: number;
  /** Down the slope. */
  readonly width: number;
}

/** Cut, berm and what is left over on the yard's own slope, in its units; the soil dug for a mix comes on top. */
export interface BasinEarthwork {
  /** In place, down to the ponding depth. */
  readonly cut: Answer;
  /** Compacted. */
  readonly fill: Answer;
  /** In place; short where it is negative. */
  readonly leftOver: Answer;
  /** Of the crest over the ground under the downhill rim, in ft or m. */
  readonly bermHeight: Answer;
  /** Of the ground over the full water at the uphill rim, in ft or m: the water stands where the cut balances the fill. */
  readonly uphillRise: number;
  readonly cautions: readonly string[];
}

interface Sloping {
  readonly units: UnitSystem;
  readonly shape: CellValue;
  readonly lengthToWidth: CellValue;
  readonly groundSlopePercent: CellValue;
  readonly floorArea: Cell | undefined;
  readonly pondingDepth: Cell | undefined;
  readonly sideSlope: CellValue;
}

/**
 * CUTFILL knows rectangles with upright sides: the basin is taken as one that is as wide down the slope as its rim, and
 * as large as its water at half the depth.
 */
export function basinEarthwork(basin: Sloping, rim: RimSize): BasinEarthwork | null {
  const { units, groundSlopePercent, floorArea, pondingDepth, sideSlope } = basin;
  if (typeof groundSlopePercent !== "number" || typeof pondingDepth !== "number") return null;
  const [floor, sides] = rowOf(zoneAreas, [floorArea, pondingDepth / 2, sideSlope, 0, basin.shape, basin.lengthToWidth, units], 3);
  if (typeof floor !== "number" || typeof sides !== "number") return null;
  const bermSideSlope = Math.max(typeof sideSlope === "number" ? sideSlope : 0, USUAL_SIDE_SLOPE);
  const inputs: CellInput[] = [
    (floor + sides) / rim.width,
    rim.width,
    pondingDepth,
    groundSlopePercent,
    null,
    bermSideSlope,
    null,
    null,
    units,
  ];
  const [cut, fill, leftOver, bermHeight] = rowOf(cutFill, inputs, 4);
  const fall = (groundSlopePercent / 100) * rim.width;
  const freeboard = fromUs("length", LEAST_FREEBOARD_INCHES / INCHES_PER_FOOT, units);
  return {
    cut: answer(cut),
    fill: answer(fill),
    leftOver: answer(leftOver),
    bermHeight: answer(bermHeight),
    uphillRise: typeof bermHeight === "number" ? Math.max(fall - (bermHeight - freeboard), 0) : 0,
    cautions: cutFill.cautionsFor(inputs),
  };
}
