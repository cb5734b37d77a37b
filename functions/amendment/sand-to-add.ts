/**
 * Sand that brings a soil to a target sand content.
 *
 *   V sand = V native x (T - s) / (a - T)      (any unit of volume; s, T and a percent sand of soil, target and source)
 *
 * 0 when the soil already has it.
 *
 * Source  Balance of sand at equal bulk density, computed by hand from the definition.
 * Domain  nativeVolume >= 0, 0 <= percents <= 100, and sourcePercent > targetPercent where some is needed.
 * Limits  A little sand makes a clay worse: common practice keeps it at half of the mix or more.
 */
export function sandVolumeToAdd(nativeVolume: number, sand: SandPercents): number {
  const shortPercent = sand.targetPercent - sand.nativePercent;
  return shortPercent <= 0 ? 0 : nativeVolume * (shortPercent / (sand.sourcePercent - sand.targetPercent));
}

export interface SandPercents {
  readonly nativePercent: number;
  readonly sourcePercent: number;
  readonly targetPercent: number;
}

/** Added sand as a share of the mix. */
export function addedSandShare(sand: SandPercents): number {
  const added = sandVolumeToAdd(1, sand);
  return added / (1 + added);
}
