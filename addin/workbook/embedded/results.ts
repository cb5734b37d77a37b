/** People do not type over what formulas fill: it would turn into #SPILL!, or into a number that follows nothing any more. */
import { CanceledError, CommandType, ICommandService, type ICellData, type ICommandInfo, type Injector } from "@univerjs/core";
import {
  IEditorBridgeService,
  InsertColMutation,
  InsertRowMutation,
  MoveRangeMutation,
  RemoveColMutation,
  RemoveRowMutation,
  SetCellEditVisibleOperation,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";

export interface ResultCells {
  /** Why nothing is typed into the cell, or null where typing is as usual. */
  refusalAt(sheetId: string, row: number, column: number): string | null;
  /** Why the sheet's rows and columns stay as they are, or null. */
  refusalOf(sheetId: string): string | null;
  /** A person tried all the same. */
  refused(sentence: string): void;
}

/** What a person does with the content of cells: typing, deleting, pasting, cutting, filling, dragging, sorting. */
const CHANGES_CONTENT =
  /^(sheet\.command\.(set-range-values|clear-selection-(content|all)|paste|auto-fill|refill|move-range|sort-range|delete-range|insert-range|cut)|univer\.command\.(paste|cut))/;
const CHANGES_ROWS: ReadonlySet<string> = new Set([InsertRowMutation.id, InsertColMutation.id, RemoveRowMutation.id, RemoveColMutation.id]);
/** Taking back brings what stood there before. */
const TAKES_BACK = /^univer\.command\.(undo|redo)/;

type Refusal = string | null;

/** Refuses changes by people to results; called before the grid has a workbook. What is written while `isOurs` answers true is ours, and passes. */
export function refuseTypingOverResults(injector: Injector, cells: ResultCells, isOurs: () => boolean): void {
  let command = "";
  injector.get(ICommandService).beforeCommandExecuted((info, options) => {
    if (info.type === CommandType.COMMAND) command = info.id;
    if (isOurs() || options?.onlyLocal === true) return;
    const refusal = refusalFor(info, (info.params as { readonly trigger?: string } | undefined)?.trigger ?? command);
    if (refusal === null) return;
    cells.refused(refusal);
    throw new CanceledError();
  });

  function refusalFor({ id, params }: Readonly<ICommandInfo>, by: string): Refusal {
    if (id === SetCellEditVisibleOperation.id) return (params as { readonly visible?: boolean }).visible === true ? refusalToEdit() : null;
    if (CHANGES_ROWS.has(id) && !TAKES_BACK.test(by)) return cells.refusalOf((params as { readonly subUnitId: string }).subUnitId);
    if (!CHANGES_CONTENT.test(by)) return null;
    if (id === SetRangeValuesMutation.id) return refusalIn(params as Parameters<typeof refusalIn>[0]);
    if (id === MoveRangeMutation.id) {
      const { from, to } = params as Readonly<Record<"from" | "to", { readonly value: Matrix; readonly subUnitId: string }>>;
      return refusalIn({ subUnitId: from.subUnitId, cellValue: from.value }) ?? refusalIn({ subUnitId: to.subUnitId, cellValue: to.value });
    }
    return null;
  }

  function refusalToEdit(): Refusal {
    const cell = injector.get(IEditorBridgeService).getEditLocation();
    return cell ? cells.refusalAt(cell.sheetId, cell.row, cell.column) : null;
  }

  function refusalIn({ subUnitId, cellValue }: { readonly subUnitId: string; readonly cellValue?: Matrix }): Refusal {
    for (const [row, line] of Object.entries(cellValue ?? {})) {
      for (const [column, cell] of Object.entries(line ?? {})) {
        const refusal = saysContent(cell) ? cells.refusalAt(subUnitId, Number(row), Number(column)) : null;
        if (refusal !== null) return refusal;
      }
    }
    return null;
  }
}

type Matrix = Readonly<Record<string, Readonly<Record<string, ICellData | null | undefined>> | undefined>>;

/** Whether something is said about what the cell holds, and not only about its look. */
function saysContent(cell: ICellData | null | undefined): boolean {
  return cell === null || (cell !== undefined && ["v", "f", "p", "si"].some((part) => part in cell));
}
