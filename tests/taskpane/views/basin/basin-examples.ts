import { draftBasin, type BasinInputs } from "../../../../addin/actions/basin/draft-basin.ts";
import { programSettings, type ProgramKey } from "../../../../addin/records/program.ts";
import { basinDimensions, type BasinDimensions } from "../../../../taskpane/views/basin/basin-dimensions.ts";

/** The settings a new program starts with. */
export const settings = Object.fromEntries(Object.entries(programSettings).map(([key, { value }]) => [key, value])) as Record<
  ProgramKey,
  number
>;

export const roofInUs: BasinInputs = {
  units: "us",
  contributingArea: 1000,
  testedRate: 0.5,
  stormDepth: null,
  pondingDepth: 6,
  mediaDepth: 18,
  sideSlope: 3,
  mixRecipe: null,
  shape: null,
  lengthToWidth: null,
  groundSlopePercent: null,
  plannedPlants: null,
};

/** The same roof, rate and depths in m², mm/h and mm. */
export const roofInMetric: BasinInputs = {
  ...roofInUs,
  units: "metric",
  contributingArea: 1000 * 0.09290304,
  testedRate: 0.5 * 25.4,
  pondingDepth: 6 * 25.4,
  mediaDepth: 18 * 25.4,
};

export function drawn(inputs: BasinInputs, groundSlopePercent: number | null = 6): BasinDimensions {
  const basin = basinDimensions(draftBasin({ ...inputs, groundSlopePercent }, settings), settings.mulchDepthInches);
  if (basin === null) throw new Error("this basin has no size");
  return basin;
}

/** A basin in round numbers, to be checked with pencil and paper: 16 by 8 ft floor, 6 in deep, 3 to 1, ground falling 10 %. */
export const pencilBasin: BasinDimensions = {
  units: "us",
  shape: "ellipse",
  floorLength: 16,
  floorWidth: 8,
  floorEdge: 38.76,
  pondingDepth: 0.5,
  sideSlope: 3,
  mixDepth: 1.5,
  mulchDepth: 0.25,
  bermCrestWidth: 1,
  freeboard: 0.2,
  bermOuterSlope: 3,
  groundFall: 0.1,
  uphillRise: 0,
};
