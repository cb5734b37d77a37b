/** The workbook behind the in-memory Excel: sheets, cells, formats, what is selected, what changed. */
import { largestOf, smallestOf } from "../../functions/extremes.ts";
import { Calculation } from "./calculation.ts";
import type { Content, Grid } from "./formula-functions.ts";
import type { ColorRule, Page } from "./sheet-looks.ts";
import { afterDeletion, afterRenaming, afterRowChange, afterSorting, deletedAt, insertedAt, type RowShift } from "./row-changes.ts";

export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

interface StoredCell {
  readonly formula: string | null;
  content: Content;
}

export interface Validation {
  readonly area: Area;
  rule?: unknown;
  prompt?: unknown;
  errorAlert?: unknown;
}

/** A picture, or whatever else lies over the cells; lengths in points. */
export interface Shape {
  readonly id: string;
  readonly type: "Image" | "GeometricShape";
  readonly image: string | null;
  name: string;
  left: number;
  top: number;
  width: number;
  height: number;
  altTextDescription: string;
  lockAspectRatio: boolean;
}

/** What Excel tells event handlers. */
export type Happening =
  | { readonly event: "changed" | "calculated" | "activated"; readonly sheet: Sheet }
  | { readonly event: "selected"; readonly sheet: Sheet };

export class Sheet {
  name: string;
  isProtected = false;
  frozen: Area | null = null;
  readonly id: string;
  readonly cells = new Map<string, StoredCell>();
  readonly spilled = new Map<string, Content>();
  readonly formats = new Map<string, Map<string, unknown>>();
  readonly columnWidths = new Map<number, number>();
  readonly hiddenColumns = new Set<number>();
  readonly validations: Validation[] = [];
  readonly colorRules: ColorRule[] = [];
  filtered: Area | null = null;
  /** Somebody shows some of the rows alone. */
  isDataFiltered = false;
  page: Page = {};
  /** The lowest first. */
  readonly shapes: Shape[] = [];

  constructor(id: string, name: string) {
    this.id = id;
    this.name = name;
  }

  contentAt(row: number, column: number): Content {
    const key = keyOf(row, column);
    return this.cells.get(key)?.content ?? this.spilled.get(key) ?? null;
  }

  /** As Excel gives it: a formula, or the content where there is none. The apostrophe before a text is gone. */
  formulaAt(row: number, column: number): Content {
    return this.cells.get(keyOf(row, column))?.formula ?? this.contentAt(row, column);
  }

  /** The smallest area around everything that is there: contents alone, or formats too. */
  usedArea(valuesOnly: boolean): Area | null {
    const keys = [...this.cells.keys(), ...this.spilled.keys(), ...(valuesOnly ? [] : this.formats.keys())];
    const places = keys.map((key) => [placeOf(key).row, placeOf(key).column] as const);
    if (places.length === 0) return null;
    const rows = places.map(([row]) => row);
    const columns = places.map(([, column]) => column);
    const [row, column] = [smallestOf(rows), smallestOf(columns)];
    return { row, column, rows: largestOf(rows) - row + 1, columns: largestOf(columns) - column + 1 };
  }

  formatAt(row: number, column: number, name: string): unknown {
    return this.formats.get(keyOf(row, column))?.get(name);
  }

  validationAt(row: number, column: number): Validation | undefined {
    return this.validations.findLast(
      ({ area }) => row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns,
    );
  }
}

