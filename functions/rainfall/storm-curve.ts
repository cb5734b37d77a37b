import { stormCurves, type StormType } from "../published/scs-24-hour-storms.ts";

/**
 * A 24-hour design storm, step by step.
 *
 *   cumulative depth = P x F(t)                    (in; F by the storm's type, straight between its ordinates)
 *   depth in a step  = P x (F(t) - F(t before))    (in)
 *
 * Source  USDA Soil Conservation Service 24-hour distributions, types I, IA, II and III, as scs-24-hour-storms lists them.
 * Domain  depthInches >= 0, stepMinutes divides the 1,440 minutes of the storm evenly.
 * Limits  A design storm, not a rain that fell. The service now replaces these curves by regional ones from
 *         NOAA Atlas 14 (from memory): ask which of them local rules name.
 */
export function designStorm(depthInches: number, type: StormType, stepMinutes: number): readonly StormStep[] {
  const steps = Math.round(STORM_MINUTES / stepMinutes);
  let before = 0;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const minutes = (STORM_MINUTES * step) / steps;
    const cumulativeInches = depthInches * fallenShare(type, minutes / 60);
    const stepInches = cumulativeInches - before;
    before = cumulativeInches;
    return { minutes, cumulativeInches, stepInches };
  });
}

export interface StormStep {
  /** When the step ends. */
  readonly minutes: number;
  readonly cumulativeInches: number;
  readonly stepInches: number;
}

/** The first of the steps in which most rain falls. */
export function heaviestStep(storm: readonly StormStep[]): StormStep {
  return storm.reduce((heaviest, step) => (step.stepInches > heaviest.stepInches ? step : heaviest));
}

export const STORM_MINUTES = 1440;

/** The share of a storm's depth that has fallen some hours after its start; all of it from 24 h on. */
export function fallenShare(type: StormType, hours: number): number {
  let [hoursBefore, shareBefore] = [0, 0];
  for (const [hoursHere, shareHere] of stormCurves[type].values) {
    if (hours === hoursHere) return shareHere;
    if (hours < hoursHere) return shareBefore + ((shareHere - shareBefore) * (hours - hoursBefore)) / (hoursHere - hoursBefore);
    [hoursBefore, shareBefore] = [hoursHere, shareHere];
  }
  return 1;
}

/** Common practice, no source: fine enough to read, coarse enough to print. */
export const USUAL_STEP_MINUTES = 30;
