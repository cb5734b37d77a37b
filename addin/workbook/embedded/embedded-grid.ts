import {
  CanceledError,
  CommandType,
  ICommandService,
  LifecycleService,
  LifecycleStages,
  LocaleType,
  LogLevel,
  Univer,
} from "@univerjs/core";
import type { ICellData, ICommandInfo, IDisposable, IExecutionOptions, IRange, Injector, IWorkbookData, Nullable } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import {
  CalculationMode,
  ClearSelectionFormatCommand,
  FormulaCalculationSessionService,
  FormulaDataModel,
  IActiveDirtyManagerService,
  ILayoutService,
  InsertColMutation,
  InsertRowMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  SetBorderCommand,
  SetFormulaCalculationStartMutation,
  SetRangeValuesMutation,
  SetStyleCommand,
  SetTriggerFormulaCalculationStartMutation,
  UniverSheetsCorePreset,
} from "@univerjs/preset-sheets-core";
import type { IFormulaCalculationSessionState } from "@univerjs/preset-sheets-core";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import { UniverSheetsDrawingPreset } from "@univerjs/preset-sheets-drawing";
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import { defaultTheme } from "@univerjs/themes";
import { filter, firstValueFrom, from, timeout } from "rxjs";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { cellValue, holdsSomething } from "./cells.ts";
import type { DraftedWorkbook } from "./draft.ts";
import { functionRegistration } from "./functions.ts";
import { gridWords } from "./grid-words.ts";
import { answersShown, showAnswers, type KeptAnswers } from "./kept-answers.ts";
import { ResultCells, refuseTypingOverResults, type SheetRules } from "./results.ts";
import { CellSentences } from "./sentences.ts";
import { makeEarlyRepairs, makeRepairs, type Repair } from "./repairs/list.ts";
import { offerSorting } from "./sorting.ts";
import { toolbarMenus } from "./toolbar.ts";
import { WorkbookRefused, isErrorCode, type CellValue, type StopListening } from "../port.ts";

const LONGEST_CALCULATION_MILLISECONDS = 120_000;
/** The name that the grid keeps our settings by. */
export const SETTINGS = "soakbookSettings";
/** The grid cannot hold a workbook without sheets: a blank one has this. */
const BLANK_SHEET = { id: "blank", name: "Sheet1" };
/** The mutations that keep the grid's own house in order: they change nothing that a person put in. */
const GRID_HOUSEKEEPING = /^(formula|doc|data-validation\.mutation\.update-.*-result)\./;

const MOVES_CELLS: ReadonlySet<string> = new Set([
  InsertRowMutation.id,
  InsertColMutation.id,
  RemoveRowMutation.id,
  RemoveColMutation.id,
  MoveRowsMutation.id,
  MoveColsMutation.id,
  MoveRangeMutation.id,
]);

const CHANGES_LOOKS: ReadonlySet<string> = new Set([SetStyleCommand.id, SetBorderCommand.id, ClearSelectionFormatCommand.id]);

export interface GridOptions {
  readonly container: HTMLElement;
  readonly functions: readonly WorksheetFunction[];
  readonly dark: boolean;
  /** What people do not change on which sheet. */
  readonly sheetRules?: SheetRules;
  /** Repairs that a test leaves out, to show what for they are there. */
  readonly without?: readonly Repair[];
}

export type GridWorkbook = ReturnType<FUniver["createWorkbook"]>;

/** The embedded spreadsheet itself: started once, with one workbook open at a time. */
export class EmbeddedGrid {
  readonly api: FUniver;
  readonly injector: Injector;
  readonly #sentences = new CellSentences();
  #workbook: GridWorkbook | null = null;
  /** The calculation that was the latest when something last changed; only a later one covers the change. */
  #calculationBeforeChange = -1;
  #engineIsIdle = (): Promise<void> => Promise.resolve();
  /** Kept answers are shown, and the first calculation of the workbook has not been asked for yet. */
  #isHeldBack = false;
  readonly #without: ReadonlySet<Repair>;
  readonly #results: ResultCells;
  readonly #openListeners = new Set<() => void>();
  readonly #settingListeners = new Set<() => void>();

