import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { costShare, digDate, priced, volunteerValue } from "../../../functions/worksheet/cost.ts";
import { measured } from "../measured.ts";
import type { Cell } from "../../../functions/worksheet/calling/cell.ts";
import { cellOf, column, divisionByZero, notThere, refused } from "./sample-functions.ts";

const HEADINGS: readonly Cell[] = ["Item", "Unit price", "Unit", "Package size", "Minimum order", "Delivery", "Price date"];
const prices: readonly (readonly Cell[])[] = [
  HEADINGS,
  ["Compost", 32, "cu yd", 0.5, 2, 60, 46_000],
  ["River stone", 85, "ton", null, null, null, 46_000],
  ["Plugs", 3.2, "plant", 38, "", "", null],
  [null, null, null, null, null, null, null],
  ["Mulch", null, "cu yd", null, null, null, null],
];

describe("PRICED", () => {
  test("prices a column of quantities and items, in any case, past the headings", () => {
    expect(priced.evaluate([column(2.3, 1.5, 40), column("compost", " river  STONE", "Plugs"), prices])).toEqual([
      [expect.closeTo(2.5 * 32 + 60, 9)],
      [expect.closeTo(127.5, 9)],
      [expect.closeTo(76 * 3.2, 9)],
    ]);
  });

  test("raises a small order to the minimum, and costs nothing for nothing", () => {
    expect(cellOf(priced, 0.4, "compost", prices)).toBe(2 * 32 + 60);
    expect(cellOf(priced, 0, "compost", prices)).toBe(0);
  });

  test("reads a table of two columns: any quantity, no minimum, no delivery", () => {
    expect(cellOf(priced, 2.5, "sand", [["sand", 40]])).toBe(100);
  });

  test("names the nearest items where the item is not in the table", () => {
    expect(cellOf(priced, 1, "compots", prices)).toMatchObject({
      sentence: expect.stringContaining('Item "compots" is not in the Prices table. The nearest are "Compost", '),
    });
    expect(cellOf(priced, 1, "sand", [HEADINGS])).toEqual(refused('Item "sand" is not in the Prices table, which holds no prices.'));
  });

  test("says which of an item's cells cannot be used", () => {
    const of = (...cells: readonly Cell[]): Cell => cellOf(priced, 1, "sand", [["sand", ...cells]]);
    expect(cellOf(priced, 1, "mulch", prices)).toEqual(notThere('Item "mulch" has no unit price.'));
    expect(of("forty")).toEqual(refused('Item "sand": unit price must be a number, 0 or more; it is "forty".'));
    expect(of(-1)).toEqual(refused('Item "sand": unit price must be a number, 0 or more; it is -1.'));
    expect(of(40, "t", "half")).toEqual(refused('Item "sand": package size must be a number, 0 or more; it is "half".'));
    expect(of(40, "t", 0)).toEqual(refused('Item "sand": package size must be more than 0.'));
    expect(of(40, "t", 1, "none")).toEqual(refused('Item "sand": minimum order must be a number, 0 or more; it is "none".'));
    expect(of(40, "t", 1, 1, true)).toEqual(refused('Item "sand": delivery must be a number, 0 or more; it is TRUE.'));
    expect(of(40, "t", 1, 1, divisionByZero)).toEqual(divisionByZero);
    expect(of(divisionByZero)).toEqual(divisionByZero);
  });

  test("asks for one row where an item stands twice, and looks past an error in another item's name", () => {
    expect(
      cellOf(priced, 1, "sand", [
        ["sand", 40],
        ["Sand", 42],
        ["SAND", 44],
      ]),
    ).toEqual(refused('Item "sand" stands in the Prices table 3 times; keep one row.'));
    expect(
      cellOf(priced, 1, "sand", [
        [divisionByZero, 1],
        ["sand", 40],
      ]),
    ).toBe(40);
  });

  test("says so when the numbers are beyond arithmetic", () => {
    expect(cellOf(priced, 1, "sand", [["sand", 0, "t", 5e-324, 1e308]])).toEqual(
      refused("These numbers are too large or too small to compute with."),
    );
  });

  test("cautions of more that is paid for than asked, and of a price without a date", () => {
    expect(priced.cautionsFor([2.3, "compost", prices])).toEqual([expect.stringContaining("More compost is paid for than asked")]);
    expect(priced.cautionsFor([2.5, "compost", prices])).toEqual([]);
    expect(priced.cautionsFor([0, "compost", prices])).toEqual([]);
    expect(priced.cautionsFor([38, "Plugs", prices])).toEqual(["The price of Plugs has no date: note when the supplier gave it."]);
    expect(priced.cautionsFor([1, "sand", prices])).toEqual([]);
  });
});