export class Spreadsheet {
  readonly sheets: Sheet[] = [];
  readonly settings = new Map<string, unknown>();
  /** Those of the document, which a file brings with it. */
  readonly customProperties = new Map<string, unknown>();
  /** What each name stands for, such as "=Program!$B$4". */
  readonly names = new Map<string, string>();
  structureIsProtected = false;
  /** An add-in has suspended calculation, and what it changed meanwhile is not calculated before somebody asks. */
  isSuspended = false;
  /** As Excel was before dynamic arrays: a formula answers into its own cell alone. */
  isOld = false;
  calculationMode: "Automatic" | "Manual" = "Automatic";
  calculationState: "Done" | "Calculating" = "Done";
  active: Sheet;
  /** Several areas when somebody held Ctrl; none when a chart is selected. */
  selected: readonly Area[] = [{ row: 0, column: 0, rows: 1, columns: 1 }];
  readonly happenings: Happening[] = [];
  #sheetsMade = 0;
  readonly #calculation = new Calculation(
    (name) => this.sheetNamed(name),
    (name) => this.names.get(name),
    () => this.isOld,
  );

  constructor() {
    this.active = this.addSheet("Sheet1");
  }

  addSheet(name: string): Sheet {
    this.#sheetsMade += 1;
    const sheet = new Sheet(`{${String(this.#sheetsMade).padStart(8, "0")}-0000-0000-0000-000000000000}`, name);
    this.sheets.push(sheet);
    this.#calculation.sheetAppeared(sheet);
    return sheet;
  }

  /** Somebody deletes the sheet: what read it shows #REF! from now on, and no undo brings it back. */
  removeSheet(sheet: Sheet): void {
    for (const key of sheet.cells.keys()) this.#calculation.setFormula(sheet, placeOf(key).row, placeOf(key).column, null);
    this.sheets.splice(this.sheets.indexOf(sheet), 1);
    for (const other of this.sheets) this.#rewrite(other, (formula) => afterDeletion(formula, sheet.name));
    this.#moveNames((formula) => afterDeletion(formula, sheet.name));
    if (this.active === sheet && this.sheets[0] !== undefined) this.active = this.sheets[0];
    this.happenings.push(...this.sheets.map((other) => ({ event: "calculated", sheet: other }) as const));
    this.settle();
  }

  /** Somebody gives the sheet another name: formulas go along. */
  renameSheet(sheet: Sheet, name: string): void {
    const before = sheet.name;
    sheet.name = name;
    for (const each of this.sheets) this.#rewrite(each, (formula) => afterRenaming(formula, before, name));
    this.#moveNames((formula) => afterRenaming(formula, before, name));
    this.settle();
  }

  /** By name, whatever its case, or by id. */
  sheetNamed(name: string): Sheet | undefined {
    return this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase() || sheet.id === name);
  }

  /** Stores what somebody typed. Null leaves a cell as it is. */
  write(sheet: Sheet, area: Area, typed: Grid, reading: "as typed" | "as formulas"): void {
    typed.forEach((line, rowIndex) => {
      line.forEach((entry, columnIndex) => {
        if (entry !== null) this.#store(sheet, area.row + rowIndex, area.column + columnIndex, entry, reading);
      });
    });
    this.#calculation.changed(sheet, area);
    this.happenings.push({ event: "changed", sheet });
  }

  #store(sheet: Sheet, row: number, column: number, entry: Content, reading: "as typed" | "as formulas"): void {
    const key = keyOf(row, column);
    const isText = sheet.formats.get(key)?.get("NumberFormat") === "@";
    const formula = typeof entry === "string" && entry.startsWith("=") && !isText ? entry : null;
    if (formula !== null || sheet.cells.get(key)?.formula) this.#calculation.setFormula(sheet, row, column, formula);
    if (entry === "") sheet.cells.delete(key);
    else if (formula !== null) sheet.cells.set(key, { formula, content: 0 });
    else sheet.cells.set(key, { formula: null, content: isText || reading === "as formulas" ? entry : typedContent(entry) });
  }

  insertRow(sheet: Sheet, row: number): void {
    this.#moveRows(sheet, (at) => (at >= row ? at + 1 : at), insertedAt(row));
  }

  deleteRow(sheet: Sheet, row: number): void {
    this.#moveRows(sheet, (at) => (at === row ? null : at > row ? at - 1 : at), deletedAt(row));
  }

  /** The rows of an area in another order; a formula goes with its row, and reads it there. */
  sortRows(sheet: Sheet, first: number, order: readonly number[]): void {
    const target = new Map(order.map((from, place) => [from, first + place]));
    this.#moveRows(sheet, (at) => target.get(at) ?? at, null);
  }

  /** By a null shift the ranges of formulas stay, and only what a row reads of itself moves. */
  #moveRows(sheet: Sheet, to: (row: number) => number | null, shift: RowShift | null): void {
    const moved: { row: number; column: number; cell: StoredCell }[] = [];
    for (const [key, cell] of [...sheet.cells]) {
      const { row, column } = placeOf(key);
      if (cell.formula !== null) this.#calculation.setFormula(sheet, row, column, null);
      const goesTo = to(row);
      if (goesTo === null) continue;
      const formula =
        cell.formula === null
          ? null
          : shift === null
            ? afterSorting(cell.formula, goesTo - row)
            : afterRowChange(cell.formula, sheet.name, sheet.name, shift);
      moved.push({ row: goesTo, column, cell: { formula, content: cell.content } });
    }
    const formats = [...sheet.formats];
    sheet.formats.clear();
    for (const [key, format] of formats) {
      const { row, column } = placeOf(key);
      const goesTo = to(row);
      if (goesTo !== null) sheet.formats.set(keyOf(goesTo, column), format);
    }
    sheet.cells.clear();
    for (const { row, column, cell } of moved) {
      sheet.cells.set(keyOf(row, column), cell);
      if (cell.formula !== null) this.#calculation.setFormula(sheet, row, column, cell.formula);
    }
    if (shift !== null) {
      this.#moveNames((formula) => afterRowChange(formula, "", sheet.name, shift));
      moveAreas(sheet, shift);
    }
    if (shift !== null)
      for (const other of this.sheets.filter((one) => one !== sheet))
        this.#rewrite(other, (formula) => afterRowChange(formula, other.name, sheet.name, shift));
    this.#calculation.sheetAppeared(sheet);
    this.happenings.push({ event: "changed", sheet });
    this.settle();
  }

  setName(name: string, formula: string | null): void {
    if (formula === null) this.names.delete(name);
    else this.names.set(name, formula);
    this.#readNamesAnew();
  }

  #moveNames(change: (formula: string) => string): void {
    for (const [name, formula] of this.names) this.names.set(name, change(formula));
    this.#readNamesAnew();
  }

  #readNamesAnew(): void {
    for (const sheet of this.sheets)
      for (const [key, { formula }] of sheet.cells)
        if (formula !== null && [...this.names.keys()].some((name) => formula.includes(name)))
          this.#calculation.setFormula(sheet, placeOf(key).row, placeOf(key).column, formula);
  }

  #rewrite(sheet: Sheet, change: (formula: string) => string): void {
    for (const [key, cell] of [...sheet.cells]) {
      if (cell.formula === null) continue;
      const formula = change(cell.formula);
      if (formula === cell.formula) continue;
      const { row, column } = placeOf(key);
      this.#calculation.setFormula(sheet, row, column, formula);
      sheet.cells.set(key, { formula, content: cell.content });
    }
  }

  /** What waits is calculated; in manual mode only when somebody asks for it. */
  settle(): void {
    if (this.calculationMode === "Automatic" && !this.isSuspended) this.calculate();
  }

  calculate(): void {
    this.isSuspended = false;
    for (const sheet of this.#calculation.sheetsWaiting) this.happenings.push({ event: "calculated", sheet });
    this.#calculation.calculate();
  }

  select(sheet: Sheet, areas: readonly Area[]): void {
    if (this.active !== sheet) {
      this.active = sheet;
      this.happenings.push({ event: "activated", sheet });
    }
    this.selected = areas;
    this.happenings.push({ event: "selected", sheet });
  }
}

