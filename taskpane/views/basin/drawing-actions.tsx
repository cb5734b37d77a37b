import { useEffect, useState } from "preact/hooks";
import { isoDate, today } from "../../../addin/actions/dates.ts";
import type { BasinDraft } from "../../../addin/actions/basin/draft-basin.ts";
import { hasDrawing, saveDrawing } from "../../../addin/actions/basin/save-drawing.ts";
import { Button } from "../../parts/form.tsx";
import { printPaper } from "../../parts/print-paper.tsx";
import type { ViewProps } from "../../view.ts";
import type { BasinDimensions } from "./basin-dimensions.ts";
import { drawPicture } from "./draw-picture.tsx";
import { DrawingSheet } from "./drawing-sheet.tsx";
import { basinText } from "./text.ts";

const words = basinText.sheetOfDrawings;

/** The drawing on paper, and in the workbook. */
export function DrawingActions({
  yard,
  program,
  workbook,
  write,
  draft,
  basin,
  assumed,
}: ViewProps & {
  readonly draft: BasinDraft;
  readonly basin: BasinDimensions;
  readonly assumed: boolean;
}) {
  const [isSaved, setSaved] = useState(false);
  const [cannotPrint, setCannotPrint] = useState(false);
  useEffect(() => {
    let isShown = true;
    hasDrawing(workbook, yard).then(
      (there) => isShown && setSaved(there),
      // Whether one is there only changes what the button says.
      () => undefined,
    );
    return () => {
      isShown = false;
    };
  }, [program]);
  const sheet = { yard, draft, basin, date: isoDate(today()) };
  return (
    <>
      <div class="buttons">
        <Button onClick={async () => setCannotPrint((await printPaper(<DrawingSheet {...sheet} />)) !== null)}>{words.print}</Button>
        {!assumed && (
          <Button onClick={() => write(async () => saveDrawing(workbook, yard, await drawPicture(sheet)), words.saved(yard.siteId))}>
            {isSaved ? words.saveAgain : words.save}
          </Button>
        )}
      </div>
      <p class="hint">{assumed ? words.assumed : words.hint}</p>
      <p class="fault" role="status">
        {cannotPrint ? words.cannotPrint : ""}
      </p>
    </>
  );
}
