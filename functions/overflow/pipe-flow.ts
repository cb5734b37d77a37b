import { INCHES_PER_FOOT } from "../quantities.ts";

/**
 * Flow of a pipe that runs just full, by its own slope (Manning).
 *
 *   Q = 1.486 / n x A R^(2/3) S^(1/2)      (cfs; A = pi D^2 / 4, R = D / 4, D in ft, S slope as a fraction)
 *
 * Source  Manning's equation in US units; roughness of pipes, City of Winchester, Indiana, stormwater code, table 4 (read).
 * Domain  diameterInches > 0, slopePercent >= 0, roughness > 0.
 * Limits  Steady flow, no pressure, no loss at inlet, bends or outlet. The inside diameter counts.
 */
export function fullPipeCubicFeetPerSecond(diameterInches: number, slopePercent: number, roughness: number): number {
  const { areaSquareFeet, hydraulicRadiusFeet } = fullPipe(diameterInches);
  return (MANNING_US / roughness) * areaSquareFeet * Math.cbrt(hydraulicRadiusFeet) ** 2 * Math.sqrt(slopePercent / 100);
}

export function fullPipe(diameterInches: number): FullPipe {
  const diameterFeet = diameterInches / INCHES_PER_FOOT;
  return { areaSquareFeet: (Math.PI * diameterFeet ** 2) / 4, hydraulicRadiusFeet: diameterFeet / 4 };
}

/** The water's cross-section in a full pipe. */
export interface FullPipe {
  readonly areaSquareFeet: number;
  /** Area over wetted perimeter. */
  readonly hydraulicRadiusFeet: number;
}

/** The cube root of 3.2808 ft in a meter, as the handbooks print it. */
export const MANNING_US = 1.486;

/** Smooth plastic. */
export const USUAL_ROUGHNESS = 0.01;

/** Common practice, no source: a yard's drains and downspouts are 2 to 12 in across. */
export const YARD_PIPE_INCHES = { least: 1.5, most: 24 } as const;
