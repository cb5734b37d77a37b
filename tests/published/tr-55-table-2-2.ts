/**
 * Curve numbers of a yard's surfaces for soil groups A, B, C and D, written down a second time, row by row as printed.
 *
 * Source  TR-55, 2nd ed., 1986, tables 2-2a and 2-2c, as transcribed in the R data package iemiscdata (read in transcription).
 */
export const tr55Table22 = [
  ["roof or paving", 98, 98, 98, 98],
  ["gravel drive", 76, 85, 89, 91],
  ["dirt drive", 72, 82, 87, 89],
  ["poor lawn", 68, 79, 86, 89],
  ["fair lawn", 49, 69, 79, 84],
  ["good lawn", 39, 61, 74, 80],
  ["bare graded soil", 77, 86, 91, 94],
  ["meadow", 30, 58, 71, 78],
  ["poor brush", 48, 67, 77, 83],
  ["fair brush", 35, 56, 70, 77],
  ["good brush", 30, 48, 65, 73],
  ["poor orchard", 57, 73, 82, 86],
  ["fair orchard", 43, 65, 76, 82],
  ["good orchard", 32, 58, 72, 79],
  ["poor woods", 45, 66, 77, 83],
  ["fair woods", 36, 60, 73, 79],
  ["good woods", 30, 55, 70, 77],
  ["farmstead", 59, 74, 82, 86],
  ["lot of 1/8 acre", 77, 85, 90, 92],
  ["lot of 1/4 acre", 61, 75, 83, 87],
  ["lot of 1/3 acre", 57, 72, 81, 86],
  ["lot of 1/2 acre", 54, 70, 80, 85],
  ["lot of 1 acre", 51, 68, 79, 84],
  ["lot of 2 acres", 46, 65, 77, 82],
] as const;

/** Percent impervious of the lots, same tables. */
export const lotImperviousPercent = {
  "lot of 1/8 acre": 65,
  "lot of 1/4 acre": 38,
  "lot of 1/3 acre": 30,
  "lot of 1/2 acre": 25,
  "lot of 1 acre": 20,
  "lot of 2 acres": 12,
} as const;
