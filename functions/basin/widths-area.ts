/**
 * Area of any outline from widths measured at equal steps along it, the first and the last included.
 *
 *   Simpson    A = s / 3 (w1 + 4 w2 + 2 w3 + ... + 4 w(n-1) + wn)      for an odd number of widths, 3 or more
 *   trapezoid  A = s (w1 / 2 + w2 + ... + w(n-1) + wn / 2)             for an even number
 *
 * in any one unit of length and its square.
 *
 * Source  The two rules of surveyors for offsets at equal steps (read: an example of each is among the tests).
 * Domain  At least two widths, each >= 0, taken square to the line; step >= 0.
 * Limits  Simpson is exact for edges that curve like a parabola or a cubic, the trapezoid for straight ones.
 */
export function areaFromWidths(widths: readonly number[], step: number): number {
  return ruleFor(widths.length) === "Simpson" ? simpson(widths, step) : trapezoid(widths, step);
}

export type WidthsRule = "Simpson" | "trapezoid";

export function ruleFor(count: number): WidthsRule {
  return count % 2 === 1 ? "Simpson" : "trapezoid";
}

function simpson(widths: readonly number[], step: number): number {
  const last = widths.length - 1;
  const weighted = widths.reduce((sum, width, place) => sum + width * (place === 0 || place === last ? 1 : place % 2 === 1 ? 4 : 2), 0);
  return (step / 3) * weighted;
}

function trapezoid(widths: readonly number[], step: number): number {
  const last = widths.length - 1;
  return step * widths.reduce((sum, width, place) => sum + (place === 0 || place === last ? width / 2 : width), 0);
}
