import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Cell, CellInput } from "../../../../functions/worksheet/calling/cell.ts";
import { column, drainRow, dropTable, pondedVolume, product, refused, row } from "../sample-functions.ts";

// OASIS OpenDocument 1.2, part 2 (OpenFormula), section 3.3 on array evaluation, which describes what Excel does
// (from memory): one row or one column is repeated to meet a larger array. Where sizes disagree Excel pads with #N/A;
// here the whole answer is a sentence.
describe("how ranges meet, as in Excel", () => {
  test("two single cells give one cell", () => {
    expect(product.evaluate([2, 3])).toEqual([[6]]);
  });

  test("a single cell meets every row of a column", () => {
    expect(product.evaluate([column(1, 2, 3), 10])).toEqual([[10], [20], [30]]);
  });

  test("two columns meet row by row", () => {
    expect(product.evaluate([column(1, 2, 3), column(4, 5, 6)])).toEqual([[4], [10], [18]]);
  });

  test("two rows meet column by column", () => {
    expect(product.evaluate([row(1, 2, 3), row(4, 5, 6)])).toEqual([[4, 10, 18]]);
  });

  test("a column against a row gives a what-if grid", () => {
    expect(product.evaluate([column(1, 2), row(3, 4, 5)])).toEqual([
      [3, 4, 5],
      [6, 8, 10],
    ]);
  });

  test("a grid meets a row and a column of its own size", () => {
    const grid: CellInput = [
      [1, 2],
      [3, 4],
      [5, 6],
    ];
    expect(product.evaluate([grid, row(10, 100)])).toEqual([
      [10, 200],
      [30, 400],
      [50, 600],
    ]);
    expect(product.evaluate([grid, column(1, 10, 100)])).toEqual([
      [1, 2],
      [30, 40],
      [500, 600],
    ]);
    expect(product.evaluate([grid, grid])).toEqual([
      [1, 4],
      [9, 16],
      [25, 36],
    ]);
  });

  test("a range without cells is a blank", () => {
    expect(product.evaluate([[], [[]]])).toEqual([[""]]);
  });

  test("a short row in a ragged range is blank where it ends", () => {
    expect(product.evaluate([[[1, 2], [3]], 1])).toMatchObject([
      [1, 2],
      [3, { sentence: "First is missing." }],
    ]);
  });

  test.each([
    ["two columns of different length", column(1, 2), column(1, 2, 3), "First (2 rows by 1 column) and Second (3 rows by 1 column)"],
    ["two rows of different length", row(1, 2), row(1, 2, 3), "First (1 row by 2 columns) and Second (1 row by 3 columns)"],
  ])("%s do not line up, and a sentence names both", (_, first, second, both) => {
    expect(product.evaluate([first, second])).toEqual([[refused(`${both} do not line up: give them the same size, or a single cell.`)]]);
  });

  test("a column of units that is too short for its yards does not line up", () => {
    expect(pondedVolume.evaluate([column(1, 2, 3), 6, column("us", "metric")])).toEqual([
      [
        refused(
          "Basin area (3 rows by 1 column) and Units (2 rows by 1 column) do not line up: give them the same size, or a single cell.",
        ),
      ],
    ]);
  });

  test("whatever the sizes, each cell is what the single cells that meet there give", () => {
    const cell = fc.oneof<fc.Arbitrary<Cell>[]>(fc.integer({ min: -50, max: 50 }), fc.constant(null), fc.constant("text"));
    const grid = (rows: number, columns: number): fc.Arbitrary<Cell[][]> =>
      fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });
    const meeting = fc
      .record({
        rows: fc.integer({ min: 1, max: 4 }),
        columns: fc.integer({ min: 1, max: 4 }),
        stretches: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
      })
      .chain(({ rows, columns, stretches: [a, b, c, d] }) =>
        fc.tuple(grid(a === true ? 1 : rows, b === true ? 1 : columns), grid(c === true ? 1 : rows, d === true ? 1 : columns)),
      );
    fc.assert(
      fc.property(meeting, ([first, second]) => {
        const meets = (cells: readonly (readonly Cell[])[], r: number, c: number): Cell =>
          cells[cells.length === 1 ? 0 : r]?.[cells[0]?.length === 1 ? 0 : c] ?? null;
        product.evaluate([first, second]).forEach((cells, r) => {
          cells.forEach((answer, c) => {
            expect([[answer]]).toEqual(product.evaluate([meets(first, r, c), meets(second, r, c)]));
          });
        });
      }),
    );
  });
});

describe("functions whose answer is a row or a table", () => {
  test("a function that answers with a row gives one for each row of its inputs", () => {
    expect(drainRow.evaluate([column(6, 12), 0.5])).toEqual([
      [12, 24, "fits"],
      [24, 24, "fits"],
    ]);
  });

  test("a row of cells cannot be answered with rows, and a sentence says so", () => {
    expect(drainRow.evaluate([row(6, 12), 0.5])).toEqual([
      [refused("Ponding depth must be a single cell or a column; it is 1 row by 2 columns.")],
    ]);
  });

  test("a function that answers with a table takes single cells beside its series", () => {
    expect(dropTable.evaluate([column(6, 5, 5), 1])).toEqual([
      [1, true],
      [0, false],
    ]);
    expect(dropTable.evaluate([column(6, 5, 5), column(1, 2)])).toEqual([
      [refused("Step must be a single cell; it is 2 rows by 1 column.")],
    ]);
    expect(dropTable.evaluate([column(6, 5, 5), row(1, 2)])).toEqual([[refused("Step must be a single cell; it is 1 row by 2 columns.")]]);
  });
});
