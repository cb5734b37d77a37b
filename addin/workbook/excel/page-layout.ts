/** How a sheet comes out of the printer: one page wide, its headings on every page. Needs ExcelApi 1.9, which the manifests demand. */
import type { SheetLayout } from "../port.ts";

const NARROW_MARGIN_POINTS = 36;
/** Up to here a sheet is read well upright; a wider one would shrink too far. */
const UPRIGHT_PIXELS = 760;

export function layOutPage(sheet: Excel.Worksheet, { columns, headingRow }: SheetLayout): void {
  const width = columns.reduce((sum, { widthPixels }) => sum + widthPixels, 0);
  const { pageLayout } = sheet;
  pageLayout.set({
    orientation: width > UPRIGHT_PIXELS ? "Landscape" : "Portrait",
    leftMargin: NARROW_MARGIN_POINTS,
    rightMargin: NARROW_MARGIN_POINTS,
    topMargin: NARROW_MARGIN_POINTS,
    bottomMargin: NARROW_MARGIN_POINTS,
    zoom: { horizontalFitToPages: 1 },
  });
  // Whole columns, so that rows which are added are printed too; lists of choices stand in hidden columns beside them.
  const headings = sheet.getRangeByIndexes(headingRow, 0, 1, columns.length);
  pageLayout.setPrintArea(headings.getEntireColumn());
  pageLayout.setPrintTitleRows(headings);
}
