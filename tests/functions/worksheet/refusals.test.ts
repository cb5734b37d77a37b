import { describe, expect, test } from "vitest";
import {
  choice,
  count,
  depth,
  flag,
  hours,
  length,
  money,
  number,
  percent,
  rangeOf,
  rate,
  share,
  tableRange,
  text,
  type Argument,
} from "../../../functions/worksheet/calling/arguments.ts";
import type { CellInput } from "../../../functions/worksheet/calling/cell.ts";
import {
  cellOf,
  column,
  divisionByZero,
  drainRow,
  dropTable,
  echoOf,
  meanRate,
  notThere,
  pondedVolume,
  product,
  refused,
  row,
} from "./sample-functions.ts";

const answer = (argument: Argument<string, unknown>, ...inputs: readonly CellInput[]) => cellOf(echoOf(argument), ...inputs);

describe("what a number may be", () => {
  test.each<[string, Argument<string, unknown>, CellInput, string]>([
    ["text", number("cn", "Curve number"), "eighty", 'Curve number must be a number; it is the text "eighty".'],
    ["a number written as text", number("cn", "Curve number"), "80", 'Curve number must be a number; it is the text "80".'],
    ["a number with its unit", depth("rain", "Rain"), "12 in", 'Rain must be a number; it is the text "12 in".'],
    ["a long text, cut short", depth("rain", "Rain"), "x".repeat(50), `Rain must be a number; it is the text "${"x".repeat(39)}…".`],
    ["TRUE", depth("rain", "Rain"), true, "Rain must be a number; it is TRUE."],
    ["FALSE", depth("rain", "Rain"), false, "Rain must be a number; it is FALSE."],
    ["a negative depth", depth("rain", "Rain"), -1, "Rain must be 0 or more."],
    ["a negative rate", rate("rate", "Tested rate"), -0.1, "Tested rate must be 0 or more."],
    ["a negative price", money("price", "Price"), -1, "Price must be 0 or more."],
    ["zero where more is needed", rate("rate", "Design rate").moreThan(0), 0, "Design rate must be more than 0."],
    ["too little", length("width", "Berm width").atLeast(1), 0.5, "Berm width must be 1 ft or more."],
    ["too much", number("cn", "Curve number").atMost(100), 101, "Curve number must be 100 or less."],
    ["exactly an excluded limit", depth("rain", "Rain").lessThan(40), 40, "Rain must be less than 40 in."],
    ["a large limit", number("x", "Area").atMost(43560), 50000, "Area must be 43,560 or less."],
    ["a share over 1", share("share", "Runoff share"), 1.2, "Runoff share must be 1 or less."],
    ["a negative share", share("share", "Runoff share"), -0.2, "Runoff share must be 0 or more."],
    ["a percent over 100", percent("p", "Impervious percent"), 101, "Impervious percent must be 100 or less."],
    ["half a plant", count("plants", "Plants"), 1.5, "Plants must be a whole number."],
    ["part of a thing counted whole", hours("h", "Hours").whole(), 1.5, "Hours must be a whole number."],
    ["not a number at all", number("x", "Width"), Number.NaN, "Width must be a number."],
    ["endless", number("x", "Width"), Number.POSITIVE_INFINITY, "Width is too large to compute."],
    ["endless where wholes are wanted", count("x", "Plants"), Number.POSITIVE_INFINITY, "Plants is too large to compute."],
    ["endlessly negative", number("x", "Width"), Number.NEGATIVE_INFINITY, "Width is too large to compute."],
  ])("%s is refused in words", (_, argument, input, sentence) => {
    expect(answer(argument, input)).toEqual(refused(sentence));
  });

  test.each<[string, Argument<string, unknown>, number]>([
    ["zero depth", depth("rain", "Rain"), 0],
    ["an included limit", number("cn", "Curve number").moreThan(0).atMost(100), 100],
    ["an included lower limit", length("width", "Berm width").atLeast(1), 1],
    ["a negative number where nothing forbids it", number("x", "Level"), -3],
    ["zero percent", percent("p", "Impervious percent"), 0],
    ["one percent", percent("p", "Impervious percent"), 1],
    ["a whole share", share("share", "Runoff share"), 1],
    ["a number below an open upper limit", depth("rain", "Rain").lessThan(40), 39.9],
    ["the largest number a cell holds", number("x", "Width"), Number.MAX_VALUE],
  ])("%s is accepted", (_, argument, input) => {
    expect(answer(argument, input)).toBe(String(input));
  });

  test("a limit is put in the units of the caller and is exactly what is compared", () => {
    const ponding = depth("ponding", "Ponding depth").atMost(6).atLeast(0.5);
    expect(answer(ponding, 152.4, "metric")).toBe(JSON.stringify(152.4 / 25.4));
    expect(answer(ponding, 152.5, "metric")).toEqual(refused("Ponding depth must be 152.4 mm or less."));
    expect(answer(ponding, 12, "metric")).toEqual(refused("Ponding depth must be 12.7 mm or more."));
  });

  test("a number that overflows when its unit is converted is too large", () => {
    expect(answer(length("x", "Width"), Number.MAX_VALUE, "metric")).toEqual(refused("Width is too large to compute."));
  });
});

