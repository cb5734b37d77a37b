import { asWord } from "../../../../addin/records/as-word.ts";
import { expect, test } from "vitest";
import { addWhatIf } from "../../../../addin/actions/what-if/add-what-if.ts";
import { layOutWhatIf, type WhatIfTable } from "../../../../addin/actions/what-if/lay-out-what-if.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { faultsOf, functionsFor, variable, type WhatIfRequest } from "../../../../addin/actions/what-if/what-if-request.ts";
import { spread } from "../../../../addin/actions/what-if/what-if-values.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { placesAsSetUp } from "../../../../addin/records/program.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { sourceOf } from "../../../../addin/records/what-if-sources.ts";
import { addressOf } from "../../../../addin/workbook/port.ts";
import { catalogue } from "../../../../functions/worksheet/catalogue.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const named = (name: string) => {
  const found = catalogue.find((each) => each.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};

const drawdown: WhatIfRequest = {
  worksheetFunction: named("DRAWDOWN"),
  result: 0,
  scope: { kind: "typed", units: "us" },
  down: { key: "ponding", values: [3, 6, 9] },
  across: { key: "designRate", values: [0.25, 0.5] },
  fixed: new Map([["media", 12]]),
};

/** What a table writes, cell by cell: "B7" to its value or formula. */
function cells({ values, formulas }: WhatIfTable): Map<string, unknown> {
  const written = new Map<string, unknown>();
  const each = (range: { row: number; column: number }, block: readonly (readonly unknown[])[]) =>
    block.forEach((line, row) =>
      line.forEach((cell, column) =>
        written.set(addressOf({ sheet: "W", row: range.row + row, column: range.column + column, rows: 1, columns: 1 }).slice(2), cell),
      ),
    );
  values.forEach(({ range, values: block }) => each(range, block));
  formulas.forEach(({ range, formulas: block }) => each(range, block));
  return written;
}

test("steps run from the first number to the last, both counted, however steps of a tenth add up", () => {
  expect(spread("Ponding depth", 0.1, 0.5, 0.1, 20)).toEqual({ values: [0.1, 0.2, 0.3, 0.4, 0.5] });
  expect(spread("Ponding depth", 3, 8, 2, 20)).toEqual({ values: [3, 5, 7] });
  expect(spread("Ponding depth", 6, 6, 1, 20)).toEqual({ values: [6] });
});

test("a step of 0, a range written backwards and a range of ten thousand values are refused in words", () => {
  expect(spread("Ponding depth", 3, 9, 0, 20)).toEqual({ sentence: "Ponding depth: Step must be more than 0." });
  expect(spread("Ponding depth", 9, 3, 1, 20)).toEqual({
    sentence: "Ponding depth: From (9) must not be above To (3). Write the smaller number first.",
  });
  expect(spread("Ponding depth", 1, 10_000, 1, 100)).toEqual({
    sentence: "Ponding depth: these are 10,000 values, and a table takes 100 there. Take a larger step or a narrower range.",
  });
});

test.each(["contributingArea", "testedRate", "designRate", "media", "sideSlope", "floorArea", "groundSlope", "soilGroup"])(
  "the input %s bears the name of the column that it follows, whichever function asks for it",
  (key) => {
    const asked = catalogue.flatMap(({ name, parameters }) =>
      parameters.filter((parameter) => parameter.key === key).map(({ label }) => ({ label, source: sourceOf(name, key) })),
    );
    expect(asked.length).toBeGreaterThan(0);
    for (const { label, source } of asked) {
      if (source?.kind !== "site" && source?.kind !== "design") throw new Error(`${key} follows no column.`);
      const { heading } = source.kind === "site" ? sitesSheet.columns[source.key] : designSheet.columns[source.key];
      expect(heading.replace(/ \(.+\)$/, "")).toBe(label);
    }
  },
);

