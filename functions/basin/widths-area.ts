/**
 * Area of any outline from widths measured at equal steps along it, the first and the last included.
 *
 *   Simpson    A = s / 3 (w1 + 4 w2 + 2 w3 + ... + 4 w(n-1) + wn)      for an odd number of widths, 3 or more
 *   trapezoid  A = s (w(n-1) + wn) / 2                                  for the last strip of an even number, after Simpson's rule
 *
 * in any one unit of length and its square.
 *
 * Source  The two rules of surveyors for offsets at equal steps (read: examples are among the tests).
 * Domain  At least two widths, each >= 0, taken square to the line; step >= 0.
 * Limits  Simpson is exact for edges that curve like a parabola or a cubic, the trapezoid for straight ones. Of an even
 *         number the answer depends a little on which end is the last.
 */
export function areaFromWidths(widths: readonly number[], step: number): number {
  const bySimpson = simpsonWidths(widths);
  const last = widths.slice(-2).reduce((sum, width) => sum + width, 0);
  return simpson(bySimpson, step) + (bySimpson.length === widths.length ? 0 : (step * last) / 2);
}

/** The widths that Simpson's rule takes: all of an odd number, all but the last of an even one. */
export function simpsonWidths(widths: readonly number[]): readonly number[] {
  return widths.length % 2 === 1 ? widths : widths.slice(0, -1);
}

function simpson(widths: readonly number[], step: number): number {
  const last = widths.length - 1;
  if (last === 0) return 0;
  const weighted = widths.reduce((sum, width, place) => sum + width * (place === 0 || place === last ? 1 : place % 2 === 1 ? 4 : 2), 0);
  return (step / 3) * weighted;
}
