import { describe, expect, test } from "vitest";
import {
  area,
  choice,
  count,
  depth,
  flag,
  lengthInSameUnit,
  number,
  percent,
  rangeOf,
  share,
  tableRange,
  text,
  units,
  type Argument,
} from "../../../../functions/worksheet/calling/arguments.ts";
import { parametersFrom } from "../../../../functions/worksheet/calling/parameters.ts";

const parameterOf = (argument: Pick<Argument<string, unknown>, "rule">) => parametersFrom([argument.rule])[0];
const describedAs = (argument: Argument<string, unknown>) => parameterOf(argument)?.description;

describe("argument help", () => {
  test.each<[Argument<string, unknown>, string]>([
    [depth("rain", "Storm depth"), "Storm depth, in or mm; at least 0."],
    [depth("rain", "Storm depth").moreThan(0).optional(1), "Storm depth, in or mm; more than 0; if left out, 1 in."],
    [number("cn", "Curve number").moreThan(0).atMost(100), "Curve number; more than 0, at most 100."],
    [number("z", "Side slope").lessThan(10), "Side slope; less than 10."],
    [number("x", "Level"), "Level."],
    [share("share", "Runoff share").optional(0.95), "Runoff share; at least 0, at most 1; if left out, 0.95."],
    [percent("percent", "Ground slope percent"), "Ground slope percent; at least 0, at most 100."],
    [depth("media", "Media depth").optional(0), "Media depth, in or mm; at least 0; if left out, 0."],
    [
      depth("ponding", "Ponding depth").leftOutMeans("the deepest that drains"),
      "Ponding depth, in or mm; at least 0; if left out, the deepest that drains.",
    ],
    [choice("shape", "Shape", ["ellipse", "rectangle"]).optional("ellipse"), 'Shape; "ellipse" or "rectangle"; if left out, "ellipse".'],
    [choice("cover", "Cover", ["a", "b", "c", "d", "e", "f", "g"]), "Cover."],
    [flag("far", "Over 30 ft away").optional(false), "Over 30 ft away; TRUE or FALSE; if left out, FALSE."],
    [text("rule", "Rule name"), "Rule name."],
    [rangeOf(area("areas", "Area")), "Area (a range), sq ft or m²; at least 0."],
    [rangeOf(share("shares", "Share")).optional([1]), "Share (a range); at least 0, at most 1; if left out, 1."],
    [rangeOf(share("shares", "Share")).optional([]), "Share (a range); at least 0, at most 1."],
    [tableRange("rules", "Rules table"), "Rules table (a range)."],
    [lengthInSameUnit("drop", "Drop"), "Drop; at least 0."],
    [count("people", "People").atLeast(1).optional(1), "People; at least 1; if left out, 1."],
  ])("%#: %s", (argument, sentence) => {
    expect(describedAs(argument)).toBe(sentence);
  });

  test("a parameter tells hosts what it takes", () => {
    expect(parameterOf(rangeOf(choice("soils", "Soil", ["sand", "clay"])).optional(["sand"]))).toEqual({
      key: "soils",
      label: "Soil",
      kind: "choice",
      optional: true,
      default: "sand",
      isRange: true,
      units: undefined,
      choices: ["sand", "clay"],
      description: 'Soil (a range); "sand" or "clay"; if left out, "sand".',
    });
    expect(parameterOf(depth("rain", "Rain"))).toEqual({
      key: "rain",
      label: "Rain",
      kind: "depth",
      optional: false,
      isRange: false,
      units: { us: "in", metric: "mm" },
      description: "Rain, in or mm; at least 0.",
    });
  });

  test("an argument that may be blank but stands before a required one cannot be left out", () => {
    const rules = [
      text("rule", "Rule name"),
      number("measured", "Measured value").leftOutMeans("not measured"),
      tableRange("rules", "Rules table"),
      flag("far", "Far").optional(false),
    ];
    expect(parametersFrom(rules.map(({ rule }) => rule)).map(({ optional }) => optional)).toEqual([false, false, false, true]);
  });

  test("units explain themselves", () => {
    expect(parameterOf(units)?.description).toBe('Units; "us" or "metric"; if left out, "us".');
  });
});
