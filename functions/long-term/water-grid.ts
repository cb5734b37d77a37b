import { basinStore, type Garden } from "../basin/water-balance.ts";
import { runoffVolumeCubicFeet } from "../runoff/runoff-volume.ts";
import type { RainRecord } from "./rain-record.ts";

/**
 * A basin and its inflow in whole units of a very small volume, so that sums and differences of any number of steps are
 * exact, and a dry spell taken in one leap ends on the same bit as one taken step by step.
 *
 *   unit = the power of two of a cubic foot of which 2^49 hold all the water of the record, and what one step draws
 *
 * A double holds every whole number up to 2^53. All that comes, and twice that, stays under 2^51, up to where wholeUnits
 * rounds; what is stored, drawn and spilled is part of it.
 *
 * Source  Whole numbers in a double: IEEE 754. The volumes are those of water-balance.
 * Domain  That of water-balance, and less than 2^49 steps.
 * Limits  Every inflow is off by half a unit at most: over 30 years of hours, by 1e-9 of all the water at the very worst.
 */
export function waterGrid(record: RainRecord, garden: Garden): WaterGrid {
  const store = basinStore(garden);
  const runoffPerInch = runoffVolumeCubicFeet(garden.contributingSquareFeet, 1, garden.runoffShare);
  const directPerInch = runoffVolumeCubicFeet(store.rimSquareFeet, 1, 1);
  const draw = store.drawCubicFeetPerHour * record.stepHours;
  const reached = record.totalRunoffInches * runoffPerInch + record.totalRainInches * directPerInch;
  const exponent = Math.ceil(Math.log2(Math.max(reached, draw))) - BITS;
  const unitCubicFeet = 2 ** Math.max(exponent, LEAST_EXPONENT);
  // What all the water of the record cannot fill is as good as twice as large as that water.
  const units = (cubicFeet: number): number => wholeUnits(Math.min(cubicFeet, 2 * reached) / unitCubicFeet);
  return {
    unitCubicFeet,
    media: units(store.mediaCubicFeet),
    capacity: units(store.capacityCubicFeet),
    draw: wholeUnits(draw / unitCubicFeet),
    runoffPerInch: runoffPerInch / unitCubicFeet,
    directPerInch: directPerInch / unitCubicFeet,
    soakedShare: store.soakedShare,
  };
}

/** The nearest whole number, the even one of two: beside 1.5 x 2^52 a double has no room for a fraction. */
export function wholeUnits(units: number): number {
  return units + NO_ROOM_FOR_FRACTIONS - NO_ROOM_FOR_FRACTIONS;
}

const NO_ROOM_FOR_FRACTIONS = 1.5 * 2 ** 52;
const BITS = 49;
/** Where no water comes, any unit will do that a double can turn around. */
const LEAST_EXPONENT = -1000;

export interface WaterGrid {
  readonly unitCubicFeet: number;
  /** Volumes of water-balance, in whole units. */
  readonly media: number;
  readonly capacity: number;
  /** In a step. */
  readonly draw: number;
  /** Inflow of an inch, before it is rounded: off what drains to the basin, and on the basin itself. */
  readonly runoffPerInch: number;
  readonly directPerInch: number;
  readonly soakedShare: number;
}
