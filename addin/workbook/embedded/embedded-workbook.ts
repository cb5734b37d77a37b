import { DataValidationRenderMode, LifecycleStages, type ICellData, type IWorksheetData } from "@univerjs/core";
import { ScrollToRangeOperation, SetRangeValuesCommand, SheetsSelectionsService } from "@univerjs/preset-sheets-core";
import { merge } from "rxjs";
import { formulaCell, valueCell } from "./cells.ts";
import type { EmbeddedGrid, GridWorkbook } from "./embedded-grid.ts";
import { sheetsTouched } from "./changes.ts";
import { continueDropDowns, forgetDependencies, looksOfRowAbove } from "./growth.ts";
import { choiceRefusal, layOut, ROOM_BELOW_ROWS } from "./layout.ts";
import { formulasIn, valuesIn } from "./read-cells.ts";
import { pictureNames, placePicture } from "./pictures.ts";
import {
  dropDownsOf,
  SheetExists,
  SheetMissing,
  WorkbookRefused,
  addressOf,
  type CellRange,
  type CellValue,
  type Extent,
  type FormulaWrite,
  type PictureWrite,
  type SheetLayout,
  type StopListening,
  type ValueWrite,
  type Workbook,
} from "../port.ts";

type GridSheet = ReturnType<GridWorkbook["getActiveSheet"]>;

/** Long enough to take in a paste of many cells, short enough that nobody sees the wait. */
const BURST_MILLISECONDS = 30;

/** From here on it is quicker to find out anew what every formula depends on than to forget it formula by formula. */
const MANY_FORMULAS = 200;

/** The command asks for a range even where its cells say for themselves where they stand. */
const A1 = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };

/** The workbook port on the embedded spreadsheet. */
export class EmbeddedWorkbook implements Workbook {
  readonly #grid: EmbeddedGrid;
  /** Resolves when many formulas that were just written show their answers. */
  #manyAnswers: Promise<void> | null = null;

  constructor(grid: EmbeddedGrid) {
    this.#grid = grid;
  }

