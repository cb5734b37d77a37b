import { layerVolumeCubicYards } from "../amendment/layer-volume.ts";
import { digVolumeCubicYards } from "../earthwork/dig-volume.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import { basinFloorSquareFeet, type BasinStorm } from "./basin-area.ts";
import { areaAtHeightSquareFeet, basinFloor, USUAL_OUTLINE, volumeToHeightCubicFeet, type BasinOutline } from "./basin-shape.ts";
import { DEEPEST_USUAL_PONDING_INCHES, deepestPondingInches, drainsInTime } from "./deepest-ponding.ts";
import { drawdownHours, mediaWaterCubicFeet, USUAL_VOID_SHARE } from "./drawdown.ts";
import { ruleAreaSquareFeet, USUAL_RULE_PERCENT } from "./rule-area.ts";

/**
 * One yard's basin, whole: from the area that drains to it and the tested rate to its size and whether it works.
 *
 *   design rate   tested rate / reduction factor
 *   ponding       as given, or the deepest that drains in time, at most 8 in
 *   floor area    basin-area, with 0.95 of the rain running off, voids of 0.25, rain on the basin counted,
 *                 an ellipse twice as long as wide unless another outline is given, and no credit for soaking during the storm
 *   rim area      the water's surface when full
 *   water held    ponding volume + void share x media depth x floor area
 *   drawdown      hours from full to empty, media included
 *   rule area     10 percent of the contributing area
 *   dig volume    in place: the sloped basin to the ponding depth, and the media straight down under the floor
 *
 * Source  Those of design-rate, deepest-ponding, basin-area, basin-volume, drawdown, rule-area, dig-volume and layer-volume.
 * Domain  Those of the same.
 * Limits  Level ground. Whether it drains in time is judged on the ponding alone. A basin that never drains has no size.
 */
export function designSite(
  contributingSquareFeet: number,
  testedInchesPerHour: number,
  reductionFactor: number,
  stormInches: number,
  givenPondingInches: number | undefined,
  mediaInches: number,
  sideSlope: number,
  drainHours: number,
  outline: BasinOutline = USUAL_OUTLINE,
): SiteDesign {
  const designInchesPerHour = testedInchesPerHour / reductionFactor;
  const pondingInches = givenPondingInches ?? Math.min(deepestPondingInches(designInchesPerHour, drainHours), DEEPEST_USUAL_PONDING_INCHES);
  const floorSquareFeet = basinFloorSquareFeet(
    siteStorm(contributingSquareFeet, designInchesPerHour, pondingInches, stormInches, mediaInches, sideSlope, outline),
  );
  const drains = drainsInTime(pondingInches, designInchesPerHour, drainHours);
  const verdict = verdictOf(designInchesPerHour, floorSquareFeet, drains);
  return {
    designInchesPerHour,
    pondingInches,
    runoffCubicFeet: runoffVolumeCubicFeet(contributingSquareFeet, stormInches, ROOF_RUNOFF_SHARE),
    ruleSquareFeet: ruleAreaSquareFeet(contributingSquareFeet, USUAL_RULE_PERCENT),
    verdict,
    basin:
      floorSquareFeet === undefined || verdict === "never drains"
        ? undefined
        : sizedBasin(floorSquareFeet, designInchesPerHour, pondingInches, mediaInches, sideSlope, outline),
  };
}

/** The storm the basin is sized for. */
export function siteStorm(
  contributingSquareFeet: number,
  designInchesPerHour: number,
  pondingInches: number,
  stormInches: number,
  mediaInches: number,
  sideSlope: number,
  outline: BasinOutline,
): BasinStorm {
  return {
    contributingSquareFeet,
    designInchesPerHour,
    pondingInches,
    stormInches,
    runoffShare: ROOF_RUNOFF_SHARE,
    mediaInches,
    voidShare: USUAL_VOID_SHARE,
    stormHours: 0,
    sideSlope,
    rainOnBasinCounted: true,
    outline,
  };
}

export interface SiteDesign {
  readonly designInchesPerHour: number;
  readonly pondingInches: number;
  readonly runoffCubicFeet: number;
  readonly ruleSquareFeet: number;
  readonly verdict: SiteDesignVerdict;
  /** Undefined where it never drains and where no area holds the storm. */
  readonly basin: SizedBasin | undefined;
}

export type SiteDesignVerdict = "fits" | "drains too slowly" | "never drains" | "no area holds it";

export interface SizedBasin {
  readonly floorSquareFeet: number;
  readonly rimSquareFeet: number;
  readonly heldCubicFeet: number;
  readonly drawdownHours: number;
  readonly digCubicYards: number;
}

function verdictOf(designInchesPerHour: number, floorSquareFeet: number | undefined, drains: boolean): SiteDesignVerdict {
  if (designInchesPerHour === 0) return "never drains";
  if (floorSquareFeet === undefined) return "no area holds it";
  return drains ? "fits" : "drains too slowly";
}

function sizedBasin(
  floorSquareFeet: number,
  designInchesPerHour: number,
  pondingInches: number,
  mediaInches: number,
  sideSlope: number,
  { shape, lengthToWidth }: BasinOutline,
): SizedBasin {
  const floor = basinFloor(floorSquareFeet, shape, lengthToWidth);
  const pondingFeet = pondingInches / INCHES_PER_FOOT;
  return {
    floorSquareFeet,
    rimSquareFeet: areaAtHeightSquareFeet(floor, pondingFeet, sideSlope),
    heldCubicFeet:
      volumeToHeightCubicFeet(floor, pondingFeet, sideSlope) + mediaWaterCubicFeet(floorSquareFeet, mediaInches, USUAL_VOID_SHARE),
    drawdownHours: drawdownHours(pondingInches, designInchesPerHour, mediaInches, USUAL_VOID_SHARE),
    digCubicYards:
      digVolumeCubicYards(floorSquareFeet, pondingInches, sideSlope, shape, lengthToWidth) +
      layerVolumeCubicYards(floorSquareFeet, mediaInches, 0),
  };
}