describe("what words may be", () => {
  const soil = choice("soil", "Soil", ["sand", "loam", "clay"]);
  const cover = choice("cover", "Cover", ["roof", "paving", "good lawn", "poor lawn", "meadow", "good woods"]);

  test("a key may be written in any case and with any spacing", () => {
    expect(answer(soil, "  LOAM ")).toBe('"loam"');
    expect(answer(cover, "Good   Lawn")).toBe('"good lawn"');
  });

  test("an unknown key is answered with the whole of a short list", () => {
    expect(answer(soil, "peat")).toEqual(refused('Soil must be "sand", "loam" or "clay"; it is "peat".'));
  });

  test("a list of one key reads well too", () => {
    expect(answer(choice("kind", "Kind", ["flat"]), "round")).toEqual(refused('Kind must be "flat"; it is "round".'));
  });

  test("an unknown key is answered with the nearest keys of a long list", () => {
    expect(answer(cover, "lawn good")).toEqual(
      refused('Cover "lawn good" is not in its list. The nearest are "good lawn", "poor lawn" and "good woods".'),
    );
  });

  test("a number is no key", () => {
    expect(answer(soil, 3)).toEqual(refused('Soil must be "sand", "loam" or "clay"; it is 3.'));
  });

  test.each([[true], [1], ["TRUE"], [" true "]])("%j means TRUE", (input) => {
    expect(answer(flag("far", "Over 30 ft away"), input)).toBe("true");
  });

  test.each([[false], [0], ["False"]])("%j means FALSE", (input) => {
    expect(answer(flag("far", "Over 30 ft away"), input)).toBe("false");
  });

  test.each([
    ["yes", '"yes"'],
    [2, "2"],
  ])("%j is neither TRUE nor FALSE", (input, shown) => {
    expect(answer(flag("far", "Over 30 ft away"), input)).toEqual(refused(`Over 30 ft away must be TRUE or FALSE; it is ${shown}.`));
  });

  test("free text may be a number, but not TRUE", () => {
    expect(answer(text("rule", "Rule name"), "from a well")).toBe('"from a well"');
    expect(answer(text("rule", "Rule name"), 7)).toBe('"7"');
    expect(answer(text("rule", "Rule name"), true)).toEqual(refused("Rule name must be text; it is TRUE."));
  });

  test("units are us or metric", () => {
    expect(cellOf(pondedVolume, 100, 6, "si")).toEqual(refused('Units must be "us" or "metric"; it is "si".'));
    expect(cellOf(pondedVolume, 100, 6, "US")).toBe(50);
    expect(cellOf(pondedVolume, 100, 6, null)).toBe(50);
  });
});

