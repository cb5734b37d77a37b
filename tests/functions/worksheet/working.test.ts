import { describe, expect, test } from "vitest";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import type { CellInput } from "../../../functions/worksheet/cell.ts";
import { invalid } from "../../../functions/worksheet/cell.ts";
import { stepsOf, type ShownStep } from "../../../functions/worksheet/working.ts";

type Expected = readonly [label: string, value: number | string, unit?: string];

function workingOf(name: string, ...inputs: readonly CellInput[]): readonly ShownStep[] {
  const declared = catalogue.find((each) => each.name === name);
  if (declared === undefined) throw new Error(`${name} is not in the catalogue`);
  return declared.workingFor(inputs);
}

/** The steps, each with its label, its unit and its number; numbers to a billionth, or as far as they are printed. */
function expectSteps(steps: readonly ShownStep[], expected: readonly Expected[], within?: number): void {
  expect(steps.map(({ label, unit }) => [label, unit])).toEqual(expected.map(([label, , unit = ""]) => [label, unit]));
  for (const [place, [label, value]] of expected.entries()) {
    const shown = steps[place]?.value;
    if (typeof value === "string") expect(shown, label).toBe(value);
    else expect(Math.abs((shown as number) - value), `${label}: ${shown}`).toBeLessThanOrEqual(within ?? 1e-9 * Math.max(1, Math.abs(value)));
  }
}

function numberIn(steps: readonly ShownStep[], label: string): number {
  const step = steps.find((each) => each.label === label);
  expect(step, `a step called ${label}`).toBeDefined();
  return step?.value as number;
}

const everyFunction = catalogue.map((declared) => [declared.name, declared] as const);

describe("the working of every function", () => {
  test.each(everyFunction)("%s prints its equation, a line each", (_, { equation }) => {
    expect(equation.length).toBeGreaterThan(0);
    for (const line of equation) expect(line).toMatch(/^\S.*\S$/);
  });

  test.each(everyFunction)("%s names each intermediate value of its example once, and each is a number or words", (_, { example, workingFor }) => {
    const steps = workingFor(example.arguments);
    expect(new Set(steps.map(({ label }) => label)).size).toBe(steps.length);
    for (const { label, value } of steps) {
      expect(label).toMatch(/^[A-Z].*[^.]$/);
      expect(value).not.toBe("");
      expect(Number.isNaN(value)).toBe(false);
    }
  });

  test("there are no steps to what was not found", () => {
    const steps = (label: string) => [{ label, value: 1 }];
    expect(stepsOf("Storage", steps)).toEqual([{ label: "Storage", value: 1 }]);
    expect(stepsOf<string>(invalid("Rain must be 0 or more."), steps)).toEqual([]);
    expect(stepsOf<string>(undefined, steps)).toEqual([]);
  });
});

describe("rain", () => {
  // SCS 24-hour Type II, as in Chow, Maidment and Mays, 1988 (read in transcription): 0.2833 at 11.5 h, 0.6632 at 12 h.
  test("the heaviest half hour of a Type II storm of an inch brings 0.3799 in and ends at noon", () => {
    expectSteps(workingOf("STORMCURVE", 1), [["Steps in 24 h", 48], ["Deepest step", 0.6632 - 0.2833, "in"], ["Deepest step ends after", 720, "min"]], 5e-5);
  });

  // Computed by hand: 0.9 x (5 - 1) = 3.6, between 0.8 and 1 in.
  test("the 90th percentile of five counted rains stands 3.6 places above the smallest", () => {
    expectSteps(workingOf("RAINPERCENTILE", [[0.05], [0.6], [0.2], [1], [0.8], [0.4]]), [
      ["Rains counted n", 5], ["Place from the smallest", 0.9 * 4], ["Rain at or below the place", 0.8, "in"], ["Rain above the place", 1, "in"],
    ]);
  });
});

describe("runoff", () => {
  // TR-55, 2nd ed., 1986, table 4-1 (read in transcription): initial abstraction, printed to 0.001 in.
  test.each([
    [40, 3], [61, 1.279], [70, 0.857], [75, 0.667], [80, 0.5], [90, 0.222], [98, 0.041],
  ])("a curve number of %d loses %d in before runoff starts, as TR-55 prints it", (curveNumber, printed) => {
    expect(Math.abs(numberIn(workingOf("RUNOFFDEPTH", 4, curveNumber), "Initial abstraction Ia") - printed)).toBeLessThanOrEqual(0.0005 * (1 + 1e-9));
  });

  // TR-55, examples 2-2 and 4-1 (read in transcription): 6 in on CN 75 runs off 3.28 in, Ia 0.667 in. S = 1000 / 75 - 10.
  test("6 in of rain on a curve number of 75 is followed from a storage of 3.33 in to 3.28 in of runoff", () => {
    expectSteps(
      workingOf("RUNOFFDEPTH", 6, 75),
      [["Storage S", 3.333, "in"], ["Initial abstraction Ia", 0.667, "in"], ["Rain in excess of Ia", 5.333, "in"], ["Runoff Q", 3.28, "in"]],
      0.005,
    );
  });

  // Computed by hand: 1.33 x 2.5^1.15 = 3.8148; 0.05 x 3.8148 = 0.1907; 3.8093^2 / (3.8093 + 3.8148) = 1.9033.
  test("a loss ratio of 0.05 shows the storage before and after it is converted", () => {
    expectSteps(
      workingOf("RUNOFFDEPTH", 4, 80, 0.05),
      [
        ["Storage S at a loss ratio of 0.2", 2.5, "in"], ["Storage S", 3.8148, "in"], ["Initial abstraction Ia", 0.1907, "in"],
        ["Rain in excess of Ia", 3.8093, "in"], ["Runoff Q", 1.9033, "in"],
      ],
      0.0001,
    );
  });

  test("where the initial abstraction takes all the rain, none is in excess and none runs off", () => {
    const steps = workingOf("RUNOFFDEPTH", 1, 40);
    expect([numberIn(steps, "Rain in excess of Ia"), numberIn(steps, "Runoff Q")]).toEqual([0, 0]);
  });

  test("a metric sheet shows the storage of a curve number of 80 as 63.5 mm", () => {
    expect(workingOf("RUNOFFDEPTH", 100, 80, null, "metric")[0]).toEqual({ label: "Storage S", value: 63.5, unit: "mm" });
  });

  // Computed by hand. CN 98: S = 0.20408, Q = 0.95918^2 / 1.16327 = 0.79091 in; CN 61: Ia = 1.279 in, more than the rain.
  test("a roof and a lawn are followed surface by surface, and the yard is their sum", () => {
    const steps = workingOf("YARDRUNOFF", 1, [["roof"], ["good lawn"]], [[1000], [3000]], "B");
    expectSteps(
      steps,
      [
        ["Surface 1, curve number", 98], ["Surface 1, runoff depth Q", 0.79091, "in"], ["Surface 1, runoff", 65.909, "cu ft"],
        ["Surface 2, curve number", 61], ["Surface 2, runoff depth Q", 0, "in"], ["Surface 2, runoff", 0, "cu ft"],
        ["Runoff of the yard", 65.909, "cu ft"],
      ],
      0.0005,
    );
  });

  test("an impossible call has no working", () => {
    expect(workingOf("RUNOFFDEPTH", 4, 80, 0.1)).toEqual([]);
    expect(workingOf("YARDRUNOFF", 1, [["roof"]], [[1000], [3000]], "B")).toEqual([]);
  });
});
