import { greenAmptParameters } from "../published/rawls-1983.ts";
import type { TabledTexture } from "../published/soil-survey-manual.ts";
import { toUs } from "../quantities.ts";

/**
 * Depth of water that soaks into a soil in a time, under a pond or under steady rain.
 *
 *   f = K (1 + m / F),  m = suction x moisture deficit      rate once water stands on the soil
 *   F - m ln(1 + F / m) = K t                               ponded from the start
 *   rain i > K ponds once Fp = K m / (i - K) has soaked in, at tp = Fp / i; from then on
 *   F - m ln(1 + F / m) = K (t - tp) + Fp - m ln(1 + Fp / m)
 *   rain i <= K never ponds: F = i t                        (one unit of length and of time throughout)
 *
 * Source  Green and Ampt's equation as in Rawls, Brakensiek and Miller 1983, equations 1 and 2; steady rain as in Chow,
 *         Maidment and Mays, Applied Hydrology, 1988, section 4.4 (from memory).
 * Domain  hours >= 0, conductivity > 0, suctionDeficit >= 0, rainRate >= 0 (undefined: ponded from the start).
 * Limits  Deep uniform soil, one rain without breaks, no depth of water adding to the suction.
 */
export function soakedIn(hours: number, { conductivity, suctionDeficit }: GreenAmptSoil, rainRate?: number): number {
  if (rainRate === undefined) return ponded(conductivity * hours, suctionDeficit);
  const start = pondingStart({ conductivity, suctionDeficit }, rainRate);
  if (hours <= start.hours) return rainRate * hours;
  return ponded(conductivity * (hours - start.hours) + gravityShare(start.depth, suctionDeficit), suctionDeficit);
}

/** What the soil's water column asks of the equation, in any one unit of length. */
export interface GreenAmptSoil {
  /** Green and Ampt's conductivity, per hour. */
  readonly conductivity: number;
  /** Suction at the wetting front times the pore share still to fill. */
  readonly suctionDeficit: number;
}

/** When steady rain begins to pond and how much has soaked in by then; never, if the soil keeps up with the rain. */
export function pondingStart(
  { conductivity, suctionDeficit }: GreenAmptSoil,
  rainRate: number,
): { readonly hours: number; readonly depth: number } {
  if (rainRate <= conductivity) return { hours: Infinity, depth: Infinity };
  const depth = (conductivity * suctionDeficit) / (rainRate - conductivity);
  return { hours: depth / rainRate, depth };
}

/** A soil of the table, its pores filled to a share, with lengths in inches. */
export function greenAmptSoil(texture: TabledTexture, filledShare: number): GreenAmptSoil {
  return {
    conductivity: inches(greenAmptParameters.values[texture].conductivityCentimetresPerHour),
    suctionDeficit: suctionInches(texture) * moistureDeficit(texture, filledShare),
  };
}

/** Suction at the wetting front. */
export function suctionInches(texture: TabledTexture): number {
  return inches(greenAmptParameters.values[texture].suctionCentimetres);
}

/** The pores still to fill, as a share of the soil's volume. */
export function moistureDeficit(texture: TabledTexture, filledShare: number): number {
  return greenAmptParameters.values[texture].effectivePorosity * (1 - filledShare);
}

/** Chow, Maidment and Mays, 1988, example 4.3.1: pores filled to 30 percent. */
export const USUAL_FILLED_SHARE = 0.3;

/** The F for which F - m ln(1 + F/m) is what gravity alone would have drawn in. */
function ponded(drawn: number, suctionDeficit: number): number {
  if (suctionDeficit === 0 || drawn === 0) return drawn;
  // x - ln(1 + x) >= x^2 / (2 (1 + x)) bounds F from above. The left side curves upward, so from there every step
  // of Newton's method comes down toward the answer and none passes it: the search ends where rounding stops it.
  let depth = drawn + Math.sqrt(drawn * (drawn + 2 * suctionDeficit));
  for (;;) {
    const over = gravityShare(depth, suctionDeficit) - drawn;
    const next = depth - (over * (depth + suctionDeficit)) / depth;
    if (!(next < depth)) return depth;
    depth = next;
  }
}

function gravityShare(depth: number, suctionDeficit: number): number {
  return suctionDeficit === 0 ? depth : depth - suctionDeficit * Math.log1p(depth / suctionDeficit);
}

function inches(centimetres: number): number {
  return toUs("depth", 10 * centimetres, "metric");
}