test("two inputs are met by one formula, whose other inputs are cells to change", () => {
  const written = cells(layOutWhatIf(drawdown, placesAsSetUp, 20));
  expect(written.get("A21")).toBe("Drawdown: ponding depth down, design rate across (SOAK.DRAWDOWN)");
  expect(["A24", "B24"].map((cell) => written.get(cell))).toEqual(["Units", "us"]);
  expect(["A25", "B25", "C25"].map((cell) => written.get(cell))).toEqual([
    "Soil mix depth",
    12,
    `=IF(${asWord("$B$24")}="metric","mm","in")`,
  ]);
  expect(["A26", "B26"].map((cell) => written.get(cell))).toEqual(["Void share", 0.25]);
  expect(written.get("A28")).toBe(
    `="Ponding depth ("&IF(${asWord("$B$24")}="metric","mm","in")&")"&" down, "&"Design rate ("&IF(${asWord("$B$24")}="metric","mm/h","in/h")&")"&" across"`,
  );
  expect(["B28", "C28", "A29", "A30", "A31"].map((cell) => written.get(cell))).toEqual([0.25, 0.5, 3, 6, 9]);
  expect([...written].filter(([, content]) => String(content).startsWith("=SOAK"))).toEqual([
    ["B29", "=SOAK.DRAWDOWN($A$29:$A$31,$B$28:$C$28,$B$25,$B$26,$B$24)"],
  ]);
});

test("a default that has a dimension follows the units of the table", () => {
  const written = cells(
    layOutWhatIf(
      {
        ...drawdown,
        worksheetFunction: named("BASINAREA"),
        down: { key: "contributingArea", values: [500] },
        fixed: new Map([["ponding", 6]]),
      },
      placesAsSetUp,
      0,
    ),
  );
  const storm = [...written].find(([, content]) => content === "Storm depth")?.[0].replace("A", "B") ?? "";
  expect(written.get(storm)).toBe(`=1*IF(${asWord("$B$4")}="metric",25.4,1)`);
});

test("one value of a row takes a formula for each heading, because a row function lifts over columns only", () => {
  const request: WhatIfRequest = {
    worksheetFunction: named("SITEDESIGN"),
    result: 2,
    scope: { kind: "typed", units: "us" },
    down: { key: "ponding", values: [4, 6] },
    across: { key: "testedRate", values: [0.5, 1, 2] },
    fixed: new Map([["contributingArea", 1000]]),
  };
  const formulas = [...cells(layOutWhatIf(request, placesAsSetUp, 0))].filter(([, content]) => String(content).startsWith("=INDEX(SOAK"));
  expect(formulas.map(([cell]) => cell)).toEqual(["B25", "C25", "D25"]);
  expect(formulas[1]?.[1]).toBe(
    "=INDEX(SOAK.SITEDESIGN($B$5,$C$24,$B$6,$B$7,$B$8,$A$25:$A$26,$B$9,$B$10,$B$11,$B$12,$B$13,$B$14,$B$15,$B$16,$B$17,$B$18,$B$19,$B$20,$B$21,$B$22,$B$4),0,3)",
  );
});

test("all values of a row stand beside one varied input, each under its heading", () => {
  const table = layOutWhatIf(
    {
      ...drawdown,
      worksheetFunction: named("BASINSIZE"),
      result: "all",
      across: null,
      down: { key: "floorArea", values: [100, 200] },
      fixed: new Map(),
    },
    placesAsSetUp,
    0,
  );
  expect(table.answers).toMatchObject({ rows: 2, columns: 3 });
  expect([...cells(table).values()].filter((content) => /^="(Length|Width|Edge length) \("/.test(String(content)))).toHaveLength(3);
});

test("a table of one yard finds its numbers by the Site ID in its first input, and blank stays blank", () => {
  const written = cells(
    layOutWhatIf({ ...drawdown, scope: { kind: "yard", siteId: "Y-003", units: "us" }, across: null, fixed: new Map() }, placesAsSetUp, 0),
  );
  expect(["A4", "B4"].map((cell) => written.get(cell))).toEqual(["Site ID", "Y-003"]);
  const units = `XLOOKUP(${asWord("$B$4")},Design!$A$4:$A$203,Design!$C$4:$C$203)`;
  expect(written.get("B5")).toBe(`=IF(TRIM(${units})="","",${units})`);
  const media = `XLOOKUP(${asWord("$B$4")},${asWord("Sites!$A$4:$A$203")},Sites!$J$4:$J$203)`;
  expect([...written.values()]).toContain(`=IF(TRIM(${media})="","",${media})`);
});

