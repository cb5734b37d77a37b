import { beforeEach, describe, expect, it } from "vitest";
import { CellSentences, PASSED_ON } from "../../../../addin/workbook/embedded/sentences.ts";
import { invalid, missing } from "../../../../functions/worksheet/calling/cell.ts";

const formula = { sheetId: "design", row: 3, column: 5 };
const tooSteep = invalid("Ground slope must be 12 % or less.");
const noArea = missing("Contributing area is missing.");
const passing = { code: "#VALUE!", sentence: "" };

describe("The sentence behind a cell's error", () => {
  let sentences: CellSentences;

  beforeEach(() => {
    sentences = new CellSentences();
    sentences.recalculationStarts();
  });

  it("is the one its formula gave", () => {
    sentences.remember(formula, [[tooSteep]]);
    expect(sentences.at(formula, "#VALUE!")).toBe(tooSteep.sentence);
  });

  it("is each spilled cell's own", () => {
    sentences.remember(formula, [
      [1, tooSteep],
      [noArea, 4],
    ]);
    expect(sentences.at({ ...formula, column: 6 }, "#VALUE!")).toBe(tooSteep.sentence);
    expect(sentences.at({ ...formula, row: 4 }, "#N/A")).toBe(noArea.sentence);
    expect(sentences.at({ ...formula, row: 4, column: 6 }, "#VALUE!")).toBeNull();
    expect(sentences.at({ ...formula, sheetId: "rules", row: 4 }, "#N/A")).toBeNull();
  });

  it("is not told of a cell that shows another error by now", () => {
    sentences.remember(formula, [[tooSteep]]);
    expect(sentences.at(formula, "#REF!")).toBeNull();
  });

  it("is forgotten when the formula is computed again without an error", () => {
    sentences.remember(formula, [[tooSteep]]);
    sentences.recalculationStarts();
    sentences.remember(formula, [[5]]);
    expect(sentences.at(formula, "#VALUE!")).toBeNull();
  });

  it("stays when only other formulas are computed again", () => {
    sentences.remember(formula, [[tooSteep]]);
    sentences.recalculationStarts();
    sentences.remember({ ...formula, row: 9 }, [[noArea]]);
    expect(sentences.at(formula, "#VALUE!")).toBe(tooSteep.sentence);
  });

  it("is the inner function's when the outer one only passes the error on", () => {
    sentences.remember(formula, [[tooSteep]]);
    sentences.remember(formula, [[passing]]);
    expect(sentences.at(formula, "#VALUE!")).toBe(tooSteep.sentence);
  });

  it("says that an error came from another cell when no function of the formula made it", () => {
    sentences.remember(formula, [[passing]]);
    expect(sentences.at(formula, "#VALUE!")).toBe(PASSED_ON);
  });

  it("is found when the formula picks one cell out of a function's row", () => {
    sentences.remember(formula, [[1, 2, noArea]]);
    expect(sentences.at(formula, "#N/A")).toBe(noArea.sentence);
  });

  it("goes with the workbook", () => {
    sentences.remember(formula, [[tooSteep]]);
    sentences.forgetAll();
    expect(sentences.at(formula, "#VALUE!")).toBeNull();
  });
});
