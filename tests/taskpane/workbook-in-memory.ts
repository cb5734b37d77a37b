import { SheetExists, SheetMissing } from "../../addin/workbook/workbook.ts";
import type { CellRange, CellValue, FormulaWrite, SheetLayout, StopListening, ValueWrite, Workbook } from "../../addin/workbook/workbook.ts";

interface MemoryCell {
  readonly value: CellValue;
  readonly formula: string;
}

/**
 * The port over plain maps, for tests of what the pane does with it. It keeps formulas and computes none; the
 * embedded spreadsheet does that in the browser tests.
 */
export class WorkbookInMemory implements Workbook {
  /** Verbs in the order they were called. */
  readonly calls: string[] = [];
  readonly #sheets = new Map<string, Map<string, MemoryCell>>();
  readonly #settings = new Map<string, string>();
  readonly #selectionListeners = new Set<(selection: CellRange) => void>();
  readonly #changeListeners = new Set<(sheets: readonly string[]) => void>();
  #selection: CellRange | null = null;

  /** Runs before a verb answers: wait, or throw what a host would. */
  before: (verb: string) => Promise<void> | void = () => undefined;
  /** Stands in for the host's formulas, after each write. */
  recalculate: () => void = () => undefined;

  async sheetNames(): Promise<readonly string[]> {
    await this.#called("sheetNames");
    return [...this.#sheets.keys()];
  }

  async addSheets(layouts: readonly SheetLayout[]): Promise<void> {
    await this.#called("addSheets");
    const taken = layouts.find(({ name }) => this.#sheets.has(name));
    if (taken !== undefined) throw new SheetExists(taken.name);
    for (const { name, headingRow, preface, columns } of layouts) {
      this.#sheets.set(name, new Map());
      preface.forEach((line, row) => this.set(name, row, 0, line));
      columns.forEach(({ heading }, column) => this.set(name, headingRow, column, heading));
    }
    this.#changed(layouts.map(({ name }) => name));
  }

  async read(ranges: readonly CellRange[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
    await this.#called("read");
    return ranges.map((range) => this.#grid(range, (cell) => cell?.value ?? null));
  }

  async readFormulas(range: CellRange): Promise<readonly (readonly string[])[]> {
    await this.#called("readFormulas");
    return this.#grid(range, (cell) => cell?.formula ?? "");
  }

  async writeValues(writes: readonly ValueWrite[]): Promise<void> {
    await this.#called("writeValues");
    for (const { range, values } of writes) {
      this.#cellsOf(range.sheet);
      values.forEach((row, down) => row.forEach((value, across) => this.set(range.sheet, range.row + down, range.column + across, value)));
    }
    this.recalculate();
    this.#changed(writes.map(({ range }) => range.sheet));
  }

  async writeFormulas(writes: readonly FormulaWrite[]): Promise<void> {
    await this.#called("writeFormulas");
    for (const { range, formulas } of writes) {
      const cells = this.#cellsOf(range.sheet);
      formulas.forEach((row, down) =>
        row.forEach((formula, across) => cells.set(keyOf(range.row + down, range.column + across), { value: null, formula })),
      );
    }
    this.recalculate();
    this.#changed(writes.map(({ range }) => range.sheet));
  }

  async calculated(): Promise<void> {
    await this.#called("calculated");
  }

  async selection(): Promise<CellRange | null> {
    await this.#called("selection");
    return this.#selection;
  }

  async select(range: CellRange): Promise<void> {
    await this.#called("select");
    this.#cellsOf(range.sheet);
    this.#selection = range;
    this.#selectionListeners.forEach((listener) => listener(range));
  }

  onSelectionChanged(listener: (selection: CellRange) => void): StopListening {
    this.#selectionListeners.add(listener);
    return () => this.#selectionListeners.delete(listener);
  }

  onCellsChanged(listener: (sheets: readonly string[]) => void): StopListening {
    this.#changeListeners.add(listener);
    return () => this.#changeListeners.delete(listener);
  }

  async readSetting(key: string): Promise<string | null> {
    await this.#called("readSetting");
    return this.#settings.get(key) ?? null;
  }

  async writeSetting(key: string, text: string): Promise<void> {
    await this.#called("writeSetting");
    this.#settings.set(key, text);
  }

  /** What somebody typed or a formula answered, without telling anybody. */
  set(sheet: string, row: number, column: number, value: CellValue): void {
    const cells = this.#cellsOf(sheet);
    cells.set(keyOf(row, column), { value, formula: cells.get(keyOf(row, column))?.formula ?? "" });
  }

  /** What somebody else typed: the listeners hear of it. */
  typedElsewhere(sheet: string, row: number, column: number, value: CellValue): void {
    this.set(sheet, row, column, value);
    this.recalculate();
    this.#changed([sheet]);
  }

  value(sheet: string, row: number, column: number): CellValue {
    return this.#cellsOf(sheet).get(keyOf(row, column))?.value ?? null;
  }

  formula(sheet: string, row: number, column: number): string {
    return this.#cellsOf(sheet).get(keyOf(row, column))?.formula ?? "";
  }

  removeSheet(name: string): void {
    this.#sheets.delete(name);
    this.#changed([name]);
  }

  async #called(verb: string): Promise<void> {
    this.calls.push(verb);
    await this.before(verb);
  }

  #cellsOf(sheet: string): Map<string, MemoryCell> {
    const cells = this.#sheets.get(sheet);
    if (cells === undefined) throw new SheetMissing(sheet);
    return cells;
  }

  #grid<Found>({ sheet, row, column, rows, columns }: CellRange, found: (cell: MemoryCell | undefined) => Found): Found[][] {
    const cells = this.#cellsOf(sheet);
    return Array.from({ length: rows }, (_, down) => Array.from({ length: columns }, (__, across) => found(cells.get(keyOf(row + down, column + across)))));
  }

  #changed(sheets: readonly string[]): void {
    this.#changeListeners.forEach((listener) => listener([...new Set(sheets)]));
  }
}

function keyOf(row: number, column: number): string {
  return `${row},${column}`;
}
