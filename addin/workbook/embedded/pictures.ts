import { SheetDrawingAnchorType } from "@univerjs/preset-sheets-drawing";
import type { GridWorkbook } from "./embedded-grid.ts";
import { WorkbookRefused, type PictureWrite } from "../port.ts";

type GridSheet = ReturnType<GridWorkbook["getActiveSheet"]>;

/** The grid keeps a picture in the workbook itself, under the picture's own name. It shows no description of one. */
export async function placePicture(sheet: GridSheet, picture: PictureWrite): Promise<void> {
  const image = await sheet
    .newOverGridImage()
    .setSource(`data:image/png;base64,${picture.pngBase64}`)
    .setRow(picture.row)
    .setColumn(picture.column)
    .setWidth(picture.widthPixels)
    .setHeight(picture.heightPixels)
    .setAnchorType(SheetDrawingAnchorType.Position)
    .buildAsync();
  const drawingId = PREFIX + picture.name;
  const earlier = sheet.getImageById(drawingId);
  if (earlier !== null) sheet.deleteImages([earlier]);
  sheet.insertImages([{ ...image, drawingId }]);
  if (sheet.getImageById(drawingId) === null)
    throw new WorkbookRefused(`The picture cannot be placed: the sheet ${picture.sheet} is protected.`);
}

export function pictureNames(sheet: GridSheet): readonly string[] {
  return sheet.getImages().map((image) => nameOf(image.getId()));
}

/** The grid uses the name as an object's key: no name may be mistaken for a part of every object. */
const PREFIX = "picture ";

function nameOf(drawingId: string): string {
  return drawingId.startsWith(PREFIX) ? drawingId.slice(PREFIX.length) : drawingId;
}
