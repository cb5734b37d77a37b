import { nameColumn, textColumn } from "./column.ts";
import type { Sheet } from "./sheet.ts";

/**
 * Pictures of basins, each under the row that says in words what it shows. The sheet is made when the first drawing is
 * saved; nothing is computed from it.
 */
export const drawingsSheet = {
  name: "Drawings",
  preface: [
    "Drawings: plan and section of each yard's basin, as they were when they were saved",
    "A drawing does not change with the cells. Save it again from the pane after a change; the new one takes its place.",
  ],
  columns: {
    siteId: nameColumn("Site ID", { widthPixels: 76 }),
    yard: textColumn("Yard", { widthPixels: 215 }),
    drawnOn: textColumn("Drawn on", { widthPixels: 100 }),
    shows: textColumn("What it shows", { widthPixels: 900 }),
  },
  rows: 0,
  frozenColumns: 0,
} as const satisfies Sheet;

/** Rows from one yard's words to the next one's: enough for the tallest picture at the lowest usual row. */
export const DRAWING_ROWS = 60;

/** What Excel gives a row that nobody changed; the embedded spreadsheet's are higher. */
export const LOWEST_ROW_PIXELS = 20;

export const TALLEST_DRAWING_PIXELS = (DRAWING_ROWS - 2) * LOWEST_ROW_PIXELS;
