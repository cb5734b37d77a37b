import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvFile, neutralText, pastedTable } from "../../../../addin/actions/export/csv-file.ts";
import { HOSTILE, hostileText, LONG } from "./hostile-text.ts";

// csv-parse is not ours: it reads RFC 4180.
const read = (file: string): string[][] =>
  parse(file, { bom: true, relax_column_count: true, skip_empty_lines: false, record_delimiter: "\r\n" });

/** What a careful reader must find at no start of a text, of a line, or of a field in any country. */
const RUNS = /(?:^|[\r\n\t;])[^\S\r\n\t]*[=+\-@\uff1d\uff0b\uff0d\uff20]/;

describe("A table as comma-separated text", () => {
  test("comes back from another program's parser, cell by cell, whatever was typed", () => {
    fc.assert(
      fc.property(
        fc.array<readonly string[]>(fc.array(hostileText, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
        (rows) => {
          expect(read(csvFile(rows))).toEqual(rows.map((row) => row.map(neutralText)));
        },
      ),
      { examples: [[[HOSTILE]], [[LONG]]] },
    );
  });

  test("keeps every character that was typed, in order, and adds apostrophes alone", () => {
    fc.assert(
      fc.property(hostileText, (typed) => {
        const rest = [...neutralText(typed)];
        // No file of text can hold half a character, or the character 0.
        for (const character of typed.replace(/[\p{Cs}\0]/gu, "\ufffd")) {
          while (rest[0] !== character) expect(rest.shift()).toBe("'");
          rest.shift();
        }
        expect(rest).toEqual([]);
      }),
    );
  });

  test("has no text that begins a formula, in any line of it", () => {
    fc.assert(
      fc.property(hostileText, (typed) => {
        expect(neutralText(typed)).not.toMatch(RUNS);
        expect(neutralText(typed)).not.toMatch(/^[\t\r\n]/);
      }),
      { examples: HOSTILE.map((typed): [string] => [typed]) },
    );
  });

  test("leaves ordinary words as they are, signs within them too", () => {
    for (const words of ["Corner house, Fennel Row", "half = 0.5", "10-20 % more", "owner@home", "3 + 4 bags", ""])
      expect(neutralText(words)).toBe(words);
  });

  test("keeps numbers as numbers, below zero too, and a blank as nothing", () => {
    expect(csvFile([[-1.5, 1200, 0, null, 0.1 + 0.2]])).toBe("\ufeff-1.5,1200,0,,0.3\r\n");
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), (number) => {
        const [[written = ""] = []] = read(csvFile([[number, "x"]]));
        expect(Math.abs(Number(written) - number)).toBeLessThanOrEqual(Math.abs(number) * 1e-14);
      }),
    );
  });

  test("is pasted as so many lines of so many cells, whatever the text holds, and none begins a formula", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(hostileText, hostileText), { minLength: 1, maxLength: 4 }), (rows) => {
        const pasted = pastedTable(rows)
          .split("\n")
          .map((line) => line.split("\t"));
        expect(pasted.map((cells) => cells.length)).toEqual(rows.map(() => 2));
        for (const cell of pasted.flat()) expect(cell).not.toMatch(RUNS);
      }),
      { examples: [[[["=1+1\n=2", "\t+1"]]]] },
    );
  });
});
