import { afterEach, expect, test, vi } from "vitest";
import { catalogue } from "../../../../functions/worksheet/catalogue.ts";
import { Call } from "../../../../functions/worksheet/calling/call.ts";
import { inputFromHost } from "../../../../functions/worksheet/calling/host-cells.ts";

afterEach(() => {
  vi.restoreAllMocks();
});

/** Takes arguments apart into grids and lanes, which costs four times as much. */
const longRoad = () => vi.spyOn(Call.prototype, "answers");

const ofCells = catalogue.filter(
  ({ parameters, example }) => parameters.every(({ isRange }) => !isRange) && example.arguments.every((input) => !Array.isArray(input)),
);

test("a call of single cells takes the short road, whether a host hands over cells or, as Excel does, rows of one", () => {
  expect(ofCells.length).toBeGreaterThan(30);
  const taken = longRoad();
  for (const { name, example, evaluate } of ofCells) {
    const asCells = evaluate(example.arguments);
    const asRows = evaluate(example.arguments.map((input) => (input === undefined ? undefined : inputFromHost([[input]]))));
    expect(asRows, name).toEqual(asCells);
  }
  expect(taken).not.toHaveBeenCalled();
});

test("a column takes the long road, and so does a cell that is impossible or blank", () => {
  const [first] = catalogue.filter(({ name }) => name === "RUNOFFDEPTH");
  const answer = (...inputs: readonly unknown[]) => first?.evaluate(inputs.map(inputFromHost));
  const taken = longRoad();
  expect(answer([[4], [5]], 80)).toHaveLength(2);
  expect(answer([[4]], [[101]])).toEqual([[{ code: "#VALUE!", sentence: "Curve number must be 100 or less." }]]);
  expect(answer([[""]], [[80]])).toEqual([[{ code: "#N/A", sentence: "Rain is missing." }]]);
  expect(answer([], 80)).toEqual([[{ code: "#N/A", sentence: "Rain is missing." }]]);
  expect(taken).toHaveBeenCalledTimes(4);
});
