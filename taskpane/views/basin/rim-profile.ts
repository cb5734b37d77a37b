import type { BasinDimensions } from "./basin-dimensions.ts";

/**
 * A basin's side from the rim outward in one direction, in the yard's length unit.
 *
 *   ground       y = r - s ((b + out) n + B / 2): r over the full water at the uphill rim, b half the floor's width and B the rim's
 *   inner face   y = out / z - d from the floor's edge, on beyond the rim until it meets the ground or reaches the freeboard
 *   no berm      where it meets ground as high as the freeboard or higher: there the cut ends
 *   berm         elsewhere: the crest, level, until it is full or runs into the ground, and an outer face of 1 in zo to the toe
 *
 * n is how far downhill the direction points: 1 straight downhill, -1 straight uphill.
 *
 * Source  Geometry, as in functions/earthwork/basin-dig and cut-fill.
 * Domain  Positive floor width and ponding depth; the rest >= 0.
 * Limits  Ground of one even fall. No toe where it falls as steeply as the berm's face; no cut where it rises as steeply as the sides.
 */
export function rimProfile(basin: BasinDimensions, downhill: number): RimProfile {
  const { pondingDepth, sideSlope, freeboard, bermOuterSlope } = basin;
  const fall = basin.groundFall ?? 0;
  const groundAt = (out: number) => groundOverWater(basin, (basin.floorWidth / 2 + out) * downhill);
  const edge = (out: number): Edge => ({ out, height: groundAt(out) });

  const closing = 1 + fall * sideSlope * downhill;
  const meets = edge(closing > 0 ? (sideSlope * (pondingDepth + groundAt(0))) / closing : sideSlope * pondingDepth);
  if (meets.height >= freeboard) return { meets, berm: null };

  const inner = { out: sideSlope * (pondingDepth + freeboard), height: freeboard };
  const full = { out: inner.out + basin.bermCrestWidth, height: freeboard };
  if (groundAt(full.out) >= freeboard) {
    const buried = { out: inner.out + (freeboard - groundAt(inner.out)) / (-fall * downhill), height: freeboard };
    return { meets, berm: { crestInner: inner, crestOuter: buried, toe: buried } };
  }
  const falling = 1 - fall * bermOuterSlope * downhill;
  const toe = falling > 0 ? edge(full.out + (bermOuterSlope * (freeboard - groundAt(full.out))) / falling) : null;
  return { meets, berm: { crestInner: inner, crestOuter: full, toe } };
}

/** A place of the profile: out from the floor's edge, and its height over the full water. */
export interface Edge {
  readonly out: number;
  readonly height: number;
}

export interface RimProfile {
  /** Of the inner face with the ground: the cut's edge, or the berm's foot. */
  readonly meets: Edge;
  readonly berm: { readonly crestInner: Edge; readonly crestOuter: Edge; readonly toe: Edge | null } | null;
}

/** Height of the old ground, downhill of the floor's middle. */
export function groundOverWater({ floorWidth, sideSlope, pondingDepth, uphillRise, groundFall }: BasinDimensions, down: number): number {
  return uphillRise - (groundFall ?? 0) * (down + floorWidth / 2 + sideSlope * pondingDepth);
}

/** How far downhill a direction points at least where a berm stands: -1 or less all around, more than 1 nowhere. */
export function bermStartsAt(basin: BasinDimensions): number {
  const { pondingDepth, sideSlope, freeboard } = basin;
  const over = groundOverWater(basin, 0) - freeboard;
  const fall = basin.groundFall ?? 0;
  if (fall === 0) return over < 0 ? -1 : 1;
  return over / (fall * (basin.floorWidth / 2 + sideSlope * (pondingDepth + freeboard)));
}
