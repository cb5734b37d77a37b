import { basinDig, USUAL_EARTH, type BasinDig, type BasinHole } from "../earthwork/basin-dig.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import { basinFloorSquareFeet, type BasinStorm } from "./basin-area.ts";
import { areaAtHeightSquareFeet, basinFloor, volumeToHeightCubicFeet, type BasinOutline } from "./basin-shape.ts";
import { DEEPEST_USUAL_PONDING_INCHES, deepestPondingInches, drainsInTime } from "./deepest-ponding.ts";
import { drawdownHours, mediaWaterCubicFeet, USUAL_VOID_SHARE } from "./drawdown.ts";
import { SHALLOWEST_USUAL_PONDING_INCHES, type DesignLimits } from "./design-limits.ts";
import { ruleAreaSquareFeet, USUAL_RULE_PERCENT } from "./rule-area.ts";
import { stormBalance } from "./storm-balance.ts";

/**
 * One yard's basin, whole: from the area that drains to it and the tested rate to its size and what speaks against it.
 *
 *   design rate   tested rate / reduction factor
 *   runoff        as given, or 0.95 of the storm over the contributing area
 *   ponding       as given, or the deepest that drains in time, at most 8 in; on a floor that is raised to the least floor no
 *                 deeper than the storm needs, but no shallower than the 3 in that print begins with
 *   floor area    basin-area, with voids of 0.25, rain on the basin counted and no credit for soaking during the storm; at
 *                 least the least floor
 *   rim area      the water's surface when full
 *   water held    ponding volume + void share x media depth x floor area
 *   drawdown      hours from full to empty, media included
 *   rule area     10 percent of the contributing area
 *   dig           basin-dig
 *
 * Source  Those of design-rate, runoff-volume, deepest-ponding, basin-area, basin-volume, drawdown, rule-area, basin-dig;
 *         limits as in design-limits.
 * Domain  Those of the same.
 * Limits  One even fall of the ground. Ponding is judged by drain hours, ponding and media together by the longest to empty.
 *         Without water, and where nothing ever drains, there is no size.
 */
