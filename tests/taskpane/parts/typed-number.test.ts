import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LARGEST_NUMBER } from "../../../functions/quantities.ts";
import { asTyped, readTypedNumber } from "../../../taskpane/parts/typed-number.ts";

const area = { label: "Area" };

describe("A number typed into the pane", () => {
  it.each([
    ["12", 12],
    [" 12.5 ", 12.5],
    [".5", 0.5],
    ["0", 0],
    ["-3", -3],
    ["1e3", 1000],
  ])("%j is read as the number it is", (typed, value) => {
    expect(readTypedNumber(typed, area)).toEqual({ value });
  });

  it.each([
    ["6 in", 'Area must be a number alone, in the unit shown; it is "6 in".'],
    ["6in", 'Area must be a number alone, in the unit shown; it is "6in".'],
    ["300 sq ft", 'Area must be a number alone, in the unit shown; it is "300 sq ft".'],
    ["1/2", 'Area must be a number, not a fraction: write 0.5 for 1/2; it is "1/2".'],
    ["4 1/2", 'Area must be a number, not a fraction: write 0.5 for 1/2; it is "4 1/2".'],
    ["1,5", 'Area must be a number without a comma, such as 1.5 or 1200; it is "1,5".'],
    ["1,200", 'Area must be a number without a comma, such as 1.5 or 1200; it is "1,200".'],
    ["1,200,000.5", 'Area must be a number without a comma, such as 1.5 or 1200; it is "1,200,000.5".'],
    ["about 12", 'Area must be a number; it is the text "about 12".'],
    ["--3", 'Area must be a number; it is the text "--3".'],
    ["1e999", "Area is too large to be true."],
    ["1e308", "Area is too large to be true."],
    ["-1e13", "Area is too large to be true."],
  ])("%j is refused in words and never guessed", (typed, sentence) => {
    expect(readTypedNumber(typed, area)).toEqual({ sentence });
  });

  it("a blank is nothing, never zero, and is missed where the number is needed", () => {
    expect(readTypedNumber("  ", area)).toEqual({ value: null });
    expect(readTypedNumber("", { ...area, required: true })).toEqual({ sentence: "Area is missing." });
  });

  it("a number outside its limits is refused with the limit", () => {
    expect(readTypedNumber("-1", { ...area, atLeast: 0 })).toEqual({ sentence: "Area must be 0 or more." });
    expect(readTypedNumber("0", { label: "Run", moreThan: 0 })).toEqual({ sentence: "Run must be more than 0." });
    expect(readTypedNumber("1.01", { label: "Share", atMost: 1 })).toEqual({ sentence: "Share must be 1 or less." });
  });

  it("whatever is typed gives a finite number, nothing or a sentence", () => {
    fc.assert(
      fc.property(fc.string(), (typed) => {
        const read = readTypedNumber(typed, area);
        if ("sentence" in read) expect(read.sentence).toMatch(/^Area .*\.$/s);
        else expect(read.value === null || Number.isFinite(read.value)).toBe(true);
      }),
    );
  });

  it("a number that a sheet takes is shown in full and read back as the same number", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -LARGEST_NUMBER, max: LARGEST_NUMBER }), (number) => {
        expect(readTypedNumber(asTyped(number), area)).toEqual({ value: number === 0 ? 0 : number });
      }),
    );
  });

  it("a text that stands in a number's cell is kept letter for letter", () => {
    expect(asTyped("8 in ")).toBe("8 in ");
  });
});
