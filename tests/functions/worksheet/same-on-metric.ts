/** One question asked on a US sheet and on a metric sheet: the answers must be the same physical quantities. */
import { expect } from "vitest";
import { fromUs, hasDimension, type NumberKind } from "../../../functions/quantities.ts";
import type { ValueKind } from "../../../functions/worksheet/calling/arguments.ts";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";

/** `inputs` in US units, without the last argument, units. */
export function expectSameOnMetric(declared: WorksheetFunction, inputs: readonly CellInput[]): void {
  const own = declared.parameters.slice(0, -1);
  const us = declared.evaluate(own.map((_, place) => inputs[place]));
  const metric = declared.evaluate([...own.map(({ kind }, place) => inMetric(inputs[place], kind)), "metric"]);
  expect(metric.map(({ length }) => length)).toEqual(us.map(({ length }) => length));
  us.flat().forEach((cell, place) => {
    const answer = metric.flat()[place];
    const kind = declared.result.values[place % declared.result.values.length]!.kind;
    if (typeof cell !== "number") expect(answer).toEqual(cell);
    else {
      const same = isDimension(kind) ? fromUs(kind, cell, "metric") : cell;
      expect(Math.abs((answer as number) - same)).toBeLessThanOrEqual(1e-9 * Math.abs(same) + 1e-9);
    }
  });
}

function inMetric(input: CellInput, kind: ValueKind): CellInput {
  const one = (cell: Cell): Cell => (typeof cell === "number" && isDimension(kind) ? fromUs(kind, cell, "metric") : cell);
  return Array.isArray(input) ? (input as readonly (readonly Cell[])[]).map((row) => row.map(one)) : one((input ?? null) as Cell);
}

function isDimension(kind: ValueKind): kind is NumberKind {
  return isNumberKind(kind) && hasDimension(kind);
}
