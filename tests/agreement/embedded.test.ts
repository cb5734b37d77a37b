import { describe, expect, it } from "vitest";
import { freshModule } from "../addin/workbook/embedded/on-node/grid-on-node.ts";
import { cases } from "./cases.ts";

describe("The port on the embedded spreadsheet", () => {
  const on = freshModule("agreement");

  it.each(cases.map(({ title }) => title))("%s", async (title) => {
    const failure = await on.runAgreementCase(title);
    expect(failure).toBeNull();
  });

  it("a cell's sentence moves with its formula when a row is inserted above", async () => {
    const sentences = await on.sentenceAroundInsertedRow();
    const curveNumber = expect.stringContaining("Curve number must be") as string;
    expect(sentences).toEqual([curveNumber, null, curveNumber]);
  });

  it("a cell that was selected has no words any more once its sheet in front is renamed or deleted", async () => {
    const [selected, ...gone] = await on.wordsOfGoneSheet();
    expect(selected).toEqual([expect.stringContaining("Curve number must be"), "Measured, not guessed."]);
    expect(gone).toEqual([
      [null, null],
      [null, null],
    ]);
  });

  it("a picture is a change to keep, is in the saved file, and is there when the file is opened again", async () => {
    expect(await on.pictureKept()).toEqual({ isChange: true, names: ["Y-001"] });
  });

  it("rows inserted among and above the yards leave every yard its own numbers", async () => {
    const told = await on.designsAround("insert rows");
    expect(Object.keys(told.before).length).toBeGreaterThan(10);
    expect(told.after).toEqual(told.before);
    // Formulas that stand row by row are not there yet in a row that is new; the check of the workbook offers them.
    expect(told.repairs.filter((sentence) => !/^'?(Hole tests|As-built)/.test(sentence))).toEqual([]);
  });

  it("a deleted yard is gone, and every other keeps its own numbers", async () => {
    const told = await on.designsAround("delete a yard's rows");
    const gone = Object.keys(told.before)[2] ?? "";
    const left = Object.fromEntries(Object.entries(told.before).filter(([siteId]) => siteId !== gone));
    expect(told.after).toEqual(left);
    expect(told.repairs).toEqual([]);
  });

  it("sorted yards take their numbers with them", async () => {
    const told = await on.designsAround("sort the yards");
    expect(told.after).toEqual(told.before);
    expect(Object.keys(told.after)).not.toEqual(Object.keys(told.before));
    expect(told.repairs).toEqual([]);
  });
});
