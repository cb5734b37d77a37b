/**
 * Runoff depth in inches for rain in inches and curve number.
 *
 * Source    TR-55, 2nd ed., 1986, table 2-1, as transcribed in the R data package iemiscdata (read in transcription);
 *           printed to 0.01 in. Eighteen rows of the table.
 * Misprint  Rain 7.0 on curve number 50 is printed 1.68; the equation the table is made from gives 1.667.
 */
export const tr55Table21 = {
  printedTo: 0.01,
  curveNumbers: [40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 98],
  rows: [
    [1.0, [0, 0, 0, 0, 0, 0, 0, 0.03, 0.08, 0.17, 0.32, 0.56, 0.79]],
    [1.2, [0, 0, 0, 0, 0, 0, 0.03, 0.07, 0.15, 0.27, 0.46, 0.74, 0.99]],
    [1.4, [0, 0, 0, 0, 0, 0.02, 0.06, 0.13, 0.24, 0.39, 0.61, 0.92, 1.18]],
    [1.8, [0, 0, 0, 0, 0.03, 0.09, 0.17, 0.29, 0.44, 0.65, 0.93, 1.29, 1.58]],
    [2.0, [0, 0, 0, 0.02, 0.06, 0.14, 0.24, 0.38, 0.56, 0.8, 1.09, 1.48, 1.77]],
    [2.5, [0, 0, 0.02, 0.08, 0.17, 0.3, 0.46, 0.65, 0.89, 1.18, 1.53, 1.96, 2.27]],
    [3.0, [0, 0.02, 0.09, 0.19, 0.33, 0.51, 0.71, 0.96, 1.25, 1.59, 1.98, 2.45, 2.77]],
    [4.0, [0.06, 0.18, 0.33, 0.53, 0.76, 1.03, 1.33, 1.67, 2.04, 2.46, 2.92, 3.43, 3.77]],
    [4.5, [0.14, 0.3, 0.5, 0.74, 1.02, 1.33, 1.67, 2.05, 2.46, 2.91, 3.4, 3.92, 4.26]],
    [5.0, [0.24, 0.44, 0.69, 0.98, 1.3, 1.65, 2.04, 2.45, 2.89, 3.37, 3.88, 4.42, 4.76]],
    [6.0, [0.5, 0.8, 1.14, 1.52, 1.92, 2.35, 2.81, 3.28, 3.78, 4.3, 4.85, 5.41, 5.76]],
    [7.0, [0.84, 1.24, 1.68, 2.12, 2.6, 3.1, 3.62, 4.15, 4.69, 5.25, 5.82, 6.41, 6.76]],
    [8.0, [1.25, 1.74, 2.25, 2.78, 3.33, 3.89, 4.46, 5.04, 5.63, 6.21, 6.81, 7.4, 7.76]],
    [10, [2.23, 2.89, 3.56, 4.23, 4.9, 5.56, 6.22, 6.88, 7.52, 8.16, 8.78, 9.4, 9.76]],
    [11, [2.78, 3.52, 4.26, 5.0, 5.72, 6.43, 7.13, 7.81, 8.48, 9.13, 9.77, 10.39, 10.76]],
    [12, [3.38, 4.19, 5.0, 5.79, 6.56, 7.32, 8.05, 8.76, 9.45, 10.11, 10.76, 11.39, 11.76]],
    [14, [4.65, 5.62, 6.55, 7.44, 8.3, 9.12, 9.91, 10.67, 11.39, 12.08, 12.75, 13.39, 13.76]],
    [15, [5.33, 6.36, 7.35, 8.29, 9.19, 10.04, 10.85, 11.63, 12.37, 13.07, 13.74, 14.39, 14.76]],
  ],
  misprint: { rainInches: 7, curveNumber: 50, printed: 1.68, equation: 1.667 },
} as const satisfies { rows: readonly (readonly [rainInches: number, runoffInches: readonly number[]])[] } & Record<string, unknown>;

export interface PrintedRunoff {
  readonly rain: number;
  readonly cn: number;
  readonly runoff: number;
}

/** Every cell but the misprint. */
export const tr55Table21Cells: readonly PrintedRunoff[] = tr55Table21.rows
  .flatMap(([rain, depths]) => depths.map((runoff, column) => ({ rain, cn: tr55Table21.curveNumbers[column]!, runoff })))
  .filter(({ rain, cn }) => !(rain === tr55Table21.misprint.rainInches && cn === tr55Table21.misprint.curveNumber));
