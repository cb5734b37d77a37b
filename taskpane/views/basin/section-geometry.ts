import type { BasinDimensions } from "./basin-dimensions.ts";
import type { Point } from "./plan-geometry.ts";
import { groundOverWater, rimProfile, type Edge } from "./rim-profile.ts";

/**
 * A basin cut down the slope through its middle, in the yard's length unit.
 *
 *   x runs downhill from the middle of the floor; y is height over the overflow sill, which is the ponding level
 *   ground             y = r - s (x + B / 2), B the rim's width: it stands r over the sill level at the uphill rim
 *   finished surface   the sides from the rim outward (rim-profile), down 1 in z to the floor at -d
 *   dug surface        the mulch's depth under the finished surface from rim to rim, and under the floor the soil mix as well,
 *                      straight down from the floor's edge; where no mulch lies, the finished surface itself
 *
 * Source  Geometry, as in functions/earthwork/basin-dig.
 * Domain  Positive floor width and ponding depth; the other depths, slopes, rises and widths >= 0.
 * Limits  Those of rim-profile.
 */
export interface SectionGeometry {
  /** The old ground, from the left end of the drawing to the right. */
  readonly ground: readonly [Point, Point];
  /** What is seen when it is finished, left to right. */
  readonly surface: readonly Point[];
  readonly water: readonly Point[];
  readonly mulch: readonly Point[];
  readonly mix: readonly Point[];
  /** Earth placed over the old ground, mulch and soil mix drawn over it: downhill, and uphill where the ground is low. */
  readonly berms: readonly (readonly Point[])[];
  /** Where the cut ends uphill; the berm's foot where one stands there. */
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
  /** Part of the dug floor would lie over the old ground, on placed earth. */
  readonly floorOnFill: boolean;
}

export function sectionGeometry(basin: BasinDimensions): SectionGeometry {
  const { pondingDepth, sideSlope, freeboard, mulchDepth, mixDepth } = basin;
  const halfFloor = basin.floorWidth / 2;
  const halfRim = halfFloor + sideSlope * pondingDepth;
  const groundAt = (x: number): Point => ({ x, y: groundOverWater(basin, x) });
  const uphillAt = ({ out, height }: Edge): Point => ({ x: -halfFloor - out, y: height });
  const downhillAt = ({ out, height }: Edge): Point => ({ x: halfFloor + out, y: height });

  const uphill = rimProfile(basin, -1);
  const crestOf = { out: sideSlope * (pondingDepth + freeboard), height: freeboard };
  const { berm } = rimProfile(basin, 1);
  const crestInner = downhillAt(berm?.crestInner ?? crestOf);
  const crestOuter = downhillAt(berm?.crestOuter ?? crestOf);
  const toe = berm?.toe == null ? null : downhillAt(berm.toe);
  const outside = toe === null ? [groundAt(crestOuter.x)] : [toe];
  const uphillBerm =
    uphill.berm === null ? [] : [uphill.berm.toe ?? uphill.berm.crestOuter, uphill.berm.crestOuter, uphill.berm.crestInner].map(uphillAt);

  const uphillRim = { x: -halfRim, y: 0 };
  const cutTop = uphillAt(uphill.meets);
  const floorUphill = { x: -halfFloor, y: -pondingDepth };
  const floorDownhill = { x: halfFloor, y: -pondingDepth };
  const downhillRim = { x: halfRim, y: 0 };

  const margin = MARGIN_TO_RIM * (2 * halfRim);
  const end = groundAt((toe ?? crestOuter).x + margin);
  const start = groundAt((uphillBerm[0] ?? cutTop).x - margin);
  const lining = [uphillRim, floorUphill, floorDownhill, downhillRim];
  const down = ({ x, y }: Point, by: number): Point => ({ x, y: y - by });

  return {
    ground: [start, end],
    surface: [
      start,
      ...(uphillBerm.length === 0 ? [cutTop] : uphillBerm),
      uphillRim,
      floorUphill,
      floorDownhill,
      crestInner,
      crestOuter,
      ...outside,
      end,
    ],
    water: lining,
    mulch: [...lining, ...lining.map((point) => down(point, mulchDepth)).reverse()],
    mix: [
      down(floorUphill, mulchDepth),
      down(floorDownhill, mulchDepth),
      down(floorDownhill, mulchDepth + mixDepth),
      down(floorUphill, mulchDepth + mixDepth),
    ],
    berms: [
      [...bermFoot(basin, halfRim), crestInner, crestOuter, ...outside],
      ...(uphillBerm.length === 0 ? [] : [[cutTop, ...uphillBerm]]),
    ],
    cutTop,
    uphillRim,
    downhillRim,
    floorUphill,
    floorDownhill,
    crestInner,
    crestOuter,
    toe,
    bermHeight: freeboard - groundAt(halfRim).y,
    groundDrop: (basin.groundFall ?? 0) * 2 * halfRim,
    floorOnFill: groundAt(halfFloor).y < -pondingDepth - mulchDepth - mixDepth,
  };
}

/** Ground shown beyond the basin on either side, as a share of the rim's width. */
const MARGIN_TO_RIM = 0.12;

/** Where placed earth begins: on the inner face, or on the floor where the ground lies below it. */
function bermFoot(basin: BasinDimensions, halfRim: number): Point[] {
  const { floorWidth, pondingDepth, uphillRise } = basin;
  const halfFloor = floorWidth / 2;
  if (groundOverWater(basin, halfFloor) < -pondingDepth) {
    return [
      { x: (pondingDepth + uphillRise) / (basin.groundFall ?? 0) - halfRim, y: -pondingDepth },
      { x: halfFloor, y: -pondingDepth },
    ];
  }
  const { meets } = rimProfile(basin, 1);
  return [{ x: halfFloor + meets.out, y: meets.height }];
}
