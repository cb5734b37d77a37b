import { render } from "preact";
import type { Drawing } from "../../../addin/actions/basin/save-drawing.ts";
import { svgPicture } from "../../parts/svg-picture.ts";
import { DrawingSheet, SHEET_PIXELS, sheetHeight, sheetWords, type DrawingSheetProps } from "./drawing-sheet.tsx";

/** The drawing sheet as a picture, drawn here in the page. */
export async function drawPicture(sheet: DrawingSheetProps): Promise<Drawing> {
  const frame = document.createElement("div");
  frame.className = "drawing-off-screen";
  document.body.append(frame);
  try {
    render(<DrawingSheet {...sheet} />, frame);
    const drawn = frame.querySelector("svg");
    if (drawn === null) throw new Error("The drawing could not be made.");
    const size = { widthPixels: SHEET_PIXELS, heightPixels: sheetHeight(sheet.basin) };
    return { ...size, pngBase64: await svgPicture(drawn, size.widthPixels, size.heightPixels), description: sheetWords(sheet) };
  } finally {
    render(null, frame);
    frame.remove();
  }
}
