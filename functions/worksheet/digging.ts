import type { BasinDig } from "../earthwork/basin-dig.ts";
import { invalid, type CellError } from "./calling/cell.ts";
import type { WorkingStep } from "./calling/working.ts";

/** What the functions that dig a basin say alike. */

export const digEquation: readonly string[] = [
  "cut = to the floor + mulch + soil mix + slope   (cu yd in place)",
  "to the floor = d / 6 x (area at the floor + 4 x area at half the depth + area at the rim) / 27   (cu yd; ponding d in ft, areas in sq ft)",
  "area at height h = k (L + 2 z h) (W + 2 z h)   (sq ft; k = pi / 4 for an ellipse, 1 for a rectangle; z run to rise)",
  "mulch = area at the rim x its depth / 27, soil mix = area at the floor x its depth / 27   (cu yd; depths in ft)",
  "full water stands S x under the ground at the uphill rim, x = B / (1 + sqrt(c))   (ft; slope S as a fraction, rim width B, c compacted per in place)",
  "slope = ground over the full water, cut back at 1 in z, less what of the hole lies over the ground downhill; 0 on level ground   (cu yd)",
];

export function digSteps({ toFloorCubicYards, mulchCubicYards, mediaCubicYards, slopeCubicYards }: BasinDig): readonly WorkingStep[] {
  return [
    { label: "Dig down to the finished floor and sides", value: toFloorCubicYards, kind: "earthVolume" },
    { label: "Dig for the mulch", value: mulchCubicYards, kind: "earthVolume" },
    { label: "Dig for the soil mix", value: mediaCubicYards, kind: "earthVolume" },
    { label: "More to dig because the ground falls", value: slopeCubicYards, kind: "earthVolume" },
  ];
}

/** Why no basin can be cut: its sides never come up to the ground uphill. */
export function tooSteepToDig(groundSlopePercent: number, sideSlope: number): CellError | undefined {
  return fallsWithin(groundSlopePercent, sideSlope)
    ? undefined
    : invalid(`Ground slope must be under ${limitPercent(sideSlope)}%: sides of ${sideSlope} to 1 never come up to steeper ground.`);
}

/** Why no berm can stand: its outer face never comes down to the ground. */
export function noBermStands(groundSlopePercent: number, bermSideSlope: number): CellError | undefined {
  return fallsWithin(groundSlopePercent, bermSideSlope)
    ? undefined
    : invalid(
        `Ground slope must be under ${limitPercent(bermSideSlope)}%: a berm's side of ${bermSideSlope} to 1 never comes down to steeper ground.`,
      );
}

export function fallsWithin(groundSlopePercent: number, runToRise: number): boolean {
  return groundSlopePercent * runToRise < 100;
}

function limitPercent(runToRise: number): string {
  return String(Math.floor(1000 / runToRise) / 10);
}
