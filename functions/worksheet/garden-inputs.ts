import { USUAL_VOID_SHARE } from "../basin/drawdown.ts";
import { basinStore, type Garden } from "../basin/water-balance.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { area, depth, hours, rangeOf, rate, share } from "./calling/arguments.ts";
import { deepPonding, fasterThanSoil, largeVoids, steepSides } from "./basin-cautions.ts";
import { type WorkingStep } from "./calling/working.ts";

/** What the functions that follow a garden over time ask for, and the garden it comes to. */

export const contributingArea = area("contributingArea", "Contributing area");
export const runoffShare = share("runoffShare", "Runoff share");
export const floorArea = area("floorArea", "Floor area").moreThan(0);
export const ponding = depth("ponding", "Ponding depth");
export const designRate = rate("designRate", "Design rate");
export const media = depth("media", "Soil mix depth").optional(0);
export const voidShare = share("voidShare", "Void share").optional(USUAL_VOID_SHARE);
export const rains = rangeOf(depth("rains", "Rain")).keepingBlanks();
export const stepHours = hours("stepHours", "Hours in a step").moreThan(0);
export const evapotranspiration = depth("evapotranspiration", "Evapotranspiration a day").optional(0);

export interface BasinInputs {
  readonly contributingArea: number;
  readonly runoffShare: number;
  readonly ponding: number;
  readonly designRate: number;
  readonly media: number;
  readonly voidShare: number;
  readonly sideSlope: number;
  readonly evapotranspiration?: number;
}

export function gardenOf<Inputs extends BasinInputs>(inputs: Inputs): Omit<Garden, "floorSquareFeet"> {
  return {
    contributingSquareFeet: inputs.contributingArea,
    runoffShare: inputs.runoffShare,
    pondingInches: inputs.ponding,
    designInchesPerHour: inputs.designRate,
    mediaInches: inputs.media,
    voidShare: inputs.voidShare,
    sideSlope: inputs.sideSlope,
    evapotranspirationInchesPerDay: inputs.evapotranspiration ?? 0,
  };
}

export const waterBalance = computedByHand(
  "Conservation of water, step by step: inflow = soaking + evapotranspiration + overflow + what is stored",
);
export const mediaVoids = commonPractice("Water can fill and leave 0.20 to 0.25 of a bioretention soil");
export const recordAdvice = commonPractice("A record of 20 to 30 years is advised, in steps of an hour or less");
export const basinCautions = [
  ...deepPonding<BasinInputs>((inputs) => inputs.ponding),
  steepSides,
  largeVoids,
  fasterThanSoil<BasinInputs>((inputs) => inputs.designRate),
];

export function storeSteps(garden: Garden): readonly WorkingStep[] {
  const store = basinStore(garden);
  return [
    { label: "Rim area", value: store.rimSquareFeet, kind: "area" },
    { label: "Held in the soil mix's voids", value: store.mediaCubicFeet, kind: "waterVolume" },
    { label: "Held when full", value: store.capacityCubicFeet, kind: "waterVolume" },
    { label: "Drawn in an hour", value: store.drawCubicFeetPerHour, kind: "waterVolume" },
  ];
}

/** The water of a whole record, what came and where it went. */
