import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nearestKeys } from "../../../../functions/worksheet/calling/nearest-keys.ts";
import { plainKey } from "../../../../functions/worksheet/calling/typed-words.ts";

const classes = [
  "sand",
  "loamy sand",
  "sandy loam",
  "loam",
  "silt loam",
  "silt",
  "sandy clay loam",
  "clay loam",
  "silty clay loam",
  "sandy clay",
  "silty clay",
  "clay",
];

describe("the nearest keys", () => {
  test.each([
    ["loamy sandd", "loamy sand"],
    ["Sandy-Loam", "sandy loam"],
    ["siltclay", "silty clay"],
    ["loam clay", "clay loam"],
    ["cley", "clay"],
    ["SAND ", "sand"],
  ])("%s is nearest to %s", (slip, meant) => {
    expect(nearestKeys(slip, classes)[0]).toBe(meant);
  });

  test("three are offered, or as many as asked for", () => {
    expect(nearestKeys("x", classes)).toHaveLength(3);
    expect(nearestKeys("x", classes, 1)).toHaveLength(1);
    expect(nearestKeys("", ["a"], 3)).toEqual(["a"]);
  });

  test("case and spacing do not count", () => {
    expect(plainKey(" \u00a0 Good  \u00a0LAWN ")).toBe("good lawn");
    // What formulas of a workbook cannot read as a space is none.
    expect(plainKey("good\nlawn")).toBe("good\nlawn");
  });

  test("a key is always nearest to itself", () => {
    fc.assert(
      fc.property(fc.constantFrom(...classes), (key) => {
        expect(nearestKeys(key.toUpperCase(), classes)[0]).toBe(key);
      }),
    );
  });
});
