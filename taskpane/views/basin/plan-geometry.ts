import { largestOf, smallestOf } from "../../../functions/extremes.ts";
import { FILL, type BasinShape } from "../../../functions/basin/basin-shape.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { bermStartsAt, rimProfile } from "./rim-profile.ts";

/**
 * A basin seen from above, in the yard's length unit.
 *
 *   x runs across the slope, y down it; the origin is the middle of the floor
 *   rim          the water's edge at full ponding: the floor's axes, each longer by 2 z d
 *   around it    in each direction the edges of rim-profile, each out from the floor as the outline that is so much wider
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
  /** Wherever the ground is lower than its crest, from its right end around the downhill side to the left. */
  readonly berm: {
    readonly isAllAround: boolean;
    /** At the rim, or where the side meets ground that is higher. */
    readonly foot: readonly Point[];
    readonly crestInner: readonly Point[];
    readonly crestOuter: readonly Point[];
    /** Null where the ground falls as steeply as the berm's face. */
    readonly toe: readonly Point[] | null;
  };
  /** Where the ground is higher: from the berm's left end around the uphill side to its right end. None where it is all around. */
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
  const end = bermEnd(basin);
  const isAllAround = end === -QUARTER_TURN;
  const along = (from: number, to: number) =>
    Array.from({ length: POINTS_AROUND + 1 }, (_, index) => sideAt(basin, floor, from + ((to - from) * index) / POINTS_AROUND));
  const bermed = along(end, Math.PI - end);
  const toes = bermed.map(({ at, profile }) => {
    const toe = profile.berm === null ? profile.meets : profile.berm.toe;
    return toe === null ? null : at(toe.out);
  });
  const cutEdge = isAllAround ? [] : along(Math.PI - end, 2 * Math.PI + end).map(({ at, profile }) => at(profile.meets.out));
  const placesOf = (edge: "crestInner" | "crestOuter") => bermed.map(({ at, profile }) => at((profile.berm?.[edge] ?? profile.meets).out));
  const berm = {
    isAllAround,
    foot: bermed.map(({ at, profile }) => at(Math.max(profile.meets.out, basin.sideSlope * basin.pondingDepth))),
    crestInner: placesOf("crestInner"),
    crestOuter: placesOf("crestOuter"),
    toe: toes.every((toe) => toe !== null) ? toes : null,
  };
  const sillToe = sideAt(basin, floor, SILL_ANGLE);
  const outermost = [...berm.crestOuter, ...toes.filter((toe) => toe !== null), ...cutEdge];
  const halfLength = largestOf(outermost.map(({ x }) => Math.abs(x)));
  return {
    floor,
    rim,
    crestInner,
    crestOuter,
    berm,
    cutEdge,
    sill: sillCorners(basin, rim, sillToe.at((sillToe.profile.berm?.toe ?? sillToe.profile.berm?.crestOuter ?? sillToe.profile.meets).out)),
    extent: {
      left: -halfLength,
      right: halfLength,
      top: smallestOf(outermost.map(({ y }) => y)),
      bottom: largestOf(outermost.map(({ y }) => y)),
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

const POINTS_AROUND = 48;

const QUARTER_TURN = Math.PI / 2;

/** What stands in one direction, and where its edges lie on the plan. */
function sideAt(basin: BasinDimensions, floor: Outline, angle: number) {
  const { y: downhill } = pointOn({ shape: floor.shape, halfLength: 1, halfWidth: 1 }, angle);
  return { profile: rimProfile(basin, downhill), at: (out: number) => pointOn(widened(floor, out), angle) };
}

/** The angle at which the berm ends on the right, uphill of the middle for the most part; a quarter turn back where it is all around. */
function bermEnd(basin: BasinDimensions): number {
  const downhill = bermStartsAt(basin);
  if (downhill <= -1) return -QUARTER_TURN;
  if (downhill >= 1) return QUARTER_TURN;
  return basin.shape === "ellipse" ? Math.asin(downhill) : Math.atan(downhill);
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
