/** People do not type over what formulas fill: it would turn into #SPILL!, or into a number that follows nothing any more. */
import { CanceledError, CommandType, ICommandService, type ICellData, type ICommandInfo, type IRange, type Injector } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import {
  FormulaDataModel,
  IEditorBridgeService,
  InsertColMutation,
  InsertRowMutation,
  MoveRangeMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetCommand,
  SetCellEditVisibleOperation,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import { columnLetters, type StopListening } from "../port.ts";

/** What people leave as it is, by the sheet's name. */
export interface SheetRules {
  /** Sheets that formulas fill, with the number of their columns: nothing is typed there. */
  readonly computed: ReadonlyMap<string, number>;
  /** Of other sheets, what people are told who would type below a heading whose column formulas fill. */
  readonly results?: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** Sheets whose rows are found by their place: nobody sorts them. */
  readonly keptInOrder: ReadonlySet<string>;
  /** Sheets of the program: deleting one is asked about first. */
  readonly ours?: ReadonlySet<string>;
}

interface OpenGrid {
  readonly injector: Injector;
  workbook(): ReturnType<FUniver["createWorkbook"]>;
}

/** Which cells hold results, and what people are told who would change them. */
export class ResultCells {
  readonly #grid: OpenGrid;
  readonly #rules: SheetRules;
  readonly #listeners = new Set<(sentence: string) => void>();
  readonly #deletionListeners = new Set<(sheet: string) => void>();
  #isWriting = false;

  constructor(grid: OpenGrid, rules: SheetRules = { computed: new Map(), keptInOrder: new Set() }) {
    this.#grid = grid;
    this.#rules = rules;
  }

  /** What is written meanwhile is ours, and passes. */
  get isWriting(): boolean {
    return this.#isWriting;
  }

  writing<Answer>(work: () => Answer): Answer {
    this.#isWriting = true;
    try {
      return work();
    } finally {
      this.#isWriting = false;
    }
  }

  /** Somebody tried all the same, and the sentence says why not. */
  onRefused(listener: (sentence: string) => void): StopListening {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  refused(sentence: string): void {
    for (const listener of this.#listeners) listener(sentence);
  }

  /** Somebody would delete a sheet of the program; nothing has happened yet. */
  onDeletion(listener: (sheet: string) => void): StopListening {
    this.#deletionListeners.add(listener);
    return () => this.#deletionListeners.delete(listener);
  }

  /** Whether the deletion of the sheet is asked about first, and so goes no further. */
  isAskedAbout(sheetId: string): boolean {
    const name = this.#nameOf(sheetId);
    if (this.#rules.ours?.has(name) !== true || this.#deletionListeners.size === 0) return false;
    for (const listener of this.#deletionListeners) listener(name);
    return true;
  }

  /** Why the sheet's rows and columns stay as they are, or null. */
  refusalOf(sheetId: string): string | null {
    const name = this.#nameOf(sheetId);
    return this.#rules.computed.has(name) ? `${name} is computed, and nothing is typed there: change what it is computed from.` : null;
  }

  /** Why the sheet's rows stay in their order, or null. */
  refusalToSort(sheetId: string): string | null {
    const name = this.#nameOf(sheetId);
    if (this.#rules.computed.has(name)) return `${name} is computed, and its rows follow the sheets that it is computed from: sort those.`;
    return this.#rules.keptInOrder.has(name) ? `The rows of ${name} stay in their order: they are found by their place.` : null;
  }

  /** Why nothing is typed into the cell, or null where typing is as usual. */
  refusalAt(sheetId: string, row: number, column: number): string | null {
    if (column < (this.#rules.computed.get(this.#nameOf(sheetId)) ?? 0)) return this.refusalOf(sheetId);
    const spill = this.spills(sheetId).find(
      ({ formula, cells }) => holds(cells, row, column) && !(formula.row === row && formula.column === column),
    );
    return spill === undefined
      ? null
      : `${cellName({ row, column })} is filled by the formula in ${cellName(spill.formula)}: change that one, or what it is computed from.`;
  }

  /** Why nobody types into the cell, where a formula stands in each row of its column; pasting and deleting rows go on. */
  refusalToType(sheetId: string, row: number, column: number): string | null {
    const sheet = this.#grid.workbook().getWorkbook().getSheetBySheetId(sheetId);
    const headingRow = (sheet?.getFreeze().ySplit ?? 0) - 1;
    const heading = sheet?.getCellRaw(headingRow, column)?.v;
    return row <= headingRow ? null : (this.#rules.results?.get(this.#nameOf(sheetId))?.get(String(heading)) ?? null);
  }

  /** The formulas of a sheet that fill more than their own cell. */
  spills(sheetId: string): readonly { readonly formula: Place; readonly cells: IRange }[] {
    const spills = this.#grid.injector.get(FormulaDataModel).getArrayFormulaRange()[this.#grid.workbook().getId()]?.[sheetId];
    return Object.entries(spills ?? {}).flatMap(([row, line]) =>
      Object.entries<IRange>(line ?? {}).map(([column, cells]) => ({ formula: { row: Number(row), column: Number(column) }, cells })),
    );
  }

  get sheetInFront(): string {
    return this.#grid.workbook().getActiveSheet().getSheetId();
  }

  #nameOf(sheetId: string): string {
    return this.#grid.workbook().getWorkbook().getSheetBySheetId(sheetId)?.getName() ?? "";
  }
}

interface Place {
  readonly row: number;
  readonly column: number;
}

/** "K52". */
export function cellName({ row, column }: Place): string {
  return `${columnLetters(column)}${row + 1}`;
}

function holds(cells: IRange, row: number, column: number): boolean {
  return row >= cells.startRow && row <= cells.endRow && column >= cells.startColumn && column <= cells.endColumn;
}

/** What a person does with the content of cells: typing, deleting, pasting, cutting, filling, dragging, sorting. */
const CHANGES_CONTENT =
  /^(sheet\.command\.(set-range-values|clear-selection-(content|all)|paste|auto-fill|refill|move-range|delete-range|insert-range|cut)|univer\.command\.(paste|cut))/;
const CHANGES_ROWS: ReadonlySet<string> = new Set([InsertRowMutation.id, InsertColMutation.id, RemoveRowMutation.id, RemoveColMutation.id]);
/** The grid's own question before it, and the deletion itself. */
const DELETES_SHEET: ReadonlySet<string> = new Set(["sheet.command.remove-sheet-confirm", RemoveSheetCommand.id]);
/** Taking back brings what stood there before. */
const TAKES_BACK = /^univer\.command\.(undo|redo)/;

type Refusal = string | null;

/** Refuses changes by people to results; called before the grid has a workbook. */
export function refuseTypingOverResults(injector: Injector, cells: ResultCells): void {
  let command = "";
  injector.get(ICommandService).beforeCommandExecuted((info, options) => {
    if (info.type === CommandType.COMMAND) command = info.id;
    if (cells.isWriting || options?.onlyLocal === true) return;
    if (DELETES_SHEET.has(info.id) && cells.isAskedAbout(sheetOf(info))) throw new CanceledError();
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

  /** The sheet that a command is about: the one in front where it names none. */
  function sheetOf({ params }: { readonly params?: object | undefined }): string {
    return (params as { readonly subUnitId?: string } | undefined)?.subUnitId ?? cells.sheetInFront;
  }

  function refusalToEdit(): Refusal {
    const cell = injector.get(IEditorBridgeService).getEditLocation();
    if (!cell) return null;
    const { sheetId, row, column } = cell;
    return cells.refusalAt(sheetId, row, column) ?? cells.refusalToType(sheetId, row, column);
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
