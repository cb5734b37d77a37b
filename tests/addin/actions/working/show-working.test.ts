import * as fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { showWorking, type WorkedCall, type Working } from "../../../../addin/actions/working/show-working.ts";
import { addressOf, type CellRange, type CellValue } from "../../../../addin/workbook/port.ts";
import { catalogue } from "../../../../functions/worksheet/catalogue.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

let workbook: WorkbookInMemory;

beforeEach(() => {
  workbook = new WorkbookInMemory();
  for (const name of ["Yard", "Rain log"]) workbook.sheets.set(name, { values: [], formulas: [] });
});

/** Row and column from 1, as they stand on the edges of the sheet. */
function cell(row: number, column: number, sheet = "Yard"): CellRange {
  return { sheet, row: row - 1, column: column - 1, rows: 1, columns: 1 };
}

async function type(where: CellRange, rows: readonly (readonly CellValue[])[]): Promise<void> {
  await workbook.writeValues([{ range: { ...where, rows: rows.length, columns: rows[0]?.length ?? 0 }, values: rows }]);
}

/** A formula and what the sheet shows for it, spilled down and across. */
async function answer(where: CellRange, formula: string, shown: readonly (readonly CellValue[])[]): Promise<void> {
  await workbook.writeFormulas([{ range: where, formulas: [[formula]] }]);
  shown.forEach((row, down) =>
    row.forEach((value, across) => workbook.answer({ ...where, row: where.row + down, column: where.column + across }, value)),
  );
}

async function workingAt(where: CellRange): Promise<Working> {
  const working = await showWorking(workbook, where);
  if (working === null) throw new Error(`${addressOf(where)} has no working.`);
  return working;
}

const input = (call: WorkedCall | undefined, label: string) => call?.inputs.find((candidate) => candidate.label === label);
const only = ({ calls: [first] }: Working): WorkedCall => first as WorkedCall;

