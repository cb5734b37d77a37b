import type { BasinDimensions } from "./basin-dimensions.ts";
import type { Point } from "./plan-geometry.ts";

/**
 * A basin cut down the slope through its middle, in the yard's length unit.
 *
 *   x runs downhill from the middle of the floor; y is height over the overflow sill, which is the ponding level
 *   ground       y = r - s (x + B / 2), B the rim's width: it stands r over the sill level at the uphill rim
 *   finished surface   down a face of 1 in z from the ground to the uphill rim (-B/2, 0), floor at -d, up the berm's
 *                      inner face to the crest at the freeboard, across it, down the outer face of 1 in zo to the toe
 *   top of the cut     x = -B / 2 - r / (1 / z - s)
 *   toe          x = (freeboard - r + s B / 2 + xo / zo) / (1 / zo - s), xo the crest's outer edge
 *
 * Mulch is drawn under the finished surface and the soil mix under the mulch, straight down from the floor's edge.
 *
 * Source  Geometry.
 * Domain  Positive floor width and ponding depth; the other depths, slopes, rises and widths >= 0.
 * Limits  Even ground. No toe where the ground falls as steeply as the berm's face.
 */
export interface SectionGeometry {
  /** The old ground, from the left end of the drawing to the right. */
  readonly ground: readonly [Point, Point];
  /** What is seen when it is finished, left to right. */
  readonly surface: readonly Point[];
  readonly water: readonly Point[];
  readonly mulch: readonly Point[];
  readonly mix: readonly Point[];
  /** Earth placed over the old ground. */
  readonly berm: readonly Point[];
  readonly cutTop: Point;
  readonly uphillRim: Point;
  readonly downhillRim: Point;
  readonly floorUphill: Point;
  readonly floorDownhill: Point;
  readonly crestInner: Point;
  readonly crestOuter: Point;
  readonly toe: Point | null;
  /** Crest above the old ground under the downhill rim. */
  readonly bermHeight: number;
  /** Fall of the old ground from rim to rim. */
  readonly groundDrop: number;
  /** Part of the floor would lie over the old ground, on placed earth. */
  readonly floorOnFill: boolean;
}

export function sectionGeometry(basin: BasinDimensions): SectionGeometry {
  const { pondingDepth, sideSlope, freeboard, uphillRise } = basin;
  const groundFall = basin.groundFall ?? 0;
  const halfFloor = basin.floorWidth / 2;
  const halfRim = halfFloor + sideSlope * pondingDepth;
  const groundAt = (x: number): Point => ({ x, y: uphillRise - groundFall * (x + halfRim) });

  const uphillRim = { x: -halfRim, y: 0 };
  const closing = 1 / sideSlope - groundFall;
  const cutTop = groundAt(-halfRim - (closing > 0 ? uphillRise / closing : 0));
  const floorUphill = { x: -halfFloor, y: -pondingDepth };
  const floorDownhill = { x: halfFloor, y: -pondingDepth };
  const downhillRim = { x: halfRim, y: 0 };
  const crestInner = { x: halfRim + sideSlope * freeboard, y: freeboard };
  const crestOuter = { x: crestInner.x + basin.bermCrestWidth, y: freeboard };
  const toe = bermToe(basin, groundFall, halfRim, crestOuter);

  const margin = MARGIN_TO_RIM * (2 * halfRim);
  const end = groundAt((toe ?? crestOuter).x + margin);
  const start = groundAt(cutTop.x - margin);
  const outside = toe === null ? [groundAt(crestOuter.x)] : [toe];
  const lining = [uphillRim, floorUphill, floorDownhill, downhillRim];
  const down = ({ x, y }: Point, by: number): Point => ({ x, y: y - by });

  return {
    ground: [start, end],
    surface: [start, cutTop, uphillRim, floorUphill, floorDownhill, crestInner, crestOuter, ...outside, end],
    water: lining,
    mulch: [...lining, ...lining.map((point) => down(point, basin.mulchDepth)).reverse()],
    mix: [
      down(floorUphill, basin.mulchDepth),
      down(floorDownhill, basin.mulchDepth),
      down(floorDownhill, basin.mulchDepth + basin.mixDepth),
      down(floorUphill, basin.mulchDepth + basin.mixDepth),
    ],
    berm: [...bermFoot(basin, groundFall, halfRim), crestInner, crestOuter, ...outside],
    cutTop,
    uphillRim,
    downhillRim,
    floorUphill,
    floorDownhill,
    crestInner,
    crestOuter,
    toe,
    bermHeight: freeboard - groundAt(halfRim).y,
    groundDrop: groundFall * 2 * halfRim,
    floorOnFill: groundAt(halfFloor).y < -pondingDepth,
  };
}

/** Ground shown beyond the basin on either side, as a share of the rim's width. */
const MARGIN_TO_RIM = 0.12;

function bermToe(basin: BasinDimensions, groundFall: number, halfRim: number, crestOuter: Point): Point | null {
  const closing = 1 / basin.bermOuterSlope - groundFall;
  if (closing <= 0) return null;
  const x = (basin.freeboard - basin.uphillRise + groundFall * halfRim + crestOuter.x / basin.bermOuterSlope) / closing;
  return { x, y: basin.uphillRise - groundFall * (x + halfRim) };
}

/** Where placed earth begins: on the inner face, or on the floor where the ground lies below it. */
function bermFoot({ floorWidth, pondingDepth, sideSlope, uphillRise }: BasinDimensions, groundFall: number, halfRim: number): Point[] {
  const halfFloor = floorWidth / 2;
  const groundUnderFloorEdge = uphillRise - groundFall * (halfFloor + halfRim);
  if (groundUnderFloorEdge < -pondingDepth) {
    return [
      { x: (pondingDepth + uphillRise) / groundFall - halfRim, y: -pondingDepth },
      { x: halfFloor, y: -pondingDepth },
    ];
  }
  if (sideSlope === 0) return [{ x: halfFloor, y: groundUnderFloorEdge }];
  const x = (pondingDepth + halfFloor / sideSlope + uphillRise - groundFall * halfRim) / (1 / sideSlope + groundFall);
  return [{ x, y: uphillRise - groundFall * (x + halfRim) }];
}
