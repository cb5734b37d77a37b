/** Whatever a cell may hold, for chance to try: what people type, what they mistype, and what nobody should. */
import fc from "fast-check";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";

const oddText = fc.constantFrom(
  "__proto__",
  "constructor",
  "toString",
  "12",
  "12 in",
  "=1+1",
  " ",
  "NaN",
  "Infinity",
  "é".repeat(300),
  "\u0000",
  "#N/A",
);
const error = fc.constantFrom("#N/A", "#DIV/0!", "#NUM!").map((code) => ({ code, sentence: "" }));
const blank = fc.constantFrom<Cell[]>(null, "");
const date = fc.integer({ min: 1, max: 60_000 });
const anyNumber = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, 5e-324, -1, 0.5, Number.MAX_VALUE, -Number.MAX_VALUE, 1e308),
);

export const anyCell: fc.Arbitrary<Cell> = fc.oneof(anyNumber, date, fc.string(), oddText, fc.boolean(), blank, error);

/** A number that someone in the trade might type for the argument. */
function plausibleNumber({ kind }: Parameter): fc.Arbitrary<number> {
  if (kind === "share") return fc.double({ min: 0, max: 1, noNaN: true });
  if (kind === "percent") return fc.integer({ min: 0, max: 100 });
  if (kind === "count") return fc.integer({ min: 0, max: 20 });
  return fc.oneof(fc.double({ min: 0, max: 20, noNaN: true }), fc.integer({ min: 0, max: 2000 }));
}

function plausibleCell(parameter: Parameter): fc.Arbitrary<Cell> {
  if (parameter.choices !== undefined) return fc.constantFrom(...parameter.choices);
  if (parameter.kind === "flag") return fc.boolean();
  if (parameter.kind === "text" || parameter.kind === "cells") return fc.oneof(fc.string(), plausibleNumber(parameter));
  return plausibleNumber(parameter);
}

/** Mostly what is meant, sometimes anything at all, so that chance gets past the guards and also tries them. */
function cellFor(parameter: Parameter): fc.Arbitrary<Cell> {
  return fc.oneof({ weight: 6, arbitrary: plausibleCell(parameter) }, { weight: 1, arbitrary: blank }, { weight: 1, arbitrary: anyCell });
}

function grid(cell: fc.Arbitrary<Cell>, rows: number, columns: number): fc.Arbitrary<Cell[][]> {
  return fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });
}

const size = fc.integer({ min: 1, max: 4 });

/** One argument: usually a single cell or a series as it wants, at times a range of any size, or left out. */
function inputFor(parameter: Parameter): fc.Arbitrary<CellInput> {
  const cell = cellFor(parameter);
  const wanted = parameter.isRange ? fc.tuple(size, size).chain(([rows, columns]) => grid(cell, rows, columns)) : cell;
  return fc.oneof<fc.MaybeWeightedArbitrary<CellInput>[]>(
    { weight: 8, arbitrary: wanted },
    { weight: 1, arbitrary: fc.tuple(size, size).chain(([rows, columns]) => grid(cell, rows, columns)) },
    { weight: 1, arbitrary: fc.constantFrom<CellInput[]>(undefined, [], [[]]) },
  );
}

export function inputsFor(parameters: readonly Parameter[]): fc.Arbitrary<CellInput[]> {
  return fc.tuple(...parameters.map(inputFor));
}

/** One row of single cells, with a whole series where the function wants one. */
export function oneRowFor(parameters: readonly Parameter[]): fc.Arbitrary<CellInput[]> {
  return fc.tuple(...parameters.map((parameter) => (parameter.isRange ? grid(cellFor(parameter), 3, 1) : cellFor(parameter))));
}
