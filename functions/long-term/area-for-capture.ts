import type { Garden } from "../basin/water-balance.ts";
import { capturedShare, longTermBalance } from "./long-term-balance.ts";
import type { RainRecord } from "./rain-record.ts";

/**
 * The smallest floor area that captures a share of the water of a record.
 *
 *   captured share of long-term-balance >= share wanted, solved for the floor area      (sq ft)
 *
 * A larger floor stores and soaks more, so captured share rises with it; once nothing overflows it stays at 1. Floors
 * four times as large or as small, in turn, find a bracket: its larger end captures the share, its smaller end does not.
 * Chandrupatla's method narrows it: a parabola through the last three floors where they promise one, halving where they
 * do not, as on that level stretch. The answer captures the share and a floor smaller by 1e-10 of it does not, even where
 * rounding roughens the curve.
 *
 * Source  That of long-term-balance. Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a
 *         nonlinear function without using derivatives, Advances in Engineering Software 28(3), 1997 (from memory).
 * Domain  0 <= shareWanted <= 1, contributing area > 0. Undefined where even a hundred times the contributing area
 *         does not capture the share.
 * Limits  Those of long-term-balance. With vertical sides the share cannot fall as the floor grows; with sloping sides
 *         that is taken for granted.
 */
export function areaForCaptureSquareFeet(
  shareWanted: number,
  record: RainRecord,
  garden: Omit<Garden, "floorSquareFeet">,
): number | undefined {
  const tryFloor = (floorSquareFeet: number): Trial => {
    const captured = capturedShare(longTermBalance(record, { ...garden, floorSquareFeet })) ?? 1;
    return { floorSquareFeet, spareShare: captured - shareWanted };
  };
  if (captures(tryFloor(0))) return 0;
  const largest = LARGEST_TIMES_CONTRIBUTING * garden.contributingSquareFeet;
  // Four times no floor would be none for ever.
  let enough = tryFloor(Math.max(FIRST_TIMES_CONTRIBUTING * garden.contributingSquareFeet, Number.MIN_VALUE));
  let tooSmall = enough;
  while (!captures(enough)) {
    if (enough.floorSquareFeet === largest) return undefined;
    tooSmall = enough;
    enough = tryFloor(Math.min(BRACKET_RATIO * enough.floorSquareFeet, largest));
  }
  while (captures(tooSmall)) {
    enough = tooSmall;
    if (enough.floorSquareFeet < LEAST_OF_LARGEST * largest) return enough.floorSquareFeet;
    tooSmall = tryFloor(enough.floorSquareFeet / BRACKET_RATIO);
  }
  return narrowed(tooSmall, enough, tryFloor);
}

interface Trial {
  readonly floorSquareFeet: number;
  /** What it captures over the share wanted. */
  readonly spareShare: number;
}

function captures({ spareShare }: Trial): boolean {
  return spareShare >= 0;
}

/** The newest floor and the opposite one are the bracket; the one before lies on the newest one's side. */
function narrowed(tooSmall: Trial, enough: Trial, tryFloor: (floorSquareFeet: number) => Trial): number {
  let [newest, opposite, part] = [enough, tooSmall, 0.5];
  for (;;) {
    const floorSquareFeet = newest.floorSquareFeet + part * (opposite.floorSquareFeet - newest.floorSquareFeet);
    const next = tryFloor(floorSquareFeet);
    let before = newest;
    if (captures(next) !== captures(newest)) [before, opposite] = [opposite, newest];
    newest = next;
    const [least, most] = captures(newest) ? [opposite, newest] : [newest, opposite];
    const width = most.floorSquareFeet - least.floorSquareFeet;
    // Nothing lies between two neighbors among the least numbers there are.
    const tolerance = Math.max(TOLERANCE * least.floorSquareFeet, Number.MIN_VALUE);
    if (width <= tolerance) return most.floorSquareFeet;
    // Half the tolerance past the root, so that the next floor closes the bracket from the other side.
    const leastPart = tolerance / 2 / width;
    part = Math.min(Math.max(rootPart(newest, opposite, before), leastPart), 1 - leastPart);
  }
}

/** How far from the newest floor to the opposite one a parabola through the three has its root; halfway where it may have none. */
function rootPart(newest: Trial, opposite: Trial, before: Trial): number {
  const [a, b, c] = [newest.floorSquareFeet, opposite.floorSquareFeet, before.floorSquareFeet];
  const [fa, fb, fc] = [newest.spareShare, opposite.spareShare, before.spareShare];
  const [xi, phi] = [(a - b) / (c - b), (fa - fb) / (fc - fb)];
  if (phi ** 2 >= xi || (1 - phi) ** 2 >= 1 - xi) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

/** Common practice, no source: a basin that outgrows what drains to it this far serves nothing. */
export const LARGEST_TIMES_CONTRIBUTING = 100;

/** Common practice, no source: most basins are between a twentieth and a fifth of what drains to them. */
const FIRST_TIMES_CONTRIBUTING = 0.1;
const BRACKET_RATIO = 4;
const TOLERANCE = 1e-10;

/** A floor this small is none. */
const LEAST_OF_LARGEST = 2 ** -60;
