/**
 * Area of a surface from a few lengths, as seen from above.
 *
 *   rectangle   A = l w
 *   triangle    A = b h / 2                 (h square to b)
 *   circle      A = p pi d^2 / 4            (p the part of the circle that is there, d right across)
 *   trapezoid   A = (a + b) / 2 x h         (a and b the two sides that run alike, h between them)
 *   footprint   A = (l + 2 o)(w + 2 o)      (o overhang of a roof beyond the walls, alike on all sides)
 *
 * in any one unit of length and its square.
 *
 * Source  Definitions; worked examples of trapezoid and part of a circle: a mathematics forum's page (read).
 * Domain  Every length >= 0; 0 <= p <= 1.
 * Limits  What is not one of these is measured in parts, or by widths at equal steps.
 */
export function rectangleArea(length: number, width: number): number {
  return length * width;
}

export function triangleArea(base: number, height: number): number {
  return (base * height) / 2;
}

export function circleArea(diameter: number, part: number): number {
  return (part * Math.PI * diameter ** 2) / 4;
}

export function trapezoidArea(oneSide: number, otherSide: number, between: number): number {
  return ((oneSide + otherSide) / 2) * between;
}

export function footprintArea(length: number, width: number, overhang: number): number {
  return rectangleArea(length + 2 * overhang, width + 2 * overhang);
}