describe("blanks and errors", () => {
  test.each([[null], [undefined], [""]])("a blank is a blank, however a host writes it (%j)", (blank) => {
    expect(cellOf(product, blank, 2)).toEqual(notThere("First is missing."));
  });

  test("a row where nothing is typed yet stays blank", () => {
    expect(cellOf(product, null, null)).toBe("");
    expect(drainRow.evaluate([column(null), column(null)])).toEqual([["", "", ""]]);
    expect(pondedVolume.evaluate([null, -6, "metric"])).toEqual([[""]]);
  });

  test("a missing input is named, in every cell of its row", () => {
    const sentence = notThere("Design rate is missing.");
    expect(drainRow.evaluate([column(6, 6), column(null, 0.5)])).toEqual([
      [sentence, sentence, sentence],
      [12, 24, "fits"],
    ]);
  });

  test("what is missing is said before what is impossible", () => {
    expect(cellOf(drainRow, null, -1)).toEqual(notThere("Ponding depth is missing."));
  });

  test("a blank optional input takes its default, which stays the same depth in metric", () => {
    expect(cellOf(pondedVolume, 100, null)).toBe(50);
    expect(cellOf(pondedVolume, 9.290304, null, "metric")).toBeCloseTo(50 * 0.028316846592, 12);
  });

  test("an optional input without a default reaches the calculation as left out", () => {
    expect(answer(depth("ponding", "Ponding").leftOutMeans("the deepest that drains"), null)).toBe("left out");
  });

  test("an error in an argument passes through to its own row alone", () => {
    expect(product.evaluate([column(1, divisionByZero, 3), column(2, "text", 2)])).toEqual([[2], [divisionByZero], [6]]);
  });

  test("an error in the units passes through too", () => {
    expect(cellOf(pondedVolume, 100, 6, divisionByZero)).toEqual(divisionByZero);
  });

  test("the first of two errors is the one that shows", () => {
    expect(cellOf(product, divisionByZero, { code: "#REF!", sentence: "" })).toEqual(divisionByZero);
  });
});

describe("whole series", () => {
  test.each([
    ["a column", column(1, 3)],
    ["a row", row(1, 3)],
    ["a grid", [[1], [3]]],
  ])("%s is a series", (_, rates) => {
    expect(cellOf(meanRate, rates, 1)).toBe(2);
  });

  test("blank cells in a series are skipped", () => {
    expect(cellOf(meanRate, column(1, null, 3, ""), 1)).toBe(2);
  });

  test("blank cells keep their place where series pair up", () => {
    expect(answer(rangeOf(depth("d", "Water depth")).keepingBlanks(), column(6, null, 4))).toBe("[6,null,4]");
  });

  test("a sentence says which value of a series is impossible, blanks counted", () => {
    expect(cellOf(meanRate, column(1, null, -3))).toEqual(refused("Tested rate 3 must be 0 or more."));
    expect(cellOf(meanRate, row(1, "fast"))).toEqual(refused('Tested rate 2 must be a number; it is the text "fast".'));
  });

  test("an error anywhere in a series passes through", () => {
    expect(cellOf(meanRate, column(1, -1, divisionByZero))).toEqual(divisionByZero);
  });

  test("a series without a value is missing", () => {
    expect(cellOf(meanRate, column(null, ""))).toBe("");
    expect(cellOf(dropTable, column(null, ""), 1)).toEqual(notThere("Water depth is missing."));
  });

  test("an optional series that is left out takes its default", () => {
    expect(answer(rangeOf(share("shares", "Share")).optional([1]), undefined)).toBe("[1]");
    expect(answer(rangeOf(share("shares", "Share")).optional([1]), column(null, null))).toBe("[1]");
    expect(answer(rangeOf(share("shares", "Share")).optional([1]), column(0.5))).toBe("[0.5]");
  });

  test("a series serves every row of the inputs beside it", () => {
    expect(meanRate.evaluate([column(1, 3), column(1, 2, 4)])).toEqual([[2], [1], [0.5]]);
  });

  test("a table is handed over as it stands, and is missing when all of it is blank", () => {
    const rules = tableRange("rules", "Rules table");
    expect(
      answer(rules, [
        ["from a well", 50],
        [null, "x"],
      ]),
    ).toBe('[["from a well",50],[null,"x"]]');
    expect(
      answer(rules, [
        [null, ""],
        [null, null],
      ]),
    ).toBe("");
    expect(answer(rules.optional([]), null)).toBe("[]");
    expect(answer(rules, [[divisionByZero]])).toBe(JSON.stringify([[divisionByZero]]));
  });
});