export function designSite(site: Site): SiteDesign {
  const { contributingSquareFeet, stormInches } = site;
  const designInchesPerHour = site.testedInchesPerHour / site.reductionFactor;
  const askedInches =
    site.pondingInches ?? Math.min(deepestPondingInches(designInchesPerHour, site.drainHours), DEEPEST_USUAL_PONDING_INCHES);
  const runoffCubicFeet = site.runoffCubicFeet ?? runoffVolumeCubicFeet(contributingSquareFeet, stormInches, ROOF_RUNOFF_SHARE);
  const ruleSquareFeet = ruleAreaSquareFeet(contributingSquareFeet, USUAL_RULE_PERCENT);
  const storm = siteStorm(site, runoffCubicFeet, designInchesPerHour, askedInches);
  const basin = designInchesPerHour === 0 || runoffCubicFeet === 0 ? undefined : sizedBasin(site, storm);
  const pondingInches = basin?.pondingInches ?? askedInches;
  return {
    designInchesPerHour,
    pondingInches,
    runoffCubicFeet,
    ruleSquareFeet,
    breaches: breachesOf(site, storm, basin),
    basin,
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
  readonly limits: DesignLimits;
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
  /** What speaks against it; none where it fits. */
  readonly breaches: readonly DesignBreach[];
  /** Undefined where it never drains, where no water comes and where no area holds the storm. */
  readonly basin: SizedBasin | undefined;
}

export type DesignBreach =
  | "no water"
  | "storm too small"
  | "storm too large"
  | "never drains"
  | "no area holds it"
  | "drains too slowly"
  | "empties too slowly"
  | "soil too slow"
  | "floor too large";

export interface SizedBasin {
  readonly floorSquareFeet: number;
  /** Shallower than asked for where the least floor holds the storm so. */
  readonly pondingInches: number;
  readonly rimSquareFeet: number;
  readonly heldCubicFeet: number;
  readonly drawdownHours: number;
  readonly dig: BasinDig;
}

const NONE: readonly DesignBreach[] = [];

function breachesOf(site: Site, { designInchesPerHour, runoffCubicFeet }: BasinStorm, basin: SizedBasin | undefined) {
  if (runoffCubicFeet === 0) return NO_WATER;
  if (designInchesPerHour === 0) return NEVER_DRAINS;
  const { limits } = site;
  const breaches: DesignBreach[] = [];
  if (site.stormInches * HAIR < limits.leastStormInches) breaches.push("storm too small");
  if (site.stormInches > limits.largestStormInches * HAIR) breaches.push("storm too large");
  if (basin === undefined) breaches.push("no area holds it");
  else {
    if (!drainsInTime(basin.pondingInches, designInchesPerHour, site.drainHours)) breaches.push("drains too slowly");
    if (basin.drawdownHours > limits.longestEmptyHours * HAIR) breaches.push("empties too slowly");
  }
  if (designInchesPerHour * HAIR < limits.leastDesignInchesPerHour) breaches.push("soil too slow");
  if (basin !== undefined && basin.floorSquareFeet > limits.largestFloorShare * site.contributingSquareFeet * HAIR) {
    breaches.push("floor too large");
  }
  // Most yards of a column fit: they share one empty list.
  return breaches.length === 0 ? NONE : breaches;
}

const NO_WATER: readonly DesignBreach[] = ["no water"];
const NEVER_DRAINS: readonly DesignBreach[] = ["never drains"];

/** Keeps a limit that is met to the last digit, in either unit, on the passing side. */
const HAIR = 1 + 1e-9;

function sizedBasin(site: Site, storm: BasinStorm): SizedBasin | undefined {
  const { leastFloorSquareFeet } = site.limits;
  const floorSquareFeet = basinFloorSquareFeet(storm, leastFloorSquareFeet);
  if (floorSquareFeet === undefined) return undefined;
  const pondingInches = floorSquareFeet === leastFloorSquareFeet ? neededPondingInches(storm, floorSquareFeet) : storm.pondingInches;
  const { mediaInches, sideSlope } = site;
  const hole = siteHole(site, floorSquareFeet, pondingInches);
  const pondingFeet = pondingInches / INCHES_PER_FOOT;
  return {
    floorSquareFeet,
    pondingInches,
    rimSquareFeet: areaAtHeightSquareFeet(hole.floor, pondingFeet, sideSlope),
    heldCubicFeet:
      volumeToHeightCubicFeet(hole.floor, pondingFeet, sideSlope) + mediaWaterCubicFeet(floorSquareFeet, mediaInches, USUAL_VOID_SHARE),
    drawdownHours: drawdownHours(pondingInches, storm.designInchesPerHour, mediaInches, USUAL_VOID_SHARE),
    dig: basinDig(hole),
  };
}

/** The shallowest ponding, 3 in or what was asked for if less, at which a floor that holds the storm still holds it. */
function neededPondingInches(storm: BasinStorm, floorSquareFeet: number): number {
  const holdsAt = (pondingInches: number): boolean => {
    const { takenCubicFeet, broughtCubicFeet } = stormBalance({ ...storm, pondingInches }, floorSquareFeet);
    return takenCubicFeet >= broughtCubicFeet;
  };
  let deep = storm.pondingInches;
  let shallow = Math.min(deep, SHALLOWEST_USUAL_PONDING_INCHES);
  if (holdsAt(shallow)) return shallow;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (shallow + deep) / 2;
    if (holdsAt(middle)) deep = middle;
    else shallow = middle;
  }
  return deep;
}

/** From some inches to under a billionth of one. */
const HALVINGS = 36;

/** What is dug for a floor of this area. */
export function siteHole(
  { mediaInches, mulchInches, sideSlope, outline, groundSlopePercent }: Site,
  floorSquareFeet: number,
  pondingInches: number,
): BasinHole {
  const floor = basinFloor(floorSquareFeet, outline.shape, outline.lengthToWidth);
  return { floor, pondingInches, mulchInches, mediaInches, sideSlope, groundSlopePercent, soil: USUAL_EARTH };
}
