import { largestOf } from "../../../../functions/extremes.ts";
import {
  ArrayValueObject,
  BooleanValueObject,
  NumberValueObject,
  StringValueObject,
  ValueObjectFactory,
  functionLogical,
  functionMath,
  functionStatistical,
} from "@univerjs/preset-sheets-core";
import type { BaseReferenceObject, BaseValueObject } from "@univerjs/preset-sheets-core";

type Given = BaseValueObject | BaseReferenceObject;
type Calculate = (...given: Given[]) => BaseValueObject;
type Compare = typeof ArrayValueObject.prototype.compare;

/** Columns with fewer rows are looked through. */
const FEW_ROWS = 16;
const FALSE_CELL = BooleanValueObject.create(false);
const TRUE_CELL = BooleanValueObject.create(true);

/** A column that holds the same in every row but a few. */
export interface FewRows {
  readonly count: number;
  readonly few: ReadonlyMap<number, BaseValueObject>;
  readonly otherwise: BaseValueObject;
}

const known = new WeakMap<BaseValueObject, FewRows>();
/** What was chosen last by a condition: the blank rows of a sheet all ask for the same. */
const lastChoice = new WeakMap<FewRows, { readonly chosen: Given; readonly rows: FewRows }>();

/** The column as few rows and a rest, where it was found by index. */
export function fewRowsOf(column: BaseValueObject): FewRows | undefined {
  return known.get(column);
}

/**
 * Finds a text in a column by an index of the column, where the grid compares it with every cell. A yard's formulas look
 * through the surfaces of all yards: with a thousand yards each of a thousand formulas would compare thousands of cells.
 * What is found is the same, and anything but a plain text is left to the grid.
 */
export function findTextsByIndex(): void {
  const compare = ArrayValueObject.prototype.compare;
  ArrayValueObject.prototype.compare = function (this: ArrayValueObject, ...given: Parameters<Compare>) {
    return equalByIndex(this, ...given) ?? compare.apply(this, given);
  };
  wrap(functionLogical, "IF", (given) => chosenByIndex(given));
  wrap(functionStatistical, "COUNTIFS", (given, calculate) =>
    forEachText([], given, calculate, (rows) => NumberValueObject.create(rows.length)),
  );
  wrap(functionMath, "SUMIFS", ([target, ...given], calculate) => {
    const amounts = columnOf(target);
    return amounts === null || target === undefined ? null : forEachText([target], given, calculate, (rows) => sumOf(amounts, rows));
  });
}

/** The function answers by index where it can, and as it always did where it cannot. */
function wrap(
  functions: readonly (readonly unknown[])[],
  name: string,
  byIndex: (given: readonly Given[], calculate: Calculate) => BaseValueObject | null,
): void {
  const [computing] = functions.find((entry) => entry[1] === name) ?? [];
  if (computing === undefined) throw new Error(`The grid has no function ${name}.`);
  const { prototype } = computing as { readonly prototype: { calculate: Calculate } };
  const { calculate } = prototype;
  prototype.calculate = function (this: unknown, ...given: Given[]) {
    return byIndex(given, (...other) => calculate.apply(this, other)) ?? calculate.apply(this, given);
  };
}

/** What stands in a column: the rows of each text, nothing counting as a blank one, and whether any holds something else. */
class ColumnIndex {
  static readonly #known = new WeakMap<ArrayValueObject, ColumnIndex>();
  readonly holdsMoreThanTexts: boolean;
  readonly #texts: readonly (string | null)[];
  readonly #rows = new Map<string, number[]>();
  readonly #equal = new Map<string, FewRows>();

  readonly #column: ArrayValueObject;
  #nothing: FewRows | undefined;

