import { areaAtHeightSquareFeet, basinFloor, type BasinShape } from "../basin/basin-shape.ts";
import type { StormBalance } from "../basin/storm-balance.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import type { WorkingStep } from "./calling/working.ts";

/** The plan of a basin at the three heights that the prismoidal rule weighs 1, 4 and 1. */
export function prismoidSteps(
  floorSquareFeet: number,
  depthInches: number,
  sideSlope: number,
  shape: BasinShape,
  lengthToWidth: number,
): readonly WorkingStep[] {
  const floor = basinFloor(floorSquareFeet, shape, lengthToWidth);
  const depthFeet = depthInches / INCHES_PER_FOOT;
  return [
    { label: "Floor length L", value: floor.lengthFeet, kind: "length" },
    { label: "Floor width W", value: floor.widthFeet, kind: "length" },
    { label: "Area at the floor", value: floorSquareFeet, kind: "area" },
    { label: "Area at half the depth", value: areaAtHeightSquareFeet(floor, depthFeet / 2, sideSlope), kind: "area" },
    { label: "Area at the full depth", value: areaAtHeightSquareFeet(floor, depthFeet, sideSlope), kind: "area" },
  ];
}

/** One storm in a basin, the water that comes and where it goes. */
export function balanceSteps(balance: StormBalance): readonly WorkingStep[] {
  return [
    { label: "Rim area", value: balance.rimSquareFeet, kind: "area" },
    { label: "Runoff", value: balance.runoffCubicFeet, kind: "waterVolume" },
    { label: "Rain on the basin", value: balance.rainOnBasinCubicFeet, kind: "waterVolume" },
    { label: "Held by ponding", value: balance.pondingCubicFeet, kind: "waterVolume" },
    { label: "Held in the soil mix's voids", value: balance.mediaCubicFeet, kind: "waterVolume" },
    { label: "Soaked in during the storm", value: balance.soakedCubicFeet, kind: "waterVolume" },
    { label: "All that comes", value: balance.broughtCubicFeet, kind: "waterVolume" },
    { label: "All that is held or soaked in", value: balance.takenCubicFeet, kind: "waterVolume" },
  ];
}
