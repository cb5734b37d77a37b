import type { CellRange } from "../../workbook/port.ts";
import { tokensOf, type Token } from "./formula-tokens.ts";

/** A formula as it is built up. `written` is its text in the formula. */
export type Expression = { readonly written: string } & (
  | { readonly kind: "value"; readonly value: number | string | boolean }
  | { readonly kind: "error"; readonly code: string }
  | { readonly kind: "reference"; readonly range: CellRange }
  | { readonly kind: "array"; readonly rows: readonly (readonly Expression[])[] }
  /** An argument that is left out between two commas. */
  | { readonly kind: "nothing" }
  | { readonly kind: "operation"; readonly sign: string; readonly operands: readonly Expression[] }
  | { readonly kind: "call"; readonly name: string; readonly inputs: readonly Expression[] }
  /** A defined name, or anything else that only the spreadsheet can look up. */
  | { readonly kind: "name" }
);

export type CallExpression = Extract<Expression, { kind: "call" }>;

/** Reads "=SOAK.DRAWDOWN(A1, 0.5)" of a cell on the sheet; null when it is no formula that we can read. */
export function readFormula(formula: string, sheet: string): Expression | null {
  if (!formula.startsWith("=")) return null;
  const text = formula.slice(1);
  const tokens = tokensOf(text);
  if (tokens === null) return null;
  try {
    return new FormulaReader(text, tokens, sheet).whole();
  } catch (error) {
    if (error instanceof Unreadable) return null;
    throw error;
  }
}

class Unreadable extends Error {}

/** From loosest to tightest, as spreadsheets bind them. */
const BINARY: readonly (readonly string[])[] = [["=", "<>", "<", ">", "<=", ">="], ["&"], ["+", "-"], ["*", "/"], ["^"]];
/** Deeper than spreadsheets allow functions to nest. */
const DEEPEST = 128;

class FormulaReader {
  #place = 0;
  #depth = 0;

  constructor(
    private readonly text: string,
    private readonly tokens: readonly Token[],
    private readonly sheet: string,
  ) {}

  whole(): Expression {
    const expression = this.#binary(0);
    if (this.#place < this.tokens.length) throw new Unreadable();
    return expression;
  }

  #binary(level: number): Expression {
    const signs = BINARY[level];
    if (signs === undefined) return this.#prefixed();
    const start = this.#start();
    let left = this.#binary(level + 1);
    for (;;) {
      const sign = signs.find((candidate) => this.#take(candidate));
      if (sign === undefined) return left;
      const operands = [left, this.#binary(level + 1)];
      left = { kind: "operation", sign, operands, written: this.#since(start) };
    }
  }

  #prefixed(): Expression {
    const start = this.#start();
    const sign = ["-", "+", "@"].find((candidate) => this.#take(candidate));
    if (sign === undefined) return this.#suffixed();
    const operands = [this.#deeper(() => this.#prefixed())];
    return { kind: "operation", sign, operands, written: this.#since(start) };
  }

  #suffixed(): Expression {
    const start = this.#start();
    let inner = this.#simple();
    for (;;) {
      const sign = ["%", "#"].find((candidate) => this.#take(candidate));
      if (sign === undefined) return inner;
      inner = { kind: "operation", sign, operands: [inner], written: this.#since(start) };
    }
  }

  #simple(): Expression {
    const start = this.#start();
    const token = this.tokens[this.#place];
    if (token === undefined) throw new Unreadable();
    this.#place += 1;
    const written = token.text;
    switch (token.kind) {
      case "number":
        return { kind: "value", value: Number(written), written };
      case "text":
        return { kind: "value", value: written.slice(1, -1).replaceAll('""', '"'), written };
      case "error":
        return { kind: "error", code: written, written };
      case "reference":
        return { kind: "reference", range: rangeOf(written, this.sheet), written };
      case "name":
        return /^(true|false)$/i.test(written) ? { kind: "value", value: /^true$/i.test(written), written } : { kind: "name", written };
      case "function": {
        this.#expect("(");
        const inputs = this.#listUntil(")");
        return { kind: "call", name: written, inputs, written: this.#since(start) };
      }
      case "mark":
        return written === "(" ? this.#bracketed() : written === "{" ? this.#array(start) : this.#refuse();
    }
  }

  #bracketed(): Expression {
    const inner = this.#deeper(() => this.#binary(0));
    this.#expect(")");
    return inner;
  }

  #array(start: number): Expression {
    const rows: Expression[][] = [[]];
    for (;;) {
      rows.at(-1)?.push(this.#prefixed());
      if (this.#take("}")) return { kind: "array", rows, written: this.#since(start) };
      if (this.#take(";")) rows.push([]);
      else this.#expect(",");
    }
  }

  #listUntil(close: string): readonly Expression[] {
    if (this.#take(close)) return [];
    const items: Expression[] = [];
    for (;;) {
      items.push(this.#isAt(",") || this.#isAt(close) ? { kind: "nothing", written: "" } : this.#deeper(() => this.#binary(0)));
      if (this.#take(close)) return items;
      this.#expect(",");
    }
  }

  #deeper(read: () => Expression): Expression {
    this.#depth += 1;
    if (this.#depth > DEEPEST) throw new Unreadable();
    const expression = read();
    this.#depth -= 1;
    return expression;
  }

  #isAt(mark: string): boolean {
    const token = this.tokens[this.#place];
    return token?.kind === "mark" && token.text === mark;
  }

  #take(mark: string): boolean {
    if (!this.#isAt(mark)) return false;
    this.#place += 1;
    return true;
  }

  #expect(mark: string): void {
    if (!this.#take(mark)) throw new Unreadable();
  }

  #refuse(): never {
    throw new Unreadable();
  }

  #start(): number {
    return this.tokens[this.#place]?.start ?? this.text.length;
  }

  #since(start: number): string {
    const last = this.tokens[this.#place - 1];
    return last === undefined ? "" : this.text.slice(start, last.start + last.text.length);
  }
}

/** The cells that "'Hole tests'!$A$5:$B$6" stands for, on a sheet of its own or on the formula's. */
function rangeOf(written: string, sheet: string): CellRange {
  const bang = written.lastIndexOf("!");
  const prefix = written.slice(0, Math.max(bang, 0));
  const [first = "", last = first] = written
    .slice(bang + 1)
    .replaceAll("$", "")
    .split(":");
  const [from, to] = [cornerOf(first), cornerOf(last)];
  return {
    sheet: bang === -1 ? sheet : prefix.startsWith("'") ? prefix.slice(1, -1).replaceAll("''", "'") : prefix,
    row: Math.min(from.row, to.row),
    column: Math.min(from.column, to.column),
    rows: Math.abs(from.row - to.row) + 1,
    columns: Math.abs(from.column - to.column) + 1,
  };
}

function cornerOf(cell: string): { readonly row: number; readonly column: number } {
  const letters = cell.replace(/\d+$/, "");
  const column = [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(cell.slice(letters.length)) - 1, column };
}
