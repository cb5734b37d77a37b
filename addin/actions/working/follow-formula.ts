import { largestOf } from "../../../functions/extremes.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import { INCHES_PER_FOOT, metricPerUs } from "../../../functions/quantities.ts";
import { isCellError, type Cell, type CellError, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { CellRange } from "../../workbook/port.ts";
import type { CallExpression, Expression } from "./read-formula.ts";

export type Rows = readonly (readonly Cell[])[];

/** What the sheet holds in a range, or undefined where it was not read. */
export type CellsIn = (range: CellRange) => Rows | undefined;

const byName = new Map(catalogue.map((declared) => [declared.name, declared]));

/** Our function that the call names, in either spelling: spreadsheets without the add-in keep the second one. */
export function functionCalled({ name }: CallExpression): WorksheetFunction | undefined {
  const own = /^(?:SOAK\.|_xldudf_SOAK_)([A-Z0-9]+)$/i.exec(name)?.[1];
  return own === undefined ? undefined : byName.get(own.toUpperCase());
}

/** "LET" for the spreadsheet's own function, which files write as "_xlfn.LET". */
export function spreadsheetName({ name }: CallExpression): string {
  return name.toUpperCase().replace(/^_XLFN\./, "");
}

/** Functions of the spreadsheet that take cells and give as many: a call of ours inside keeps its place in the spill. */
export const CELL_BY_CELL: ReadonlySet<string> = new Set(["IF", "IFERROR", "IFNA"]);

/**
 * Works a formula out from the cells it reads: our functions, arithmetic, comparisons, IF, IFERROR, IFNA, AND, OR, and
 * what the workbook's own formulas are written with: LET, FILTER by a column, ROW of a range, CONVERT of a length.
 * Anything else is the spreadsheet's to work out, and what contains it is undefined here: nothing is guessed.
 */
export class FormulaFollower {
  readonly #followed = new Map<Expression, Rows | undefined>();
  /** What LET has named so far. */
  readonly #named = new Map<string, Expression>();

  constructor(private readonly cellsIn: CellsIn) {}

  follow(expression: Expression): Rows | undefined {
    if (!this.#followed.has(expression)) this.#followed.set(expression, this.#work(expression));
    return this.#followed.get(expression);
  }

  /** The arguments of a call as our functions take them; undefined for one that cannot be followed. */
  inputsOf({ inputs }: CallExpression): readonly (Rows | undefined)[] {
    return inputs.map((input) => (input.kind === "nothing" ? [[null]] : this.follow(input)));
  }

  #work(expression: Expression): Rows | undefined {
    switch (expression.kind) {
      case "value":
        return [[expression.value]];
      case "error":
        return [[passedOn(expression.code)]];
      case "reference":
        return this.cellsIn(expression.range);
      case "array": {
        const rows = expression.rows.map((row) => row.map((item) => this.follow(item)?.[0]?.[0]));
        return rows.every((row): row is Cell[] => row.length === rows[0]?.length && !row.includes(undefined)) ? rows : undefined;
      }
      case "operation":
        return this.#operation(expression.sign, expression.operands);
      case "call":
        return this.#call(expression);
      case "nothing":
        return undefined;
      case "name": {
        const named = this.#named.get(expression.written.toUpperCase());
        return named === undefined ? undefined : this.follow(named);
      }
    }
  }

  #let(inputs: readonly Expression[]): Rows | undefined {
    const result = inputs.at(-1);
    for (let place = 0; place + 1 < inputs.length; place += 2) {
      const [name, value] = [inputs[place], inputs[place + 1]];
      if (name?.kind !== "name" || value === undefined) return undefined;
      this.#named.set(name.written.toUpperCase(), value);
    }
    return result === undefined ? undefined : this.follow(result);
  }

  #operation(sign: string, operands: readonly Expression[]): Rows | undefined {
    if (sign === "@" || sign === "#") return undefined;
    return cellByCell(
      operands.map((operand) => this.follow(operand)),
      (cells) => operate(sign, cells),
    );
  }

  #call(call: CallExpression): Rows | undefined {
    const own = functionCalled(call);
    if (own !== undefined) {
      const inputs = this.inputsOf(call);
      return inputs.every((input) => input !== undefined) ? own.evaluate(inputs.map(asInput)) : undefined;
    }
    const name = spreadsheetName(call);
    if (name === "LET") return this.#let(call.inputs);
    const [first] = call.inputs;
    if (name === "ROW" && first?.kind === "reference")
      return Array.from({ length: first.range.rows }, (_, row) => [first.range.row + row + 1]);
    const inputs = this.inputsOf(call);
    if (name === "FILTER" && inputs.length === 2) return filtered(inputs[0], inputs[1]);
    if (name === "CONVERT" && inputs.length === 3)
      return cellByCell(inputs, ([value = null, from = null, to = null]) => converted(value, from, to));
    if (name === "IF" && (inputs.length === 2 || inputs.length === 3)) {
      // Without a third argument a spreadsheet answers FALSE, and 0 for one that is only a comma.
      const branches = [
        inputs[0],
        whenEmpty(call.inputs[1], inputs[1]),
        inputs.length === 2 ? [[false]] : whenEmpty(call.inputs[2], inputs[2]),
      ];
      return cellByCell(branches, ([condition = null, yes = null, no = null]) => chosen(condition, yes, no));
    }
    if ((name === "IFERROR" || name === "IFNA") && inputs.length === 2) {
      return cellByCell([inputs[0], whenEmpty(call.inputs[1], inputs[1])], ([cell = null, instead = null]) =>
        isCellError(cell) && (name === "IFERROR" || cell.code === "#N/A") ? instead : cell,
      );
    }
    if ((name === "AND" || name === "OR") && inputs.length > 0) return allOrAny(name, inputs);
    return undefined;
  }
}

