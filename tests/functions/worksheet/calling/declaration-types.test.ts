import { describe, expectTypeOf, test } from "vitest";
import {
  choice,
  depth,
  flag,
  length,
  number,
  rangeOf,
  rate,
  share,
  tableRange,
  text,
} from "../../../../functions/worksheet/calling/arguments.ts";
import { invalid, type Cell, type CellError } from "../../../../functions/worksheet/calling/cell.ts";
import { rowOf, tableOf } from "../../../../functions/worksheet/calling/results.ts";
import type { Speaker } from "../../../../functions/worksheet/calling/speaker.ts";
import { worksheetFunction, type WorksheetFunction } from "../../../../functions/worksheet/calling/worksheet-function.ts";
import { about } from "../sample-functions.ts";

// Checked by the type checker: a declaration that does not fit its calculation does not build.
describe("what a declaration promises its calculation", () => {
  test("each argument arrives as what was declared, and the speaker comes last", () => {
    const declared = worksheetFunction({
      ...about,
      name: "SAMPLE",
      arguments: [
        depth("depth", "Depth").atLeast(0),
        length("width", "Width").leftOutMeans("as wide as it is long"),
        choice("soil", "Soil", ["sand", "clay"]).optional("clay"),
        flag("near", "Near"),
        text("note", "Note"),
        rangeOf(rate("rates", "Rate")),
        rangeOf(share("shares", "Share")).keepingBlanks(),
        rangeOf(choice("kinds", "Kind", ["a", "b"])).optional([]),
        tableRange("rules", "Rules"),
      ],
      result: number("Answer"),
      cautions: [
        {
          when: (inputs) => {
            expectTypeOf(inputs.width).toEqualTypeOf<number | undefined>();
            expectTypeOf(inputs.soil).toEqualTypeOf<"sand" | "clay">();
            return inputs.depth > 1;
          },
          says: (inputs, speaker) => `${inputs.note}${speaker.depth(inputs.depth)}`,
        },
      ],
      calculate: (inputs, speaker) => {
        expectTypeOf(speaker).toEqualTypeOf<Speaker>();
        expectTypeOf(inputs).toEqualTypeOf<{
          readonly depth: number;
          readonly width: number | undefined;
          readonly soil: "sand" | "clay";
          readonly near: boolean;
          readonly note: string;
          readonly rates: readonly number[];
          readonly shares: readonly (number | null)[];
          readonly kinds: readonly ("a" | "b")[];
          readonly rules: readonly (readonly Cell[])[];
        }>();
        return 1;
      },
    });
    expectTypeOf(declared).toEqualTypeOf<WorksheetFunction>();
  });

  test("a row or a table is returned as its values were declared, each of which may be an error", () => {
    const row = rowOf([depth("Depth"), text("Status"), flag("Fits")]);
    const table = tableOf([depth("Depth"), text("Status")]);
    expectTypeOf<NonNullable<typeof row.output>>().toEqualTypeOf<readonly [number | CellError, string | CellError, boolean | CellError]>();
    expectTypeOf<NonNullable<typeof table.output>>().toEqualTypeOf<readonly (readonly [number | CellError, string | CellError])[]>();
    worksheetFunction({ ...about, name: "SAMPLE", arguments: [], result: row, calculate: () => [1, invalid("No."), true] });
    worksheetFunction({
      ...about,
      name: "SAMPLE",
      arguments: [],
      result: table,
      calculate: () => [
        [1, "fits"],
        [invalid("No."), ""],
      ],
    });
    worksheetFunction({ ...about, name: "SAMPLE", arguments: [], result: table, calculate: () => invalid("No table.") });
  });

  test("a calculation that does not fit does not type-check", () => {
    const words = (d: string) => d.length;
    // @ts-expect-error A depth is a number, not words.
    worksheetFunction({ ...about, name: "SAMPLE", arguments: [depth("d", "Depth")], result: number("Answer"), calculate: words });
    // @ts-expect-error A number was promised.
    worksheetFunction({ ...about, name: "SAMPLE", arguments: [depth("d", "Depth")], result: number("Answer"), calculate: () => "words" });
    // @ts-expect-error A row of two was promised.
    worksheetFunction({ ...about, name: "SAMPLE", arguments: [], result: rowOf([depth("D"), text("S")]), calculate: () => [1] });
    const optionalWidth = length("w", "Width").leftOutMeans("x");
    const ofWidth = (w: number) => w;
    // @ts-expect-error A left-out width is not a number.
    worksheetFunction({ ...about, name: "SAMPLE", arguments: [optionalWidth], result: number("A"), calculate: ofWidth });
    // @ts-expect-error The default is none of the choices.
    choice("soil", "Soil", ["sand", "clay"]).optional("peat");
  });
});
