import { largestOf } from "../../../../functions/extremes.ts";
import {
  ArrayValueObject,
  NumberValueObject,
  StringValueObject,
  ValueObjectFactory,
  functionLookup,
  functionMath,
  functionStatistical,
} from "@univerjs/preset-sheets-core";
import type { BaseReferenceObject, BaseValueObject } from "@univerjs/preset-sheets-core";

type Given = BaseValueObject | BaseReferenceObject;
type Calculate = (...given: Given[]) => BaseValueObject;
type Rows = readonly number[];
/** Columns with fewer rows are looked through. */
const FEW_ROWS = 16;

/**
 * Counts and sums by an index of the texts in a column, where the grid compares every criterion with every cell: the sheets
 * that hold a row a yard ask for each yard's rows among those of all yards. What else is asked of those rows, such as
 * ">0", the grid is asked, of those rows alone. What is found is the same.
 */
export function findTextsByIndex(): void {
  wrap(functionStatistical, "COUNTIFS", (given, calculate) =>
    forEachText([], given, calculate, (rows) => NumberValueObject.create(rows.length)),
  );
  const ofAmounts = (
    [target, ...given]: readonly Given[],
    calculate: Calculate,
    answer?: (amounts: ArrayValueObject, rows: Rows) => BaseValueObject,
  ) => {
    const amounts = columnOf(target);
    if (amounts === null || target === undefined) return null;
    return forEachText([target], given, calculate, answer && ((rows) => answer(amounts, rows)));
  };
  wrap(functionMath, "SUMIFS", (given, calculate) => ofAmounts(given, calculate, sumOf));
  for (const name of ["MAXIFS", "MINIFS"]) wrap(functionStatistical, name, (given, calculate) => ofAmounts(given, calculate));
  wrap(functionLookup, "XLOOKUP", besideText);
  wrap(functionLookup, "MATCH", placeOfText);
}

/** What stands beside the first or the last cell that holds a text, for each of some: every hole asks so for its yard's units. */
function besideText(
  [sought, column, beside, missing, match, order, ...others]: readonly Given[],
  calculate: Calculate,
): BaseValueObject | null {
  const fromBelow = order !== undefined && isNumber(order, -1);
  if (others.length > 0 || !(match === undefined || isNumber(match, 0)) || !(order === undefined || fromBelow || isNumber(order, 1)))
    return null;
  if (!(column instanceof ArrayValueObject && beside instanceof ArrayValueObject && isLongColumn(beside))) return null;
  if (column.getRowCount() !== beside.getRowCount() || missing?.isReferenceObject() === true) return null;
  const whenMissing = missing === undefined ? null : singleCell(missing as BaseValueObject);
  return forEachSought(sought, column, {
    found(rows) {
      const row = rows.at(fromBelow ? -1 : 0);
      if (row === undefined) return whenMissing?.isNull() === true ? null : whenMissing;
      const held = beside.get(row, 0);
      return held && !held.isError() ? held : null;
    },
    otherwise: (cell) => calculate(cell, column, beside, ...[missing, match, order].filter((one) => one !== undefined)),
  });
}

/** Where in a column each of some texts stands first. */
function placeOfText([sought, column, kind, ...others]: readonly Given[], calculate: Calculate): BaseValueObject | null {
  if (others.length > 0 || kind === undefined || !isNumber(kind, 0) || !(column instanceof ArrayValueObject)) return null;
  return forEachSought(sought, column, {
    found: ([row]) => (row === undefined ? null : NumberValueObject.create(row + 1)),
    otherwise: (cell) => calculate(cell, column, kind),
  });
}

/** The answers to a column of what is sought: from the rows of each plain text, where they give one, and else from the grid, once for each. */
function forEachSought(
  sought: Given | undefined,
  column: ArrayValueObject,
  { found, otherwise }: { found(rows: Rows): BaseValueObject | null; otherwise(cell: BaseValueObject): BaseValueObject },
): BaseValueObject | null {
  if (sought === undefined || sought.isReferenceObject() || !isLongColumn(column)) return null;
  const index = ColumnIndex.of(column);
  const ofTheGrid = new Map<string, BaseValueObject>();
  const find = (cell: BaseValueObject): BaseValueObject => {
    const text = cell instanceof StringValueObject ? plainCriterion(cell.getValue()) : null;
    const byIndex = text === null ? null : found(index.rowsOf(text));
    if (byIndex) return byIndex;
    const key = keyOf(cell);
    const known = ofTheGrid.get(key) ?? otherwise(cell);
    ofTheGrid.set(key, known);
    return known;
  };
  const single = singleCell(sought as BaseValueObject);
  if (single) return find(single);
  const cells = sought as ArrayValueObject;
  if (cells.getColumnCount() !== 1) return null;
  const answers = Array.from({ length: cells.getRowCount() }, (_, row) => cells.get(row, 0));
  return answers.every((cell) => cell) ? columnWith(answers.map((cell) => [find(cell as BaseValueObject)])) : null;
}

