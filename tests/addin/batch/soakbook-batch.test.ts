import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { csvLine, openCsv } from "../../../addin/batch/csv-stream.ts";
import { openNdjson } from "../../../addin/batch/ndjson-stream.ts";
import { HELP, optionsFrom } from "../../../addin/batch/options.ts";
import { computedStream } from "../../../addin/batch/stream.ts";
import { computerOf } from "../../../addin/batch/workers.ts";
import { siteDesign } from "../../../functions/worksheet/site-design.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import { longTerm } from "../../../functions/worksheet/long-term.ts";
import { inventedHours } from "../../functions/long-term/rain-series.ts";
import { hasGnuParallel, NO_GNU_PARALLEL } from "../../programs.ts";
import { builtBatch, finished, PARCEL_HEADINGS, PARCEL_WORDS, parcels } from "./started-batch.ts";

let folder: string;
let script: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "soakbook-batch-"));
  script = await builtBatch(folder);
});

afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function answered(words: readonly string[], input: string): Promise<string> {
  const options = optionsFrom(words);
  if ("print" in options) return options.print;
  // In bites of a few bytes, as a pipe may hand them over.
  const stream = Readable.from((input.match(/[^]{1,7}/g) ?? []).map((piece) => Buffer.from(piece)));
  let output = "";
  const opened = options.format === "csv" ? await openCsv(stream, options) : openNdjson(stream, options);
  for await (const piece of computedStream(opened, computerOf(opened.work), 1)) output += piece;
  return output;
}

