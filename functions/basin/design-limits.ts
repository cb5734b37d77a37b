import { nearFactors, slopeBands } from "../published/wisconsin-size-factors.ts";
import { DESIGN_STORM_INCHES } from "../rainfall/likely-rain.ts";

/** What a basin is held against beside its storm and its ponding. A program's own limits take their place. */
export interface DesignLimits {
  readonly largestFloorShare: number;
  readonly leastFloorSquareFeet: number;
  readonly leastDesignInchesPerHour: number;
  readonly longestEmptyHours: number;
  /** A storm outside these two is more likely a slip of units. */
  readonly leastStormInches: number;
  readonly largestStormInches: number;
}

/** The largest size factor of the Wisconsin homeowner manual, clayey soil under 3 to 5 in (from memory; the next, 0.34, was read). */
export const LARGEST_FLOOR_SHARE = nearFactors.values[0]!.factors.clayey.factor;

/** Rebate pages of the District of Columbia and of Prescott, Arizona (read): gardens of 50 sq ft and more. */
export const LEAST_FLOOR_SQUARE_FEET = 50;

/**
 * Half of 0.25 in/h, by the usual reduction factor: the Wisconsin homeowner manual asks of a test hole that 6 in be gone in
 * 24 h (read as quoted). Many manuals ask twice that (from memory).
 */
export const LEAST_DESIGN_INCHES_PER_HOUR = 0.125;

/**
 * District of Columbia Stormwater Management Guidebook, chapter 3.5 (read): without an underdrain the design storm soaks in
 * within 72 h. Other print that was read runs from 48 h to 96 h.
 */
export const LONGEST_EMPTY_HOURS = 72;

/** The shallowest ponding printed for a rain garden: Wisconsin homeowner manual (read). */
export const SHALLOWEST_USUAL_PONDING_INCHES = slopeBands.values[0]!.shallowestInches;

export const USUAL_LIMITS: DesignLimits = {
  largestFloorShare: LARGEST_FLOOR_SHARE,
  leastFloorSquareFeet: LEAST_FLOOR_SQUARE_FEET,
  leastDesignInchesPerHour: LEAST_DESIGN_INCHES_PER_HOUR,
  longestEmptyHours: LONGEST_EMPTY_HOURS,
  leastStormInches: DESIGN_STORM_INCHES.least,
  largestStormInches: DESIGN_STORM_INCHES.most,
};
