import { describe, expect, test } from "vitest";
import { functionsMetadata } from "../../../manifest/functions-metadata.ts";
import packageJson from "../../../package.json" with { type: "json" };
import { fromUs, hasDimension, type NumberKind } from "../../../functions/quantities.ts";
import { SOAKBOOK_VERSION } from "../../../functions/worksheet/about.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import type { Cell, CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";

const everyFunction = catalogue.map((declared) => [declared.name, declared] as const);

/** Half the last digit of a number as it is written: 0.005 for 2.04. */
function halfLastDigit(written: number): number {
  const [, decimals = ""] = String(written).split(".");
  return 0.5 * 10 ** -decimals.length;
}

function expectExample({ example }: WorksheetFunction, answer: readonly (readonly Cell[])[]): void {
  const expected = Array.isArray(example.result) ? (example.result as readonly (readonly Cell[])[]) : [[example.result as Cell]];
  expect(answer.map(({ length }) => length)).toEqual(expected.map(({ length }) => length));
  for (const [row, cells] of expected.entries()) {
    for (const [column, cell] of cells.entries()) {
      const given = answer[row]?.[column];
      if (typeof cell !== "number") expect(given).toEqual(cell);
      else expect(Math.abs((given as number) - cell)).toBeLessThanOrEqual((example.within ?? halfLastDigit(cell)) * (1 + 1e-9));
    }
  }
}

describe("every function in the catalogue", () => {
  test("names are in the catalogue once", () => {
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
  });

  test("there are at most about 60, because Excel has failed to register many more", () => {
    expect(catalogue.length).toBeGreaterThan(0);
    expect(catalogue.length).toBeLessThanOrEqual(64);
  });

  test.each(everyFunction)("%s has a name that Excel keeps as it is", (name) => {
    expect(name).toMatch(/^[A-Z][A-Z0-9]{2,}$/);
    // A name like XFD1 or R1C1 would be a cell.
    expect(name).not.toMatch(/^[A-Z]{1,3}\d+$/);
    expect(name).not.toMatch(/^R\d*C\d*$/);
  });

  test.each(everyFunction)("%s says in one sentence what it gives", (_, { summary }) => {
    expect(summary).toMatch(/^[A-Z].*\.$/);
    expect(summary).not.toMatch(/\n/);
  });

  test.each(everyFunction)("%s names each argument and result as people read them", (_, { parameters, result }) => {
    expect(new Set(parameters.map(({ key }) => key)).size).toBe(parameters.length);
    for (const { key, label, description } of parameters) {
      expect(key).toMatch(/^[a-z][A-Za-z]*$/);
      expect(label).toMatch(/^[A-Z].*[^.]$/);
      expect(description).toMatch(/\.$/);
    }
    expect(result.values.length).toBeGreaterThan(0);
    for (const { label } of result.values) expect(label).toMatch(/^[A-Z].*[^.]$/);
  });

  test.each(everyFunction)("%s takes what it needs before what may be left out", (_, { parameters }) => {
    const optional = parameters.map((parameter) => parameter.optional);
    expect([...optional].sort((a, b) => Number(a) - Number(b))).toEqual(optional);
  });

  test.each(everyFunction.filter(([, declared]) => hasDimensions(declared)))(
    "%s lists units, because it has a dimension",
    (_, declared) => {
      expect(declared.parameters.map(({ key }) => key)).toContain("units");
    },
  );

  test.each(everyFunction)("%s cites where it comes from", (_, { sources, example }) => {
    expect(sources.length).toBeGreaterThan(0);
    for (const citation of [...sources, example.from]) {
      for (const words of Object.values(citation)) expect(words.trim()).not.toBe("");
    }
  });

  test.each(everyFunction)("%s gives the result of its worked example, within half its last printed digit", (_, declared) => {
    expectExample(declared, declared.evaluate(declared.example.arguments));
  });

  test.each(everyFunction.filter(([, declared]) => canGoMetric(declared)))(
    "%s gives the same physical answer on a metric sheet",
    (_, declared) => {
      const us = declared.evaluate(declared.example.arguments);
      const metric = declared.evaluate(metricArguments(declared));
      for (const [row, cells] of us.entries()) {
        for (const [column, cell] of cells.entries()) {
          const { kind } = declared.result.values[column] ?? { kind: "text" };
          if (typeof cell !== "number" || !isNumberKind(kind)) continue;
          const same = fromUs(kind, cell, "metric");
          expect(Math.abs((metric[row]?.[column] as number) - same)).toBeLessThanOrEqual(1e-9 * Math.abs(same) + 1e-12);
        }
      }
    },
  );

  test.each(everyFunction)("%s stands in functions.json with the same arguments", (name, { parameters, summary }) => {
    const listed = functionsMetadata(catalogue).functions.find(({ id }) => id === name);
    expect(listed).toMatchObject({ id: name, name, description: summary });
    expect(listed?.parameters.map((parameter) => [parameter.name, parameter.optional ?? false])).toEqual(
      parameters.map(({ key, optional }) => [key, optional]),
    );
  });

  test("VERSION is the version in package.json", () => {
    expect(SOAKBOOK_VERSION).toBe(packageJson.version);
  });
});

function hasDimensions({ parameters, result }: WorksheetFunction): boolean {
  return [...parameters, ...result.values].some(({ units }) => units !== undefined);
}

function canGoMetric(declared: WorksheetFunction): boolean {
  return hasDimensions(declared) && declared.example.arguments[declared.parameters.findIndex(({ key }) => key === "units")] === undefined;
}

/** The example's inputs as a metric sheet would hold them, with blanks for what it leaves out. */
function metricArguments({ parameters, example }: WorksheetFunction): readonly CellInput[] {
  return parameters.map(({ key, kind }, place): CellInput => {
    if (key === "units") return "metric";
    const input = example.arguments[place];
    const inMetric = (cell: Cell): Cell => (typeof cell === "number" && isDimension(kind) ? fromUs(kind, cell, "metric") : cell);
    return Array.isArray(input)
      ? (input as readonly (readonly Cell[])[]).map((row) => row.map(inMetric))
      : inMetric((input ?? null) as Cell);
  });
}

function isDimension(kind: string): kind is NumberKind {
  return isNumberKind(kind as NumberKind) && hasDimension(kind as NumberKind);
}