/** The rows for which the column beside them is true. */
function filtered(rows: Rows | undefined, include: Rows | undefined): Rows | undefined {
  if (rows === undefined || include?.length !== rows.length) return undefined;
  const kept = rows.filter((_, row) => truth(include[row]?.[0] ?? null) === true);
  return kept.length > 0 ? kept : undefined;
}

/** A length in another unit, by the factors that the functions convert with. */
function converted(value: Cell, from: Cell, to: Cell): Cell | undefined {
  if (isCellError(value)) return value;
  const number = asNumber(value);
  const factor = CONVERSIONS.get(`${asText(from)} ${asText(to)}`);
  return number === undefined || factor === undefined ? undefined : number * factor;
}

const CONVERSIONS: ReadonlyMap<string, number> = new Map([
  ["in mm", metricPerUs("depth")],
  ["mm in", 1 / metricPerUs("depth")],
  ["ft m", metricPerUs("length")],
  ["m ft", 1 / metricPerUs("length")],
  ["in ft", 1 / INCHES_PER_FOOT],
  ["mm m", 0.001],
]);

/** One cell as a single cell, for functions that tell it from a range. */
export function asInput(rows: Rows): CellInput {
  return rows.length === 1 && rows[0]?.length === 1 ? (rows[0][0] ?? null) : rows;
}

/** The cell that a place of a spilled result meets: one row or one column meets every place. */
export function cellAt(rows: Rows, row: number, column: number): Cell | undefined {
  const line = rows[rows.length === 1 ? 0 : row];
  return line?.[line.length === 1 ? 0 : column];
}

export function passedOn(code: string): CellError {
  return { code, sentence: "" };
}

function whenEmpty(input: Expression | undefined, rows: Rows | undefined): Rows | undefined {
  return input?.kind === "nothing" ? [[0]] : rows;
}

