import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readFormula, type Expression } from "../../../../addin/actions/working/read-formula.ts";

function read(formula: string): Expression {
  const expression = readFormula(formula, "Here");
  if (expression === null) throw new Error(`${formula} was not read.`);
  return expression;
}

/** The formula with every operation in brackets, to see what binds to what. */
function bracketed(expression: Expression): string {
  if (expression.kind !== "operation") return expression.written;
  const [left, right] = expression.operands.map(bracketed);
  return right === undefined ? `(${expression.sign}${left ?? ""})` : `(${left ?? ""}${expression.sign}${right})`;
}

describe("A formula", () => {
  it.each([
    ["=4.25", 4.25],
    ["=.5", 0.5],
    ["=1.5E-3", 0.0015],
    ['="say ""when"""', 'say "when"'],
    ["=TRUE", true],
    ["=false", false],
  ])("%s is the value %j", (formula, value) => {
    expect(read(formula)).toMatchObject({ kind: "value", value });
  });

  it.each([
    ["=B3", { sheet: "Here", row: 2, column: 1, rows: 1, columns: 1 }],
    ["=$AA$10", { sheet: "Here", row: 9, column: 26, rows: 1, columns: 1 }],
    ["=b2:D4", { sheet: "Here", row: 1, column: 1, rows: 3, columns: 3 }],
    ["=$D$4:$B$2", { sheet: "Here", row: 1, column: 1, rows: 3, columns: 3 }],
    ["=Sites!C5", { sheet: "Sites", row: 4, column: 2, rows: 1, columns: 1 }],
    ["='Hole tests'!$A$5:$A$6", { sheet: "Hole tests", row: 4, column: 0, rows: 2, columns: 1 }],
    ["='Corner''s yard'!A1", { sheet: "Corner's yard", row: 0, column: 0, rows: 1, columns: 1 }],
  ])("%s is read as the cells it names", (formula, range) => {
    expect(read(formula)).toMatchObject({ kind: "reference", range });
  });

  it("keeps what is left out between two commas as nothing, and gives each argument as it is written", () => {
    const call = read('=SOAK.SITEDESIGN(A1, ,"a,b", IF(B1="",1,$B$1) ,)');
    expect(call).toMatchObject({ kind: "call", name: "SOAK.SITEDESIGN" });
    expect(call.kind === "call" ? call.inputs.map(({ written }) => written) : []).toEqual(["A1", "", '"a,b"', 'IF(B1="",1,$B$1)', ""]);
  });

  it("has no arguments between empty brackets", () => {
    expect(read("=SOAK.VERSION( )")).toMatchObject({ kind: "call", inputs: [] });
  });

  it.each([
    ["=1+2*3", "(1+(2*3))"],
    ["=(1+2)*3", "((1+2)*3)"],
    ["=8/4/2", "((8/4)/2)"],
    ["=-2^2", "((-2)^2)"],
    ["=5%+1", "((%5)+1)"],
    ['=A1&"x"=B1', '((A1&"x")=B1)'],
    ["=1<>2", "(1<>2)"],
  ])("%s binds as a spreadsheet binds it", (formula, expected) => {
    expect(bracketed(read(formula))).toBe(expected);
  });

  it("tells a function from a cell that it looks like", () => {
    expect(read("=LOG10(100)")).toMatchObject({ kind: "call", name: "LOG10" });
  });

  it.each([
    "A1",
    "=",
    "=1+",
    "=SOAK.DRAWDOWN(1",
    "=SOAK.DRAWDOWN(1))",
    "=Table1[Area]",
    '="open',
    "=[Book]Sheet!A1",
    `=${"(".repeat(5000)}1`,
  ])("%s is not read, rather than read wrongly", (formula) => {
    expect(readFormula(formula, "Here")).toBeNull();
  });

  it("never fails on any text, however odd", () => {
    const piece = fc.constantFrom(
      "=",
      "SOAK.DRAWDOWN(",
      "(",
      ")",
      ",",
      '"',
      "'",
      "!",
      "A1",
      "$B$2",
      ":",
      "#N/A",
      "{",
      "}",
      ";",
      "1",
      ".",
      "e",
      "%",
      " ",
      "-",
      "[",
      "TRUE",
    );
    const formulas = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.array(piece, { maxLength: 40 }).map((pieces) => pieces.join("")),
    );
    fc.assert(
      fc.property(formulas, (text) => {
        const expression = readFormula(`=${text}`, "Here");
        if (expression !== null) expect(text).toContain(expression.written);
      }),
      { numRuns: 1000 },
    );
  });
});
