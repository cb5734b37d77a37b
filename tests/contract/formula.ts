/**
 * What a formula comes to, for the in-memory Excel: operators and arguments over ranges with Excel's broadcasting, LET,
 * and the functions of formula-functions.ts. Written from Excel's documentation, apart from the spreadsheet engine that
 * the page embeds, so that two engines answer every formula of the workbook.
 */
import { readFormula, type Expression } from "../../addin/actions/working/read-formula.ts";
import { isErrorCode, type CellRange } from "../../addin/workbook/port.ts";
import { broadcast, callFunction, lift, type Content, type Grid } from "./formula-functions.ts";

/** Shows the cells of a range, computed. */
export type Look = (range: CellRange) => Grid;

/** The formula, with its "=", of a cell on the sheet. */
export function parsedFormula(formula: string, sheet: string): Expression {
  const expression = readFormula(formula, sheet);
  if (expression === null) throw new Error(`The in-memory Excel cannot read ${formula}`);
  return expression;
}

/** More than one cell spills. */
export function evaluateFormula(expression: Expression, look: Look): Grid {
  return new Evaluation(look).of(expression, new Map());
}

type Names = ReadonlyMap<string, Grid>;

class Evaluation {
  readonly #look: Look;

  constructor(look: Look) {
    this.#look = look;
  }

  of(expression: Expression, names: Names): Grid {
    switch (expression.kind) {
      case "value":
        return [[expression.value]];
      case "error":
        return [[expression.code]];
      case "reference":
        return this.#look(expression.range);
      case "array":
        return expression.rows.map((row) => row.map((item) => this.of(item, names)[0]?.[0] ?? null));
      case "nothing":
        return [[null]];
      case "name":
        return names.get(expression.written.toUpperCase()) ?? [["#NAME?"]];
      case "operation":
        return this.#operation(
          expression.sign,
          expression.operands.map((operand) => this.of(operand, names)),
        );
      case "call":
        return this.#call(expression.name.toUpperCase().replace(/^_XLFN\./, ""), expression.inputs, names);
    }
  }

  #operation(sign: string, operands: readonly Grid[]): Grid {
    const [left = [[null]], right] = operands;
    if (right !== undefined) return broadcast(sign, left, right);
    if (sign === "-") return broadcast("-", [[0]], left);
    if (sign === "%") return broadcast("/", left, [[100]]);
    if (sign === "+") return left;
    throw new Error(`The in-memory Excel does not know the sign ${sign}`);
  }

  #call(name: string, inputs: readonly Expression[], names: Names): Grid {
    if (name === "LET") return this.#let(inputs, names);
    if (name === "IF") return this.#if(inputs, names);
    const [first] = inputs;
    if (name === "ROW" && first?.kind === "reference")
      return Array.from({ length: first.range.rows }, (_, row) => [first.range.row + row + 1]);
    return callFunction(
      name,
      inputs.map((input) => (input.kind === "nothing" ? undefined : this.of(input, names))),
    );
  }

  /** Names may be used from the pair after them on. */
  #let(inputs: readonly Expression[], outer: Names): Grid {
    const names = new Map(outer);
    const result = inputs.at(-1);
    if (inputs.length < 3 || inputs.length % 2 === 0 || result === undefined) return [["#VALUE!"]];
    for (let place = 0; place + 1 < inputs.length; place += 2) {
      const [name, value] = [inputs[place], inputs[place + 1]];
      if (name?.kind !== "name" || value === undefined) return [["#VALUE!"]];
      names.set(name.written.toUpperCase(), this.of(value, names));
    }
    return this.of(result, names);
  }

  /** A single condition has Excel look at the branch it chooses alone. */
  #if([test, yes, no]: readonly Expression[], names: Names): Grid {
    const branch = (expression: Expression | undefined, otherwise: Content): Grid =>
      expression === undefined ? [[otherwise]] : expression.kind === "nothing" ? [[0]] : this.of(expression, names);
    const conditions = test === undefined ? [["#VALUE!"]] : this.of(test, names);
    if (conditions.length === 1 && conditions[0]?.length === 1) {
      const met = truth(conditions[0][0] ?? null);
      return typeof met === "string" ? [[met]] : met ? branch(yes, true) : branch(no, false);
    }
    return lift([conditions, branch(yes, true), branch(no, false)], (condition = null, then = null, otherwise = null) => {
      const met = truth(condition);
      return typeof met === "string" ? met : met ? then : otherwise;
    });
  }
}

/** True or false, or the code of the error that the condition is. */
function truth(condition: Content): boolean | string {
  if (typeof condition !== "string") return Boolean(condition);
  return WORDS_OF_TRUTH.get(condition.toUpperCase()) ?? (isErrorCode(condition) ? condition : "#VALUE!");
}

const WORDS_OF_TRUTH: ReadonlyMap<string, boolean> = new Map([
  ["TRUE", true],
  ["FALSE", false],
]);
