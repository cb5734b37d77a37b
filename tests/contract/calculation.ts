/** Calculates what a change reaches, and nothing else: formulas by the ranges they read, and where their answers spill. */
import { rangesIn } from "../../addin/actions/working/find-formula.ts";
import type { Expression } from "../../addin/actions/working/read-formula.ts";
import type { CellRange } from "../../addin/workbook/port.ts";
import { evaluateFormula, parsedFormula } from "./formula.ts";
import type { Content, Grid } from "./formula-functions.ts";
import { keyOf, type Area, type Sheet } from "./spreadsheet.ts";

interface Formula {
  readonly sheet: Sheet;
  readonly row: number;
  readonly column: number;
  readonly expression: Expression;
  readonly reads: readonly CellRange[];
  /** Where the answer stands or, where it was in somebody's way, would stand. */
  area: Area;
  isSpilled: boolean;
  isCalculating: boolean;
}

/** More than this for one change is a formula that feeds itself. */
const MOST_TIMES_EACH = 50;

export class Calculation {
  readonly #bySheet = new Map<Sheet, Map<string, Formula>>();
  /** By the name of the sheet that they read. */
  readonly #readers = new Map<string, Set<Formula>>();
  readonly #waiting = new Set<Formula>();
  readonly #grids = new Map<Sheet, Map<string, Grid>>();
  readonly #parsed = new Map<string, { readonly expression: Expression; readonly reads: readonly CellRange[] }>();
  readonly #sheetNamed: (name: string) => Sheet | undefined;
  readonly #isOld: () => boolean;
  readonly #nameOf: (name: string) => string | undefined;

  constructor(sheetNamed: (name: string) => Sheet | undefined, nameOf: (name: string) => string | undefined, isOld: () => boolean) {
    this.#isOld = isOld;
    this.#sheetNamed = sheetNamed;
    this.#nameOf = nameOf;
  }

