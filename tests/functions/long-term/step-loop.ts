import type { WaterGrid } from "../../../functions/long-term/water-grid.ts";

/** Rain of every step, dry ones too, and what of it runs off after the initial loss. */
export interface SteppedRain {
  readonly rainInches: Float64Array;
  readonly runoffInches: Float64Array;
}

/**
 * The long-term balance with no leap at all: every step is taken, every flux is added up. It is what the balance of the
 * product must equal bit for bit, and tests/bench/water-balance.c is the same in C.
 */
export function steppedBalance({ rainInches, runoffInches }: SteppedRain, grid: WaterGrid): SteppedBalance {
  const { media, capacity, draw, runoffPerInch, directPerInch } = grid;
  const steps = rainInches.length;
  let [runoff, direct, drawn, overflow, stored] = [0, 0, 0, 0, 0];
  let [overflows, since, longest] = [0, 0, 0];
  let isSpilling = false;
  for (let step = 0; step < steps; step += 1) {
    const runoffNow = runoffInches[step]! * runoffPerInch + ROUNDER - ROUNDER;
    const directNow = rainInches[step]! * directPerInch + ROUNDER - ROUNDER;
    const inflow = runoffNow + directNow;
    const available = stored + inflow;
    const drawnNow = draw < available ? draw : available;
    const left = available - drawnNow;
    const after = left < capacity ? left : capacity;
    const spilled = left - after;
    runoff += runoffNow;
    direct += directNow;
    drawn += drawnNow;
    overflow += spilled;
    if (spilled > 0 && !isSpilling) overflows += 1;
    isSpilling = spilled > 0;
    if (after > media) {
      if (stored <= media) since = step + (media - stored) / (inflow - draw);
    } else if (stored > media) {
      const length = step + (stored - media) / (draw - inflow) - since;
      if (length > longest) longest = length;
    }
    stored = after;
  }
  if (stored > media && steps - since > longest) longest = steps - since;
  return { runoff, direct, drawn, overflow, stored, overflows, longest };
}

/** 1.5 x 2^52: beside it a double has no room for a fraction. */
const ROUNDER = 6_755_399_441_055_744;

/** Volumes in units of the grid, the longest ponding in steps. */
export interface SteppedBalance {
  readonly runoff: number;
  readonly direct: number;
  readonly drawn: number;
  readonly overflow: number;
  readonly stored: number;
  readonly overflows: number;
  readonly longest: number;
}

/** Every step with what runs off of it, in the same subtractions as rain-record, so that both loops start from the same bits. */
export function steppedRain(inches: readonly number[], stepHours: number, initialLossInches: number): SteppedRain {
  let [lossLeft, drySteps] = [initialLossInches, 0];
  const runoffInches = inches.map((rain) => {
    drySteps = rain > 0 ? 0 : drySteps + 1;
    if (drySteps * stepHours >= 6) lossLeft = initialLossInches;
    const held = Math.min(rain, lossLeft);
    lossLeft -= held;
    return rain - held;
  });
  return { rainInches: Float64Array.from(inches), runoffInches: Float64Array.from(runoffInches) };
}