function isNumber(given: Given, number: number): boolean {
  return !given.isReferenceObject() && singleCell(given as BaseValueObject)?.getValue() === number;
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

/** What stands in a column: the rows of each text, nothing counting as a blank one. */
class ColumnIndex {
  static readonly #known = new WeakMap<ArrayValueObject, ColumnIndex>();
  readonly #texts: readonly (string | null)[];
  readonly #rows = new Map<string, number[]>();

  private constructor(column: ArrayValueObject) {
    this.#texts = Array.from({ length: column.getRowCount() }, (_, row) => textOf(column.get(row, 0)));
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

  rowsOf(text: string): Rows {
    return this.#rows.get(text) ?? [];
  }

  holds(row: number, text: string): boolean {
    return this.#texts[row] === text;
  }
}

function textOf(cell: ReturnType<ArrayValueObject["get"]>): string | null {
  if (cell instanceof StringValueObject) return cell.getValue().toLocaleLowerCase();
  return cell?.isNull() === true ? "" : null;
}

/**
 * The answers to a column of criteria, from the rows that meet each. `answer` is for rows that meet plain texts alone; all
 * else is asked of the grid, over the rows that meet the plain texts among the criteria, or where there is none, once.
 */
function forEachText(
  target: readonly Given[],
  given: readonly Given[],
  calculate: Calculate,
  answer?: (rows: Rows) => BaseValueObject,
): BaseValueObject | null {
  const columns = given.filter((_, place) => place % 2 === 0).map(columnOf);
  const targets = target.map(columnOf);
  const criteria = given
    .filter((_, place) => place % 2 === 1)
    .map((one) => (one.isReferenceObject() ? (one as BaseReferenceObject).toArrayValueObject() : (one as BaseValueObject)));
  const count = largestOf(criteria.map((one) => (one.isArray() ? (one as ArrayValueObject).getRowCount() : 1)));
  const height = columns[0]?.getRowCount();
  const fits = (one: BaseValueObject) =>
    singleCell(one) !== null || ((one as ArrayValueObject).getRowCount() === count && (one as ArrayValueObject).getColumnCount() === 1);
  if (count < 2 || columns.length !== criteria.length || !criteria.every(fits)) return null;
  if ([...columns, ...targets].some((column) => column === null || !isLongColumn(column) || column.getRowCount() !== height)) return null;
  const indexes = columns.map((column) => ColumnIndex.of(column as ArrayValueObject));
  const ofTheGrid = new Map<string, BaseValueObject>();
  const answers: BaseValueObject[][] = [];
  for (let row = 0; row < count; row += 1) {
    const cells = criteria.map((one) => singleCell(one) ?? (one as ArrayValueObject).get(row, 0));
    if (cells.some((cell) => !cell)) return null;
    const texts = cells.map((cell) => (cell instanceof StringValueObject ? plainCriterion(cell.getValue()) : null));
    const rows = rowsThatHold(texts, indexes);
    if (rows === null) {
      const key = cells.map(keyOf).join("\n");
      const known = ofTheGrid.get(key) ?? calculate(...target, ...paired(given, cells));
      ofTheGrid.set(key, known);
      answers.push([known]);
    } else if (rows.length === 0) answers.push([NumberValueObject.create(0)]);
    else if (answer && texts.every((text) => text !== null)) answers.push([answer(rows)]);
    else {
      const chosen = (column: ArrayValueObject | null) =>
        new ChosenRows(column as ArrayValueObject, rows) as unknown as BaseReferenceObject;
      const asked = columns.flatMap((column, pair) => (texts[pair] === null ? [chosen(column), cells[pair] as BaseValueObject] : []));
      answers.push([
        calculate(...targets.map(chosen), ...(asked.length > 0 ? asked : [chosen(columns[0] ?? null), cells[0] as BaseValueObject])),
      ]);
    }
  }
  return columnWith(answers);
}

/** The rows that hold every text of the criteria, in the column of each; null where no criterion is a plain text. */
function rowsThatHold(texts: readonly (string | null)[], indexes: readonly ColumnIndex[]): Rows | null {
  let rows: Rows | null = null;
  texts.forEach((text, pair) => {
    const index = indexes[pair];
    if (text === null || !index) return;
    rows = rows === null ? index.rowsOf(text) : rows.filter((place) => index.holds(place, text));
  });
  return rows;
}

/** What a cell holds and of what kind it is. */
function keyOf(cell: ReturnType<ArrayValueObject["get"]>): string {
  return `${cell?.constructor.name} ${String(cell?.getValue())}`;
}

/** The columns with the criteria of one row. */
function paired(given: readonly Given[], cells: readonly ReturnType<ArrayValueObject["get"]>[]): Given[] {
  return given.map((one, place) => (place % 2 === 0 ? one : (cells[(place - 1) / 2] as BaseValueObject)));
}

/** As much of a reference as these functions ask for: some rows of a column. */
class ChosenRows {
  constructor(
    private readonly column: ArrayValueObject,
    private readonly rows: Rows,
  ) {}

  isReferenceObject(): boolean {
    return true;
  }

  toArrayValueObject(): ArrayValueObject {
    return columnWith(this.rows.map((row) => [this.column.get(row, 0) as BaseValueObject]));
  }
}

function sumOf(amounts: ArrayValueObject, rows: Rows): BaseValueObject {
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

function columnWith(cells: BaseValueObject[][]): ArrayValueObject {
  return ArrayValueObject.create({
    calculateValueList: cells,
    rowCount: cells.length,
    columnCount: 1,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}