  /** The sheets whose formulas wait to be calculated. */
  get sheetsWaiting(): readonly Sheet[] {
    return [...new Set([...this.#waiting].map(({ sheet }) => sheet))];
  }

  /** The cell holds this formula from now on, or none. */
  setFormula(sheet: Sheet, row: number, column: number, formula: string | null): void {
    const formulas = this.#bySheet.get(sheet) ?? new Map<string, Formula>();
    this.#bySheet.set(sheet, formulas);
    const key = keyOf(row, column);
    const earlier = formulas.get(key);
    if (earlier !== undefined) {
      this.#clearSpill(earlier);
      formulas.delete(key);
      this.#waiting.delete(earlier);
      for (const readers of this.#readers.values()) readers.delete(earlier);
      if (earlier.isSpilled && earlier.area.rows * earlier.area.columns > 1) this.changed(sheet, earlier.area);
    }
    if (formula === null) return;
    const made: Formula = {
      sheet,
      row,
      column,
      ...this.#parse(formula, sheet.name),
      area: { row, column, rows: 1, columns: 1 },
      isSpilled: false,
      isCalculating: false,
    };
    formulas.set(key, made);
    this.#waiting.add(made);
    for (const { sheet: name } of made.reads) this.#readersOf(name).add(made);
  }

  #parse(typed: string, sheet: string) {
    const formula = typed.replace(/\b[A-Z]\w*\b(?![!(.])/gi, (word) => this.#nameOf(word)?.slice(1) ?? word);
    const key = `${sheet}!${formula}`;
    const known = this.#parsed.get(key);
    if (known !== undefined) return known;
    const expression = parsedFormula(formula, sheet);
    const parsed = { expression, reads: rangesIn(expression) };
    this.#parsed.set(key, parsed);
    return parsed;
  }

  /** Cells of the area changed: what reads them waits, and what would spill into them tries again. */
  changed(sheet: Sheet, area: Area): void {
    this.#grids.delete(sheet);
    for (const formula of this.#readersOf(sheet.name)) {
      if (!this.#waiting.has(formula) && formula.reads.some((range) => isSheet(range.sheet, sheet) && meet(range, area)))
        this.#waiting.add(formula);
    }
    for (const formula of this.#bySheet.get(sheet)?.values() ?? []) {
      if (formula.area.rows * formula.area.columns > 1 && meet(formula.area, area)) this.#waiting.add(formula);
    }
  }

  #readersOf(name: string): Set<Formula> {
    const key = name.toLowerCase();
    const readers = this.#readers.get(key) ?? new Set<Formula>();
    this.#readers.set(key, readers);
    return readers;
  }

  /** A sheet came or went: formulas that name it look again. */
  sheetAppeared(sheet: Sheet): void {
    this.changed(sheet, { row: 0, column: 0, rows: Number.POSITIVE_INFINITY, columns: Number.POSITIVE_INFINITY });
  }

  calculate(): void {
    const most = MOST_TIMES_EACH * [...this.#bySheet.values()].reduce((count, formulas) => count + formulas.size, 1);
    for (let count = 0; count < most; count += 1) {
      const [next] = this.#waiting;
      if (next === undefined) return;
      this.#calculateOne(next);
    }
    throw new Error("A formula of the in-memory Excel feeds itself.");
  }

  /** What a formula reads is calculated before it. */
  #calculateOne(formula: Formula): void {
    if (formula.isCalculating) return;
    formula.isCalculating = true;
    this.#waiting.delete(formula);
    for (const range of formula.reads) for (const source of this.#waitingIn(range)) this.#calculateOne(source);
    this.#show(
      formula,
      evaluateFormula(formula.expression, (range) => this.#look(range)),
    );
    formula.isCalculating = false;
  }

  #waitingIn(range: CellRange): readonly Formula[] {
    const found: Formula[] = [];
    for (const formula of this.#waiting) if (meet(range, formula.area) && isSheet(range.sheet, formula.sheet)) found.push(formula);
    return found;
  }

  #look(range: CellRange): Grid {
    const sheet = this.#sheetNamed(range.sheet);
    if (sheet === undefined) return [["#REF!"]];
    const grids = this.#grids.get(sheet) ?? new Map<string, Grid>();
    this.#grids.set(sheet, grids);
    const key = `${range.row},${range.column},${range.rows},${range.columns}`;
    const grid =
      grids.get(key) ??
      Array.from({ length: range.rows }, (_, row) =>
        Array.from({ length: range.columns }, (__, column) => sheet.contentAt(range.row + row, range.column + column)),
      );
    grids.set(key, grid);
    return grid;
  }

  #show(formula: Formula, whole: Grid): void {
    const answer: Grid = this.#isOld() ? [[whole[0]?.[0] ?? null]] : whole;
    const { sheet, row, column } = formula;
    const before = this.#shownIn(formula);
    this.#clearSpill(formula);
    const wanted: Area = { row, column, rows: answer.length, columns: answer[0]?.length ?? 1 };
    const fits = this.#isFree(formula, wanted);
    const own = sheet.cells.get(keyOf(row, column));
    if (own === undefined) return;
    own.content = fits ? (answer[0]?.[0] ?? 0) : "#SPILL!";
    formula.isSpilled = fits;
    if (fits)
      answer.forEach((line, down) =>
        line.forEach((content, across) => down + across > 0 && sheet.spilled.set(keyOf(row + down, column + across), content ?? 0)),
      );
    const earlier = formula.area;
    formula.area = wanted;
    if (!sameContents(before, this.#shownIn(formula))) {
      this.changed(sheet, earlier);
      this.changed(sheet, wanted);
      this.#waiting.delete(formula);
    }
  }

  #shownIn({ sheet, area }: Formula): readonly Content[] {
    const contents: Content[] = [area.rows, area.columns];
    for (let row = area.row; row < area.row + area.rows; row += 1)
      for (let column = area.column; column < area.column + area.columns; column += 1) contents.push(sheet.contentAt(row, column));
    return contents;
  }

  #isFree({ sheet, row, column }: Formula, wanted: Area): boolean {
    for (let down = 0; down < wanted.rows; down += 1) {
      for (let across = 0; across < wanted.columns; across += 1) {
        const key = keyOf(row + down, column + across);
        if (down + across > 0 && (sheet.cells.has(key) || sheet.spilled.has(key))) return false;
      }
    }
    return true;
  }

  #clearSpill({ sheet, row, column, area, isSpilled }: Formula): void {
    if (!isSpilled) return;
    for (let down = 0; down < area.rows; down += 1)
      for (let across = 0; across < area.columns; across += 1)
        if (down + across > 0) sheet.spilled.delete(keyOf(row + down, column + across));
    this.#grids.delete(sheet);
  }
}

function isSheet(name: string, sheet: Sheet): boolean {
  return name === sheet.name || name.toLowerCase() === sheet.name.toLowerCase();
}

function meet(one: Area, other: Area): boolean {
  return (
    one.row < other.row + other.rows &&
    other.row < one.row + one.rows &&
    one.column < other.column + other.columns &&
    other.column < one.column + one.columns
  );
}

function sameContents(one: readonly Content[], other: readonly Content[]): boolean {
  return one.length === other.length && one.every((content, place) => content === other[place]);
}
