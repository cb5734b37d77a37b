import { ICommandService, IUniverInstanceService, UniverInstanceType, type Injector, type Workbook } from "@univerjs/core";
import {
  IRenderManagerService,
  SHEET_VIEWPORT_KEY,
  ScrollCommand,
  ScrollToRangeOperation,
  SetSelectionsOperation,
  SheetSkeletonManagerService,
  SheetsSelectionsService,
} from "@univerjs/preset-sheets-core";
import type { ISetSelectionsOperationParams } from "@univerjs/preset-sheets-core";

/** One direction of the sheet, in the pixels of an unzoomed sheet. */
interface Axis {
  /** Where each row or column ends. */
  readonly ends: ArrayLike<number>;
  readonly frozen: number;
  /** How much of what is not frozen fits into the window, and how much of it has been scrolled past. */
  readonly windowSize: number;
  readonly scrolled: number;
}

/**
 * The grid scrolls by counting rows and columns, as though those in view were as large as the frozen ones. Where they are
 * wider the selected cell stays out of sight, and of what is typed into it only the first letter is kept. Here the
 * scrolling is put right by the pixel.
 */
export function keepSelectedCellInView(injector: Injector): void {
  injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    const isMove = id === SetSelectionsOperation.id && (params as ISetSelectionsOperationParams).reveal === true;
    if (isMove || id === ScrollToRangeOperation.id) bringSelectedCellIntoView(injector);
  });
}

function bringSelectedCellIntoView(injector: Injector): void {
  const workbook = injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  const cell = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
  const render = injector.get(IRenderManagerService).getRenderById(workbook?.getUnitId() ?? "");
  const main = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
  if (!workbook || !render || !cell || !main || !skeleton) return;
  const { xSplit, ySplit } = workbook.getActiveSheet().getFreeze();
  const { scaleX, scaleY } = render.scene.getAncestorScale();
  const across = {
    ends: skeleton.columnWidthAccumulation,
    frozen: xSplit,
    windowSize: (main.width ?? 0) / scaleX,
    scrolled: main.viewportScrollX,
  };
  const down = {
    ends: skeleton.rowHeightAccumulation,
    frozen: ySplit,
    windowSize: (main.height ?? 0) / scaleY,
    scrolled: main.viewportScrollY,
  };
  const scrolledAcross = scrolledToShow(cell.actualColumn, across);
  const scrolledDown = scrolledToShow(cell.actualRow, down);
  if (scrolledAcross === across.scrolled && scrolledDown === down.scrolled) return;
  const column = placeAt(across.ends, scrolledAcross);
  const row = placeAt(down.ends, scrolledDown);
  injector.get(ICommandService).syncExecuteCommand(ScrollCommand.id, {
    sheetViewStartColumn: column.index,
    offsetX: column.offset,
    sheetViewStartRow: row.index,
    offsetY: row.offset,
  });
}

/** How far to scroll so that the row or column is in sight, from its beginning where it is larger than the window. */
function scrolledToShow(index: number, { ends, frozen, windowSize, scrolled }: Axis): number {
  if (index < frozen) return scrolled;
  const frozenSize = ends[frozen - 1] ?? 0;
  const start = (ends[index - 1] ?? 0) - frozenSize;
  const end = (ends[index] ?? 0) - frozenSize;
  return Math.min(start, Math.max(scrolled, end - windowSize));
}

/** The row or column that begins before so many pixels, and how far into it they reach. */
function placeAt(ends: ArrayLike<number>, pixels: number): { readonly index: number; readonly offset: number } {
  let index = 0;
  while (index < ends.length - 1 && (ends[index] ?? 0) <= pixels) index += 1;
  return { index, offset: pixels - (ends[index - 1] ?? 0) };
}
