import { IMPERVIOUS_COVERS, type Cover, type SoilGroup } from "../published/tr-55.ts";
import { tableCurveNumber } from "./curve-number.ts";
import { ROOF_RUNOFF_SHARE, runoffVolumeCubicFeet } from "./runoff-volume.ts";
import { yardRunoffCubicFeet } from "./yard-runoff.ts";

/**
 * Water one storm sends to a garden, each surface of the yard by the rule of its own cover.
 *
 *   roof, paving     V = 0.95 x share x A x P / 12                     (cu ft; A in sq ft, P in in)
 *   other ground     V = share x A x Q(P, CN of cover and soil group) / 12
 *
 * Curve number 98 takes 0.21 in off a storm of 1 in, which a roof does not hold back: so hard ground goes by share. Other
 * ground soaks in most of such a storm, and by how much its soil group decides: so it goes by curve number.
 *
 * Source  Share 0.95: simple method at 100 percent impervious (Schueler 1987, as printed in New Hampshire Code of
 *         Administrative Rules Env-Wq 1504.10). Curve numbers: USDA Soil Conservation Service, TR-55, 2nd ed., 1986,
 *         tables 2-2a and 2-2c, equation 2-3. Added surface by surface: National Engineering Handbook, part 630, chapter 10
 *         (from memory).
 * Domain  rainInches >= 0; for each surface area >= 0, 0 <= share <= 1. A surface without a cover counts as roof for the
 *         runoff, the most that can run off, and as no hard ground.
 * Limits  Those of both methods; every surface gets the same rain and none flows over another.
 */
export function siteRunoff(rainInches: number, surfaces: readonly SiteSurface[], soilGroup: SoilGroup): SiteRunoff {
  let [contributingSquareFeet, hardSquareFeet, runoffCubicFeet] = [0, 0, 0];
  for (const { cover, areaSquareFeet, shareDrainingHere } of surfaces) {
    const draining = areaSquareFeet * shareDrainingHere;
    contributingSquareFeet += draining;
    if (cover !== null && isHard(cover)) hardSquareFeet += draining;
    runoffCubicFeet +=
      cover === null || isHard(cover)
        ? runoffVolumeCubicFeet(draining, rainInches, ROOF_RUNOFF_SHARE)
        : yardRunoffCubicFeet(rainInches, [{ curveNumber: tableCurveNumber(cover, soilGroup), areaSquareFeet, shareDrainingHere }]);
  }
  return { contributingSquareFeet, hardSquareFeet, runoffCubicFeet };
}

export interface SiteSurface {
  readonly cover: Cover | null;
  readonly areaSquareFeet: number;
  readonly shareDrainingHere: number;
}

export interface SiteRunoff {
  readonly contributingSquareFeet: number;
  /** Roof and paving. */
  readonly hardSquareFeet: number;
  readonly runoffCubicFeet: number;
}

export function isHard(cover: Cover): boolean {
  return IMPERVIOUS_COVERS.includes(cover);
}

/** The group whose ground lets least soak in, for a yard that names none. */
export const WORST_SOIL_GROUP: SoilGroup = "D";
