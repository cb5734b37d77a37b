/**
 * Just enough of a calculation for a cell to show an answer: numbers, texts, references, + - * / &, comparisons,
 * SUM, IF, NA, VALUE and our own functions, over ranges, with Excel's broadcasting. Anything else is an error of the test.
 */
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { isCellError, type Cell, type CellInput } from "../../functions/worksheet/cell.ts";
import { isErrorCode } from "../../addin/workbook/workbook.ts";

export type Content = string | number | boolean | null;
export type Grid = readonly (readonly Content[])[];

export interface Reference {
  readonly sheet: string | null;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

type Look = (reference: Reference) => Grid;

/** What the formula, with its "=", comes to; more than one cell spills. */
export function evaluateFormula(formula: string, look: Look): Grid {
  const parser = new Parser(tokens(formula.slice(1)), look);
  const grid = parser.comparison();
  if (!parser.atEnd) throw new Error(`The in-memory Excel does not understand ${formula}`);
  return grid.length === 1 && grid[0]?.length === 1 ? [[grid[0][0] ?? 0]] : grid;
}

const TOKEN = /\s*("(?:[^"]|"")*"|(?:'(?:[^']|'')+'|[A-Za-z_][A-Za-z0-9_]*)!|\$?[A-Z]{1,3}\$?\d+(?![A-Za-z0-9_(.])|\d+(?:\.\d+)?(?:E[+-]?\d+)?|[A-Za-z_][A-Za-z0-9_.]*|<>|<=|>=|[-+*/&=<>(),:])/gy;