describe("The working of a cell", () => {
  it("gives each argument with its unit as this call used it, what is left out, and the result", async () => {
    await type(cell(1, 1), [[6]]);
    await answer(cell(1, 2), "=SOAK.DRAWDOWN(A1,0.5)", [[12]]);
    const working = await workingAt(cell(1, 2));
    expect(working).toMatchObject({ address: "Yard!B1", shown: 12, agrees: true, spilledFrom: null });
    const call = only(working);
    expect(call).toMatchObject({ name: "DRAWDOWN", written: "SOAK.DRAWDOWN(A1,0.5)", results: [[{ value: 12, unit: "h" }]] });
    expect(call.inputs[0]).toMatchObject({ written: "A1", cells: [6], unit: "in", leftOut: null });
    expect(call.inputs[1]).toMatchObject({ written: "0.5", cells: [0.5], unit: "in/h" });
    expect(input(call, "Units")).toMatchObject({ written: "", leftOut: { value: "us" } });
    expect(call.sources.length).toBeGreaterThan(0);
  });

  it("is in metric units for a metric call, defaults included", async () => {
    await answer(cell(1, 1), '=SOAK.RUNOFFVOLUME(100,25.4,,"metric")', [[2.413]]);
    const call = only(await workingAt(cell(1, 1)));
    expect(call.inputs.map(({ unit }) => unit)).toEqual(["m²", "mm", "", ""]);
    expect(input(call, "Runoff share")?.leftOut).toEqual({ value: 0.95 });
    // 0.95 x 100 m² x 0.0254 m: computed by hand.
    expect(call.results[0]?.[0]).toMatchObject({ unit: "m³", value: expect.closeTo(2.413, 9) as number });
  });

  it("is found under the spelling that a spreadsheet without the add-in keeps", async () => {
    await answer(cell(1, 1), "=_xldudf_SOAK_DRAWDOWN(6,0.5)", [[12]]);
    expect(only(await workingAt(cell(1, 1))).results).toHaveLength(1);
  });

  it("takes the row of the selected cell from a lifted call, whose formula stands above", async () => {
    await type(cell(1, 1), [
      [6, 0.5],
      [9, 0.5],
      [6, 1],
    ]);
    await answer(cell(1, 4), "=SOAK.DRAWDOWN(A1:A3,B1:B3)", [[12], [18], [6]]);
    const working = await workingAt(cell(2, 4));
    expect(working).toMatchObject({ spilledFrom: "Yard!D1", shown: 18, agrees: true });
    expect(
      only(working)
        .inputs.slice(0, 2)
        .map(({ cells }) => cells),
    ).toEqual([[9], [0.5]]);
    expect(only(working).results).toMatchObject([[{ value: 18 }]]);
  });

  it("takes the row of the selected cell through the names of a LET, as Design's basins are written", async () => {
    await type(cell(1, 1), [
      ["us", 0.5],
      ["metric", 12.7],
    ]);
    const formula = '=LET(u,A1:A2,k,IF(u="metric",CONVERT(1,"in","mm"),1),SOAK.DRAWDOWN(k*6,B1:B2,,,u))';
    await answer(cell(1, 4), formula, [[12], [12]]);
    const working = await workingAt(cell(2, 4));
    expect(working).toMatchObject({ spilledFrom: "Yard!D1", shown: 12, agrees: true });
    const { inputs, results } = only(working);
    expect(inputs.map(({ cells }) => cells)).toMatchObject([[expect.closeTo(152.4, 9)], [12.7], [null], [null], ["metric"]]);
    expect(results).toMatchObject([[{ value: expect.closeTo(12, 9) as number }]]);
  });

  it("takes row and column of a what-if grid", async () => {
    await type(cell(1, 2), [[0.5, 1]]);
    await type(cell(2, 1), [[6], [9]]);
    await answer(cell(2, 2), "=SOAK.DRAWDOWN(A2:A3,B1:C1)", [
      [12, 6],
      [18, 9],
    ]);
    const call = only(await workingAt(cell(3, 3)));
    expect(call.inputs.slice(0, 2).map(({ cells }) => cells)).toEqual([[9], [1]]);
    expect(call.results).toMatchObject([[{ value: 9 }]]);
  });

  it("belongs to no formula when another formula stands between, or the spill ends before the cell", async () => {
    await type(cell(1, 1), [[6], [9]]);
    await answer(cell(1, 4), "=SOAK.DRAWDOWN(A1:A2,0.5)", [[12], [18]]);
    await type(cell(3, 4), [[99]]);
    expect(await showWorking(workbook, cell(3, 4))).toBeNull();
    await answer(cell(2, 4), "=1+1", [[2]]);
    expect(await showWorking(workbook, cell(2, 4))).toBeNull();
  });

  it("names every value of a row result, wherever in the row the cell stands", async () => {
    const basinSize = catalogue.find(({ name }) => name === "BASINSIZE");
    const row = (basinSize?.evaluate([100])[0] ?? []) as readonly CellValue[];
    await answer(cell(1, 1), "=SOAK.BASINSIZE(100)", [row]);
    const working = await workingAt(cell(1, 3));
    expect(working).toMatchObject({ spilledFrom: "Yard!A1", shown: row[2], agrees: true });
    expect(only(working).inputs[0]).toMatchObject({ cells: [100], unit: "sq ft" });
    expect(only(working).results[0]?.map(({ label, value }) => [label, value])).toEqual(
      basinSize?.result.values.map(({ label }, place) => [label, row[place]]),
    );
  });

  it("gives the sentence of an impossible argument, and no steps", async () => {
    await answer(cell(1, 1), "=SOAK.RUNOFFDEPTH(4,101)", [["#VALUE!"]]);
    const call = only(await workingAt(cell(1, 1)));
    expect(call.results).toMatchObject([[{ value: { code: "#VALUE!", sentence: "Curve number must be 100 or less." } }]]);
    expect(call.steps).toEqual([]);
    expect(call.cautions).toEqual([]);
  });

  it("gives the cautions of this call", async () => {
    await answer(cell(1, 1), "=SOAK.RUNOFFDEPTH(9,35)", [[1.1]]);
    workbook.answer(cell(1, 1), catalogue.find(({ name }) => name === "RUNOFFDEPTH")?.evaluate([9, 35])[0]?.[0] as number);
    expect(only(await workingAt(cell(1, 1))).cautions).toContain("A curve number is under 40: TR-55 says to use another method.");
  });

  it("follows arithmetic, comparisons and IF inside the formula, row by row", async () => {
    await type(cell(1, 1), [
      [6, "metric"],
      [9, ""],
    ]);
    await answer(cell(1, 3), '=IF(A1:A2="","",SOAK.DRAWDOWN(A1:A2*IF(B1:B2="metric",1,2),0.5))', [[12], [36]]);
    const working = await workingAt(cell(2, 3));
    expect(working.agrees).toBe(true);
    expect(input(only(working), "Ponding depth")).toMatchObject({ cells: [18], written: 'A1:A2*IF(B1:B2="metric",1,2)' });
  });

  it("shows the equation and sources, and no number, where an argument is the spreadsheet's to work out", async () => {
    await type(cell(1, 1), [[6], [9]]);
    await answer(cell(1, 3), "=SOAK.DRAWDOWN(SUM(A1:A2),0.5)", [[30]]);
    const working = await workingAt(cell(1, 3));
    expect(working.agrees).toBeNull();
    expect(only(working)).toMatchObject({ steps: [], results: [], cautions: [] });
    expect(only(working).inputs[0]).toMatchObject({ cells: null, written: "SUM(A1:A2)" });
    expect(only(working).inputs[1]).toMatchObject({ cells: [0.5] });
    expect(only(working).sources.length).toBeGreaterThan(0);
  });

  it("gives no numbers when the cell shows something else than its formula gives", async () => {
    await answer(cell(1, 1), "=SOAK.DRAWDOWN(6,0.5)", [[13]]);
    const working = await workingAt(cell(1, 1));
    expect(working.agrees).toBe(false);
    expect(only(working)).toMatchObject({ results: [], steps: [], cautions: [] });
  });

  it("works out a call of ours inside another, the outer one first", async () => {
    await answer(cell(1, 1), "=SOAK.DRAWDOWN(6,SOAK.DESIGNRATE({1;1},2))", [[12]]);
    const working = await workingAt(cell(1, 1));
    expect(working.agrees).toBe(true);
    expect(working.calls.map(({ name }) => name)).toEqual(["DRAWDOWN", "DESIGNRATE"]);
    expect(working.calls[1]).toMatchObject({
      inputs: [{ cells: [1, 1] }, { cells: [2] }, {}, {}],
      results: [[{ value: 0.5, unit: "in/h" }]],
    });
  });

  it("reads cells of another sheet, and says nothing of a sheet that is not there", async () => {
    await type(cell(1, 1, "Rain log"), [[6]]);
    await answer(cell(1, 1), "=SOAK.DRAWDOWN('Rain log'!A1,0.5)", [[12]]);
    expect(only(await workingAt(cell(1, 1))).inputs[0]).toMatchObject({ cells: [6] });
    await answer(cell(2, 1), "=SOAK.DRAWDOWN(Gone!A1,0.5)", [["#REF!"]]);
    expect(only(await workingAt(cell(2, 1)))).toMatchObject({ results: [], inputs: [{ cells: null }, { cells: [0.5] }, {}, {}, {}] });
  });

  it.each(["", "=SUM(A1:A2)", "=1+1", "=SOAK.NOSUCHFUNCTION(1)", '="SOAK.DRAWDOWN(6,0.5)"'])("of %j there is none", async (formula) => {
    await type(cell(5, 5), [[3]]);
    if (formula !== "") await answer(cell(5, 5), formula, [[3]]);
    expect(await showWorking(workbook, cell(5, 5))).toBeNull();
  });

  it("never fails, whatever formula a cell holds", async () => {
    const piece = fc.constantFrom(
      "SOAK.DRAWDOWN(",
      "SOAK.SITEDESIGN(",
      "SOAK.SOILMIX(",
      "SOAK.HOLERATE(",
      "_xldudf_SOAK_BAGS(",
      "IF(",
      "IFERROR(",
      "{1,2;3,4}",
      "{",
      "(",
      ")",
      ")",
      ",",
      ",",
      "A1",
      "A1:B3",
      "Yard!$C$1:$C$4",
      "Gone!A1",
      '"loam"',
      '"metric"',
      "TRUE",
      "1",
      "0",
      "1e308",
      "-",
      "*",
      "/",
      "^",
      "&",
      "=",
      "%",
      "@",
      "#N/A",
    );
    let numbersSeen = 0;
    await type(cell(1, 1), [
      [6, "loam", true],
      [-1, null, "#DIV/0!"],
      ["", 1e300, "x"],
    ]);
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { minLength: 1, maxLength: 14 }), fc.nat(4), fc.nat(3), async (pieces, down, across) => {
        const open = pieces.join("").split("(").length - pieces.join("").split(")").length;
        // Inside MAX, the end of which is not followed here, numbers are given whatever the cell shows.
        await answer(cell(10, 1), `=MAX(${pieces.join("")}${")".repeat(Math.max(0, open))})`, [[1]]);
        const working = await showWorking(workbook, cell(10 + down, 1 + across));
        for (const { results, steps } of working?.calls ?? []) {
          for (const { value } of [...results.flat(), ...steps]) {
            if (typeof value !== "number") continue;
            expect(Number.isFinite(value)).toBe(true);
            numbersSeen += 1;
          }
        }
      }),
      { numRuns: 600, examples: [[["SOAK.DRAWDOWN(", "A1", ",", "1", ")"], 0, 0]] },
    );
    expect(numbersSeen).toBeGreaterThan(0);
  });
});

describe("Every function of the catalogue", () => {
  it.each(catalogue.map((declared) => [declared.name, declared] as const))(
    "%s can be followed from its example",
    async (name, { example, evaluate }) => {
      const written = example.arguments.map((argument) => {
        if (argument === null || argument === undefined) return "";
        const rows = Array.isArray(argument) ? (argument as readonly (readonly CellValue[])[]) : [[argument as CellValue]];
        const texts = rows.map((row) =>
          row.map((value) => (value === null ? '""' : typeof value === "string" ? `"${value}"` : String(value).toUpperCase())),
        );
        return Array.isArray(argument) ? `{${texts.map((row) => row.join(",")).join(";")}}` : (texts[0]?.[0] ?? "");
      });
      const expected = evaluate(example.arguments)[0]?.[0] as CellValue;
      await answer(cell(1, 1), `=SOAK.${name}(${written.join(",")})`, [[expected]]);
      const working = await workingAt(cell(1, 1));
      expect(working.agrees).toBe(true);
      expect(only(working).results[0]?.map(({ value }) => value)).toContainEqual(expected);
    },
  );
});
