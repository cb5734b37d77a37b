/**
 * Years of rain as a water balance reads them, found once for any number of sites: the wet steps one by one, and how
 * many dry ones follow each.
 *
 *   runoff depth = rain - what is left of the initial loss, 0 at least      (in; of a wet step)
 *
 * The initial loss wets what drains to a basin before any of it runs off, and is whole again when a storm is over.
 *
 * Source  Common practice, no source: six dry hours part one storm from the next.
 * Domain  rainInches >= 0 in equal steps, stepHours > 0, initialLossInches >= 0.
 * Limits  The surface dries at once when those hours are over, in summer as in winter.
 */
export function rainRecord(rainInches: readonly number[], stepHours: number, initialLossInches = 0): RainRecord {
  const wet: number[] = [];
  const runoff: number[] = [];
  const drySteps: number[] = [];
  const stepsBefore = wetStepFrom(rainInches, 0);
  let lossLeft = initialLossInches;
  let totalRainInches = 0;
  let totalRunoffInches = 0;
  let step = stepsBefore;
  while (step < rainInches.length) {
    const rain = rainInches[step]!;
    const nextWet = wetStepFrom(rainInches, step + 1);
    const dry = nextWet - step - 1;
    const held = Math.min(rain, lossLeft);
    lossLeft = dry * stepHours >= DRY_HOURS_BETWEEN_STORMS ? initialLossInches : lossLeft - held;
    wet.push(rain);
    runoff.push(rain - held);
    drySteps.push(dry);
    totalRainInches += rain;
    totalRunoffInches += rain - held;
    step = nextWet;
  }
  return {
    steps: rainInches.length,
    stepHours,
    stepsBefore,
    rainInches: wet,
    runoffInches: runoff,
    drySteps,
    totalRainInches,
    totalRunoffInches,
  };
}

function wetStepFrom(rainInches: readonly number[], from: number): number {
  let step = from;
  while (step < rainInches.length && !(rainInches[step]! > 0)) step += 1;
  return step;
}

export interface RainRecord {
  /** Wet and dry. */
  readonly steps: number;
  readonly stepHours: number;
  /** Dry ones before the first rain. */
  readonly stepsBefore: number;
  /** Of each wet step, as are runoff and dry steps. */
  readonly rainInches: readonly number[];
  /** What is left of the rain after the initial loss. */
  readonly runoffInches: readonly number[];
  /** How many follow, before it rains again. */
  readonly drySteps: readonly number[];
  readonly totalRainInches: number;
  readonly totalRunoffInches: number;
}

const DRY_HOURS_BETWEEN_STORMS = 6;
