/**
 * Saxton and Rawls, Soil Science Society of America Journal 70, 2006, table 3 (read in transcription): organic matter
 * 2.5 percent; percents by volume printed to 1, saturated rate in mm/h printed to 0.1.
 */
const rows: readonly (readonly [
  texture: string,
  sand: number,
  clay: number,
  wiltingPoint: number,
  fieldCapacity: number,
  saturation: number,
  millimetresPerHour: number,
])[] = [
  ["sand", 88, 5, 5, 10, 46, 108.1],
  ["loamy sand", 80, 5, 5, 12, 46, 96.7],
  ["loam", 40, 20, 14, 28, 46, 15.5],
  ["silt loam", 20, 15, 11, 31, 48, 16.1],
  ["silt", 10, 5, 6, 30, 48, 22],
  ["sandy clay loam", 60, 25, 17, 27, 43, 11.3],
  ["silty clay", 10, 45, 27, 41, 52, 3.7],
  ["sandy clay", 50, 40, 25, 36, 44, 1.4],
];

export const saxtonRawlsTable3 = {
  rows: rows.map(([texture, sand, clay, wiltingPoint, fieldCapacity, saturation, millimetresPerHour]) => ({
    texture,
    sand,
    clay,
    wiltingPoint,
    fieldCapacity,
    saturation,
    millimetresPerHour,
  })),
  percentPrintedTo: 1,
  ratePrintedTo: 0.1,
};
