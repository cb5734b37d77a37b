import { fromUs } from "../../../functions/quantities.ts";
import { USUAL_WEEKLY_INCHES } from "../../../functions/planting/water-need.ts";
import { waterNeed } from "../../../functions/worksheet/plants.ts";
import { layerVolume } from "../../../functions/worksheet/soil.ts";
import type { SettingValues } from "../../records/program.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { Yard } from "../program/read-program.ts";
import { gardenArea, type GardenArea } from "../build/record-as-built.ts";

/** Water that a garden takes in a week, rain included: gallons, or liters for a metric yard. */
export interface WateringNeed extends GardenArea {
  readonly amount: number;
  readonly weeklyDepth: number;
}

export function wateringNeed(yard: Pick<Yard, "asBuilt" | "design" | "units">): WateringNeed | null {
  const garden = gardenArea(yard);
  if (garden === null) return null;
  const weeklyDepth = fromUs("depth", USUAL_WEEKLY_INCHES, yard.units);
  const amount = waterNeed.evaluate([garden.area, weeklyDepth, yard.units])[0]?.[0];
  return typeof amount === "number" ? { ...garden, amount, weeklyDepth } : null;
}

/** Mulch to bring so that the layer is as deep as the program wants it; 0 where it is deep enough. */
export function mulchTopUp(
  yard: Pick<Yard, "asBuilt" | "design" | "units">,
  measuredDepth: number,
  settings: Pick<SettingValues, "mulchDepthInches">,
): number | null {
  const garden = gardenArea(yard);
  if (garden === null) return null;
  const missing = wantedMulch(settings, yard.units) - measuredDepth;
  if (missing <= 0) return 0;
  const volume = layerVolume.evaluate([garden.area, missing, 0, yard.units])[0]?.[0];
  return typeof volume === "number" ? volume : null;
}

export function wantedMulch({ mulchDepthInches }: Pick<SettingValues, "mulchDepthInches">, units: UnitSystem): number {
  return fromUs("depth", mulchDepthInches, units);
}
