import type { Garden } from "../basin/water-balance.ts";
import { capturedShare, longTermBalance } from "./long-term-balance.ts";

/**
 * The smallest floor area that captures a share of the water of a record.
 *
 *   captured share of long-term-balance >= share wanted, solved for the floor area      (sq ft)
 *
 * A larger floor stores and soaks more, so captured share rises with it; once nothing overflows it stays at 1. The
 * bracket is halved, never interpolated, because on that level stretch a slope leads nowhere.
 *
 * Source  That of long-term-balance.
 * Domain  0 <= shareWanted <= 1, contributing area > 0. Undefined where even a hundred times the contributing area
 *         does not capture the share.
 * Limits  Those of long-term-balance. With vertical sides the share cannot fall as the floor grows; with sloping sides
 *         that is taken for granted.
 */
export function areaForCaptureSquareFeet(
  shareWanted: number,
  rainInches: readonly number[],
  stepHours: number,
  garden: Omit<Garden, "floorSquareFeet">,
): number | undefined {
  const captures = (floorSquareFeet: number): boolean => {
    const captured = capturedShare(longTermBalance(rainInches, stepHours, { ...garden, floorSquareFeet }));
    return captured === undefined || captured >= shareWanted;
  };
  if (captures(0)) return 0;
  let [tooSmall, enough] = [0, LARGEST_TIMES_CONTRIBUTING * garden.contributingSquareFeet];
  if (!captures(enough)) return undefined;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (tooSmall + enough) / 2;
    if (captures(middle)) enough = middle;
    else tooSmall = middle;
  }
  return enough;
}

/** Common practice, no source: a basin that outgrows what drains to it this far serves nothing. */
export const LARGEST_TIMES_CONTRIBUTING = 100;

/** They leave so little of the bracket that a metric sheet and a US one find the same area. */
const HALVINGS = 60;
