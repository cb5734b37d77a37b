import { describe, expect, test } from "vitest";
import type { Cell } from "../../../functions/worksheet/calling/cell.ts";
import { groundSlope, siteCheck } from "../../../functions/worksheet/siting.ts";
import { cellOf, column, divisionByZero, notThere, refused, sentenceOf } from "./sample-functions.ts";

describe("GROUNDSLOPE", () => {
  test("a drop of 11 in over 15 ft, both in inches, is 6.11 percent, computed by hand", () => {
    expect(cellOf(groundSlope, 11, 180)).toBeCloseTo(6.11, 2);
  });

  test("no run is refused, and takes no units because both lengths are in the same", () => {
    expect(cellOf(groundSlope, 11, 0)).toEqual(refused("Run must be more than 0."));
    expect(groundSlope.parameters.map(({ key }) => key)).toEqual(["drop", "run"]);
  });

  test("it cautions above 12 percent, where inches over feet also land", () => {
    expect(groundSlope.cautionsFor([11, 15])).toHaveLength(1);
    expect(groundSlope.cautionsFor([12, 100])).toEqual([]);
  });
});

const rules: readonly (readonly Cell[])[] = [
  ["Rule", "Comparison", "Limit", "Unit", "If not met", "Source", "Checked"],
  ["Distance to foundation", "at least", 10, "ft", "stop", "a handbook", 45000],
  ["Ground slope", "at most", 10, "%", "refer", "a handbook", 45000],
  ["Ground slope", "At Most", 12, "%", "Stop", "a handbook", 45000],
  ["Tested infiltration rate", "at least", 15, "mm/h", "refer", "a guide", 45000],
  ["Building", "at least", 4, "m", "stop", "a guide", 45000],
  ["Water below the dig", "at least", 36, "in", "stop", "a manual", 45000],
  ["Drawdown", "at most", 48, "h", "stop", "a manual", 45000],
  [null, null, null, null, null, null, null],
];

