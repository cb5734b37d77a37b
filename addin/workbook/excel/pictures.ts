/** Pictures over a sheet's cells: Excel calls them shapes. */
import { inExcel, POINTS_PER_PIXEL, rangeIn } from "./run.ts";
import type { CellRange, PictureWrite } from "../port.ts";

export function placePicture(picture: PictureWrite): Promise<void> {
  const { sheet, row, column, name, pngBase64, widthPixels, heightPixels, description } = picture;
  return inExcel([sheet], async (context) => {
    const { shapes } = context.workbook.worksheets.getItem(sheet);
    const corner = cornerOf(context, { sheet, row, column, rows: 1, columns: 1 });
    shapes.load("items/name");
    await context.sync();
    for (const shape of shapes.items) if (shape.name === name) shape.delete();
    const placed = shapes.addImage(pngBase64);
    // The first width or height of a picture that keeps its proportions would change the other.
    placed.lockAspectRatio = false;
    placed.set({
      name,
      ...corner(),
      width: widthPixels * POINTS_PER_PIXEL,
      height: heightPixels * POINTS_PER_PIXEL,
      altTextDescription: description,
    });
    placed.lockAspectRatio = true;
  });
}

export function pictureNames(sheet: string): Promise<readonly string[]> {
  return inExcel([sheet], async (context) => {
    const { shapes } = context.workbook.worksheets.getItem(sheet);
    shapes.load("items/name, items/type");
    await context.sync();
    return shapes.items.filter(({ type }) => type === "Image").map(({ name }) => name);
  });
}

type Corner = () => { readonly left: number; readonly top: number };

/** Asks for the top left corner of a cell, in points; the answer is there after the next sync. */
function cornerOf(context: Excel.RequestContext, cell: CellRange): Corner {
  if (!Office.context.requirements.isSetSupported("ExcelApi", "1.10")) return cornerByUsualRows(context, cell);
  const range = rangeIn(context, cell).load("left, top");
  return () => ({ left: range.left, top: range.top });
}

/** Before ExcelApi 1.10 no cell says where it is. Rows that somebody made taller or lower are taken as usual ones. */
function cornerByUsualRows(context: Excel.RequestContext, cell: CellRange): Corner {
  const worksheet = context.workbook.worksheets.getItem(cell.sheet).load("standardHeight");
  const columnsBefore = Array.from({ length: cell.column }, (_, column) =>
    rangeIn(context, { ...cell, column }).load("format/columnWidth"),
  );
  return () => ({
    left: columnsBefore.reduce((left, { format }) => left + format.columnWidth, 0),
    top: cell.row * worksheet.standardHeight,
  });
}
