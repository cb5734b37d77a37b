import { basinFloor, type BasinShape } from "./basin-shape.ts";

/**
 * Length, width and edge length of a basin floor, for stakes and string.
 *
 *   ellipse    A = pi / 4 L W;  edge = 2 pi / M x (a^2 - sum of 2^(n-1) c_n^2)
 *              a = L / 2, b = W / 2, M the arithmetic-geometric mean of a and b, c_0^2 = a^2 - b^2, c_(n+1) = (a_n - b_n) / 2
 *   rectangle  A = L W;         edge = 2 (L + W)                                   (sq ft, ft)
 *
 * Source  Geometry. The ellipse by Gauss's arithmetic-geometric mean, exact to rounding: Abramowitz and Stegun,
 *         Handbook of Mathematical Functions, 1964, section 17.6 (from memory).
 * Domain  floorAreaSquareFeet >= 0, lengthToWidth >= 1.
 * Limits  The floor. The rim is longer where the sides slope.
 */
export function basinFloorSize(floorAreaSquareFeet: number, shape: BasinShape, lengthToWidth: number): BasinSize {
  const { lengthFeet, widthFeet } = basinFloor(floorAreaSquareFeet, shape, lengthToWidth);
  const edgeFeet = shape === "rectangle" ? 2 * (lengthFeet + widthFeet) : ellipseEdgeFeet(lengthFeet, widthFeet);
  return { lengthFeet, widthFeet, edgeFeet };
}

export interface BasinSize {
  readonly lengthFeet: number;
  readonly widthFeet: number;
  readonly edgeFeet: number;
}

export function ellipseEdgeFeet(lengthFeet: number, widthFeet: number): number {
  if (widthFeet === 0) return 2 * lengthFeet;
  let a = lengthFeet / 2;
  let b = widthFeet / 2;
  let sum = (a ** 2 + b ** 2) / 2;
  // The gap between the means squares itself each time: a handful of rounds reach the last digit.
  for (let weight = 1; a - b > 1e-15 * a; weight *= 2) {
    const gap = (a - b) / 2;
    sum -= weight * gap ** 2;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  }
  return ((2 * Math.PI) / a) * sum;
}
