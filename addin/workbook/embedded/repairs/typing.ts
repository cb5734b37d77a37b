import type { Injector } from "@univerjs/core";
import { IEditorBridgeService } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

/**
 * When an answer is put into a cell the grid fills the editor anew from the cell in front, on whatever sheet the answer
 * stands: the letters typed so far would be gone. Here a cell that is being typed into is left alone until it is confirmed.
 */
export function keepWhatIsBeingTyped(injector: Injector): void {
  const editor = reach<Pick<IEditorBridgeService, "refreshEditCellState" | "isVisible">>(
    injector.get(IEditorBridgeService),
    "cell editor",
    ["refreshEditCellState", "isVisible"],
  );
  const refresh = editor.refreshEditCellState.bind(editor);
  editor.refreshEditCellState = () => {
    if (!editor.isVisible().visible) refresh();
  };
}
