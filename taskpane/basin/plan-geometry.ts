import type { BasinDimensions } from "./basin-dimensions.ts";

/**
 * A basin seen from above, in the yard's length unit.
 *
 *   x runs across the slope, y down it; the origin is the middle of the floor
 *   rim          the water's edge at full ponding: the floor's axes, each longer by 2 z d
 *   berm crest   from the rim, further out by z times the freeboard, as wide as the crest; on the downhill half alone
 *   berm toe     where the outer face, falling 1 in zo, meets ground that falls s:
 *                t = (height of the crest over the ground) / (1 / zo - s ny), out from the crest along its normal n
 *
 * Source  Geometry, on the shape of functions/basin/basin-shape. The basin is set so that the water when full stands
 *         level with the ground at the uphill rim: common practice, no source.
 * Domain  Positive floor axes; depths, slopes and widths >= 0.
 * Limits  An ellipse widened evenly is taken as the ellipse on the longer axes, as the areas are. Even ground.
 */
export interface PlanGeometry {
  readonly floor: Ellipse;
  readonly rim: Ellipse;
  readonly crestInner: Ellipse;
  readonly crestOuter: Ellipse;
  /** From the right end of the crest around the downhill side to the left; null where the ground falls as steeply as the berm's face. */
  readonly toe: readonly Point[] | null;
  /** Corners of the stone-lined notch through the berm. */
  readonly sill: readonly Point[];
  readonly extent: Extent;
}

export interface Ellipse {
  readonly halfLength: number;
  readonly halfWidth: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function planGeometry(basin: BasinDimensions): PlanGeometry {
  const floor = { halfLength: basin.floorLength / 2, halfWidth: basin.floorWidth / 2 };
  const rim = widened(floor, basin.sideSlope * basin.pondingDepth);
  const crestInner = widened(rim, basin.sideSlope * basin.freeboard);
  const crestOuter = widened(crestInner, basin.bermCrestWidth);
  const toeAt = (angle: number) => bermToe(basin, rim, crestOuter, angle);
  const around = Array.from({ length: TOE_POINTS + 1 }, (_, index) => toeAt((Math.PI * index) / TOE_POINTS));
  const toe = around.every((point) => point !== null) ? around : null;
  const outermost = toe ?? [...around.filter((point) => point !== null), { x: 0, y: crestOuter.halfWidth }];
  const halfLength = Math.max(crestOuter.halfLength, ...outermost.map(({ x }) => Math.abs(x)));
  return {
    floor,
    rim,
    crestInner,
    crestOuter,
    toe,
    sill: sillCorners(basin, rim, toeAt(SILL_ANGLE) ?? pointOn(crestOuter, SILL_ANGLE)),
    extent: { left: -halfLength, right: halfLength, top: -rim.halfWidth, bottom: Math.max(crestOuter.halfWidth, ...outermost.map(({ y }) => y)) },
  };
}

export function widened({ halfLength, halfWidth }: Ellipse, by: number): Ellipse {
  return { halfLength: halfLength + by, halfWidth: halfWidth + by };
}

export function ellipseArea({ halfLength, halfWidth }: Ellipse): number {
  return Math.PI * halfLength * halfWidth;
}

/** The point of an ellipse at a parametric angle: 0 at its right end, a quarter turn at its downhill side. */
export function pointOn({ halfLength, halfWidth }: Ellipse, angle: number): Point {
  return { x: halfLength * Math.cos(angle), y: halfWidth * Math.sin(angle) };
}

/** The outward direction there, of length 1. */
export function normalAt({ halfLength, halfWidth }: Ellipse, angle: number): Point {
  const x = halfWidth * Math.cos(angle);
  const y = halfLength * Math.sin(angle);
  const size = Math.hypot(x, y);
  return { x: x / size, y: y / size };
}

/** Half a turn and a quarter of the next: downhill, to one side of the lowest point, so that the drawing shows berm and sill. */
export const SILL_ANGLE = Math.PI / 3;

/** Common practice, no source: a notch two boots wide; its width for a flow is a question for the weir equation. */
export const SILL_WIDTH_TO_CREST = 2;

const TOE_POINTS = 48;

function bermToe(basin: BasinDimensions, rim: Ellipse, crestOuter: Ellipse, angle: number): Point | null {
  const groundFall = basin.groundFall ?? 0;
  const crest = pointOn(crestOuter, angle);
  const out = normalAt(crestOuter, angle);
  const closing = 1 / basin.bermOuterSlope - groundFall * out.y;
  if (closing <= 0) return null;
  const crestOverGround = basin.freeboard + groundFall * (crest.y + rim.halfWidth);
  const reach = crestOverGround / closing;
  return { x: crest.x + reach * out.x, y: crest.y + reach * out.y };
}

function sillCorners(basin: BasinDimensions, rim: Ellipse, end: Point): Point[] {
  const start = pointOn(rim, SILL_ANGLE);
  const size = Math.hypot(end.x - start.x, end.y - start.y);
  const half = (SILL_WIDTH_TO_CREST * basin.bermCrestWidth) / 2;
  const aside = { x: (-(end.y - start.y) / size) * half, y: ((end.x - start.x) / size) * half };
  return [
    { x: start.x + aside.x, y: start.y + aside.y },
    { x: end.x + aside.x, y: end.y + aside.y },
    { x: end.x - aside.x, y: end.y - aside.y },
    { x: start.x - aside.x, y: start.y - aside.y },
  ];
}
