import { fallenShare, STORM_MINUTES } from "../rainfall/storm-curve.ts";
import type { StormType } from "../published/scs-24-hour-storms.ts";
import { basinDepthInches } from "./basin-depth.ts";
import { USUAL_OUTLINE } from "./basin-shape.ts";
import { LONGEST_PUBLISHED_DRAIN_HOURS } from "./deepest-ponding.ts";
import { balanceStep, basinStore, stepInflow, type Garden } from "./water-balance.ts";

/**
 * One storm through a basin, step by step, until it is empty again.
 *
 *   inflow of a step = (runoff share x contributing area + rim area) x rain / 12      (cu ft; then water-balance)
 *   ponding depth    = the depth at which the shape holds what is stored over the media's voids      (in)
 *
 * Every row balances: stored before + inflow = soaked in + overflow + stored after.
 *
 * Source  That of water-balance and basin-depth.
 * Domain  Depths and rates >= 0, floor area > 0, stepMinutes from 1 to 1,440; evapotranspiration 0, as a storm is short.
 * Limits  Those of water-balance. Runoff arrives in the step in which it rains. Followed for at most 72 h after the rain.
 */
export function routeStorm(stepRains: StepRains, garden: Garden): readonly RoutedStep[] {
  const store = basinStore(garden);
  const { shape, lengthToWidth } = garden.outline ?? USUAL_OUTLINE;
  const { stepMinutes, inches } = stepRains;
  const lastStep = inches.length + Math.ceil((LONGEST_PUBLISHED_DRAIN_HOURS * 60) / stepMinutes);
  const routed: RoutedStep[] = [];
  let stored = 0;
  for (let step = 0; step < lastStep && (step < inches.length || stored > 0); step += 1) {
    const { runoffCubicFeet, directCubicFeet } = stepInflow(store, garden, inches[step] ?? 0);
    const inflow = runoffCubicFeet + directCubicFeet;
    const after = balanceStep(store, stored, inflow, stepMinutes / 60);
    const film = after.storedCubicFeet <= FILM_SHARE * store.capacityCubicFeet ? after.storedCubicFeet : 0;
    stored = after.storedCubicFeet - film;
    const pond = Math.max(stored - store.mediaCubicFeet, 0);
    routed.push({
      hours: ((step + 1) * stepMinutes) / 60,
      inflowCubicFeet: inflow,
      storedCubicFeet: stored,
      pondingInches: basinDepthInches(pond, garden.floorSquareFeet, garden.sideSlope, shape, lengthToWidth),
      soakedCubicFeet: after.drawnCubicFeet + film,
      overflowCubicFeet: after.overflowCubicFeet,
    });
  }
  return routed;
}

/** Rounding may leave a film too thin to be water: it soaks in with the rest, so that an empty basin is empty. */
const FILM_SHARE = 1e-12;

/** Rain in each of a row of equal steps. */
export interface StepRains {
  readonly stepMinutes: number;
  readonly inches: readonly number[];
}

export interface RoutedStep {
  /** When the step ends, since the rain began. */
  readonly hours: number;
  readonly inflowCubicFeet: number;
  readonly storedCubicFeet: number;
  readonly pondingInches: number;
  readonly soakedCubicFeet: number;
  readonly overflowCubicFeet: number;
}

/** The whole storm's water: inflow = soaked in + overflow + still stored. */
export function routedTotals(routed: readonly RoutedStep[]): RoutedTotals {
  const total = (of: (step: RoutedStep) => number): number => routed.reduce((sum, step) => sum + of(step), 0);
  return {
    inflowCubicFeet: total((step) => step.inflowCubicFeet),
    soakedCubicFeet: total((step) => step.soakedCubicFeet),
    overflowCubicFeet: total((step) => step.overflowCubicFeet),
    storedCubicFeet: routed.at(-1)?.storedCubicFeet ?? 0,
  };
}

export interface RoutedTotals {
  readonly inflowCubicFeet: number;
  readonly soakedCubicFeet: number;
  readonly overflowCubicFeet: number;
  /** When the routing ends. */
  readonly storedCubicFeet: number;
}

/** A 24-hour storm in steps on whose ends all ordinates of its curve lie, so that no peak is smeared. */
export function typedStormRains(stormInches: number, type: StormType): StepRains {
  const inches: number[] = [];
  let before = 0;
  for (let minutes = TYPED_STEP_MINUTES; minutes <= STORM_MINUTES; minutes += TYPED_STEP_MINUTES) {
    const share = fallenShare(type, minutes / 60);
    inches.push(stormInches * (share - before));
    before = share;
  }
  return { stepMinutes: TYPED_STEP_MINUTES, inches };
}

const TYPED_STEP_MINUTES = 15;

/** A row per step: shorter ones would fill a sheet, longer ones are no storm. */
export const LEAST_STEP_MINUTES = 1;
export const LARGEST_STEP_MINUTES = STORM_MINUTES;
