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
export function steppedBalance(rain: SteppedRain, grid: WaterGrid): SteppedBalance {
  const account = new Float64Array(9);
  const { media, capacity, draw, runoffPerInch, directPerInch } = grid;
  const doubles = Float64Array.of(media, capacity, draw, runoffPerInch, directPerInch);
  const steps = rain.rainInches.length;
  for (let from = 0; from < steps; from += STEPS_AT_ONCE)
    takeSteps(rain.rainInches, rain.runoffInches, doubles, account, from, Math.min(from + STEPS_AT_ONCE, steps));
  const stillPonding = account[4]! > grid.media ? rain.rainInches.length - account[7]! : 0;
  return {
    runoff: account[0]!,
    direct: account[1]!,
    drawn: account[2]!,
    overflow: account[3]!,
    stored: account[4]!,
    overflows: account[5]!,
    longest: Math.max(account[6]!, stillPonding),
  };
}

/** Thirty years in one go would stay in the code they began with, whatever better the machine has compiled meanwhile. */
const STEPS_AT_ONCE = 8192;

/**
 * Takes doubles and ends in doubles: were a zero among them taken for an integer, or the shape of an object looked at, its
 * machine code would be thrown away whenever another comes.
 */
function takeSteps(
  rainInches: Float64Array,
  runoffInches: Float64Array,
  grid: Float64Array,
  account: Float64Array,
  from: number,
  to: number,
): void {
  const media = grid[0]!;
  const capacity = grid[1]!;
  const draw = grid[2]!;
  const runoffPerInch = grid[3]!;
  const directPerInch = grid[4]!;
  let runoff = account[0]!;
  let direct = account[1]!;
  let drawn = account[2]!;
  let overflow = account[3]!;
  let stored = account[4]!;
  let overflows = account[5]!;
  let longest = account[6]!;
  let since = account[7]!;
  const rounder = ROUNDER;
  let isSpilling = account[8]! > 0;
  for (let step = from; step < to; step += 1) {
    const runoffNow = runoffInches[step]! * runoffPerInch + rounder - rounder;
    const directNow = rainInches[step]! * directPerInch + rounder - rounder;
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
  account[0] = runoff;
  account[1] = direct;
  account[2] = drawn;
  account[3] = overflow;
  account[4] = stored;
  account[5] = overflows;
  account[6] = longest;
  account[7] = since;
  account[8] = isSpilling ? 1 : 0;
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
