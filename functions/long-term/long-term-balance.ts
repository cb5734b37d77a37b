import { HOURS_PER_DAY, type Garden } from "../basin/water-balance.ts";
import type { RainRecord } from "./rain-record.ts";
import { waterGrid, wholeUnits } from "./water-grid.ts";

/**
 * What a basin does with years of rain, step by step.
 *
 *   captured share  = 1 - overflow / (runoff + rain on the basin)
 *   an overflow     = all steps in a row that spill
 *   longest ponding = the longest time that water stood on the floor without a break, inside steps too      (h)
 *
 * Every step is that of water-balance: steady rain within the step, soaking and evapotranspiration while there is
 * water, spilling last. The basin starts empty. Water moves in the whole units of water-grid, so this holds exactly:
 *
 *   runoff + rain on the basin = soaked in + evapotranspiration + overflow + still stored at the end
 *
 * So does a leap over a dry spell: n steps draw n times what one draws, or all there is. The same balance taken step by
 * step ends on the same bits; the tests do so.
 *
 * Source  That of water-balance.
 * Domain  That of water-balance and rain-record.
 * Limits  Those of water-balance, rain-record and water-grid. Long steps spread a burst evenly and hide some of its
 *         overflow.
 */
export function longTermBalance(record: RainRecord, garden: Garden): LongTermBalance {
  const { unitCubicFeet, media, capacity, draw, runoffPerInch, directPerInch, soakedShare } = waterGrid(record, garden);
  const { rainInches, runoffInches, drySteps, stepHours } = record;
  // One by one: taken apart from an array they would not be known to be doubles, and the loop would take five times as long.
  let runoff = 0;
  let direct = 0;
  let overflow = 0;
  let stored = 0;
  let overflows = 0;
  let pondingSince = 0;
  let longestPonding = 0;
  let isSpilling = false;
  let step = record.stepsBefore;
  for (let wet = 0; wet < rainInches.length; wet += 1) {
    const runoffNow = wholeUnits(runoffInches[wet]! * runoffPerInch);
    const directNow = wholeUnits(rainInches[wet]! * directPerInch);
    runoff += runoffNow;
    direct += directNow;
    const rise = runoffNow + directNow - draw;
    // Conditions, here and below, because Math.min and Math.max look after minus zero too and take twice the time.
    const left = stored + rise > 0 ? stored + rise : 0;
    const after = left < capacity ? left : capacity;
    if (left > capacity) {
      overflow += left - capacity;
      if (!isSpilling) overflows += 1;
    }
    isSpilling = left > capacity;

    // Under steady inflow water rises or falls in a straight line, so it passes the floor at most once in a step.
    if (after > media) {
      if (stored <= media) pondingSince = step + (media - stored) / rise;
    } else if (stored > media) {
      longestPonding = Math.max(longestPonding, step + (media - stored) / rise - pondingSince);
    }
    stored = after;
    step += 1;

    const dry = drySteps[wet]!;
    if (dry > 0) {
      isSpilling = false;
      const above = stored - media;
      if (above > 0 && above <= dry * draw) {
        const inLastStep = above % draw;
        longestPonding = Math.max(longestPonding, step + (above - inLastStep) / draw + inLastStep / draw - pondingSince);
      }
      stored = stored > dry * draw ? stored - dry * draw : 0;
      step += dry;
    }
  }
  if (stored > media) longestPonding = Math.max(longestPonding, step - pondingSince);

  const drawnCubicFeet = (runoff + direct - overflow - stored) * unitCubicFeet;
  const soakedCubicFeet = drawnCubicFeet * soakedShare;
  return {
    years: yearsOf(record.steps, stepHours),
    runoffCubicFeet: runoff * unitCubicFeet,
    directCubicFeet: direct * unitCubicFeet,
    soakedCubicFeet,
    evaporatedCubicFeet: drawnCubicFeet - soakedCubicFeet,
    overflowCubicFeet: overflow * unitCubicFeet,
    storedCubicFeet: stored * unitCubicFeet,
    overflows,
    longestPondingHours: longestPonding * stepHours,
  };
}

/** Totals of a whole record. */
export interface LongTermBalance {
  readonly years: number;
  readonly runoffCubicFeet: number;
  /** Rain on the basin itself. */
  readonly directCubicFeet: number;
  readonly soakedCubicFeet: number;
  readonly evaporatedCubicFeet: number;
  readonly overflowCubicFeet: number;
  /** Still in the basin at the end. */
  readonly storedCubicFeet: number;
  readonly overflows: number;
  readonly longestPondingHours: number;
}

/** Of all water that reached the basin, the share that did not spill; undefined where none did. */
export function capturedShare(balance: LongTermBalance): number | undefined {
  const reached = reachedCubicFeet(balance);
  return reached === 0 ? undefined : 1 - balance.overflowCubicFeet / reached;
}

/** All water that came to the basin. */
export function reachedCubicFeet({ runoffCubicFeet, directCubicFeet }: LongTermBalance): number {
  return runoffCubicFeet + directCubicFeet;
}

/** All water that left the basin or is still in it: the same as reached it. */
export function accountedCubicFeet(balance: LongTermBalance): number {
  return balance.soakedCubicFeet + balance.evaporatedCubicFeet + balance.overflowCubicFeet + balance.storedCubicFeet;
}

export function yearsOf(steps: number, stepHours: number): number {
  return (steps * stepHours) / HOURS_PER_YEAR;
}

/** Leap years counted. */
const HOURS_PER_YEAR = 365.25 * HOURS_PER_DAY;

/** Common practice, no source: fewer years than 20 to 30 say little about the years to come. */
export const LEAST_RECORD_YEARS = 20;

/** Common practice, no source: longer steps hide the bursts that overflow. */
export const LONGEST_TELLING_STEP_HOURS = 1;