describe("a CSV stream", () => {
  test("finds arguments by their names or labels in any case, and puts results and an error after each row", async () => {
    const rows = "Parcel,PONDING,design rate\nfirst,6,0.5\nsecond,-1,0.5\nthird,12,0.5\n";
    expect(await answered(["drawdown"], rows)).toBe(
      "Parcel,PONDING,design rate,Drawdown,Error\nfirst,6,0.5,12,\n" +
        "second,-1,0.5,,Ponding depth must be 0 or more.\nthird,12,0.5,24,\n",
    );
  });

  test("takes columns by heading or by number, the same value for all, and units", async () => {
    const words = ["DRAWDOWN", "--column", "ponding=deep", "--column", "designRate=#3", "--value", "units=metric"];
    expect(await answered(words, "deep,x,y\n150,a,12.5\n")).toBe("deep,x,y,Drawdown,Error\n150,a,12.5,12,\n");
  });

  test("gives the same numbers as the worksheet for many rows, more than go through one call", async () => {
    const lines = [...parcels(1234)].join("");
    const output: string[][] = parse(await answered(PARCEL_WORDS, `${PARCEL_HEADINGS}\n${lines}`));
    expect(output).toHaveLength(1235);
    for (const [, roof, rate, ...results] of output.slice(1)) {
      const [expected = []] = siteDesign.evaluate([Number(roof), rate === "" ? null : Number(rate)]);
      if (rate === "") expect(results.at(-1)).toBe("Tested rate is missing.");
      else expect(results).toEqual([...expected.map((cell) => (typeof cell === "object" ? "" : String(cell))), ""]);
    }
  });

  test("keeps commas, quotes, line breaks and a byte order mark apart from the data", async () => {
    const rows = '\uFEFFponding,"na""me, of it"\r\n6,"two\nlines, ""quoted"""\r\n';
    expect(await answered(["DRAWDOWN", "--value", "designRate=0.5"], rows)).toBe(
      'ponding,"na""me, of it",Drawdown,Error\n6,"two\nlines, ""quoted""",12,\n',
    );
  });

  test("says in the row when it is blank, has too many cells, or holds an error", async () => {
    const output = await answered(["DRAWDOWN"], "ponding,designRate\n,\n6,0.5,7\n#N/A,0.5\n6\n");
    expect(output.split("\n").slice(1, 5)).toEqual([
      ",,,Nothing is given in this row.",
      "6,0.5,,The row has 3 cells under 2 headings.,7",
      "#N/A,0.5,,An input cell shows #N/A.",
      "6,,,Design rate is missing.",
    ]);
  });

  test("gives a line for each row of a table, and takes lists apart at semicolons", async () => {
    const words = [
      "STORMROUTE",
      "--value",
      "runoffShare=0.95",
      "--value",
      "floorArea=100",
      "--value",
      "ponding=6",
      "--value",
      "designRate=0.5",
      "--value",
      "media=24",
      "--value",
      "sideSlope=0",
    ];
    const output = await answered(words, "yard,stormRains,typeOrMinutes,contributingArea\na,0.5;0.5,180,1000\nb,x,180,1000\n");
    const lines = output.trim().split("\n");
    expect(lines.filter((line) => line.startsWith("a,")).length).toBeGreaterThan(3);
    expect(lines[1]).toBe("a,0.5;0.5,180,1000,3,43.75,31.25,0,12.5,0,");
    expect(lines.at(-1)).toContain('Storm depth, or rain in each step 1 must be a number; it is the text ""x"".');
  });

  test("lets every row have the same rain record out of a file", async () => {
    const path = join(folder, "rain.csv");
    await writeFile(path, "1\n0\n2\n0\n");
    const words = [
      "LONGTERM",
      "--file",
      `rains=${path}`,
      "--value",
      "stepHours=6",
      "--value",
      "runoffShare=0.95",
      "--value",
      "ponding=6",
      "--value",
      "designRate=0.25",
    ];
    const output: string[][] = parse(await answered(words, "contributingArea,floorArea\n1000,50\n1000,100\n"));
    const expected = longTerm.evaluate([[[1], [0], [2], [0]], 6, 1000, 0.95, [[50], [100]], 6, 0.25]);
    expect(output.slice(1).map((row) => row.slice(2, -1).map(Number))).toEqual(expected);
  });

  test("lets that record be thirty years of hours", async () => {
    const path = join(folder, "hours.csv");
    await writeFile(path, inventedHours(30).inches.join("\n"));
    const words = [
      "LONGTERM",
      "--file",
      `rains=${path}`,
      "--value",
      "stepHours=1",
      "--value",
      "runoffShare=0.95",
      "--value",
      "floorArea=100",
      "--value",
      "ponding=6",
      "--value",
      "designRate=0.5",
    ];
    const [, [, runoff] = []] = parse(await answered(words, "contributingArea\n12\n")) as string[][];
    expect(Number(runoff)).toBeCloseTo((0.95 * inventedHours(30).inches.reduce((sum, depth) => sum + depth, 0)) / 30, 6);
  });

  test("has no line of headings out where none comes in", async () => {
    expect(await answered(["DRAWDOWN", "--headings", "id,ponding,designRate"], "7,6,0.5\n")).toBe("7,6,0.5,12,\n");
  });

  test("writes what an independent parser reads back, whatever stands in the cells (RFC 4180)", () => {
    const cell = fc.oneof(fc.string(), fc.stringMatching(/^[",\r\n a]*$/), fc.constantFrom("", '"', "\r\n", " "));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 5 }), (rows) => {
        expect(parse(rows.map(csvLine).join(""), { relax_column_count: true, record_delimiter: "\n" })).toEqual(rows);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a stream of JSON objects", () => {
  test("answers every example of the catalogue as the worksheet does", async () => {
    for (const { name, parameters, example, result, evaluate } of catalogue) {
      const given = Object.fromEntries(example.arguments.map((value, place) => [parameters[place]!.key, value ?? null]));
      const output = JSON.parse(await answered([name, "--format", "ndjson"], JSON.stringify(given))) as {
        result: object | object[];
        error?: string;
      };
      const rows = evaluate(example.arguments).map((cells) =>
        Object.fromEntries(cells.map((cell, place) => [result.values[place]!.label, cell])),
      );
      expect(output.error, name).toBeUndefined();
      expect(output.result, name).toEqual(result.shape === "table" ? rows : rows[0]);
    }
  });

  test("keeps what came with a row, and says in the row what is wrong with it", async () => {
    const lines = [
      '{"id":1,"ponding":6,"designRate":0.5}',
      "not json",
      "[6,0.5]",
      "",
      '{"ponding":[6],"designRate":0.5}',
      '{"ponding":"six","designRate":0.5}',
      "{}",
    ];
    expect((await answered(["DRAWDOWN", "--format", "ndjson"], lines.join("\r\n"))).trim().split("\n")).toEqual([
      '{"id":1,"ponding":6,"designRate":0.5,"result":{"Drawdown":12}}',
      '{"line":"not json","result":null,"error":"The line is not JSON."}',
      '{"line":"[6,0.5]","result":null,"error":"The line is not a JSON object."}',
      '{"ponding":[6],"designRate":0.5,"result":null,"error":"Ponding depth must be a single value."}',
      String.raw`{"ponding":"six","designRate":0.5,"result":null,"error":"Ponding depth must be a number; it is the text \"six\"."}`,
      '{"result":null,"error":"Nothing is given in this row."}',
    ]);
  });

  test("takes an argument by another name", async () => {
    const words = ["DRAWDOWN", "--format", "ndjson", "--column", "ponding=how deep", "--value", "designRate=0.5"];
    expect(await answered(words, '{"how deep":6}')).toBe('{"how deep":6,"result":{"Drawdown":12}}\n');
  });
});

describe("the batch refuses in a sentence", () => {
  test.each([
    { words: [], says: "Name a function, such as SITEDESIGN. --list shows all, --help how to use them." },
    { words: ["DRAWDON"], says: 'There is no function "DRAWDON". The nearest are "DRAWDOWN", "DROPRATE" and "VERSION".' },
    {
      words: ["DRAWDOWN", "DROPRATE"],
      says: 'One function at a time: "DROPRATE" is one word too many. Put quotes around a heading with spaces.',
    },
    { words: ["DRAWDOWN", "--format", "xml"], says: 'Format must be "csv" or "ndjson"; it is "xml".' },
    { words: ["DRAWDOWN", "--workers", "0"], says: 'Workers must be a whole number from 1 to 256; it is "0".' },
    { words: ["DRAWDOWN", "--workers", "1.5"], says: 'Workers must be a whole number from 1 to 256; it is "1.5".' },
    {
      words: ["DRAWDOWN", "--column", "depth=x"],
      says: 'DRAWDOWN has no argument "depth": it has "ponding", "designRate", "media", "voidShare" and "units".',
    },
    {
      words: ["DRAWDOWN", "--column", "ponding"],
      says: '--column takes an argument\'s name, an equals sign and the rest; it is "ponding".',
    },
    {
      words: ["DRAWDOWN", "--column", "ponding=a", "--value", "ponding=6"],
      says: 'Argument "ponding" is given twice: as a column, a value or a file, but not as two of them.',
    },
    { words: ["DRAWDOWN", "--format", "ndjson", "--headings", "a"], says: "JSON objects name their own values: --headings is for CSV." },
    {
      words: ["DRAWDOWN", "--column", "ponding=deep"],
      says: 'There is no column "deep" for ponding: the stream has "a" and "designRate".',
    },
    { words: ["DRAWDOWN", "--column", "ponding=#3"], says: 'There is no column "#3" for ponding: the stream has "a" and "designRate".' },
    {
      words: ["DRAWDOWN"],
      says: 'DRAWDOWN needs ponding: say which column holds it with --column ponding=HEADING. The stream has "a" and "designRate".',
    },
    { words: ["DRAWDOWN", "--headings", "ponding,ponding"], says: 'The heading "ponding" stands over two columns: give each its own.' },
  ])("$says", async ({ words, says }) => {
    await expect(answered(words, "a,designRate\n1,2\n")).rejects.toThrow(says);
  });

  test("an empty stream, a quote that is never closed, a file that is not there and an option that is none", async () => {
    await expect(answered(["DRAWDOWN"], "")).rejects.toThrow("The stream is empty: it needs a line of headings, or --headings.");
    await expect(answered(["DRAWDOWN"], `ponding,designRate\n"${"6".repeat(2_000_000)}`)).rejects.toThrow(
      "The stream is not CSV that can be read:",
    );
    await expect(answered(["LONGTERM", "--file", "rains=/nowhere.csv"], "stepHours\n1\n")).rejects.toThrow(
      "The file for rains cannot be read:",
    );
    await expect(answered(["DRAWDOWN", "--colour", "red"], "")).rejects.toThrow("--colour");
  });
});

describe("the built script", () => {
  const node = (words: readonly string[], input: Iterable<string>) => finished(process.execPath, words, input);

  test("needs nothing beside it, prints help, lists functions and ends with 1 after a refusal", async () => {
    expect(await node([script, "--help"], [])).toEqual({ code: 0, stdout: HELP, stderr: "" });
    expect((await node([script, "--list"], [])).stdout.trim().split("\n")).toHaveLength(catalogue.length);
    expect((await node([script, "DRAWDOWN", "--help"], [])).stdout).toContain("designRate  Design rate, in/h or mm/h");
    expect(await node([script, "DRAWDON"], [])).toMatchObject({
      code: 1,
      stdout: "",
      stderr: expect.stringMatching(/^There is no function "DRAWDON"\.[^\n]*\n$/) as string,
    });
  });

  describe.each([2, 3])("on %i workers gives the same bytes as on one", (workers) => {
    const onWorkers = async (words: readonly string[], input: Iterable<string>) => {
      const [one, many] = [
        await node([script, ...words, "--workers", "1"], input),
        await node([script, ...words, "--workers", String(workers)], input),
      ];
      expect({ ...many, stdout: many.stdout.length }).toEqual({ ...one, stdout: one.stdout.length });
      expect(many.stdout === one.stdout).toBe(true);
      return one;
    };

    test("for parcels with missing rates and quoted names", async () => {
      const { code, stdout } = await onWorkers([...PARCEL_WORDS, "--headings", PARCEL_HEADINGS], [...parcels(20_300)]);
      expect(code).toBe(0);
      expect(stdout.split("\n")).toHaveLength(20_301);
      expect(stdout).toContain("Tested rate is missing.");
    });

    test("for parcels under the same rain", async () => {
      const path = join(folder, "year.csv");
      await writeFile(path, inventedHours(1).inches.join("\n"));
      const same = ["stepHours=1", "runoffShare=0.95", "ponding=6", "designRate=0.5"].flatMap((value) => ["--value", value]);
      const rows = Array.from({ length: 2600 }, (_, row) => `${row % 50 === 7 ? "roof" : 500 + row},0.8\n`);
      const { stdout } = await onWorkers(
        ["AREAFORCAPTURE", "--headings", "contributingArea,shareWanted", "--file", `rains=${path}`, ...same],
        rows,
      );
      expect(stdout.split("\n")).toHaveLength(2601);
      expect(stdout).toContain('Contributing area must be a number; it is the text ""roof"".');
    });

    test("for JSON lines, some of which are none", async () => {
      const lines = Array.from({ length: 3100 }, (_, row) =>
        row % 9 === 4 ? "{no\n" : `{"id":${row},"ponding":${row % 20},"designRate":0.5}\n`,
      );
      const { stdout } = await onWorkers(["DRAWDOWN", "--format", "ndjson"], lines);
      expect(stdout.split("\n")).toHaveLength(3101);
      expect(stdout).toContain("The line is not JSON.");
    });

    test("up to a line of JSON that has no end", async () => {
      const lines = [
        ...Array.from({ length: 1600 }, (_, row) => `{"ponding":${row % 20},"designRate":0.5}\n`),
        `{"ponding":"${"6".repeat(17_000_000)}`,
      ];
      const { code, stdout, stderr } = await onWorkers(["DRAWDOWN", "--format", "ndjson"], lines);
      expect(code).toBe(1);
      expect(stdout.split("\n")).toHaveLength(1601);
      expect(stderr).toBe("A line of the stream is over 16 million characters long: give one JSON object a line.\n");
    });

    test("up to where a stream breaks, and the same sentence about that", async () => {
      const rows = [...Array.from({ length: 4321 }, (_, row) => `${row % 20},0.5\n`), '7,"0.5"x\n'];
      const { code, stdout, stderr } = await onWorkers(["DRAWDOWN", "--headings", "ponding,designRate"], rows);
      expect(code).toBe(1);
      expect(stdout.split("\n")).toHaveLength(4322);
      expect(stderr).toMatch(/^The stream is not CSV that can be read: [^\n]* line 4322/);
    });
  });

  test("gives the same bytes through GNU parallel as from one process", async ({ skip }) => {
    skip(!hasGnuParallel(), NO_GNU_PARALLEL);
    const words = [script, ...PARCEL_WORDS, "--headings", PARCEL_HEADINGS];
    const one = await node(words, parcels(20_000));
    const many = await finished(
      "parallel",
      ["--will-cite", "--pipe", "-k", "-j2", "--block", "100k", process.execPath, ...words],
      parcels(20_000),
    );
    expect(one).toMatchObject({ code: 0, stderr: "" });
    expect(many).toMatchObject({ code: 0, stderr: "" });
    expect(one.stdout.split("\n")).toHaveLength(20_001);
    expect(many.stdout === one.stdout).toBe(true);
  });

  test.each([1, 2])(
    "needs no more memory for a long stream on %i workers: 200,000 rows, over 24 MB out, with 24 MB for the objects of each thread",
    async (workers) => {
      const words = ["--max-old-space-size=24", script, ...PARCEL_WORDS, "--headings", PARCEL_HEADINGS, "--workers", String(workers)];
      const { code, stdout, stderr } = await node(words, parcels(200_000));
      expect(stderr).toBe("");
      expect(code).toBe(0);
      expect(stdout.length).toBeGreaterThan(24_000_000);
      expect(stdout.split("\n")).toHaveLength(200_001);
    },
  );
});
