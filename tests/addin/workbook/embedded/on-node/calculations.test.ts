/** Waiting for answers on the page without Excel: they are there when the wait is over, whatever the engine did meanwhile. */
import { HyperFormula } from "hyperformula";
import { beforeEach, describe, expect, it } from "vitest";
import { cellOf, firstRow } from "../../../../../addin/records/place.ts";
import { surfacesSheet } from "../../../../../addin/records/surfaces.ts";
import { at } from "../../../../browser/grid.ts";
import { seededNumbers } from "../../../../functions/long-term/rain-series.ts";
import type { GridOnNode } from "./entry.ts";
import { demo, onGrid } from "./grid-on-node.ts";

describe("The answers of the page without Excel", () => {
  let on: GridOnNode;
  let workbook: GridOnNode["workbook"];

  onGrid((started) => {
    on = started;
    ({ workbook } = started);
  }, demo);
  beforeEach(() => workbook.calculated());

  it.each([10, 40, 80, 150, 300])(
    "are there when the wait is over, though the change stopped a calculation that had begun %i ms before",
    async (sinceStart) => {
      const number = 700 + sinceStart;
      const cell = at("Program!K31");
      await workbook.writeValues([{ range: cellOf(surfacesSheet, firstRow(surfacesSheet), "area"), values: [[number]] }]);
      await new Promise((resolve) => setTimeout(resolve, sinceStart));
      await workbook.writeValues([{ range: at("Program!J31"), values: [[number]] }]);
      await workbook.writeFormulas([{ range: cell, formulas: [["=J31*2"]] }]);
      await workbook.calculated();
      expect(await workbook.read([cell])).toEqual([[[2 * number]]]);
    },
  );

  it("are the same where a text is found by an index of a long column: letter case aside, beside blanks, comparisons and numbers", async () => {
    const names = ["Oak", "oak", "ash", "", "OAK", "", "elm", "ash", "o*k", "", "", "", "", "", "", "", "", "elm"];
    const first = at("Program!J41");
    const write = (column: number, cells: readonly (string | number)[]) =>
      workbook.writeValues([{ range: { ...first, column, rows: cells.length }, values: cells.map((cell) => [cell]) }]);
    await write(first.column, names);
    await write(
      first.column + 1,
      names.map((_, place) => place + 1),
    );
    await write(first.column + 2, ["oak", "ash", "none", "o?k", "<>oak", ""]);
    const formulas = [
      "=COUNTIFS($J$41:$J$58,$L$41:$L$46)",
      "=SUMIFS($K$41:$K$58,$J$41:$J$58,$L$41:$L$45)",
      '=SUM(IF($J$41:$J$58="oak",$K$41:$K$58,0))',
      '=SUM(IF($J$41:$J$58="",1,0))',
      "=SUM(IF($J$41:$J$58=$J$60,1,0))",
      '=SUM(IF($J$41:$J$58="none",$K$41:$K$58,100))',
    ];
    await workbook.writeFormulas(
      formulas.map((formula, place) => ({ range: { ...first, column: first.column + 4 + place }, formulas: [[formula]] })),
    );
    await workbook.calculated();
    const [shown] = await workbook.read([{ ...first, column: first.column + 4, rows: 6, columns: 6 }]);
    expect(shown?.map(([count]) => count).slice(0, 5)).toEqual([3, 2, 0, 4, 15]);
    expect(shown?.map(([, sum]) => sum).slice(0, 5)).toEqual([8, 11, 0, 17, 163]);
    expect(shown?.[0]?.slice(2)).toEqual([8, 10, 10, 1800]);
  });

  it.each([1, 2, 3, 4])(
    "are those of another engine (HyperFormula 3.5.0) for counts and sums by texts of random columns: %i",
    async (seed) => {
      const random = seededNumbers(seed);
      const oneOf = <Value>(values: readonly Value[]): Value => values[Math.floor(random() * values.length)]!;
      // Of the odd tables every column holds texts alone, and is looked through by index; of the even ones some hold numbers too.
      const names = ["oak", "Oak", "ash", "red ash", "a", "", "5 oaks", ...(seed % 2 === 0 ? [5, 0] : [])];
      const table = Array.from({ length: 30 }, () => [oneOf(names), oneOf(["wet", "dry", "Dry", ""]), Math.floor(random() * 40)]);
      const asked = Array.from({ length: 12 }, () => [
        oneOf(["oak", "ASH", "none", "a", "5 oaks", "*ash", "<>oak", 5]),
        oneOf(["dry", "wet", "d*"]),
      ]);
      const formulasFor = (name: string, zone: string) => [
        `=COUNTIFS($J$41:$J$70,${name})`,
        `=COUNTIFS($J$41:$J$70,${name},$K$41:$K$70,${zone})`,
        `=SUMIFS($L$41:$L$70,$J$41:$J$70,${name},$K$41:$K$70,${zone})`,
      ];
      const spilled = formulasFor("$M$41:$M$52", "$N$41:$N$52");
      const first = at("Program!J41");
      const asCells = (rows: readonly (readonly (string | number)[])[]) =>
        rows.map((row) => row.map((cell) => (cell === "" ? null : cell)));
      await workbook.writeValues([
        { range: { ...first, rows: table.length, columns: 3 }, values: asCells(table) },
        { range: { ...first, column: first.column + 3, rows: asked.length, columns: 2 }, values: asCells(asked) },
      ]);
      await workbook.writeFormulas(
        spilled.map((formula, place) => ({ range: { ...first, column: first.column + 5 + place }, formulas: [[formula]] })),
      );
      await workbook.calculated();
      const [shown] = await workbook.read([{ ...first, column: first.column + 5, rows: asked.length, columns: spilled.length }]);
      const engine = HyperFormula.buildEmpty({ licenseKey: "gpl-v3" });
      engine.addSheet("Program");
      engine.setCellContents({ sheet: 0, row: 40, col: 9 }, asCells(table));
      engine.setCellContents({ sheet: 0, row: 40, col: 12 }, asked);
      const other = asked.map((_, row) =>
        formulasFor(`$M$${41 + row}`, `$N$${41 + row}`).map((formula, place) => {
          const cell = { sheet: 0, row: 40 + row, col: 14 + place };
          engine.setCellContents(cell, formula);
          return engine.getCellValue(cell);
        }),
      );
      engine.destroy();
      expect(shown).toEqual(other);
    },
  );

  it("are waited for no longer when only a look was changed", async () => {
    on.grid.workbook().getSheetByName("Program")?.getRange("J31").setFontWeight("bold");
    const start = Date.now();
    await workbook.calculated();
    expect(Date.now() - start).toBeLessThan(30_000);
  });
});
