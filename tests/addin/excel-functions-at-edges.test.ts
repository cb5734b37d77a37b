import { runInThisContext } from "node:vm";
import { beforeAll, describe, expect, test } from "vitest";
import { functionsScript } from "../../addin/hosting/bundle.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";

/** Rows of a sheet of Excel 2007 and later: what A:A hands over (Microsoft, "Excel specifications and limits"). */
const SHEET_ROWS = 1_048_576;

type Grid = readonly (readonly unknown[])[];

class ShownError {
  constructor(
    readonly code: string,
    readonly message = "",
  ) {}
}

const registered = new Map<string, (...inputs: unknown[]) => Grid>();

beforeAll(async () => {
  Object.assign(globalThis, {
    CustomFunctions: { Error: ShownError, associate: (id: string, run: (...inputs: unknown[]) => Grid) => registered.set(id, run) },
  });
  runInThisContext((await functionsScript()).text);
});

/** As Excel calls: every argument that is a range or a cell is a matrix, one left out is null, and its invocation comes last. */
const call = (name: string, ...inputs: unknown[]): Grid => {
  const count = catalogue.find((declared) => declared.name === name)!.parameters.length;
  return registered.get(name)!(...inputs, ...Array.from({ length: count - inputs.length }, () => null), { functionName: name });
};
const said = (name: string, ...inputs: unknown[]) => (call(name, ...inputs)[0]?.[0] as ShownError | undefined)?.message;

/** A whole column with these cells at its top, blank below as Excel hands blanks over. */
const column = (...cells: readonly unknown[]): Grid => [
  ...cells.map((cell) => [cell]),
  ...Array.from({ length: SHEET_ROWS - cells.length }, () => [""]),
];

describe("Whole columns", () => {
  test("answer down to the last row in use, blanks between included, and fast", () => {
    const rain = column(4, "", 5);
    const curveNumbers = column(100, 100, "", 100);
    const started = performance.now();
    const answer = call("RUNOFFDEPTH", rain, curveNumbers);
    const milliseconds = performance.now() - started;
    expect(answer.length).toBe(4);
    // At curve number 100 all rain runs off (TR-55, equation 2-4: S = 0).
    expect([answer[0]?.[0], answer[1]?.[0]]).toEqual([4, new ShownError("#N/A", "Rain is missing.")]);
    expect(milliseconds).toBeLessThan(1000);
  });

  test("that are blank from top to bottom answer with one blank cell, as a blank row does", () => {
    expect(call("RUNOFFDEPTH", column(), column())).toEqual([[""]]);
  });

  test("beside a shorter column reach as far as that", () => {
    expect(call("RUNOFFDEPTH", column(4), [[100], [100], [100]])).toHaveLength(3);
  });

  test("are taken whole where a function looks for a series", () => {
    // Dug at 8 in: the water falls 6 in in 60 minutes, however far below the readings the columns reach.
    const [minutes, water] = [
      [0, 30, 60],
      [12, 9, 6],
    ];
    const short = call(
      "DROPRATE",
      minutes.map((value) => [value]),
      water.map((value) => [value]),
    );
    expect(call("DROPRATE", column(...minutes), column(...water))).toEqual(short);
    expect(short).toEqual([[6]]);
  });
});

describe("A cell of a range", () => {
  test("that is blank is missing, not 0", () => {
    expect(call("RUNOFFDEPTH", [[4], [""], [0]], [[100]])).toEqual([[4], [new ShownError("#N/A", "Rain is missing.")], [0]]);
  });

  test("that holds an error keeps it in its own row", () => {
    expect(call("RUNOFFDEPTH", [["#DIV/0!"], [4]], [[100]])).toEqual([[new ShownError("#DIV/0!")], [4]]);
  });

  test.each(["3,5", "1.234,5", "3 in", "½"])("that holds the text %s is said to be a text, in whichever country it was typed", (typed) => {
    expect(said("RUNOFFDEPTH", [[typed]], [[100]])).toBe(`Rain must be a number; it is the text "${typed}".`);
  });

  test("formatted as a percentage arrives as a share: a percent argument takes it as it stands and says how a percent is written", () => {
    const pollutantLoad = catalogue.find(({ name }) => name === "POLLUTANTLOAD")!;
    expect(call("POLLUTANTLOAD", [[1000]], [[40]], [[0.85]], [["TP"]])).toEqual(pollutantLoad.evaluate([1000, 40, 0.85, "TP"]));
    expect(pollutantLoad.cautionsFor([1000, 40, 0.85, "TP"])).toContain(
      "Impervious percent is taken as 0.85%: write a percent as 2, not 0.02.",
    );
  });
});

describe("A cell with a date", () => {
  // Microsoft, Excel help, "Date systems in Excel" and WORKDAY: in the 1900 system 1 January 2008 is day 39448, and
  // WORKDAY(DATE(2008,10,1),151) is 30 April 2009. 1 October 2008 is 274 days after 1 January 2008, in a leap year.
  const january1 = 39_448;
  const october1 = january1 + 274;
  const april30 = january1 + 366 + 119;

  test("arrives as the number of its day, with the time of day as a share, and the answer is such a number", () => {
    expect(call("DIGDATE", [[october1], [october1 + 0.75]], [[151]], [[january1]])).toEqual([[april30], [april30]]);
  });

  test.each(["3/2/2026", "02.03.2026", "2026-03-02", "2 mars 2026"])(
    "typed as the text %s is never guessed at: 3/2 is March 2 in one country and February 3 in another",
    (typed) => {
      expect(said("DIGDATE", [[typed]], [[3]])).toBe(`Issue date must be a date; it is the text "${typed}". Type the date again.`);
    },
  );

  test("before March 1, 1900 is refused, because Excel counts a February 29 that never was", () => {
    expect(said("DIGDATE", [[60]], [[3]])).toBe("Issue date must be a date from March 1, 1900 on.");
  });

  test("beside a price is any day; a price without one is told", () => {
    const prices = [
      ["Item", "Unit price", "Unit", "Package size", "Minimum order", "Delivery", "Price date"],
      ["Mulch", 30, "cu yd", "", "", "", october1],
      ["Sand", 40, "cu yd", "", "", "", "March 2026"],
      ["Stone", 50, "cu yd", "", "", "", ""],
    ];
    const materialPrice = catalogue.find(({ name }) => name === "PRICED")!;
    for (const [item, price] of [
      ["Mulch", 30],
      ["Sand", 40],
      ["Stone", 50],
    ] as const)
      expect(call("PRICED", [[1]], [[item]], prices)).toEqual([[price]]);
    expect(materialPrice.cautionsFor([1, "Stone", prices])).toEqual(["The price of Stone has no date: note when the supplier gave it."]);
    expect(materialPrice.cautionsFor([1, "Mulch", prices])).toEqual([]);
  });
});

test("an argument left out between two others is null and takes its default", () => {
  const [first] = catalogue.filter(
    ({ parameters }) => parameters.at(-1)?.key === "units" && parameters.at(-2)?.optional === true && !parameters.at(-2)!.isRange,
  );
  expect(first).toBeDefined();
  const { name, example, parameters } = first!;
  const given = example.arguments
    .slice(
      0,
      parameters.findIndex(({ optional }) => optional),
    )
    .map((input) => (Array.isArray(input) ? input : [[input]]));
  expect(call(name, ...given)).toEqual(registered.get(name)!(...given));
});