test("a table of every yard takes US numbers across and hands a metric yard the same in millimetres", () => {
  const table = layOutWhatIf(
    { ...drawdown, scope: { kind: "all" }, down: null, across: { key: "ponding", values: [4, 8] }, fixed: new Map() },
    placesAsSetUp,
    0,
  );
  const formula = [...cells(table).values()].find((content) => String(content).includes("SOAK.DRAWDOWN("));
  expect(formula).toMatch(/^=IF\(Design!\$A\$4:\$A\$203="","",SOAK\.DRAWDOWN\(\$C\$\d+:\$D\$\d+\*IF\(/);
  expect(formula).toContain(`*IF(${asWord("Design!$C$4:$C$203")}="metric",25.4,1),`);
  expect(table.answers).toMatchObject({ rows: 200, columns: 2 });
  expect(table.area.rows).toBe(table.answers.row + 200 + 1);
});

test("what is missing, varied twice or too much is said before anything is written", () => {
  expect(faultsOf(drawdown)).toEqual([]);
  expect(faultsOf({ ...drawdown, down: null })).toContain("Choose the input that is varied down the rows.");
  expect(faultsOf({ ...drawdown, across: { key: "ponding", values: [1] } })).toContain(
    "Ponding depth cannot be varied both down and across. Choose two different inputs.",
  );
  expect(faultsOf({ ...drawdown, across: null })).toEqual(["Design rate is missing."]);
  expect(faultsOf({ ...drawdown, down: { key: "ponding", values: Array.from({ length: 101 }, (_, place) => place) } })[0]).toMatch(
    /these are 101 values, and a table takes 100 there/,
  );
  expect(faultsOf({ ...drawdown, worksheetFunction: named("SITEDESIGN"), result: "all" })[0]).toMatch(/Vary one input down the rows/);
});

test("every function with one answer or one row of answers is offered, and none that needs a series which is nowhere", () => {
  const offered = functionsFor({ kind: "yard", siteId: "Y-001", units: "us" }).map(({ name }) => name);
  expect(offered).toEqual(
    expect.arrayContaining(["SITEDESIGN", "BASINAREA", "DRAWDOWN", "LONGTERM", "YARDRUNOFF", "DESIGNRATE", "PRICED"]),
  );
  expect(offered).not.toEqual(expect.arrayContaining(["STORMROUTE"]));
  expect(offered.filter((name) => ["STORMROUTE", "HOLERATE", "WIDTHSAREA", "VERSION"].includes(name))).toEqual([]);
  expect(functionsFor({ kind: "all" }).map(({ name }) => name)).not.toContain("YARDRUNOFF");
  expect(variable(named("LONGTERM")).map(({ key }) => key)).not.toContain("rains");
});

test("tables stand below each other, and never over anything on the sheet", async () => {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  const first = await addWhatIf(workbook, drawdown);
  await workbook.writeValues([
    { range: { sheet: "What-if", row: first.area.row + first.area.rows + 1, column: 7, rows: 1, columns: 1 }, values: [["mine"]] },
  ]);
  await workbook.writeFormulas([
    { range: { sheet: "What-if", row: first.area.row + first.area.rows + 6, column: 2, rows: 1, columns: 1 }, formulas: [['=""']] },
  ]);
  const before = structuredClone(workbook.sheets.get("What-if"));
  const second = await addWhatIf(workbook, drawdown);
  expect(second.area.row).toBeGreaterThan(first.area.row + first.area.rows + 6);
  const after = workbook.sheets.get("What-if");
  before?.values.forEach((row, index) => expect(after?.values[index]).toEqual(row));
  before?.formulas.forEach((row, index) => row.forEach((formula, column) => expect(after?.formulas[index]?.[column]).toBe(formula)));
});
