import {
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  type ICellData,
  type IDataValidationRule,
  type IStyleData,
  type IWorksheetData,
} from "@univerjs/core";
import { formulaCell, valueCell } from "./cells.ts";
import { choiceRefusal, layOut } from "./layout.ts";
import {
  dropDownsOf,
  SheetExists,
  SheetMissing,
  type CellRange,
  type FormulaWrite,
  type SheetLayout,
  type ValueWrite,
  type WorkbookWriting,
} from "../port.ts";

const DROP_DOWNS = "SHEET_DATA_VALIDATION_PLUGIN";

interface DraftedSheet {
  readonly id: string;
  readonly data: Partial<IWorksheetData>;
  readonly cells: Record<number, Record<number, ICellData>>;
  readonly dropDowns: readonly IDataValidationRule[];
}

/**
 * A workbook put together before the grid opens it. The open grid answers every write with a calculation of its own, so
 * that a program of a thousand cells takes it many times as long as opening the finished workbook once.
 */
export class DraftedWorkbook implements WorkbookWriting {
  readonly #id = generateRandomId(6);
  readonly #sheets = new Map<string, DraftedSheet>();
  readonly #styles: Record<string, IStyleData> = {};
  readonly #settings = new Map<string, string>();

  addSheets(layouts: readonly SheetLayout[]): Promise<void> {
    for (const layout of layouts) {
      if (this.#sheets.has(layout.name)) return Promise.reject(new SheetExists(layout.name));
      this.#addSheet(layout);
    }
    return Promise.resolve();
  }

  writeValues(writes: readonly ValueWrite[]): Promise<void> {
    return this.#write(writes.map(({ range, values }) => ({ range, cells: values.map((row) => row.map(valueCell)) })));
  }

  writeFormulas(writes: readonly FormulaWrite[]): Promise<void> {
    return this.#write(writes.map(({ range, formulas }) => ({ range, cells: formulas.map((row) => row.map(formulaCell)) })));
  }

  writeSetting(key: string, text: string): Promise<void> {
    this.#settings.set(key, text);
    return Promise.resolve();
  }

  /** The workbook as the grid opens it; `settings` under the name that the grid keeps them by. */
  snapshot(name: string, settings: string): object {
    const sheets = [...this.#sheets.values()];
    return {
      id: this.#id,
      name,
      styles: this.#styles,
      sheetOrder: sheets.map(({ id }) => id),
      sheets: Object.fromEntries(sheets.map(({ id, data, cells }) => [id, { ...data, id, cellData: cells }])),
      resources: [{ name: DROP_DOWNS, data: JSON.stringify(Object.fromEntries(sheets.map(({ id, dropDowns }) => [id, dropDowns]))) }],
      custom: { [settings]: [...this.#settings] },
    };
  }

  #addSheet(layout: SheetLayout): void {
    const id = generateRandomId();
    const { sheet, styles } = layOut(layout);
    Object.assign(this.#styles, styles);
    const dropDowns = dropDownsOf(layout).map(
      ({ heading, choices, cells: { row, column, rows } }): IDataValidationRule => ({
        uid: generateRandomId(),
        ranges: [{ startRow: row, endRow: row + rows - 1, startColumn: column, endColumn: column, unitId: this.#id, sheetId: id }],
        type: DataValidationType.LIST,
        formula1: JSON.stringify(choices),
        showDropDown: true,
        allowBlank: true,
        errorStyle: DataValidationErrorStyle.STOP,
        renderMode: DataValidationRenderMode.ARROW,
        showErrorMessage: true,
        error: choiceRefusal(heading, choices),
      }),
    );
    this.#sheets.set(layout.name, { id, data: sheet, cells: (sheet.cellData ?? {}) as DraftedSheet["cells"], dropDowns });
  }

  #write(writes: readonly { readonly range: CellRange; readonly cells: readonly (readonly ICellData[])[] }[]): Promise<void> {
    const missing = writes.find(({ range }) => !this.#sheets.has(range.sheet));
    if (missing !== undefined) return Promise.reject(new SheetMissing(missing.range.sheet));
    for (const { range, cells } of writes)
      cells.forEach((row, down) => row.forEach((cell, across) => this.#put(range.sheet, range.row + down, range.column + across, cell)));
    return Promise.resolve();
  }

  /** What the cell looks like stays; what it held goes. */
  #put(sheet: string, row: number, column: number, cell: ICellData): void {
    const cells = this.#sheets.get(sheet)?.cells ?? {};
    const { s, custom } = cells[row]?.[column] ?? {};
    const kept = { ...(s == null ? {} : { s }), ...(custom == null ? {} : { custom }), ...withoutNothing(cell) };
    if (Object.keys(kept).length > 0) (cells[row] ??= {})[column] = kept;
    else delete cells[row]?.[column];
  }
}

function withoutNothing(cell: ICellData): ICellData {
  return Object.fromEntries(Object.entries(cell).filter(([, part]) => part !== null));
}
