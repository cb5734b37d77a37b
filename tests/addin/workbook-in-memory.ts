import {
  SheetExists,
  SheetMissing,
  type CellRange,
  type CellValue,
  type Extent,
  type FormulaWrite,
  type PictureWrite,
  type SheetLayout,
  type StopListening,
  type ValueWrite,
  type Workbook,
} from "../../addin/workbook/port.ts";

/** The port over plain arrays, for testing what stands on it. It keeps formulas and computes none. */
export class WorkbookInMemory implements Workbook {
  readonly sheets = new Map<string, { values: CellValue[][]; formulas: string[][] }>();
  readonly settings = new Map<string, string>();
  readonly pictures: PictureWrite[] = [];
  /** The ranges that were given the layout of the row above them. */
  readonly continued: CellRange[] = [];
  /** How many times a verb that touches cells was called: round trips, in Excel. */
  calls = 0;
  #selection: CellRange | null = null;
  readonly #selectionListeners = new Set<(selection: CellRange) => void>();
  readonly #cellListeners = new Set<(sheets: readonly string[]) => void>();

  sheetNames(): Promise<readonly string[]> {
    return Promise.resolve([...this.sheets.keys()]);
  }

  spills(): Promise<boolean> {
    return Promise.resolve(true);
  }

  addSheets(layouts: readonly SheetLayout[]): Promise<void> {
    this.calls += 1;
    const taken = layouts.find(({ name }) => this.sheets.has(name));
    if (taken !== undefined) return Promise.reject(new SheetExists(taken.name));
    for (const { name, preface, columns } of layouts) {
      this.sheets.set(name, { values: [...preface.map((line) => [line]), columns.map(({ heading }) => heading)], formulas: [] });
    }
    return Promise.resolve();
  }

  read(ranges: readonly CellRange[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
    this.calls += 1;
    return this.#attempt(() => ranges.map((range) => cells(range, (row, column) => this.#sheet(range).values[row]?.[column] ?? null)));
  }

  extents(names: readonly string[]): Promise<readonly Extent[]> {
    this.calls += 1;
    return this.#attempt(() =>
      names.map((sheet) => {
        const { values } = this.#sheet({ sheet });
        const holds = (cell: CellValue | undefined): boolean => cell != null && cell !== "";
        return {
          rows: values.findLastIndex((row: CellValue[] | undefined) => row?.some(holds) ?? false) + 1,
          columns: values.reduce((most, row: CellValue[] | undefined) => Math.max(most, (row?.findLastIndex(holds) ?? -1) + 1), 0),
        };
      }),
    );
  }

  readSheets(names: readonly string[]): Promise<readonly (readonly (readonly CellValue[])[])[]> {
    this.calls += 1;
    return this.#attempt(() =>
      names.map((sheet) => {
        const { values } = this.#sheet({ sheet });
        const columns = values.reduce((most, row: CellValue[] | undefined) => Math.max(most, row?.length ?? 0), 0);
        return cells({ sheet, row: 0, column: 0, rows: values.length, columns }, (row, column) => values[row]?.[column] ?? null);
      }),
    );
  }

  readFormulas(range: CellRange): Promise<readonly (readonly string[])[]> {
    this.calls += 1;
    return this.#attempt(() => cells(range, (row, column) => this.#sheet(range).formulas[row]?.[column] ?? ""));
  }

  writeValues(writes: readonly ValueWrite[]): Promise<void> {
    this.calls += 1;
    return this.#attempt(() => {
      for (const { range, values } of writes) {
        const sheet = this.#sheet(range);
        cells(range, (row, column) => {
          (sheet.values[row] ??= [])[column] = values[row - range.row]?.[column - range.column] ?? null;
          (sheet.formulas[row] ??= [])[column] = "";
        });
      }
      this.#cellListeners.forEach((listener) => listener(writes.map(({ range }) => range.sheet)));
    });
  }

  writeFormulas(writes: readonly FormulaWrite[]): Promise<void> {
    this.calls += 1;
    return this.#attempt(() => {
      for (const { range, formulas } of writes) {
        const sheet = this.#sheet(range);
        cells(range, (row, column) => {
          (sheet.formulas[row] ??= [])[column] = formulas[row - range.row]?.[column - range.column] ?? "";
        });
      }
    });
  }

  continueLayout(ranges: readonly CellRange[]): Promise<void> {
    this.calls += 1;
    return this.#attempt(() => {
      ranges.forEach((range) => this.#sheet(range));
      this.continued.push(...ranges);
    });
  }

  placePicture(picture: PictureWrite): Promise<void> {
    this.calls += 1;
    return this.#attempt(() => {
      this.#sheet(picture);
      const earlier = this.pictures.findIndex(({ sheet, name }) => sheet === picture.sheet && name === picture.name);
      if (earlier >= 0) this.pictures.splice(earlier, 1);
      this.pictures.push(picture);
    });
  }

  pictureNames(sheet: string): Promise<readonly string[]> {
    this.calls += 1;
    return this.#attempt(() => {
      this.#sheet({ sheet });
      return this.pictures.filter((picture) => picture.sheet === sheet).map(({ name }) => name);
    });
  }

  calculated(): Promise<void> {
    return Promise.resolve();
  }

  selection(): Promise<CellRange | null> {
    return Promise.resolve(this.#selection);
  }

  select(range: CellRange): Promise<void> {
    this.#selection = range;
    this.#selectionListeners.forEach((listener) => listener(range));
    return Promise.resolve();
  }

  onSelectionChanged(listener: (selection: CellRange) => void): StopListening {
    this.#selectionListeners.add(listener);
    return () => void this.#selectionListeners.delete(listener);
  }

  onCellsChanged(listener: (sheets: readonly string[]) => void): StopListening {
    this.#cellListeners.add(listener);
    return () => void this.#cellListeners.delete(listener);
  }

  readSetting(key: string): Promise<string | null> {
    return Promise.resolve(this.settings.get(key) ?? null);
  }

  writeSetting(key: string, text: string): Promise<void> {
    this.settings.set(key, text);
    return Promise.resolve();
  }

  /** Puts a value where a formula's answer would stand. */
  answer(range: CellRange, value: CellValue): void {
    const sheet = this.#sheet(range);
    (sheet.values[range.row] ??= [])[range.column] = value;
  }

  #sheet(range: { readonly sheet: string }) {
    const sheet = this.sheets.get(range.sheet);
    if (sheet === undefined) throw new SheetMissing(range.sheet);
    return sheet;
  }

  #attempt<Answer>(work: () => Answer): Promise<Answer> {
    try {
      return Promise.resolve(work());
    } catch (error) {
      return Promise.reject(error as Error);
    }
  }
}

function cells<Content>(range: CellRange, at: (row: number, column: number) => Content): Content[][] {
  return Array.from({ length: range.rows }, (_, row) =>
    Array.from({ length: range.columns }, (__, column) => at(range.row + row, range.column + column)),
  );
}