function tokens(text: string): readonly string[] {
  const found = [...text.matchAll(TOKEN)].map((match) => match[1] ?? "");
  if (found.join("").length !== text.replace(/\s+(?=(?:[^"]*"[^"]*")*[^"]*$)/g, "").length) throw new Error(`The in-memory Excel cannot read =${text}`);
  return found;
}

class Parser {
  #next = 0;
  readonly #tokens: readonly string[];
  readonly #look: Look;

  constructor(all: readonly string[], look: Look) {
    this.#tokens = all;
    this.#look = look;
  }

  get atEnd(): boolean {
    return this.#next === this.#tokens.length;
  }

  comparison(): Grid {
    return this.#chain(["=", "<>", "<", ">", "<=", ">="], () => this.#chain(["&"], () => this.#chain(["+", "-"], () => this.#chain(["*", "/"], () => this.#signed()))));
  }

  #chain(operators: readonly string[], operand: () => Grid): Grid {
    let left = operand();
    for (let operator = this.#peek(); operators.includes(operator); operator = this.#peek()) {
      this.#next += 1;
      left = broadcast(operator, left, operand());
    }
    return left;
  }

  #signed(): Grid {
    if (this.#peek() !== "-") return this.#primary();
    this.#next += 1;
    return broadcast("-", [[0]], this.#signed());
  }

  #primary(): Grid {
    const token = this.#take();
    if (token === "(") {
      const inside = this.comparison();
      this.#expect(")");
      return inside;
    }
    if (token.startsWith('"')) return [[token.slice(1, -1).replaceAll('""', '"')]];
    if (/^\d/.test(token)) return [[Number(token)]];
    if (token.endsWith("!")) return this.#reference(sheetName(token), this.#take());
    if (CELL.test(token) && this.#peek() !== "(") return this.#reference(null, token);
    if (/^(TRUE|FALSE)$/i.test(token)) return [[token.toUpperCase() === "TRUE"]];
    this.#expect("(");
    const given: (Grid | undefined)[] = [];
    while (this.#peek() !== ")") {
      given.push(this.#peek() === "," ? undefined : this.comparison());
      if (this.#peek() === ",") this.#next += 1;
    }
    this.#expect(")");
    return call(token.toUpperCase(), given);
  }

  #reference(sheet: string | null, first: string): Grid {
    const from = cellOf(first);
    if (this.#peek() !== ":") return this.#look({ sheet, ...from, rows: 1, columns: 1 });
    this.#next += 1;
    const to = cellOf(this.#take());
    return this.#look({ sheet, ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 });
  }

  #peek(): string {
    return this.#tokens[this.#next] ?? "";
  }

  #take(): string {
    const token = this.#peek();
    this.#next += 1;
    return token;
  }

  #expect(token: string): void {
    if (this.#take() !== token) throw new Error(`The in-memory Excel expected ${token} in ${this.#tokens.join(" ")}`);
  }
}

const CELL = /^\$?([A-Z]{1,3})\$?(\d+)$/;

function cellOf(token: string): { row: number; column: number } {
  const [, letters = "", digits = ""] = CELL.exec(token) ?? [];
  if (letters === "") throw new Error(`${token} is not a cell.`);
  return { row: Number(digits) - 1, column: [...letters].reduce((column, letter) => column * 26 + letter.charCodeAt(0) - 64, 0) - 1 };
}

function sheetName(token: string): string {
  const name = token.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}

/** Excel's broadcasting: one cell, row or column goes with every cell of the other; what has no partner is #N/A. */
function lift(grids: readonly Grid[], answer: (...contents: readonly Content[]) => Content): Grid {
  const rows = Math.max(...grids.map((grid) => grid.length));
  const columns = Math.max(...grids.map((grid) => grid[0]?.length ?? 0));
  const at = (grid: Grid, row: number, column: number): Content => {
    const line = grid.length === 1 ? grid[0] : grid[row];
    const content = line?.length === 1 ? line[0] : line?.[column];
    return content === undefined ? "#N/A" : content;
  };
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => answer(...grids.map((grid) => at(grid, row, column)))));
}

function broadcast(operator: string, left: Grid, right: Grid): Grid {
  return lift([left, right], (one = null, other = null) => operate(operator, one, other));
}

function operate(operator: string, left: Content, right: Content): Content {
  if (isErrorCode(left)) return left;
  if (isErrorCode(right)) return right;
  if (operator === "&") return `${left ?? ""}${right ?? ""}`;
  if (operator === "=") return isSame(left, right);
  if (operator === "<>") return !isSame(left, right);
  const [one, other] = [numberOf(left), numberOf(right)];
  if (one === null || other === null) return "#VALUE!";
  switch (operator) {
    case "+": return one + other;
    case "-": return one - other;
    case "*": return one * other;
    case "/": return other === 0 ? "#DIV/0!" : one / other;
    case "<": return one < other;
    case ">": return one > other;
    case "<=": return one <= other;
    case ">=": return one >= other;
    default: throw new Error(`The in-memory Excel does not know ${operator}`);
  }
}

/** A blank equals 0 and the empty text; case does not count. */
function isSame(left: Content, right: Content): boolean {
  if (left === null || right === null) return [left, right].every((content) => content === null || content === "" || content === 0 || content === false);
  return typeof left === "string" && typeof right === "string" ? left.toLowerCase() === right.toLowerCase() : left === right;
}

function numberOf(content: Content): number | null {
  if (content === null) return 0;
  if (typeof content === "string") return content.trim() !== "" && Number.isFinite(Number(content)) ? Number(content) : null;
  return Number(content);
}

function call(name: string, given: readonly (Grid | undefined)[]): Grid {
  if (name === "SUM") {
    const cells = given.flatMap((grid) => (grid ?? []).flat());
    return [[cells.find(isErrorCode) ?? cells.reduce<number>((sum, cell) => sum + (typeof cell === "number" ? cell : 0), 0)]];
  }
  if (name === "NA") return [["#N/A"]];
  if (name === "VALUE") return lift([given[0] ?? [[null]]], (content = null) => numberOf(content) ?? "#VALUE!");
  if (name === "IF") {
    const [test = [[null]], yes = [[null]], no = [[false]]] = given;
    return lift([test, yes, no], (met = null, then = null, otherwise = null) => (isErrorCode(met) ? met : met ? then : otherwise));
  }
  const ours = catalogue.find((each) => `SOAK.${each.name}` === name);
  if (ours === undefined) return [["#NAME?"]];
  return ours.evaluate(given.map(inputOf)).map((row) => row.map((cell) => (isCellError(cell) ? cell.code : cell)));
}

function inputOf(grid: Grid | undefined): CellInput {
  if (grid === undefined) return undefined;
  const cells = grid.map((row) => row.map((content): Cell => (isErrorCode(content) ? { code: content, sentence: "" } : content)));
  return cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : cells;
}