describe("SITECHECK", () => {
  // Western Washington handbook, 2013, p. 13, and Ontario's guide (both read), as in the Rules table above.
  test.each<[string, number, string | null, string]>([
    ["Distance to foundation", 9.5, null, "stop"],
    ["Distance to foundation", 10, null, "pass"],
    ["distance  to FOUNDATION", 12, null, "pass"],
    ["Distance to foundation", 3.048, "metric", "pass"],
    ["Distance to foundation", 3, "metric", "stop"],
    ["Ground slope", 11, null, "refer"],
    ["Ground slope", 11, "metric", "refer"],
    ["Ground slope", 13, null, "stop"],
    ["Ground slope", 10, null, "pass"],
    ["Building", 3.9, "metric", "stop"],
    ["Building", 4, "metric", "pass"],
    ["Building", 13.2, null, "pass"],
    ["Tested infiltration rate", 12, "metric", "refer"],
    ["Tested infiltration rate", 0.6, null, "pass"],
    ["Tested infiltration rate", 0.5, null, "refer"],
    ["Water below the dig", 20, null, "stop"],
    ["Water below the dig", 914.4, "metric", "pass"],
    ["Drawdown", 62, "metric", "stop"],
    ["Drawdown", 0, null, "pass"],
  ])("%s of %s (%s): %s", (name, value, units, verdict) => {
    expect(cellOf(siteCheck, name, value, rules, units)).toBe(verdict);
  });

  test("a blank is not measured, and never a pass", () => {
    expect(cellOf(siteCheck, "Ground slope", null, rules)).toBe("not measured");
    expect(cellOf(siteCheck, "Ground slope", "", rules)).toBe("not measured");
  });

  test("a column of rules against a column of values is judged row by row", () => {
    expect(siteCheck.evaluate([column("Ground slope", "Drawdown", "Building"), column(11, 47, null), rules])).toEqual([
      ["refer"],
      ["pass"],
      ["not measured"],
    ]);
  });

  test("an unknown rule is answered with the nearest rules, measured or not, and the heading is none of them", () => {
    const answer = cellOf(siteCheck, "Slope", 5, rules);
    expect(sentenceOf(answer)).toMatch(/^Rule name "Slope" is not in the Rules table\. The nearest are "Ground slope", /);
    expect(sentenceOf(answer)).not.toContain('"Rule"');
    expect(cellOf(siteCheck, "Slope", null, rules)).toEqual(answer);
    expect(sentenceOf(cellOf(siteCheck, "  ", 5, rules))).toBe("Rule name is missing.");
    expect(cellOf(siteCheck, "Slope", 5, [["a note"]])).toEqual(
      refused('Rule name "Slope" is not in the Rules table, which holds no rules.'),
    );
  });

  test("a missing rule name or table is named, and a negative measurement refused", () => {
    expect(cellOf(siteCheck, null, 5, rules)).toEqual(notThere("Rule name is missing."));
    expect(cellOf(siteCheck, "Ground slope", 5, [[null]])).toEqual(notThere("Rules table is missing."));
    expect(cellOf(siteCheck, "Ground slope", -5, rules)).toEqual(refused("Measured value must be 0 or more."));
  });

  test.each<[string, readonly Cell[], unknown]>([
    ["no comparison", ["Well", null, 50, "ft", "stop"], notThere('Rule "Well" has no comparison.')],
    ["no limit", ["Well", "at least", null, "ft", "stop"], notThere('Rule "Well" has no limit.')],
    ["no unit", ["Well", "at least", 50, "", "stop"], notThere('Rule "Well" has no unit.')],
    ["no consequence", ["Well", "at least", 50, "ft"], notThere('Rule "Well" has no entry under If not met.')],
    [
      "an odd comparison",
      ["Well", "over", 50, "ft", "stop"],
      refused('Rule "Well": comparison must be "at least" or "at most"; it is "over".'),
    ],
    [
      "an odd consequence",
      ["Well", "at least", 50, "ft", "warn"],
      refused('Rule "Well": If not met must be "refer" or "stop"; it is "warn".'),
    ],
    [
      "an odd unit",
      ["Well", "at least", 50, "yd", "stop"],
      refused('Rule "Well": unit must be "ft", "m", "in", "mm", "in/h", "mm/h", "%" or "h"; it is "yd".'),
    ],
    [
      "a limit in words",
      ["Well", "at least", "fifty", "ft", "stop"],
      refused('Rule "Well": limit must be a number, 0 or more; it is "fifty".'),
    ],
    ["a negative limit", ["Well", "at least", -1, "ft", "stop"], refused('Rule "Well": limit must be a number, 0 or more; it is -1.')],
    ["an error", ["Well", "at least", divisionByZero, "ft", "stop"], divisionByZero],
  ])("a rule with %s says so, and does not trouble the others", (_, faulty, answer) => {
    expect(cellOf(siteCheck, "Well", 60, [...rules, faulty])).toEqual(answer);
    expect(cellOf(siteCheck, "Ground slope", 5, [...rules, faulty])).toBe("pass");
    expect(siteCheck.cautionsFor(["Well", 0.5, [...rules, faulty]])).toHaveLength(1);
  });

  test("one rule in two kinds of unit cannot be judged", () => {
    expect(cellOf(siteCheck, "Ground slope", 5, [...rules, ["Ground slope", "at most", 5, "ft", "stop"]])).toEqual(
      refused('Rule "Ground slope" has limits of two kinds; keep one kind of unit to a rule.'),
    );
  });

  test("a row that is an error in its name is passed over", () => {
    expect(cellOf(siteCheck, "Drawdown", 5, [[divisionByZero, "at least", 1, "ft", "stop"], ...rules])).toBe("pass");
  });

  test("it defers to local codes, and asks whether 0.06 was meant as 6 percent", () => {
    const presets = "The limits are the program's presets. Local codes and licensed practice decide.";
    expect(siteCheck.cautionsFor(["Ground slope", 6, rules])).toEqual([presets]);
    expect(siteCheck.cautionsFor(["Ground slope", 0.06, rules])).toEqual([
      "Measured value is taken as 0.06%: write a percent as 2, not 0.02.",
      presets,
    ]);
    expect(siteCheck.cautionsFor(["Tested infiltration rate", 0.6, rules])).toEqual([presets]);
    expect(siteCheck.cautionsFor(["Ground slope", null, rules])).toEqual([]);
    expect(siteCheck.cautionsFor(["Ground slope", 0, rules])).toEqual([presets]);
  });
});
