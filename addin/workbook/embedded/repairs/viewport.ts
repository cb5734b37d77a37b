import type { Injector } from "@univerjs/core";
import { BaseSelectionRenderService, SHEET_VIEWPORT_KEY, SheetsSelectionsService } from "@univerjs/preset-sheets-core";
import type { SheetSkeletonManagerService } from "@univerjs/preset-sheets-core";
import { reach } from "./reach.ts";

/** By which part of a frozen sheet the grid places the editor of a cell. */
interface SelectionOfASheet {
  readonly _scene: { getViewport(key: SHEET_VIEWPORT_KEY): object | undefined };
  readonly _sheetSkeletonManagerService: Pick<SheetSkeletonManagerService, "getCurrentSkeleton">;
  getViewPort(): object | undefined;
}

/**
 * The grid keeps the part of the sheet that was clicked last. After a click in a frozen column it goes on answering that
 * part when Tab has moved on to columns that scroll: the editor is placed without their scrolling, comes out narrower than
 * nothing, and of what is typed into each further cell only the first letter stays. Here it is the part that the selected
 * cell is in.
 */
export function placeEditorByItsCell(injector: Injector): void {
  const selections = reach<Pick<SelectionOfASheet, "getViewPort">>(BaseSelectionRenderService.prototype, "selection", ["getViewPort"]);
  const lastClicked = selections.getViewPort;
  selections.getViewPort = function (this: object) {
    const selection = reach<SelectionOfASheet>(this, "selection", ["_scene", "_sheetSkeletonManagerService"]);
    const cell = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
    const freeze = selection._sheetSkeletonManagerService.getCurrentSkeleton()?.getWorksheetConfig().freeze;
    if (!cell || !freeze) return lastClicked.call(selection);
    const part = partWith(cell.actualColumn < freeze.startColumn, cell.actualRow < freeze.startRow);
    return selection._scene.getViewport(part) ?? lastClicked.call(selection);
  };
}

function partWith(isFrozenAcross: boolean, isFrozenDown: boolean): SHEET_VIEWPORT_KEY {
  if (isFrozenAcross) return isFrozenDown ? SHEET_VIEWPORT_KEY.VIEW_MAIN_LEFT_TOP : SHEET_VIEWPORT_KEY.VIEW_MAIN_LEFT;
  return isFrozenDown ? SHEET_VIEWPORT_KEY.VIEW_MAIN_TOP : SHEET_VIEWPORT_KEY.VIEW_MAIN;
}