describe("COSTSHARE", () => {
  test("pays per area, per volume, percent or flat down a column", () => {
    expect(
      costShare.evaluate([column("per area", "per volume", "Percent", "flat"), column(60, 400, 600, 60), column(41, 2, 50, 500)]),
    ).toEqual([[2460], [800], [300], [500]]);
  });

  test("has no cap and no smallest basis unless told otherwise", () => {
    expect(cellOf(costShare, "per area", 1000, 41)).toBe(41_000);
  });

  test("takes a percent rate under 1 as it stands, with a caution, and refuses one over 100", () => {
    expect(cellOf(costShare, "percent", 600, 0.5)).toBe(3);
    expect(costShare.cautionsFor(["percent", 600, 0.5])).toEqual(["Rate is taken as 0.5%: write a percent as 2, not 0.02."]);
    expect(costShare.cautionsFor(["per area", 600, 0.5])).toEqual([]);
    expect(cellOf(costShare, "percent", 600, 101)).toEqual(refused("Rate must be 100 or less."));
    expect(cellOf(costShare, "per area", 600, 0.5)).toBe(300);
  });

  test("refuses a form that no program has", () => {
    expect(cellOf(costShare, "per plant", 60, 1)).toEqual(
      refused('Kind must be "per area", "per volume", "percent" or "flat"; it is "per plant".'),
    );
  });

  test("says when the basis is too small and when the cap holds", () => {
    expect(costShare.cautionsFor(["per area", 40, 41, 3000, 50])).toEqual([expect.stringContaining("pays nothing")]);
    expect(costShare.cautionsFor(["per area", 80, 41, 3000, 50])).toEqual([expect.stringContaining("The cap holds")]);
    expect(costShare.cautionsFor(["per area", 50, 41, 3000, 50])).toEqual([]);
    expect(costShare.cautionsFor(["per area", 50, 41])).toEqual([]);
  });
});

describe("VOLUNTEERVALUE", () => {
  test("multiplies hours by the user's own rate", () => {
    fc.assert(
      fc.property(measured(0, 500), measured(0, 60), (hours, rate) => {
        expect(cellOf(volunteerValue, hours, rate)).toBe(hours * rate);
      }),
    );
  });

  test("asks for the source of a rate far from the values that were read, and says which year was read last", () => {
    const asked = expect.stringContaining("the newest national one is $31.80 for 2022");
    for (const rate of [3.5, 13.73, 48.68, 318]) expect(volunteerValue.cautionsFor([10, rate])).toEqual([asked]);
    // Rates of the years after the last that was read are no slips.
    for (const rate of [13.74, 31.8, 33.49, 34.79, 48.67]) expect(volunteerValue.cautionsFor([10, rate])).toEqual([]);
  });
});

describe("DIGDATE", () => {
  const monday = 46_083; // 2 March 2026

  test("counts a column of tickets", () => {
    expect(digDate.evaluate([column(monday, monday + 4), 3])).toEqual([[monday + 3], [monday + 9]]);
    expect(cellOf(digDate, monday, 2)).toBe(monday + 2);
  });

  test("asks for the business days: no number of a state is taken for granted", () => {
    expect(cellOf(digDate, monday)).toEqual(notThere("Business days is missing."));
    expect(cellOf(digDate, monday, null)).toEqual(notThere("Business days is missing."));
  });

  test("counts a ticket of a weekend or a holiday as one of the next business day", () => {
    expect(digDate.evaluate([column(monday + 5, monday + 6, monday + 7), 3])).toEqual([[monday + 10], [monday + 10], [monday + 10]]);
    expect(cellOf(digDate, monday, 3, column(monday))).toBe(monday + 4);
  });

  test("leaves out holidays, whatever blanks stand among them", () => {
    expect(cellOf(digDate, monday, 3, column(monday + 1, null, ""))).toBe(monday + 4);
  });

  test("refuses text, a date before 1 March 1900, no days, half a day and more than a year of days", () => {
    expect(cellOf(digDate, "3/2/2026", 3)).toEqual(refused('Issue date must be a date; it is the text "3/2/2026". Type the date again.'));
    for (const noDate of [60, 3_000_000, -1, true])
      expect(cellOf(digDate, noDate, 3)).toEqual(refused("Issue date must be a date from March 1, 1900 on."));
    expect(cellOf(digDate, monday, 0)).toEqual(refused("Business days must be 1 or more."));
    expect(cellOf(digDate, monday, 2.5)).toEqual(refused("Business days must be a whole number."));
    expect(cellOf(digDate, monday, 366)).toEqual(refused("Business days must be 365 or less."));
    expect(cellOf(digDate, monday, 3, column(monday, "May Day"))).toEqual(
      refused('Holiday 2 must be a date; it is the text "May Day". Type the date again.'),
    );
  });

  test("always says that the ticket decides, and how a late hour counts", () => {
    const always = [expect.stringContaining("the ticket says the day"), expect.stringContaining("after 4 p.m.")];
    expect(digDate.cautionsFor([monday, 3, column(monday + 30)])).toEqual(always);
    expect(digDate.cautionsFor([monday, 6])).toEqual([...always, expect.stringContaining("No holidays are given")]);
    expect(digDate.cautionsFor([monday + 5.5, 3, column(monday + 30)])).toEqual([...always, expect.stringContaining("of a weekend")]);
    expect(digDate.cautionsFor([monday, 3, column(monday + 0.5)])).toEqual([...always, expect.stringContaining("or a holiday")]);
  });

  test.each([1, 2, 7])("says that states ask for two to six business days where %d are given", (days) => {
    expect(digDate.cautionsFor([monday, days, column(monday + 30)]).at(-1)).toContain("States ask for two to six business days");
  });
});