  private constructor(column: ArrayValueObject) {
    this.#column = column;
    this.#texts = Array.from({ length: column.getRowCount() }, (_, row) => textOf(column.get(row, 0)));
    this.holdsMoreThanTexts = this.#texts.includes(null);
    this.#texts.forEach((text, row) => {
      if (text === null) return;
      const rows = this.#rows.get(text);
      if (rows) rows.push(row);
      else this.#rows.set(text, [row]);
    });
  }

  static of(column: ArrayValueObject): ColumnIndex {
    const last = this.#known.get(column);
    if (last) return last;
    const index = new ColumnIndex(column);
    this.#known.set(column, index);
    return index;
  }

  rowsOf(text: string): readonly number[] {
    return this.#rows.get(text) ?? [];
  }

  holds(row: number, text: string): boolean {
    return this.#texts[row] === text;
  }

  /** Which rows hold the text. */
  equal(text: string): FewRows {
    const last = this.#equal.get(text);
    if (last) return last;
    const rows = { count: this.#texts.length, few: new Map(this.rowsOf(text).map((row) => [row, TRUE_CELL])), otherwise: FALSE_CELL };
    this.#equal.set(text, rows);
    return rows;
  }

  /** Which rows equal a cell with nothing in it: what has letters in it does not, and blank rows are asked of the grid. */
  equalToNothing(nothing: BaseValueObject): FewRows {
    if (this.#nothing) return this.#nothing;
    const rows = this.rowsOf("").filter((row) =>
      isTrue(this.#column.get(row, 0)?.compare(nothing, "=" as Parameters<Compare>[1]) ?? undefined),
    );
    return (this.#nothing = { count: this.#texts.length, few: new Map(rows.map((row) => [row, TRUE_CELL])), otherwise: FALSE_CELL });
  }
}

function isTrue(answer: BaseValueObject | undefined): boolean {
  return answer?.getValue() === true;
}

function textOf(cell: ReturnType<ArrayValueObject["get"]>): string | null {
  if (cell instanceof StringValueObject) return cell.getValue().toLocaleLowerCase();
  return cell?.isNull() === true ? "" : null;
}

/** A column of answers to column = text, or null where the grid has to compare. */
function equalByIndex(
  column: ArrayValueObject,
  wanted: BaseValueObject,
  operator: string,
  isCaseSensitive?: boolean,
): ArrayValueObject | null {
  if (operator !== "=" || isCaseSensitive === true || !isLongColumn(column)) return null;
  const cell = singleCell(wanted);
  const text = cell instanceof StringValueObject ? plainText(cell.getValue()) : null;
  const isNothing = cell?.isNull() === true;
  const index = text === null && !isNothing ? null : ColumnIndex.of(column);
  if (index === null || index.holdsMoreThanTexts) return null;
  return columnOfFew(text === null ? index.equalToNothing(cell as BaseValueObject) : index.equal(text));
}

/** IF of a condition that was found by index: what is chosen where it holds, and the same one value in every other row. */
function chosenByIndex([condition, chosen, otherwise]: readonly Given[]): BaseValueObject | null {
  const found = condition === undefined ? undefined : known.get(condition as BaseValueObject);
  if (found === undefined || found.otherwise !== FALSE_CELL || chosen === undefined || otherwise === undefined) return null;
  if (otherwise.isReferenceObject() || chosen.isReferenceObject()) return null;
  const other = otherwise as BaseValueObject;
  // An error may be put right later, cell by cell: rows with errors are not shared.
  if (other.isArray() || other.isError()) return null;
  const column = chosen.isArray() ? (chosen as ArrayValueObject) : null;
  if (column !== null && (column.getRowCount() !== found.count || column.getColumnCount() !== 1)) return null;
  const last = lastChoice.get(found);
  if (
    last?.chosen === chosen &&
    last.rows.otherwise.getValue() === other.getValue() &&
    last.rows.otherwise.constructor === other.constructor
  )
    return columnOfFew(last.rows);
  const few = new Map<number, BaseValueObject>();
  for (const row of found.few.keys()) {
    const value = column === null ? (chosen as BaseValueObject) : column.get(row, 0);
    if (!value) return null;
    few.set(row, value);
  }
  const rows = { ...found, few, otherwise: other };
  lastChoice.set(found, { chosen, rows });
  return columnOfFew(rows);
}

/** Its rows are written out only for whoever asks for them: most are read by one function that takes the few. */
function columnOfFew(rows: FewRows): ArrayValueObject {
  const column = columnWith([], rows.count);
  let lines: BaseValueObject[][] | undefined;
  Object.defineProperty(column, "_values", {
    get: () => (lines ??= writtenOut(rows)),
    set: (written: BaseValueObject[][]) => {
      lines = written;
      known.delete(column);
    },
  });
  known.set(column, rows);
  return column;
}

function writtenOut({ count, few, otherwise }: FewRows): BaseValueObject[][] {
  const lines = new Array<BaseValueObject[]>(count).fill([otherwise]);
  for (const [row, value] of few) lines[row] = [value];
  return lines;
}

/**
 * The answers of COUNTIFS or SUMIFS to a column of criteria, from the rows that meet each. Criteria that are no plain
 * texts are asked of the grid one by one, each once.
 */
function forEachText(
  target: readonly Given[],
  given: readonly Given[],
  calculate: Calculate,
  answer: (rows: readonly number[]) => BaseValueObject,
): BaseValueObject | null {
  const columns = given.filter((_, place) => place % 2 === 0).map(columnOf);
  const criteria = given
    .filter((_, place) => place % 2 === 1)
    .map((one) => (one.isReferenceObject() ? (one as BaseReferenceObject).toArrayValueObject() : (one as BaseValueObject)));
  const count = largestOf(criteria.map((one) => (one.isArray() ? (one as ArrayValueObject).getRowCount() : 1)));
  const height = columns[0]?.getRowCount();
  const fits = (one: BaseValueObject) =>
    singleCell(one) !== null || ((one as ArrayValueObject).getRowCount() === count && (one as ArrayValueObject).getColumnCount() === 1);
  if (count < 2 || columns.length !== criteria.length || !criteria.every(fits)) return null;
  if ([...columns, ...target.map(columnOf)].some((column) => column === null || !isLongColumn(column) || column.getRowCount() !== height))
    return null;
  const indexes = columns.map((column) => ColumnIndex.of(column as ArrayValueObject));
  const ofTheGrid = new Map<string, BaseValueObject>();
  const answers: BaseValueObject[][] = [];
  for (let row = 0; row < count; row += 1) {
    const cells = criteria.map((one) => singleCell(one) ?? (one as ArrayValueObject).get(row, 0));
    if (cells.some((cell) => !cell)) return null;
    const texts = cells.map((cell) => (cell instanceof StringValueObject ? plainCriterion(cell.getValue()) : null));
    if (texts.every((text) => text !== null)) {
      const [first = "", ...rest] = texts;
      const rows = indexes[0]?.rowsOf(first) ?? [];
      answers.push([
        answer(
          rest.length === 0 ? rows : rows.filter((place) => rest.every((text, pair) => indexes[pair + 1]?.holds(place, text) === true)),
        ),
      ]);
      continue;
    }
    const key = cells.map((cell) => `${cell?.constructor.name} ${String(cell?.getValue())}`).join("\n");
    const known =
      ofTheGrid.get(key) ??
      calculate(...target, ...given.map((one, place) => (place % 2 === 0 ? one : (cells[(place - 1) / 2] as BaseValueObject))));
    ofTheGrid.set(key, known);
    answers.push([known]);
  }
  return columnWith(answers);
}

function sumOf(amounts: ArrayValueObject, rows: readonly number[]): BaseValueObject {
  const picked = rows.map((row) => amounts.get(row, 0) as BaseValueObject);
  return ArrayValueObject.create({
    calculateValueList: [picked],
    rowCount: 1,
    columnCount: picked.length,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  }).sum();
}

/** A text that is compared letter by letter. */
function plainText(text: string): string | null {
  return /[*?~]/.test(text) ? null : text.toLocaleLowerCase();
}

const criterionTexts = new Map<string, string | null>();

/** A criterion that asks for this very text: no comparison, number, date or TRUE. */
function plainCriterion(criterion: string): string | null {
  const known = criterionTexts.get(criterion);
  if (known !== undefined) return known;
  const read = criterion === "" || /^[=<>]/.test(criterion) ? null : ValueObjectFactory.create(criterion);
  const isText = read instanceof StringValueObject && !read.convertToNumberObjectValue().isNumber();
  const text = isText ? plainText(read.getValue()) : null;
  criterionTexts.set(criterion, text);
  return text;
}

function singleCell(value: BaseValueObject): BaseValueObject | null {
  if (!value.isArray()) return value;
  const array = value as ArrayValueObject;
  return array.getRowCount() === 1 && array.getColumnCount() === 1 ? array.getFirstCell() : null;
}

function columnOf(given: Given | undefined): ArrayValueObject | null {
  return given?.isReferenceObject() === true ? (given as BaseReferenceObject).toArrayValueObject() : null;
}

function isLongColumn(array: ArrayValueObject): boolean {
  return array.getColumnCount() === 1 && array.getRowCount() >= FEW_ROWS;
}

function columnWith(cells: BaseValueObject[][], rowCount = cells.length): ArrayValueObject {
  return ArrayValueObject.create({ calculateValueList: cells, rowCount, columnCount: 1, unitId: "", sheetId: "", row: -1, column: -1 });
}
