/**
 * What to buy or keep for a soil mix that must fill a volume once it has settled.
 *
 *   V of a material = share x mix volume in place / (1 - settling share)      (any unit of volume)
 *
 * Source  Common practice, no source: order 15 to 20 percent more than the finished volume. Mixed loose, the fine parts
 *         settle into the gaps of the coarse; when the mix loses 15 percent of its loose volume that is 17.6 percent more.
 * Domain  mixVolume >= 0, shares >= 0 that add up to 1, 0 <= settlingShare < 1.
 * Limits  Volumes of loose material. Shares are by volume.
 */
export function mixVolumes(mixVolume: number, parts: readonly MixPart[], settlingShare: number): readonly MixPartVolume[] {
  const loose = looseVolume(mixVolume, settlingShare);
  return parts.map(({ material, share }) => ({ material, volume: share * loose }));
}

/** The mix before it settles. */
export function looseVolume(mixVolume: number, settlingShare: number): number {
  return mixVolume / (1 - settlingShare);
}

/** One material of a mix and its share of it by volume. */
export interface MixPart {
  readonly material: string;
  readonly share: number;
}

export interface MixPartVolume {
  readonly material: string;
  readonly volume: number;
}

/** Common practice, no source: what the pores swallow of a loose mix. */
export const USUAL_SETTLING_SHARE = 0.15;

/** Common practice, no source: what no mix settles by. */
export const MOST_USUAL_SETTLING_SHARE = 0.3;

/** Common practice, no source: less sand than this makes a clay worse, not better. */
export const LEAST_SAND_SHARE_FOR_CLAY = 0.5;

/** Shares typed to two decimals may miss 1 by this much. */
export const SHARE_SUM_TOLERANCE = 0.001;
