import { USUAL_SIDE_SLOPE } from "../../../functions/basin/basin-volume.ts";
import { LEAST_FREEBOARD_INCHES } from "../../../functions/earthwork/cut-fill.ts";
import { fromUs, INCHES_PER_FOOT, type UnitSystem } from "../../../functions/quantities.ts";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { cutFill } from "../../../functions/worksheet/earthwork.ts";
import type { CellValue } from "../../workbook/port.ts";
import { answer, rowOf, type Answer } from "../worksheet-answers.ts";

/** Of the full water's edge, in ft or m. */
export interface RimSize {
  /** Across the slope. */
  readonly length: number;
  /** Down the slope. */
  readonly width: number;
}

/** Cut, berm and what is left over on the yard's own slope, in its units. */
export interface BasinEarthwork {
  /** In place, mulch and soil mix included: the dig of Design. */
  readonly cut: Answer;
  /** Compacted. */
  readonly fill: Answer;
  /** In place: what the berm, the mulch and the soil mix leave; short where it is negative. */
  readonly leftOver: Answer;
  /** Of the crest over the ground under the downhill rim, in ft or m. */
  readonly bermHeight: Answer;
  /** Of the ground over the full water at the uphill rim, in ft or m: the water stands where the cut balances the fill. */
  readonly uphillRise: number;
  readonly cautions: readonly string[];
}

interface SlopingBasin {
  readonly units: UnitSystem;
  readonly shape: CellValue;
  readonly groundSlopePercent: CellValue;
  readonly floorLength: Cell | undefined;
  readonly floorWidth: Cell | undefined;
  readonly pondingDepth: Cell | undefined;
  readonly sideSlope: CellValue;
  readonly mulchDepth: CellValue;
  readonly mediaDepth: CellValue;
}

/** As SOAK.CUTFILL answers for the basin that is drawn; null while the slope is not measured or the basin has no size. */
export function basinEarthwork(basin: SlopingBasin, rim: RimSize): BasinEarthwork | null {
  const { units, groundSlopePercent, floorLength, floorWidth, pondingDepth, sideSlope } = basin;
  if (typeof groundSlopePercent !== "number" || typeof pondingDepth !== "number") return null;
  const bermSideSlope = Math.max(typeof sideSlope === "number" ? sideSlope : 0, USUAL_SIDE_SLOPE);
  const inputs: CellInput[] = [
    floorLength,
    floorWidth,
    pondingDepth,
    groundSlopePercent,
    sideSlope,
    basin.mulchDepth,
    basin.mediaDepth,
    basin.shape,
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