function cellByCell(inputs: readonly (Rows | undefined)[], work: (cells: readonly Cell[]) => Cell | undefined): Rows | undefined {
  if (!inputs.every((input) => input !== undefined)) return undefined;
  const rows = largestOf(inputs.map((input) => input.length));
  const columns = largestOf(inputs.map((input) => input[0]?.length ?? 0));
  const answers: Cell[][] = [];
  for (let row = 0; row < rows; row += 1) {
    const line: Cell[] = [];
    for (let column = 0; column < columns; column += 1) {
      const cells = inputs.map((input) => cellAt(input, row, column));
      const answer = cells.every((cell) => cell !== undefined) ? work(cells) : undefined;
      if (answer === undefined) return undefined;
      line.push(answer);
    }
    answers.push(line);
  }
  return answers;
}

function chosen(condition: Cell, yes: Cell, no: Cell): Cell | undefined {
  if (isCellError(condition)) return condition;
  const isTrue = truth(condition);
  return isTrue === undefined ? undefined : isTrue ? yes : no;
}

function allOrAny(name: "AND" | "OR", inputs: readonly (Rows | undefined)[]): Rows | undefined {
  if (!inputs.every((input) => input !== undefined)) return undefined;
  const cells = inputs.flat(2);
  const error = cells.find(isCellError);
  if (error !== undefined) return [[error]];
  const truths = cells.map(truth);
  if (truths.includes(undefined)) return undefined;
  return [[name === "AND" ? !truths.includes(false) : truths.includes(true)]];
}

function truth(cell: Cell): boolean | undefined {
  if (cell === null) return false;
  return typeof cell === "boolean" ? cell : typeof cell === "number" ? cell !== 0 : undefined;
}

function operate(sign: string, cells: readonly Cell[]): Cell | undefined {
  const error = cells.find(isCellError);
  if (error !== undefined) return error;
  const [left = null, right = null] = cells;
  if (sign === "&") return `${asText(left)}${asText(right)}`;
  if (COMPARISONS.has(sign)) return COMPARISONS.get(sign)?.(compared(left, right));
  const numbers = cells.map(asNumber);
  const [first, second] = numbers;
  // Text that reads as a number is turned into one by some spreadsheets and refused by others.
  if (numbers.includes(undefined) || first === undefined) return undefined;
  const answer = second === undefined ? onOne(sign, first) : onTwo(sign, first, second);
  if (answer === undefined) return passedOn("#DIV/0!");
  return Number.isFinite(answer) ? answer : passedOn("#NUM!");
}

function onOne(sign: string, value: number): number {
  return sign === "-" ? -value : sign === "%" ? value / 100 : value;
}

function onTwo(sign: string, left: number, right: number): number | undefined {
  if (sign === "+") return left + right;
  if (sign === "-") return left - right;
  if (sign === "*") return left * right;
  if (sign === "^") return left === 0 && right === 0 ? Number.NaN : left ** right;
  return right === 0 ? undefined : left / right;
}

const COMPARISONS: ReadonlyMap<string, (order: number) => boolean> = new Map([
  ["=", (order: number) => order === 0],
  ["<>", (order: number) => order !== 0],
  ["<", (order: number) => order < 0],
  [">", (order: number) => order > 0],
  ["<=", (order: number) => order <= 0],
  [">=", (order: number) => order >= 0],
]);

/** As spreadsheets order cells: numbers before text before TRUE and FALSE, case aside; a blank is whatever it is compared with. */
function compared(left: Cell, right: Cell): number {
  const [one, other] = [asComparedWith(left, right), asComparedWith(right, left)];
  if (typeof one !== typeof other) return rank(one) - rank(other);
  return one === other ? 0 : one < other ? -1 : 1;
}

function asComparedWith(cell: Cell, other: Cell): number | string | boolean {
  if (cell === null) return typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
  return typeof cell === "string" ? cell.toLowerCase() : (cell as number | boolean);
}

function rank(cell: number | string | boolean): number {
  return ["number", "string", "boolean"].indexOf(typeof cell);
}

function asNumber(cell: Cell): number | undefined {
  if (cell === null) return 0;
  return typeof cell === "number" ? cell : typeof cell === "boolean" ? Number(cell) : undefined;
}

function asText(cell: Cell): string {
  if (cell === null) return "";
  return typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell as number | string);
}