  sheetNames(): Promise<readonly string[]> {
    return settle(() => this.#workbook.getSheets().map((sheet) => sheet.getSheetName()));
  }

  spills(): Promise<boolean> {
    return Promise.resolve(true);
  }

  addSheets(layouts: readonly SheetLayout[]): Promise<void> {
    return settle(() => {
      const taken = new Set(this.#workbook.getSheets().map((sheet) => sheet.getSheetName()));
      for (const { name } of layouts) {
        if (taken.has(name)) throw new SheetExists(name);
        taken.add(name);
      }
      const inFront = this.#workbook.getActiveSheet();
      for (const layout of layouts) this.#addSheet(layout);
      if (layouts.length > 0) this.#workbook.setActiveSheet(inFront);
    });
  }

  read(ranges: readonly CellRange[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
    return settle(() => ranges.map((range) => this.#valuesOf(range)));
  }

  extents(names: readonly string[]): Promise<readonly Extent[]> {
    return settle(() => names.map((name) => this.#grid.extentOf(this.#sheet(name).getSheetId())));
  }

  readSheets(names: readonly string[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
    return settle(() =>
      names.map((name) => {
        const extent = this.#grid.extentOf(this.#sheet(name).getSheetId());
        return this.#valuesOf({ sheet: name, row: 0, column: 0, ...extent });
      }),
    );
  }

  readFormulas(range: CellRange): Promise<readonly (readonly string[])[]> {
    return settle(() => formulasIn(this.#grid, this.#sheet(range.sheet).getSheetId(), range));
  }

  writeValues(writes: readonly ValueWrite[]): Promise<void> {
    return this.#afterManyAnswers(() => {
      this.#write(writes.map(({ range, values }) => ({ range, cells: values.map((row) => row.map(valueCell)) })));
    });
  }

  writeFormulas(writes: readonly FormulaWrite[]): Promise<void> {
    const areMany = writes.reduce((count, { range }) => count + range.rows * range.columns, 0) > MANY_FORMULAS;
    return this.#afterManyAnswers(() => {
      if (areMany) forgetDependencies(this.#grid.injector);
      this.#write(writes.map(({ range, formulas }) => ({ range, cells: formulas.map((row) => row.map(formulaCell)) })));
      if (areMany) this.#waitForManyAnswers();
    });
  }

  /** A write that overtook the first answers of many formulas would leave them without any: see `#writeSheet`. */
  #afterManyAnswers(write: () => void): Promise<void> {
    return this.#manyAnswers === null ? settle(write) : this.#manyAnswers.then(write);
  }

  #waitForManyAnswers(): void {
    const answers = this.#grid
      .calculated()
      .then(
        () => undefined,
        () => undefined,
      )
      .then(() => {
        if (this.#manyAnswers === answers) this.#manyAnswers = null;
      });
    this.#manyAnswers = answers;
  }

  continueLayout(ranges: readonly CellRange[]): Promise<void> {
    return settle(() => {
      const targets = ranges.map((range) => ({ range, sheet: this.#sheet(range.sheet) }));
      for (const { range, sheet } of targets) {
        this.#makeRoom(sheet, { ...range, rows: range.rows + ROOM_BELOW_ROWS });
        this.#setCells(sheet, looksOfRowAbove(sheet, range));
        continueDropDowns(sheet, range);
      }
    });
  }

  async placePicture(picture: PictureWrite): Promise<void> {
    const sheet = this.#sheet(picture.sheet);
    this.#makeRoom(sheet, { ...picture, rows: 1, columns: 1 });
    await placePicture(sheet, picture);
  }

  pictureNames(sheet: string): Promise<readonly string[]> {
    return settle(() => pictureNames(this.#sheet(sheet)));
  }

  calculated(): Promise<void> {
    return this.#grid.calculated();
  }

  selection(): Promise<CellRange | null> {
    return settle(() => this.#selection());
  }

  select(range: CellRange): Promise<void> {
    return settle(() => {
      const sheet = this.#sheet(range.sheet);
      this.#makeRoom(sheet, range);
      this.#workbook.setActiveSheet(sheet);
      sheet.getRange(range.row, range.column, range.rows, range.columns).activate();
      // Before the grid is drawn for the first time there is nothing to scroll.
      if (this.#grid.api.getCurrentLifecycleStage() < LifecycleStages.Rendered) return;
      this.#grid.api.syncExecuteCommand(ScrollToRangeOperation.id, { range: gridRange(range) });
    });
  }

  onSelectionChanged(listener: (selection: CellRange) => void): StopListening {
    const selections = this.#grid.injector.get(SheetsSelectionsService);
    let last = "";
    const announce = (): void => {
      const selection = this.#selection();
      if (!selection || addressOf(selection) === last) return;
      last = addressOf(selection);
      listener(selection);
    };
    const moves = merge(selections.selectionMoveEnd$, selections.selectionSet$).subscribe(announce);
    const sheetInFront = this.#grid.api.addEvent(this.#grid.api.Event.ActiveSheetChanged, announce);
    return () => {
      moves.unsubscribe();
      sheetInFront.dispose();
    };
  }

  onCellsChanged(listener: (sheets: readonly string[]) => void): StopListening {
    const changed = new Set<string>();
    let waiting = false;
    const announce = async (): Promise<void> => {
      await new Promise((resolve) => setTimeout(resolve, BURST_MILLISECONDS));
      // The answers to a change belong to the same burst.
      await this.#grid.calculated().catch(() => undefined);
      waiting = false;
      const names = this.#workbook.getSheets().filter((sheet) => changed.has(sheet.getSheetId()));
      changed.clear();
      if (names.length > 0) listener(names.map((sheet) => sheet.getSheetName()));
    };
    const note = (sheetIds: readonly string[]): void => {
      for (const sheetId of sheetIds) changed.add(sheetId);
      if (waiting || changed.size === 0) return;
      waiting = true;
      void announce();
    };
    const stops = [
      this.#grid.onMutation((mutation) => {
        note(sheetsTouched(mutation, this.#workbook.getId()));
      }),
      this.#grid.onOpened(() => {
        note(this.#workbook.getSheets().map((sheet) => sheet.getSheetId()));
      }),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }

  /** Somebody tried to type over what formulas fill, and the sentence says why not. */
  onRefused(listener: (sentence: string) => void): StopListening {
    return this.#grid.onRefused(listener);
  }

  /** The pointer moved to a cell. */
  onCellHovered(listener: (cell: CellRange) => void): StopListening {
    const hovering = this.#grid.api.addEvent(this.#grid.api.Event.CellHover, ({ worksheet, row, column }) => {
      listener({ sheet: worksheet.getSheetName(), row, column, rows: 1, columns: 1 });
    });
    return () => {
      hovering.dispose();
    };
  }

  readSetting(key: string): Promise<string | null> {
    return settle(() => this.settingNow(key));
  }

  /** The same without a wait: the page may be about to go. */
  settingNow(key: string): string | null {
    return this.#settings().get(key) ?? null;
  }

  settingsNow(): readonly (readonly [string, string])[] {
    return [...this.#settings()];
  }

  writeSetting(key: string, text: string): Promise<void> {
    return settle(() => {
      this.#grid.settings = [...this.#settings().set(key, text)];
    });
  }

  /** Why the first cell of the range shows an error, in the words of the function that refused; or null. */
  sentenceAt(range: CellRange): string | null {
    const sheet = this.#workbook.getSheetByName(range.sheet);
    return sheet ? this.#grid.sentenceAt(sheet.getSheetId(), range.row, range.column) : null;
  }

  /** The note on the cell, or null. Like its sentence it is asked for later than it was selected: its sheet may be gone by then. */
  noteAt(range: CellRange): string | null {
    const cell = this.#workbook.getSheetByName(range.sheet)?.getSheet().getCellRaw(range.row, range.column);
    const note: unknown = cell?.custom?.["note"];
    return typeof note === "string" ? note : null;
  }

  get #workbook(): GridWorkbook {
    return this.#grid.workbook();
  }

  #sheet(name: string): GridSheet {
    const sheet = this.#workbook.getSheetByName(name);
    if (!sheet) throw new SheetMissing(name);
    return sheet;
  }

  #addSheet(layout: SheetLayout): void {
    const { sheet: data, styles } = layOut(layout);
    this.#workbook.addStyles({ ...styles });
    const sheet = this.#workbook.insertSheet(layout.name, { sheet: data as Partial<IWorksheetData> });
    for (const { heading, choices, cells } of dropDownsOf(layout)) {
      const rule = this.#grid.api
        .newDataValidation()
        .requireValueInList([...choices])
        .setAllowBlank(true)
        .setAllowInvalid(false)
        .setOptions({ renderMode: DataValidationRenderMode.ARROW, showErrorMessage: true, error: choiceRefusal(heading, choices) })
        .build();
      sheet.getRange(cells.row, cells.column, cells.rows, 1).setDataValidation(rule);
    }
  }

  #write(writes: readonly { range: CellRange; cells: readonly (readonly ICellData[])[] }[]): void {
    // Every range is checked before the first is written, so that a slip leaves the workbook as it was.
    const targets = writes.map(({ range, cells }) => {
      const fits = cells.length === range.rows && cells.every((row) => row.length === range.columns);
      if (!fits) throw new RangeError(`The values for ${addressOf(range)} do not have its rows and columns.`);
      this.#refuseRowInHand(range);
      return { range, cells, sheet: this.#sheet(range.sheet) };
    });
    const sheets = new Map(targets.map(({ sheet }) => [sheet.getSheetId(), sheet]));
    for (const [sheetId, sheet] of sheets)
      this.#writeSheet(
        sheet,
        targets.filter((target) => target.sheet.getSheetId() === sheetId),
      );
  }

  /** What is half typed is nobody's answer yet: a write into the same row would stand beside something it has not seen. */
  #refuseRowInHand(range: CellRange): void {
    if (!this.#workbook.isCellEditing()) return;
    const cell = this.#selection();
    if (cell?.sheet !== range.sheet || cell.row < range.row || cell.row >= range.row + range.rows) return;
    throw new WorkbookRefused(`Finish the cell ${addressOf({ ...cell, rows: 1, columns: 1 })} first: somebody is typing into it.`);
  }

  /**
   * One command for everything on a sheet. The grid drops a calculation that is overtaken by the next command, and with
   * it some of what was to be computed anew: many commands in a row can leave a formula with an old answer.
   */
  #writeSheet(sheet: GridSheet, targets: readonly { range: CellRange; cells: readonly (readonly ICellData[])[] }[]): void {
    const value: Record<number, Record<number, ICellData>> = {};
    for (const { range, cells } of targets) {
      this.#makeRoom(sheet, range);
      cells.forEach((row, down) => row.forEach((cell, across) => ((value[range.row + down] ??= {})[range.column + across] = cell)));
    }
    this.#setCells(sheet, value);
  }

  #setCells(sheet: GridSheet, value: Readonly<Record<number, Readonly<Record<number, ICellData>>>>): void {
    const written = this.#grid.writing(() =>
      this.#grid.api.syncExecuteCommand(SetRangeValuesCommand.id, {
        unitId: this.#workbook.getId(),
        subUnitId: sheet.getSheetId(),
        value,
        range: A1,
      }),
    );
    if (!written) throw new WorkbookRefused(`Sheet ${sheet.getSheetName()} cannot be changed: it is protected.`);
  }

  /** A sheet grows when something is written beyond its last row or column. */
  #makeRoom(sheet: GridSheet, range: CellRange): void {
    const rows = range.row + range.rows;
    const columns = range.column + range.columns;
    this.#grid.writing(() => {
      if (rows > sheet.getMaxRows()) sheet.setRowCount(rows);
      if (columns > sheet.getMaxColumns()) sheet.setColumnCount(columns);
    });
  }

  #valuesOf(range: CellRange): CellValue[][] {
    return valuesIn(this.#grid, this.#sheet(range.sheet).getSheetId(), range);
  }

  #selection(): CellRange | null {
    const range = this.#grid.isOpen ? this.#workbook.getActiveRange() : null;
    if (!range) return null;
    return {
      sheet: range.getSheetName(),
      row: range.getRow(),
      column: range.getColumn(),
      rows: range.getHeight(),
      columns: range.getWidth(),
    };
  }

  #settings(): Map<string, string> {
    const stored = this.#grid.settings;
    return new Map(Array.isArray(stored) ? (stored as [string, string][]) : []);
  }
}

function gridRange(range: CellRange): { startRow: number; endRow: number; startColumn: number; endColumn: number } {
  return {
    startRow: range.row,
    endRow: range.row + range.rows - 1,
    startColumn: range.column,
    endColumn: range.column + range.columns - 1,
  };
}

/** Runs the work now and hands its answer or its refusal over as a promise. */
function settle<Answer>(work: () => Answer): Promise<Answer> {
  return new Promise((resolve) => {
    resolve(work());
  });
}
