import { readPalette, type PalettePlant } from "../../../../addin/actions/planting/palette.ts";
import { NEW_CLUMP, type PlannedClump } from "../../../../addin/actions/planting/plan.ts";
import { plantingZones, type PlantedBasin, type PlantingZones } from "../../../../addin/actions/planting/planting-zones.ts";
import { programSettings, type SettingValues } from "../../../../addin/records/program.ts";
import { plantsSheet, startingPlants } from "../../../../addin/records/plants.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import type { UnitSystem } from "../../../../functions/quantities.ts";

export const settings = Object.fromEntries(
  Object.entries(programSettings).map(([key, { value }]) => [key, value]),
) as unknown as SettingValues;

/** A clump of a plan on the floor, as one that is not written yet. */
export function plannedClump(id: string, plant: string, planned: number): PlannedClump {
  return { ...NEW_CLUMP, id, plant, zone: "A", planned, spacing: 1.25, along: 1.5, across: -2 };
}

export function startingPalette(units: UnitSystem = "us"): readonly PalettePlant[] {
  const headings = Object.values(plantsSheet.columns).map(({ heading }) => heading);
  return readPalette(readRecords(plantsSheet, [headings, ...startingPlants]).rows, units);
}

export function plantAt(spacing: number, name = `Plant at ${spacing}`): PalettePlant {
  const ratings = {
    midwest: null,
    northcentralAndNortheast: null,
    easternMountainsAndPiedmont: null,
    atlanticAndGulfCoastalPlain: null,
    westernMountainsValleysAndCoast: null,
    aridWest: null,
  };
  return {
    name,
    commonName: "",
    form: "perennial",
    spacing,
    sun: ["sun"],
    bloomMonths: [],
    zones: ["A", "B", "C"],
    ratings,
    cautions: null,
  };
}

/** A floor of 100 sq ft, the area of the nursery chart. */
export const CHART_BASIN: PlantedBasin = {
  units: "us",
  floorArea: 100,
  pondingDepth: 6,
  sideSlope: 3,
  outline: { shape: "ellipse", lengthToWidth: 2 },
};

export function zonesOf(basin: PlantedBasin = CHART_BASIN): PlantingZones {
  const zones = plantingZones(basin);
  if ("sentence" in zones) throw new Error(zones.sentence);
  return zones;
}
