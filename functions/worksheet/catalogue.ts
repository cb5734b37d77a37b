import { version } from "./about.ts";
import { bags, compostDepth, materialWeight, sandToAdd } from "./amendment.ts";
import { basinArea, basinDepth, basinSize, basinVolume, deepestPonding, drawdown, ruleArea } from "./basin.ts";
import { costShare, digDate, priced, volunteerValue } from "./cost.ts";
import { cutFill, digHours, stockpile, truckLoads } from "./earthwork.ts";
import { designRate, dropRate, holeRate, holeTest } from "./hole-test.ts";
import { areaForCapture, longTerm } from "./long-term.ts";
import { overflowWidth, pipeFlow, stoneSize } from "./overflow.ts";
import { depthForSlope } from "./place.ts";
import { plantCount } from "./planting.ts";
import { plantMix, waterNeed, zoneAreas } from "./plants.ts";
import { pollutantLoad } from "./pollutant-load.ts";
import { peakFlow, rainPercentile, stormCurve } from "./rain.ts";
import { curveNumber, runoffDepth, runoffVolume, yardRunoff } from "./runoff.ts";
import { siteDesign } from "./site-design.ts";
import { groundSlope, siteCheck } from "./siting.ts";
import { factorArea, filterArea, widthsArea } from "./sizing-methods.ts";
import { soakIn, soilTexture, soilWater, textureRate } from "./soil-water.ts";
import { siteRate } from "./site-rate.ts";
import { siteRunoff } from "./site-runoff.ts";
import { stormRoute } from "./storm-route.ts";
import { digVolume, layerVolume, soilMix, soilState } from "./soil.ts";
import { siteTakeoff } from "./takeoff.ts";
import type { WorksheetFunction } from "./calling/worksheet-function.ts";

/** Every worksheet function, in the order of the function reference. Names and argument order are only added to. */
export const catalogue: readonly WorksheetFunction[] = [
  stormCurve,
  rainPercentile,
  curveNumber,
  runoffDepth,
  runoffVolume,
  yardRunoff,
  siteRunoff,
  peakFlow,
  pollutantLoad,
  holeTest,
  dropRate,
  holeRate,
  siteRate,
  designRate,
  soilTexture,
  textureRate,
  soilWater,
  soakIn,
  groundSlope,
  depthForSlope,
  siteCheck,
  ruleArea,
  factorArea,
  filterArea,
  basinArea,
  deepestPonding,
  drawdown,
  basinVolume,
  basinDepth,
  basinSize,
  widthsArea,
  stormRoute,
  siteDesign,
  siteTakeoff,
  longTerm,
  areaForCapture,
  digVolume,
  cutFill,
  soilState,
  stockpile,
  truckLoads,
  digHours,
  soilMix,
  compostDepth,
  sandToAdd,
  layerVolume,
  bags,
  materialWeight,
  overflowWidth,
  pipeFlow,
  stoneSize,
  zoneAreas,
  plantCount,
  plantMix,
  waterNeed,
  priced,
  costShare,
  volunteerValue,
  digDate,
  version,
];
