import { gzipSync } from "node:zlib";
import { runInNewContext } from "node:vm";
import { beforeAll, describe, expect, test } from "vitest";
import { functionsScript } from "../../addin/hosting/bundle.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";

type Registered = (...inputs: unknown[]) => readonly (readonly unknown[])[];

/** Stands in for Excel's own error class, which the functions reach only through the global CustomFunctions. */
class ShownError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** What Excel passes after the last argument. */
const invocation = { functionName: "SAMPLE" };

let script: string;

beforeAll(async () => {
  script = (await functionsScript()).text;
});

/** Runs the script in a world that has nothing but the language and the global CustomFunctions. */
function registerWith(host: object): ReadonlyMap<string, Registered> {
  const registered = new Map<string, Registered>();
  const associate = (id: string, registeredFunction: Registered): void => {
    registered.set(id, registeredFunction);
  };
  runInNewContext(script, { CustomFunctions: { associate, ...host } });
  return registered;
}

function call(host: object, name: string, ...inputs: unknown[]): readonly (readonly unknown[])[] {
  const answer = registerWith(host).get(name)?.(...inputs);
  // The rows were made in another world, where an array is another class.
  return Array.from(answer ?? [], (row) => Array.from(row));
}

const excel = { Error: ShownError };

describe("the functions script", () => {
  test("registers every function under its name, needing only CustomFunctions.associate", () => {
    expect([...registerWith({}).keys()]).toEqual(catalogue.map(({ name }) => name));
  });

  // 25 KB held the functions of one cell; those over all yards, the dig on a slope and a sentence for each limit took 3 KB more.
  test("is at most 29 KB compressed", () => {
    expect(gzipSync(script).length).toBeLessThanOrEqual(29 * 1024);
  });

  test("answers every example of the catalogue as the full declarations do, although it carries no documentation", () => {
    // A source, a line of argument help and a caution that stands in a list of its own.
    for (const words of ["Porchet", "if left out,", "steps longer than an hour hide bursts"]) expect(script).not.toContain(words);
    for (const { name, example, evaluate } of catalogue) {
      expect(call(excel, name, ...example.arguments), name).toEqual(evaluate(example.arguments));
    }
  });

  test("answers with rows of cells, even for one cell", () => {
    expect(call(excel, "RUNOFFDEPTH", [[4]], [[100]], null, null, invocation)).toEqual([[4]]);
    expect(call(excel, "VERSION", invocation)).toHaveLength(1);
  });

  test("does not take Excel's invocation for an argument", () => {
    expect(call(excel, "RUNOFFDEPTH", [[4]], [[80]], null, null, invocation)).toEqual(call(excel, "RUNOFFDEPTH", [[4]], [[80]]));
  });

  test("lifts over a column, and an error in one row stays in that row", () => {
    const rain = [[4], [{ type: "Error", basicValue: "#DIV/0!" }], [5], [""]];
    expect(call(excel, "RUNOFFDEPTH", rain, [[100]], null, null, invocation)).toEqual([
      [4],
      [new ShownError("#DIV/0!")],
      [5],
      [new ShownError("#N/A", "Rain is missing.")],
    ]);
  });

  test("shows our sentence where Excel shows one", () => {
    expect(call(excel, "RUNOFFDEPTH", [[4]], [[101]], null, null, invocation)).toEqual([
      [new ShownError("#VALUE!", "Curve number must be 100 or less.")],
    ]);
  });

  test.each(["#DIV/0!", "#NUM!", "#NULL!"])("passes %s through as it is, without words", (code) => {
    expect(call(excel, "RUNOFFDEPTH", [[code]], [[80]], null, null, invocation)).toEqual([[new ShownError(code)]]);
  });

  test("passes a plain #N/A through without words", () => {
    expect(call(excel, "RUNOFFDEPTH", [["#N/A"]], [[80]], null, null, invocation)).toEqual([[new ShownError("#N/A")]]);
  });

  test.each(["#REF!", "#NAME?", "#SPILL!", "#BUSY!"])(
    "says in words that an input shows %s, which Excel accepts from no function",
    (code) => {
      expect(call(excel, "RUNOFFDEPTH", [[{ code }]], [[80]], null, null, invocation)).toEqual([
        [new ShownError("#VALUE!", `An input cell shows ${code}.`)],
      ]);
    },
  );

  test("hands over plain errors where the host has no error class", () => {
    expect(call({}, "RUNOFFDEPTH", [[4]], [[101]])).toEqual([[{ code: "#VALUE!", message: "Curve number must be 100 or less." }]]);
  });
});
