/** The rules of the workbook's formulas, as DEVELOPERS.md states them. */
import { describe, expect, test } from "vitest";
import { callsIn, rangesIn } from "../../../addin/actions/working/find-formula.ts";
import { readFormula, type Expression } from "../../../addin/actions/working/read-formula.ts";
import { workbookFormulas } from "../../../addin/records/formulas.ts";
import { designSheet } from "../../../addin/records/design.ts";
import { placeAsSetUp } from "../../../addin/records/place.ts";
import { placesAsSetUp, type Places } from "../../../addin/records/program.ts";
import { recordSheets } from "../../../addin/records/program-sheets.ts";
import { reportSheet } from "../../../addin/records/report.ts";
import type { Sheet } from "../../../addin/records/sheet.ts";
import { addressOf, type CellRange } from "../../../addin/workbook/port.ts";

interface CellFormula {
  readonly where: CellRange;
  readonly formula: string;
}

const formulasAt = (places: Places): readonly CellFormula[] =>
  workbookFormulas(places).flatMap(({ range, formulas }) =>
    formulas.flatMap((line, row) =>
      line.map((formula, column) => ({
        where: { ...range, row: range.row + row, column: range.column + column, rows: 1, columns: 1 },
        formula,
      })),
    ),
  );
const everyFormula = formulasAt(placesAsSetUp);
const on = ({ name }: Sheet) => everyFormula.filter(({ where }) => where.sheet === name);
const expressionOf = ({ formula, where }: CellFormula) => {
  const expression = readFormula(formula, where.sheet);
  if (expression === null) throw new Error(`${addressOf(where)} cannot be read: ${formula}`);
  return expression;
};
const isTypedIn = ({ columns }: Sheet) => Object.values(columns).some(({ role }) => role === "input");
const typed = recordSheets.filter(isTypedIn);
const computed = recordSheets.filter((sheet) => !isTypedIn(sheet));

describe.each(typed.map((sheet) => [sheet.name, sheet] as const))("%s, which people type in,", (_, sheet) => {
  test("holds only formulas that read their own row of it, and every prepared row holds the same", () => {
    for (const each of on(sheet)) {
      const own = rangesIn(expressionOf(each)).filter((range) => range.sheet === sheet.name);
      for (const range of own) expect([addressOf(each.where), range.row, range.rows]).toEqual([addressOf(each.where), each.where.row, 1]);
    }
    const columns = new Set(on(sheet).map(({ where }) => where.column));
    expect(on(sheet)).toHaveLength(columns.size * sheet.rows);
  });

  test("holds at most one call of ours a row", () => {
    const calls = new Map<number, number>();
    for (const each of on(sheet)) {
      const own = callsIn(expressionOf(each)).filter(({ name }) => /^SOAK\./.test(name)).length;
      calls.set(each.where.row, (calls.get(each.where.row) ?? 0) + own);
    }
    expect(Math.max(0, ...calls.values())).toBeLessThanOrEqual(1);
  });

  test("holds a result in no column that people type in", () => {
    const inputs = Object.values(sheet.columns).flatMap(({ role }, column) => (role === "input" ? [column] : []));
    expect(on(sheet).filter(({ where }) => inputs.includes(where.column))).toEqual([]);
  });
});

describe.each(computed.map((sheet) => [sheet.name, sheet] as const))("%s, which is computed,", (_, sheet) => {
  test("holds formulas in its columns of results alone, none of more than 400 characters", () => {
    for (const { where, formula } of on(sheet)) {
      expect(where.column).toBeLessThan(Object.keys(sheet.columns).length);
      expect(formula.length, `${addressOf(where)}: ${formula}`).toBeLessThanOrEqual(400);
    }
  });
});

const countOf = (formulas: readonly CellFormula[]) => {
  const typedNames = new Set(typed.map(({ name }) => name));
  const wide = formulas.filter(({ where }) => !typedNames.has(where.sheet));
  return { design: wide.filter(({ where }) => where.sheet === designSheet.name).length, wide: wide.length };
};

test("Design holds at most 20 formulas and the workbook 60 besides those in typed rows, at three thousand yards as at two hundred", () => {
  const few = countOf(everyFormula);
  expect(few.design).toBeLessThanOrEqual(20);
  expect(few.wide).toBeLessThanOrEqual(60);
  const THREE_THOUSAND_YARDS = 16;
  const grown: Places = { ...placesAsSetUp, of: (sheet) => placeAsSetUp(sheet).over(THREE_THOUSAND_YARDS * sheet.rows) };
  expect(countOf(formulasAt(grown))).toEqual(few);
});

test("no more than three calls of ours follow one from the answers of the other", () => {
  const wide = everyFormula.filter(({ where }) => computed.some(({ name }) => name === where.sheet));
  // What a column shows was filled by the formula in it, or by the nearest one on its left.
  const filledBy = (sheet: string, column: number) =>
    wide
      .filter(({ where }) => where.sheet === sheet && where.column <= column)
      .sort((one, other) => other.where.column - one.where.column)[0];
  const callsUpTo = (formula: CellFormula): number => {
    const expression = expressionOf(formula);
    const columns = rangesIn(expression).flatMap(({ sheet, column, columns: count }) =>
      Array.from({ length: count }, (_, place) => filledBy(sheet, column + place)),
    );
    const own = callsIn(expression).some(({ name }) => /^SOAK\./.test(name)) ? 1 : 0;
    return own + Math.max(0, ...[...new Set(columns)].flatMap((before) => (before && before !== formula ? [callsUpTo(before)] : [])));
  };
  // Report stands beside no columns of its own: it sums up those of Report yards.
  const longest = Math.max(...wide.filter(({ where }) => where.sheet !== reportSheet.name).map(callsUpTo));
  expect(longest).toBe(3);
});

test("no formula gives a name twice, nor one that Excel reads as a reference: R and C are rows and columns", () => {
  for (const each of everyFormula) {
    const names = namesIn(expressionOf(each)).map((name) => name.toUpperCase());
    expect([...new Set(names)], each.formula).toEqual(names);
    expect(
      names.filter((name) => /^([RC]|[A-Z]{1,3}\d+)$/.test(name)),
      each.formula,
    ).toEqual([]);
  }
});

test("no formula holds a factor between unit systems: CONVERT and the functions have them", () => {
  expect(everyFormula.filter(({ formula }) => /25\.4|0\.3048|0\.0929|0\.0283/.test(formula)).map(({ where }) => addressOf(where))).toEqual(
    [],
  );
});

/** What each LET of an expression calls its values. */
function namesIn(expression: Expression): readonly string[] {
  if (expression.kind === "operation") return expression.operands.flatMap(namesIn);
  if (expression.kind !== "call") return [];
  const pairs = expression.name.toUpperCase().endsWith("LET") ? expression.inputs.slice(0, -1) : [];
  const own = pairs.flatMap((input, place) => (place % 2 === 0 ? [input.kind === "name" ? input.written : input.kind] : []));
  return [...own, ...expression.inputs.flatMap(namesIn)];
}
