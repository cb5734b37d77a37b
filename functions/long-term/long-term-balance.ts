import { balanceStep, basinStore, HOURS_PER_DAY, stepInflow, type Garden } from "../basin/water-balance.ts";

/**
 * What a basin does with years of rain, step by step.
 *
 *   captured share  = 1 - overflow / (runoff + rain on the basin)
 *   an overflow     = all steps in a row that spill
 *   longest ponding = the longest time that water stood on the floor without a break, inside steps too      (h)
 *
 * Every step is that of water-balance: steady rain within the step, runoff = share x rain without an initial loss,
 * soaking and evapotranspiration while there is water, spilling last. The basin starts empty.
 *
 *   runoff + rain on the basin = soaked in + evapotranspiration + overflow + still stored at the end
 *
 * Source  That of water-balance.
 * Domain  rainInches >= 0 in equal steps, stepHours > 0; for the rest that of water-balance.
 * Limits  Those of water-balance. Long steps spread a burst evenly and hide some of its overflow.
 */
export function longTermBalance(rainInches: readonly number[], stepHours: number, garden: Garden): LongTermBalance {
  const store = basinStore(garden);
  const totals = { runoff: 0, direct: 0, drawn: 0, overflow: 0 };
  let stored = 0;
  let overflows = 0;
  let isSpilling = false;
  let pondingHours = 0;
  let longestPondingHours = 0;
  for (const rain of rainInches) {
    const { runoffCubicFeet, directCubicFeet } = stepInflow(store, garden, rain);
    const inflow = runoffCubicFeet + directCubicFeet;
    const step = balanceStep(store, stored, inflow, stepHours);
    totals.runoff += runoffCubicFeet;
    totals.direct += directCubicFeet;
    totals.drawn += step.drawnCubicFeet;
    totals.overflow += step.overflowCubicFeet;
    if (step.overflowCubicFeet > 0 && !isSpilling) overflows += 1;
    isSpilling = step.overflowCubicFeet > 0;

    const isPonding = step.storedCubicFeet > store.mediaCubicFeet;
    pondingHours += stepHours * pondedShare(stored - store.mediaCubicFeet, inflow, store.drawCubicFeetPerHour * stepHours, isPonding);
    longestPondingHours = Math.max(longestPondingHours, pondingHours);
    if (!isPonding) pondingHours = 0;
    stored = step.storedCubicFeet;
  }
  const soakedCubicFeet = totals.drawn * store.soakedShare;
  return {
    years: yearsOf(rainInches.length, stepHours),
    runoffCubicFeet: totals.runoff,
    directCubicFeet: totals.direct,
    soakedCubicFeet,
    evaporatedCubicFeet: totals.drawn - soakedCubicFeet,
    overflowCubicFeet: totals.overflow,
    storedCubicFeet: stored,
    overflows,
    longestPondingHours,
  };
}

/**
 * For how much of a step water stands on the floor. Under steady inflow it only rises or only falls, in a straight line
 * until the basin is full or empty, so it passes the floor at most once.
 */
function pondedShare(aboveFloor: number, inflow: number, draw: number, isPonding: boolean): number {
  const rise = inflow - draw;
  if (aboveFloor > 0) return isPonding ? 1 : aboveFloor / Math.max(-rise, aboveFloor);
  if (!isPonding) return 0;
  return aboveFloor === 0 ? 1 : 1 + aboveFloor / Math.max(rise, -aboveFloor);
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
