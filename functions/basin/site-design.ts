import { basinDig, USUAL_EARTH, type BasinDig, type BasinHole } from "../earthwork/basin-dig.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import { basinFloorSquareFeet, type BasinStorm } from "./basin-area.ts";
import { areaAtHeightSquareFeet, basinFloor, volumeToHeightCubicFeet, type BasinOutline } from "./basin-shape.ts";
import { DEEPEST_USUAL_PONDING_INCHES, deepestPondingInches, drainsInTime } from "./deepest-ponding.ts";
import { drawdownHours, mediaWaterCubicFeet, USUAL_VOID_SHARE } from "./drawdown.ts";
import { ruleAreaSquareFeet, USUAL_RULE_PERCENT } from "./rule-area.ts";

/**
 * One yard's basin, whole: from the area that drains to it and the tested rate to its size and whether it works.
 *
 *   design rate   tested rate / reduction factor
 *   runoff        as given, or 0.95 of the storm over the contributing area
 *   ponding       as given, or the deepest that drains in time, at most 8 in
 *   floor area    basin-area, with voids of 0.25, rain on the basin counted and no credit for soaking during the storm
 *   rim area      the water's surface when full
 *   water held    ponding volume + void share x media depth x floor area
 *   drawdown      hours from full to empty, media included
 *   rule area     10 percent of the contributing area
 *   dig           basin-dig
 *
 * Source  Those of design-rate, runoff-volume, deepest-ponding, basin-area, basin-volume, drawdown, rule-area, basin-dig.
 * Domain  Those of the same.
 * Limits  One even fall of the ground. Whether it drains in time is judged on the ponding alone. A basin that never drains has no size.
 */
export function designSite(site: Site): SiteDesign {
  const { contributingSquareFeet, stormInches } = site;
  const designInchesPerHour = site.testedInchesPerHour / site.reductionFactor;
  const pondingInches =
    site.pondingInches ?? Math.min(deepestPondingInches(designInchesPerHour, site.drainHours), DEEPEST_USUAL_PONDING_INCHES);
  const runoffCubicFeet = site.runoffCubicFeet ?? runoffVolumeCubicFeet(contributingSquareFeet, stormInches, ROOF_RUNOFF_SHARE);
  const floorSquareFeet = basinFloorSquareFeet(siteStorm(site, runoffCubicFeet, designInchesPerHour, pondingInches));
  const verdict = verdictOf(designInchesPerHour, floorSquareFeet, drainsInTime(pondingInches, designInchesPerHour, site.drainHours));
  return {
    designInchesPerHour,
    pondingInches,
    runoffCubicFeet,
    ruleSquareFeet: ruleAreaSquareFeet(contributingSquareFeet, USUAL_RULE_PERCENT),
    verdict,
    basin:
      floorSquareFeet === undefined || verdict === "never drains"
        ? undefined
        : sizedBasin(site, floorSquareFeet, designInchesPerHour, pondingInches),
  };
}

/** What is known of a yard before its basin is designed. */
export interface Site {
  readonly contributingSquareFeet: number;
  readonly testedInchesPerHour: number;
  readonly reductionFactor: number;
  readonly stormInches: number;
  /** From all that drains to it; undefined takes it all as roof. */
  readonly runoffCubicFeet: number | undefined;
  /** Undefined takes the deepest that drains in time. */
  readonly pondingInches: number | undefined;
  readonly mediaInches: number;
  readonly mulchInches: number;
  readonly sideSlope: number;
  readonly drainHours: number;
  readonly outline: BasinOutline;
  /** Down the floor's width. */
  readonly groundSlopePercent: number;
}

/** The storm the basin is sized for. */
export function siteStorm(
  { stormInches, mediaInches, sideSlope, outline }: Site,
  runoffCubicFeet: number,
  designInchesPerHour: number,
  pondingInches: number,
): BasinStorm {
  return {
    runoffCubicFeet,
    designInchesPerHour,
    pondingInches,
    stormInches,
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
  readonly dig: BasinDig;
}

function verdictOf(designInchesPerHour: number, floorSquareFeet: number | undefined, drains: boolean): SiteDesignVerdict {
  if (designInchesPerHour === 0) return "never drains";
  if (floorSquareFeet === undefined) return "no area holds it";
  return drains ? "fits" : "drains too slowly";
}

function sizedBasin(site: Site, floorSquareFeet: number, designInchesPerHour: number, pondingInches: number): SizedBasin {
  const { mediaInches, sideSlope } = site;
  const hole = siteHole(site, floorSquareFeet, pondingInches);
  const pondingFeet = pondingInches / INCHES_PER_FOOT;
  return {
    floorSquareFeet,
    rimSquareFeet: areaAtHeightSquareFeet(hole.floor, pondingFeet, sideSlope),
    heldCubicFeet:
      volumeToHeightCubicFeet(hole.floor, pondingFeet, sideSlope) + mediaWaterCubicFeet(floorSquareFeet, mediaInches, USUAL_VOID_SHARE),
    drawdownHours: drawdownHours(pondingInches, designInchesPerHour, mediaInches, USUAL_VOID_SHARE),
    dig: basinDig(hole),
  };
}

/** What is dug for a floor of this area. */
export function siteHole(
  { mediaInches, mulchInches, sideSlope, outline, groundSlopePercent }: Site,
  floorSquareFeet: number,
  pondingInches: number,
): BasinHole {
  const floor = basinFloor(floorSquareFeet, outline.shape, outline.lengthToWidth);
  return { floor, pondingInches, mulchInches, mediaInches, sideSlope, groundSlopePercent, soil: USUAL_EARTH };
}
