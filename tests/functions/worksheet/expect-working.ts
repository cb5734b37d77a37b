import { expect } from "vitest";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import type { CellInput } from "../../../functions/worksheet/calling/cell.ts";
import type { ShownStep } from "../../../functions/worksheet/calling/working.ts";

export type Expected = readonly [label: string, value: number | string, unit?: string];

export function workingOf(name: string, ...inputs: readonly CellInput[]): readonly ShownStep[] {
  const declared = catalogue.find((each) => each.name === name);
  if (declared === undefined) throw new Error(`${name} is not in the catalogue`);
  return declared.workingFor(inputs);
}

/** The steps, each with its label, its unit and its number; numbers to a billionth, or as far as they are printed. */
export function expectSteps(steps: readonly ShownStep[], expected: readonly Expected[], within?: number): void {
  expect(steps.map(({ label, unit }) => [label, unit])).toEqual(expected.map(([label, , unit = ""]) => [label, unit]));
  for (const [place, [label, value]] of expected.entries()) {
    const shown = steps[place]?.value;
    if (typeof value === "string") expect(shown, label).toBe(value);
    else
      expect(Math.abs((shown as number) - value), `${label}: ${shown}`).toBeLessThanOrEqual(within ?? 1e-9 * Math.max(1, Math.abs(value)));
  }
}

export function numberIn(steps: readonly ShownStep[], label: string): number {
  const step = steps.find((each) => each.label === label);
  expect(step, `a step called ${label}`).toBeDefined();
  return step?.value as number;
}
