import { areaAtHeightSquareFeet, type BasinFloor } from "../basin/basin-shape.ts";

/**
 * Part of a frustum that stands over ground of one even fall; the rest of it lies under the ground.
 *
 *   contour    y = (g - h) / s             where the ground stands at the height h: downhill of it the ground is lower
 *   layer      the frustum's outline at h, half axes a and b, cut off by that line:
 *              ellipse a b (acos t - t sqrt(1 - t^2)), rectangle 2 a b (1 - t), t = y / b held between -1 and 1   (sq ft)
 *   volume     the integral of the layers from bottom to top                                                      (cu ft)
 *
 * y runs down the slope from the floor's middle, where the ground stands at g; s is its fall as a fraction; all in ft.
 * Between the heights at which the contour touches the outline the integral is taken by Gauss's rule of 12 points in an
 * angle (h = middle + half x sin angle, which takes the roots out of the ellipse's ends): good to eleven digits.
 *
 * Source  Geometry of the segment; rule of Gauss and Legendre.
 * Domain  Outlines with positive half axes or none, s >= 0, finite heights.
 * Limits  Those of basin-shape: an ellipse widened evenly is taken as the ellipse on the longer axes.
 */
export function volumeOverGround(floor: BasinFloor, frustum: Frustum, ground: FallingGround): number {
  const { bottom, top } = frustum;
  if (bottom.heightFeet === top.heightFeet) return 0;
  const heights = [bottom.heightFeet, ...touchingHeights(floor, frustum, ground), top.heightFeet];
  return heights
    .slice(1)
    .reduce(
      (sum, to, index) => sum + integral((height) => layerOverGround(floor, frustum, ground, height), heights[index] as number, to),
      0,
    );
}

/** All of a frustum, over the ground and under it: the prismoidal rule. */
export function frustumVolume(floor: BasinFloor, { bottom, top }: Frustum): number {
  const area = (wideningFeet: number) => areaAtHeightSquareFeet(floor, wideningFeet, 1);
  const layers = area(bottom.wideningFeet) + 4 * area((bottom.wideningFeet + top.wideningFeet) / 2) + area(top.wideningFeet);
  return ((top.heightFeet - bottom.heightFeet) * layers) / 6;
}

/** Outlines around a basin's floor from one height to another; in between they widen evenly. */
export interface Frustum {
  readonly bottom: Outline;
  readonly top: Outline;
}

export interface Outline {
  readonly heightFeet: number;
  /** Out from the floor's edge. */
  readonly wideningFeet: number;
}

export interface FallingGround {
  /** Over height 0, at the floor's middle. */
  readonly middleFeet: number;
  /** As a fraction of the run. */
  readonly fall: number;
}

export function groundAtFeet({ middleFeet, fall }: FallingGround, downFeet: number): number {
  return middleFeet - fall * downFeet;
}

function wideningAt({ bottom, top }: Frustum, heightFeet: number): number {
  const share = (heightFeet - bottom.heightFeet) / (top.heightFeet - bottom.heightFeet);
  return bottom.wideningFeet + share * (top.wideningFeet - bottom.wideningFeet);
}

function layerOverGround(floor: BasinFloor, frustum: Frustum, { middleFeet, fall }: FallingGround, heightFeet: number): number {
  const widening = wideningAt(frustum, heightFeet);
  const halfWidth = floor.widthFeet / 2 + widening;
  const area = areaAtHeightSquareFeet(floor, widening, 1);
  const over = middleFeet - heightFeet;
  if (over >= fall * halfWidth) return 0;
  if (over <= -fall * halfWidth) return area;
  const cutOff = over / (fall * halfWidth);
  return floor.fill === 1 ? (area * (1 - cutOff)) / 2 : (area * (Math.acos(cutOff) - cutOff * Math.sqrt(1 - cutOff ** 2))) / Math.PI;
}

/** Inside the frustum, from low to high. */
function touchingHeights(floor: BasinFloor, frustum: Frustum, ground: FallingGround): readonly number[] {
  const { bottom, top } = frustum;
  /** Of the outline's end over the ground, uphill or downhill. */
  const overAt = ({ heightFeet, wideningFeet }: Outline, side: 1 | -1) =>
    heightFeet - groundAtFeet(ground, side * (floor.widthFeet / 2 + wideningFeet));
  return ([1, -1] as const).flatMap((side) => {
    const below = overAt(bottom, side);
    const above = overAt(top, side);
    if (below * above >= 0) return [];
    return [bottom.heightFeet + ((top.heightFeet - bottom.heightFeet) * below) / (below - above)];
  });
}

function integral(layer: (heightFeet: number) => number, fromFeet: number, toFeet: number): number {
  const half = (toFeet - fromFeet) / 2;
  const middle = (fromFeet + toFeet) / 2;
  // The contour touches no end in between: a layer of nothing halfway is one all the way.
  if (layer(middle) === 0) return 0;
  return pointsInAngle.reduce((sum, { at, weight }) => sum + weight * half * layer(middle + half * at), 0);
}

interface GaussPoint {
  /** Between -1 and 1. */
  readonly at: number;
  readonly weight: number;
}

/** The roots of Legendre's polynomial of that order, by Newton's method, and 2 / ((1 - x^2) P'(x)^2). */
export function gaussLegendre(order: number): readonly GaussPoint[] {
  return Array.from({ length: order }, (_, index) => {
    let at = Math.cos((Math.PI * (index + 0.75)) / (order + 0.5));
    let steepness = 0;
    for (let step = 0; step < NEWTON_STEPS; step += 1) {
      let [value, before] = [1, 0];
      for (let degree = 0; degree < order; degree += 1)
        [value, before] = [((2 * degree + 1) * at * value - degree * before) / (degree + 1), value];
      steepness = (order * (at * value - before)) / (at ** 2 - 1);
      at -= value / steepness;
    }
    return { at, weight: 2 / ((1 - at ** 2) * steepness ** 2) };
  });
}

/** From the usual first guess four steps reach the last bit. */
const NEWTON_STEPS = 5;

const quarterTurn = Math.PI / 2;

/** Gauss's points of an angle from -90 to 90 degrees, as the sine of each. */
const pointsInAngle = /* @__PURE__ */ gaussLegendre(12).map(({ at, weight }) => ({
  at: Math.sin(quarterTurn * at),
  weight: weight * quarterTurn * Math.cos(quarterTurn * at),
}));
