import { FILL, type BasinShape } from "../../../functions/basin/basin-shape.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";

/**
 * A basin seen from above, in the yard's length unit.
 *
 *   x runs across the slope, y down it; the origin is the middle of the floor
 *   rim          the water's edge at full ponding: the floor's axes, each longer by 2 z d
 *   berm crest   from the rim, further out by z times the freeboard, as wide as the crest; on the downhill half alone
 *   berm toe     where the outer face, falling 1 in zo, meets ground that falls s:
 *                t = (height of the crest over the ground) / (1 / zo - s ny), out from the crest along its normal n
 *   cut edge     on the uphill half, where a face rising 1 in z from the rim meets the ground over the water level:
 *                t = (height of the ground over the rim) / (1 / z + s ny)
 *
 * Source  Geometry, on the shape of functions/basin/basin-shape.
 * Domain  Positive floor axes; depths, slopes, rises and widths >= 0.
 * Limits  An ellipse widened evenly is taken as the ellipse on the longer axes, as the areas are. Even ground.
 */
export interface PlanGeometry {
  readonly floor: Outline;
  readonly rim: Outline;
  readonly crestInner: Outline;
  readonly crestOuter: Outline;
  /** From the right end of the crest around the downhill side to the left; null where the ground falls as steeply as the berm's face. */
  readonly toe: readonly Point[] | null;
  /** From the left end of the rim around the uphill side to the right; on the rim itself where nothing is cut above it. */
  readonly cutEdge: readonly Point[];
  /** Corners of the stone-lined notch through the berm. */
  readonly sill: readonly Point[];
  readonly extent: Extent;
}

export interface Outline {
  readonly shape: BasinShape;
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
  const floor = { shape: basin.shape, halfLength: basin.floorLength / 2, halfWidth: basin.floorWidth / 2 };
  const rim = widened(floor, basin.sideSlope * basin.pondingDepth);
  const crestInner = widened(rim, basin.sideSlope * basin.freeboard);
  const crestOuter = widened(crestInner, basin.bermCrestWidth);
  const toeAt = (angle: number) => bermToe(basin, rim, crestOuter, angle);
  const around = Array.from({ length: TOE_POINTS + 1 }, (_, index) => toeAt((Math.PI * index) / TOE_POINTS));
  const toe = around.every((point) => point !== null) ? around : null;
  const outermost = toe ?? [...around.filter((point) => point !== null), { x: 0, y: crestOuter.halfWidth }];
  const cutEdge = Array.from({ length: TOE_POINTS + 1 }, (_, index) => cutFrom(basin, rim, -Math.PI + (Math.PI * index) / TOE_POINTS));
  const halfLength = Math.max(crestOuter.halfLength, ...[...outermost, ...cutEdge].map(({ x }) => Math.abs(x)));
  return {
    floor,
    rim,
    crestInner,
    crestOuter,
    toe,
    cutEdge,
    sill: sillCorners(basin, rim, toeAt(SILL_ANGLE) ?? pointOn(crestOuter, SILL_ANGLE)),
    extent: {
      left: -halfLength,
      right: halfLength,
      top: Math.min(...cutEdge.map(({ y }) => y)),
      bottom: Math.max(crestOuter.halfWidth, ...outermost.map(({ y }) => y)),
    },
  };
}

export function widened({ shape, halfLength, halfWidth }: Outline, by: number): Outline {
  return { shape, halfLength: halfLength + by, halfWidth: halfWidth + by };
}

export function outlineArea({ shape, halfLength, halfWidth }: Outline): number {
  return FILL[shape] * 4 * halfLength * halfWidth;
}

/** The point of an outline at a parametric angle: 0 at its right end, a quarter turn at its downhill side. */
export function pointOn({ shape, halfLength, halfWidth }: Outline, angle: number): Point {
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  // A rectangle is the square around the circle, stretched.
  const stretch = shape === "ellipse" ? 1 : 1 / Math.max(Math.abs(x), Math.abs(y));
  return { x: halfLength * x * stretch, y: halfWidth * y * stretch };
}

/** The outward direction there, of length 1. */
export function normalAt({ shape, halfLength, halfWidth }: Outline, angle: number): Point {
  if (shape === "rectangle") {
    const [across, down] = [Math.cos(angle), Math.sin(angle)];
    return Math.abs(across) > Math.abs(down) ? { x: Math.sign(across), y: 0 } : { x: 0, y: Math.sign(down) };
  }
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

function bermToe(basin: BasinDimensions, rim: Outline, crestOuter: Outline, angle: number): Point | null {
  const groundFall = basin.groundFall ?? 0;
  const crest = pointOn(crestOuter, angle);
  const out = normalAt(crestOuter, angle);
  const closing = 1 / basin.bermOuterSlope - groundFall * out.y;
  if (closing <= 0) return null;
  const crestOverGround = basin.freeboard - groundOverWater(basin, rim, crest);
  // Toward its ends the berm dies out in ground as high as its crest.
  const reach = Math.max(crestOverGround, 0) / closing;
  return { x: crest.x + reach * out.x, y: crest.y + reach * out.y };
}

/** Uphill the sides go on rising from the rim until they meet the ground; where they never would, they end at the rim. */
function cutFrom(basin: BasinDimensions, rim: Outline, angle: number): Point {
  const start = pointOn(rim, angle);
  const out = normalAt(rim, angle);
  const closing = 1 / basin.sideSlope + (basin.groundFall ?? 0) * out.y;
  const reach = closing <= 0 ? 0 : Math.max(groundOverWater(basin, rim, start), 0) / closing;
  return { x: start.x + reach * out.x, y: start.y + reach * out.y };
}

function groundOverWater({ uphillRise, groundFall }: BasinDimensions, rim: Outline, { y }: Point): number {
  return uphillRise - (groundFall ?? 0) * (y + rim.halfWidth);
}

function sillCorners(basin: BasinDimensions, rim: Outline, end: Point): Point[] {
  const start = pointOn(rim, SILL_ANGLE);
  const out = rim.shape === "rectangle" ? { x: start.x, y: end.y } : end;
  return notchBetween(basin, start, out);
}

function notchBetween(basin: BasinDimensions, start: Point, end: Point): Point[] {
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
