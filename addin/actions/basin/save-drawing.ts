import { DRAWING_ROWS, drawingsSheet, TALLEST_DRAWING_PIXELS } from "../../records/drawings.ts";
import { isBlank, layoutOf } from "../../records/sheet.ts";
import { WorkbookRefused, type CellValue, type Workbook } from "../../workbook/port.ts";
import { isoDate, today } from "../dates.ts";
import type { Yard } from "../program/read-program.ts";

/** A drawing as the pane hands it over. */
export interface Drawing {
  readonly pngBase64: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
  /** The same in words, for the cell above it and for a screen reader. */
  readonly description: string;
}

/** Places the drawing on the sheet Drawings, made when it is needed, under its words; a yard has one, the last. */
export async function saveDrawing(workbook: Workbook, yard: Yard, drawing: Drawing): Promise<void> {
  const sheet = drawingsSheet.name;
  const names = await workbook.sheetNames();
  if (!names.some((name) => name.toLowerCase() === sheet.toLowerCase())) await workbook.addSheets([layoutOf(drawingsSheet)]);
  const [cells = []] = await workbook.readSheets([sheet]);
  if (!isOurs(cells))
    throw new WorkbookRefused(
      `This workbook has a sheet "${sheet}" of its own. Give that sheet another name, then save the drawing again.`,
    );
  const row = rowOf(cells, yard.siteId);
  const words = [yard.siteId, yard.site.record.yard, isoDate(today()), drawing.description];
  await workbook.writeValues([{ range: { sheet, row, column: 0, rows: 1, columns: words.length }, values: [words] }]);
  const smaller = Math.min(1, TALLEST_DRAWING_PIXELS / drawing.heightPixels);
  await workbook.placePicture({
    sheet,
    row: row + 1,
    column: 0,
    name: drawingName(yard),
    pngBase64: drawing.pngBase64,
    widthPixels: Math.round(drawing.widthPixels * smaller),
    heightPixels: Math.round(drawing.heightPixels * smaller),
    description: drawing.description,
  });
}

/** Whether a drawing of the yard stands in the workbook. */
export async function hasDrawing(workbook: Workbook, yard: Yard): Promise<boolean> {
  const names = await workbook.sheetNames();
  return names.includes(drawingsSheet.name) && (await workbook.pictureNames(drawingsSheet.name)).includes(drawingName(yard));
}

export function drawingName({ siteId }: Yard): string {
  return `Basin ${siteId}`;
}

function isOurs(cells: readonly (readonly CellValue[])[]): boolean {
  const headings = Object.values(drawingsSheet.columns).map(({ heading }) => heading);
  return headings.every((heading, column) => cells[HEADING_ROW]?.[column] === heading);
}

/** The yard's own row, or the first of the block under the last that holds anything. */
function rowOf(cells: readonly (readonly CellValue[])[], siteId: string): number {
  const own = cells.findIndex((row, index) => index > HEADING_ROW && row[0] === siteId);
  if (own >= 0) return own;
  const last = cells.findLastIndex((row, index) => index > HEADING_ROW && row.some((cell) => !isBlank(cell)));
  return last < 0 ? HEADING_ROW + 1 : last + DRAWING_ROWS;
}

const HEADING_ROW = drawingsSheet.preface.length;
