/**
 * The grid measures in pixels, the file in points and in widths of the default font's widest digit.
 *
 * Source  Office Open XML, ECMA-376 part 1, 18.3.1.13 "col": digits of 7 pixels and 5 pixels of padding at 11 pt (from
 *         memory); a point is 1/72 in and a pixel 1/96 in.
 */
const DIGIT_PIXELS = 7;
const PADDING_PIXELS = 5;
const POINTS_A_PIXEL = 72 / 96;

export function digitsWide(pixels: number): number {
  return Math.max(0, (pixels - PADDING_PIXELS) / DIGIT_PIXELS);
}

export function pixelsWide(digits: number): number {
  return Math.round(digits * DIGIT_PIXELS + PADDING_PIXELS);
}

export function pointsHigh(pixels: number): number {
  return pixels * POINTS_A_PIXEL;
}

export function pixelsHigh(points: number): number {
  return points / POINTS_A_PIXEL;
}
