import { describe, expect, test } from "vitest";
import { cellFromHost, inputFromHost, withoutBlankRowsBelow } from "../../../../functions/worksheet/calling/host-cells.ts";
import { refused } from "../sample-functions.ts";

const passed = (code: string) => ({ code, sentence: "" });

describe("cells as hosts hand them over", () => {
  test.each([[3.5], [0], ["12 in"], [""], [true], [false], [null]])("%j is what it is", (value) => {
    expect(cellFromHost(value)).toBe(value);
  });

  test("what was left out is blank", () => {
    expect(cellFromHost(undefined)).toBeNull();
  });

  test.each([
    "#N/A",
    "#DIV/0!",
    "#VALUE!",
    "#REF!",
    "#NAME?",
    "#NUM!",
    "#NULL!",
    "#SPILL!",
    "#CALC!",
    "#GETTING_DATA",
    "#BUSY!",
    "#UNKNOWN!",
  ])("the text %s is that error", (code) => {
    expect(cellFromHost(code)).toEqual(passed(code));
  });

  test.each(["#1 yard", "#", "# N/A", "#A", "see #N/A", "#value!"])("%s is only text", (text) => {
    expect(cellFromHost(text)).toBe(text);
  });

  test.each<[string, object, string]>([
    ["by its code", { code: "#NUM!", message: "no" }, "#NUM!"],
    ["by what it shows", { type: "Error", basicType: "Error", basicValue: "#DIV/0!", errorType: "Div0" }, "#DIV/0!"],
    ["by its type alone", { type: "Error", errorType: "Blocked" }, "#VALUE!"],
    ["as a host's own error", Object.assign(new Error("no"), { code: "#REF!" }), "#REF!"],
  ])("an error object is known %s", (_, value, code) => {
    expect(cellFromHost(value)).toEqual(passed(code));
  });

  test("an error of ours keeps its sentence", () => {
    const ours = refused("Curve number must be 100 or less.");
    expect(cellFromHost(ours)).toBe(ours);
  });

  test.each<[object, unknown]>([
    [{ type: "FormattedNumber", basicValue: 12.5, numberFormat: "0.0" }, 12.5],
    [{ type: "String", basicValue: "loam" }, "loam"],
    [{ type: "Boolean", basicValue: true }, true],
  ])("a richer value counts for what it shows: %j", (value, shown) => {
    expect(cellFromHost(value)).toBe(shown);
  });

  test.each<[unknown]>([[{ type: "WebImage" }], [{}], [Symbol("x")], [() => 1], [10n], [new Date(0)]])(
    "anything else is refused in words",
    (value) => {
      expect(cellFromHost(value)).toEqual(refused("An input cell holds something other than a number, words, TRUE or FALSE."));
    },
  );

  test("rows of plain cells are not copied", () => {
    const plain = [1, "two", null];
    expect((inputFromHost([plain]) as unknown[])[0]).toBe(plain);
  });

  test("a range is translated cell by cell", () => {
    expect(
      inputFromHost([
        [1, undefined, "#N/A"],
        [true, "x", { basicValue: 2 }],
      ]),
    ).toEqual([
      [1, null, passed("#N/A")],
      [true, "x", 2],
    ]);
  });

  test("a bare list is a column", () => {
    expect(inputFromHost([1, "#N/A"])).toEqual([[1], [passed("#N/A")]]);
  });

  test("a single cell needs no rows", () => {
    expect(inputFromHost("#N/A")).toEqual(passed("#N/A"));
  });
});

describe("a whole column", () => {
  const column = (...cells: readonly unknown[]) => [
    ...cells.map((cell) => [cell]),
    ...Array.from({ length: 1_048_576 - cells.length }, () => [""]),
  ];

  test("ends with the last row in which any of them holds something", () => {
    expect(withoutBlankRowsBelow([column(4, null, 5), column(1), 7])).toEqual([[[4], [null], [5]], [[1], [""], [""]], 7]);
  });

  test("keeps one row where it is blank, and as many as a shorter range beside it", () => {
    expect(withoutBlankRowsBelow([column()])).toEqual([[[""]]]);
    expect(withoutBlankRowsBelow([column(), [[1], [2]]])).toEqual([
      [[""], [""]],
      [[1], [2]],
    ]);
  });

  test("is what only a whole column is: other ranges keep their blank rows", () => {
    const given = [[[4], [""]], null];
    expect(withoutBlankRowsBelow(given)).toBe(given);
  });
});