  constructor(options: GridOptions) {
    this.#without = new Set(options.without);
    const presets = [
      UniverSheetsCorePreset({
        container: options.container,
        ribbonType: "simple",
        menu: toolbarMenus,
        disableTextFormatAlert: true,
        disableTextFormatMark: true,
        sheets: { disableForceStringAlert: true, disableForceStringMark: true },
        formula: {
          ...functionRegistration(options.functions, this.#sentences),
          // A saved answer may come from an earlier version of the functions.
          initialFormulaComputing: CalculationMode.FORCED,
        },
      }),
      // The search field of the list would take the keyboard from a cell that is being typed into.
      UniverSheetsDataValidationPreset({ showSearchOnDropdown: false, showEditOnDropdown: false }),
      UniverSheetsDrawingPreset(),
      UniverSheetsFilterPreset(),
    ];
    const univer = new Univer({
      theme: defaultTheme,
      darkMode: options.dark,
      locale: LocaleType.EN_US,
      locales: { [LocaleType.EN_US]: gridWords },
      logLevel: LogLevel.ERROR,
    });
    this.injector = univer.__getInjector();
    // Before the grid's own parts listen: they forget what a formula filled before they ask whether it may be typed over.
    this.#results = new ResultCells(this, options.sheetRules);
    refuseTypingOverResults(this.injector, this.#results);
    this.injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
      if (this.#isHeldBack && id === SetTriggerFormulaCalculationStartMutation.id) throw new CanceledError();
    });
    makeEarlyRepairs(this.#without);
    for (const plugin of presets.flatMap((preset) => preset.plugins)) {
      if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
      else univer.registerPlugin(plugin);
    }
    this.api = FUniver.newAPI(univer);
  }

  /** Opens a workbook in place of the present one: with the answers that were kept of it, where there are any, until `computeAnew`. */
  open(snapshot: object, kept: KeptAnswers | null = null): void {
    const present = this.#workbook;
    this.#isHeldBack = kept !== null;
    if (present) {
      this.#workbook = null;
      this.api.disposeUnit(present.getId());
      this.#sentences.forgetAll();
      this.#calculationBeforeChange = this.#calculations.state.id;
    }
    this.#workbook = this.api.createWorkbook(snapshot);
    // The grid's own parts come to life with its first workbook.
    if (!present) this.#start();
    if (kept) showAnswers(this.injector, this.#workbook.getId(), kept);
    for (const listener of this.#openListeners) listener();
  }

  /** Computes every formula where the answers shown are kept ones; otherwise that has been asked for by itself. */
  computeAnew(): void {
    if (!this.#isHeldBack) return;
    this.#isHeldBack = false;
    this.api.getFormula().executeCalculation();
  }

  /** What formulas fill beside their own cells, for a save: by which version of the functions it was computed is yours to say. */
  answers(version: string): KeptAnswers {
    return answersShown(this.injector, this.workbook().getId(), version);
  }

  /** Opens a workbook that was put together without the grid. */
  openDraft(draft: DraftedWorkbook): void {
    this.open(draft.snapshot("Program", SETTINGS));
  }

  /** Opens a workbook with nothing in it. */
  openBlank(): void {
    this.open({ name: "Program", sheetOrder: [BLANK_SHEET.id], sheets: { [BLANK_SHEET.id]: BLANK_SHEET } });
  }

  /** What the saved workbook carries for us outside every sheet. */
  get settings(): unknown {
    return this.workbook().getCustomMetadata()?.[SETTINGS];
  }

  set settings(value: object) {
    const workbook = this.workbook();
    workbook.setCustomMetadata({ ...workbook.getCustomMetadata(), [SETTINGS]: value });
    for (const listener of this.#settingListeners) listener();
  }

  /** Resolves when the grid shows its first workbook; before that it cannot scroll or show what is selected. */
  drawn(): Promise<void> {
    return this.injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
  }

  /** Puts the keyboard into the grid. */
  focus(): void {
    this.injector.get(ILayoutService).focus();
  }

  setDark(dark: boolean): void {
    this.api.toggleDarkMode(dark);
  }

  onOpened(listener: () => void): StopListening {
    this.#openListeners.add(listener);
    return () => this.#openListeners.delete(listener);
  }

  /** Something worth keeping changed: a cell, a width, a sheet, a setting. */
  onPersonalChange(listener: () => void): StopListening {
    this.#settingListeners.add(listener);
    const stops = [
      this.onMutation((mutation, options) => {
        if (options?.onlyLocal !== true && !GRID_HOUSEKEEPING.test(mutation.id)) listener();
      }),
      () => this.#settingListeners.delete(listener),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }

  snapshot(): IWorkbookData {
    return this.workbook().save();
  }

  /** False while one workbook makes way for another. */
  get isOpen(): boolean {
    return this.#workbook !== null;
  }

  workbook(): GridWorkbook {
    if (!this.#workbook) throw new Error("The grid was asked for its workbook before one was opened.");
    return this.#workbook;
  }

  /** What the cell holds, spilled or its own; an error is its code. */
  valueAt(sheetId: string, row: number, column: number): CellValue {
    const workbook = this.workbook();
    const own = workbook.getWorkbook().getSheetBySheetId(sheetId)?.getCellRaw(row, column);
    if (holdsSomething(own)) return cellValue(own);
    const spilled = this.injector.get(FormulaDataModel).getArrayFormulaCellData();
    return cellValue(spilled?.[workbook.getId()]?.[sheetId]?.[row]?.[column]);
  }

  /** Rows and columns from A1 to the last cell that counts: by itself one that holds something, spilled cells included. */
  extentOf(
    sheetId: string,
    counts: (cell: Nullable<ICellData>) => boolean = holdsSomething,
  ): { readonly rows: number; readonly columns: number } {
    const workbook = this.workbook();
    const spilled = this.injector.get(FormulaDataModel).getArrayFormulaCellData()?.[workbook.getId()]?.[sheetId];
    const own = workbook.getWorkbook().getSheetBySheetId(sheetId)?.getCellMatrix().getMatrix();
    let rows = 0;
    let columns = 0;
    for (const matrix of [own, spilled]) {
      for (const [row, cells] of Object.entries(matrix ?? {})) {
        for (const [column, cell] of Object.entries<Nullable<ICellData>>(cells ?? {})) {
          if (!counts(cell)) continue;
          rows = Math.max(rows, Number(row) + 1);
          columns = Math.max(columns, Number(column) + 1);
        }
      }
    }
    return { rows, columns };
  }

  /** How far each formula of the sheet that fills more than its own cell has spilled, by its place. */
  spillsOf(sheetId: string): readonly IRange[] {
    const ranges = this.injector.get(FormulaDataModel).getArrayFormulaRange()[this.workbook().getId()]?.[sheetId];
    return Object.values(ranges ?? {}).flatMap((row) => Object.values(row));
  }

  /** Why the cell shows an error, in the words of the function that refused; or null. */
  sentenceAt(sheetId: string, row: number, column: number): string | null {
    const shown = this.valueAt(sheetId, row, column);
    return isErrorCode(shown) ? this.#sentences.at({ sheetId, row, column }, shown) : null;
  }

  /** Resolves when every formula shows its answer to the changes so far. */
  async calculated(): Promise<void> {
    await firstValueFrom(
      from(this.#answersInPlace()).pipe(
        timeout({
          first: LONGEST_CALCULATION_MILLISECONDS,
          with: () => {
            throw new WorkbookRefused("The spreadsheet did not finish computing within two minutes.");
          },
        }),
      ),
    );
  }

  async #answersInPlace(): Promise<void> {
    do {
      await firstValueFrom(this.#calculations.state$.pipe(filter((state) => this.#coversChanges(state))));
      await this.#engineIsIdle();
      // The answers are put in place in the same turn.
      await new Promise((resolve) => setTimeout(resolve, 0));
    } while (!this.#coversChanges(this.#calculations.state));
  }

  /** A mutation of the open workbook was carried out, by whomever. */
  onMutation(listener: (mutation: Readonly<ICommandInfo>, options?: IExecutionOptions) => void): StopListening {
    return stopping(
      this.injector.get(ICommandService).onCommandExecuted((command, options) => {
        if (command.type === CommandType.MUTATION && this.isOpen) listener(command, options);
      }),
    );
  }

  /** Somebody tried to type over what formulas fill, and the sentence says why not. */
  onRefused(listener: (sentence: string) => void): StopListening {
    return this.#results.onRefused(listener);
  }

  /** Somebody would delete a sheet of the program, and is to be asked first. */
  onDeletion(listener: (sheet: string) => void): StopListening {
    return this.#results.onDeletion(listener);
  }

  deleteSheet(name: string): void {
    const sheet = this.workbook().getSheetByName(name);
    if (sheet) this.writing(() => this.workbook().deleteSheet(sheet));
  }

  /** What is written through the port is written by us, not typed by a person. */
  writing<Answer>(work: () => Answer): Answer {
    return this.#results.writing(work);
  }

  get #calculations(): FormulaCalculationSessionService {
    return this.injector.get(FormulaCalculationSessionService);
  }

  /** What else the state says of a calculation may have been said of the one before it: see `calculateInTurn`. */
  #coversChanges({ id, started }: IFormulaCalculationSessionState): boolean {
    return started && id > this.#calculationBeforeChange;
  }

  #start(): void {
    this.#engineIsIdle = makeRepairs(this.injector, (...place) => this.#errorWordsAt(...place), this.#without).engineIsIdle;
    this.#watchCalculations();
    offerSorting(this, this.#results);
  }

  #watchCalculations(): void {
    const dirty = this.injector.get(IActiveDirtyManagerService);
    this.injector.get(ICommandService).onCommandExecuted((command, options) => {
      if (command.id === SetFormulaCalculationStartMutation.id) this.#sentences.recalculationStarts();
      if (MOVES_CELLS.has(command.id)) this.#sayEverythingAgain();
      if (dirty.get(command.id) && !isAnswerOrLook(command, options)) this.#calculationBeforeChange = this.#calculations.state.id;
    });
  }

  /** Formulas stand in other places now than their sentences were kept for. */
  #sayEverythingAgain(): void {
    this.#sentences.forgetAll();
    this.api.getFormula().executeCalculation();
  }

  #errorWordsAt(sheetId: string, row: number, column: number): { readonly code: string; readonly sentence: string } | null {
    const sentence = this.sentenceAt(sheetId, row, column);
    return sentence === null ? null : { code: String(this.valueAt(sheetId, row, column)), sentence };
  }
}

/** The grid computes nothing for it. */
function isAnswerOrLook({ id, params }: Readonly<ICommandInfo>, options?: IExecutionOptions): boolean {
  if (id !== SetRangeValuesMutation.id) return false;
  const { trigger } = (params ?? {}) as { readonly trigger?: string };
  return options?.onlyLocal === true || (trigger !== undefined && CHANGES_LOOKS.has(trigger));
}

function stopping(disposable: IDisposable): StopListening {
  return () => {
    disposable.dispose();
  };
}