/** Rules, the filter and what is printed go with the rows they stand on. */
function moveAreas(sheet: Sheet, shift: RowShift): void {
  const moved = <Part extends { readonly area: Area }>(parts: Part[]): void => {
    parts.splice(
      0,
      parts.length,
      ...parts.flatMap((part) => {
        const area = movedArea(part.area, shift);
        return area === null ? [] : [{ ...part, area }];
      }),
    );
  };
  moved(sheet.validations);
  moved(sheet.colorRules);
  if (sheet.filtered !== null) sheet.filtered = movedArea(sheet.filtered, shift);
}

function movedArea(area: Area, shift: RowShift): Area | null {
  const ends = shift(area.row, area.row + area.rows - 1);
  return ends === null ? null : { ...area, row: ends[0], rows: ends[1] - ends[0] + 1 };
}

/** Excel reads an entry as somebody would type it. */
function typedContent(entry: Content): Content {
  if (typeof entry !== "string") return entry;
  if (entry.startsWith("'")) return entry.slice(1);
  if (/^(TRUE|FALSE)$/i.test(entry)) return entry.toUpperCase() === "TRUE";
  if (/^\d{1,2}[/-]\d{1,2}([/-]\d{2,4})?$/.test(entry)) return 45_000;
  if (/^\d+(\.\d+)?%$/.test(entry)) return Number(entry.slice(0, -1)) / 100;
  return entry.trim() !== "" && Number.isFinite(Number(entry)) ? Number(entry) : entry;
}

export function keyOf(row: number, column: number): string {
  return `${row},${column}`;
}

function placeOf(key: string): { row: number; column: number } {
  const [row = 0, column = 0] = key.split(",").map(Number);
  return { row, column };
}
