import { largestOf } from "../../../functions/extremes.ts";
import type { ColumnLayout } from "../port.ts";

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

/** The grid draws the drop-down arrow and wider digits inside a column that Excel finds wide enough. */
const EXTRA_WIDTH_PIXELS = 25;
const LINE_HEIGHT_PIXELS = 19;
const CHARACTER_WIDTH_PIXELS = 7.5;

export function widthPixels(column: ColumnLayout): number {
  return column.widthPixels + EXTRA_WIDTH_PIXELS;
}

export function headingHeightPixels(columns: readonly ColumnLayout[]): number {
  const lines = columns.map((column) => lineCount(column.heading, widthPixels(column) - 8));
  return largestOf([1, ...lines]) * LINE_HEIGHT_PIXELS + 12;
}

/** Lines that the words take when they are wrapped at the width. */
function lineCount(text: string, pixels: number): number {
  const characters = Math.max(1, Math.floor(pixels / CHARACTER_WIDTH_PIXELS));
  let lines = 1;
  let used = 0;
  for (const word of text.split(" ")) {
    if (used > 0 && used + 1 + word.length > characters) {
      lines += 1;
      used = word.length;
    } else {
      used += (used > 0 ? 1 : 0) + word.length;
    }
  }
  return lines;
}
