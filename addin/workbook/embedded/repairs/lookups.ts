import { largestOf } from "../../../../functions/extremes.ts";
import {
  ArrayValueObject,
  NumberValueObject,
  StringValueObject,
  ValueObjectFactory,
  functionMath,
  functionStatistical,
} from "@univerjs/preset-sheets-core";
import type { BaseReferenceObject, BaseValueObject } from "@univerjs/preset-sheets-core";

type Given = BaseValueObject | BaseReferenceObject;
type Calculate = (...given: Given[]) => BaseValueObject;
/** Columns with fewer rows are looked through. */
const FEW_ROWS = 16;

/**
 * Counts and sums by an index of the texts in a column, where the grid compares every criterion with every cell: the sheets
 * that hold a row a yard ask for each yard's rows among those of all yards. What is found is the same, and anything but a
 * plain text is left to the grid.
 */
export function findTextsByIndex(): void {
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

  rowsOf(text: string): readonly number[] {
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
