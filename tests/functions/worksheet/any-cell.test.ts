import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import { isCellError, type Cell, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { anyCell, inputsFor, oneRowFor } from "./any-cell.ts";
import { dropTable, everyKind } from "./sample-functions.ts";

const functions = [...catalogue, everyKind, dropTable];

function expectShowable(cell: Cell): void {
  if (typeof cell === "number") expect(cell).toSatisfy(Number.isFinite);
  else if (isCellError(cell)) {
    expect(cell.code).toMatch(/^#/);
    expect(cell.sentence).toMatch(/^$|\.$/);
    // What a person typed is quoted, and may say anything.
    expect(cell.sentence.replaceAll(/".*?"/gs, "")).not.toMatch(/NaN|Infinity|undefined|null|\[object|fault in Soakbook/);
  } else expect(["string", "boolean"]).toContain(typeof cell);
}

describe("whatever stands in the cells", () => {
  test.each(functions.map((declared) => [declared.name, declared] as const))(
    "%s answers with a value or a named error, in rows of one width",
    (_, declared) => {
      fc.assert(
        fc.property(inputsFor(declared.parameters), (inputs) => {
          const rows = declared.evaluate(inputs);
          expect(rows.length).toBeGreaterThan(0);
          for (const row of rows) {
            expect(row).toHaveLength(rows[0]?.length ?? 0);
            expect(row.length).toBeGreaterThan(0);
            row.forEach(expectShowable);
          }
        }),
        { numRuns: 300 },
      );
    },
  );

  test.each(functions.map((declared) => [declared.name, declared] as const))("%s gives its cautions as sentences", (_, declared) => {
    fc.assert(
      fc.property(oneRowFor(declared.parameters), (inputs) => {
        for (const caution of declared.cautionsFor(inputs)) expect(caution).toMatch(/^[A-Z0-9].*\.$/);
      }),
    );
  });

  test.each(functions.map((declared) => [declared.name, declared] as const))("%s takes arguments of no sensible kind", (_, declared) => {
    fc.assert(
      fc.property(fc.array(anyCell, { maxLength: declared.parameters.length + 2 }), (inputs) => {
        declared.evaluate(inputs).flat().forEach(expectShowable);
      }),
    );
  });
});

describe("many yards in one call", () => {
  const lifting = functions.filter(({ result }) => result.shape !== "table");

  test.each(lifting.map((declared) => [declared.name, declared] as const))(
    "%s answers a column as it answers each row alone",
    (_, declared) => {
      fc.assert(
        fc.property(fc.array(oneRowFor(declared.parameters), { minLength: 1, maxLength: 5 }), (yards) => {
          const [firstYard = []] = yards;
          // A series is shared by all rows of a call.
          const inputOf = (yard: readonly CellInput[], place: number): CellInput =>
            declared.parameters[place]?.isRange === true ? firstYard[place] : yard[place];
          const columns = declared.parameters.map(({ isRange }, place) =>
            isRange ? firstYard[place] : yards.map((yard) => [yard[place] as Cell]),
          );
          const alone = yards.flatMap((yard) => declared.evaluate(declared.parameters.map((_parameter, place) => inputOf(yard, place))));
          expect(declared.evaluate(columns)).toEqual(declared.parameters.some(({ isRange }) => !isRange) ? alone : alone.slice(0, 1));
        }),
      );
    },
  );
});
