import { expect, test } from "vitest";
import { demoYards, fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { readProgram, yardAt } from "../../../../addin/actions/program/read-program.ts";
import { programState, setUpWorkbook, sheetNamesOfProgram } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { workbookFormulas } from "../../../../addin/records/formulas.ts";
import { settingCell } from "../../../../addin/records/program.ts";
import { cellOf, firstRow } from "../../../../addin/records/place.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { addressOf, SheetExists } from "../../../../addin/workbook/port.ts";
import { catalogue } from "../../../../functions/worksheet/catalogue.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

async function demo(): Promise<WorkbookInMemory> {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  return workbook;
}

test("an empty workbook gets every sheet of the program in few calls", async () => {
  const workbook = new WorkbookInMemory();
  expect(await programState(workbook)).toEqual({ state: "absent" });
  await setUpWorkbook(workbook);
  expect(await programState(workbook)).toEqual({ state: "ready" });
  expect(await workbook.sheetNames()).toEqual(sheetNamesOfProgram);
  expect(workbook.calls).toBeLessThanOrEqual(4);
});

test("a workbook with a sheet of one of our names is left as it is", async () => {
  const workbook = new WorkbookInMemory();
  await workbook.addSheets([{ name: "Sites", headingRow: 0, columns: [], rows: 1, frozenColumns: 0, preface: ["mine"] }]);
  await expect(setUpWorkbook(workbook)).rejects.toThrow(SheetExists);
  expect(await workbook.sheetNames()).toEqual(["Sites"]);
  expect(await programState(workbook)).toEqual({ state: "taken", names: ["Sites"] });
});

test("every formula of the workbook calls functions that exist, with no more arguments than they take", () => {
  const known = new Map(catalogue.map(({ name, parameters }) => [name, parameters.length]));
  for (const { formulas } of workbookFormulas()) {
    for (const formula of new Set(formulas.flat())) {
      for (const call of formula.matchAll(/SOAK\.([A-Z]+)\(/g)) {
        const name = call[1] ?? "";
        const count = countArguments(formula.slice(call.index + call[0].length));
        expect(known.get(name), `${name} in ${formula}`).toBeGreaterThanOrEqual(count);
      }
    }
  }
});

function countArguments(after: string): number {
  let depth = 0;
  let count = 1;
  let quoted = false;
  for (const character of after) {
    if (character === '"') quoted = !quoted;
    if (quoted) continue;
    if (character === "(") depth += 1;
    if (character === ")" && depth-- === 0) break;
    if (character === "," && depth === 0) count += 1;
  }
  return count;
}

test("formulas write only where results stand, or where the what-if grid is", async () => {
  const workbook = await demo();
  const before = new Map([...workbook.sheets].map(([name, { values }]) => [name, structuredClone(values)]));
  await workbook.writeFormulas(workbookFormulas());
  for (const [name, { values }] of workbook.sheets) expect(values, name).toEqual(before.get(name));
});

test("the demo has yards that differ in earnest and no slip but the one that is meant", async () => {
  const program = await readProgram(await demo());
  expect(program.yards).toHaveLength(demoYards.length);
  expect(demoYards.length).toBeGreaterThanOrEqual(14);
  expect(program.yards.filter(({ units }) => units === "metric")).toHaveLength(1);
  expect(program.yards.filter(({ holeTests }) => holeTests.length === 0)).toHaveLength(1);
  const slips = [...program.slips, ...program.yards.flatMap((yard) => yard.slips)];
  expect(slips.map(({ sentence }) => sentence)).toEqual(['Hole diameter must be a number; it is the text "8 in".']);
});

test("reading the whole program is one call, and one more for how long its Change log is", async () => {
  const workbook = await demo();
  workbook.calls = 0;
  await readProgram(workbook);
  expect(workbook.calls).toBe(2);
});

test("a cleared or spoiled setting is said, and the pane goes on with the usual value", async () => {
  const workbook = await demo();
  await workbook.writeValues([{ range: settingCell("drainHours"), values: [["two days"]] }]);
  const { settings, slips } = await readProgram(workbook);
  expect(settings.drainHours).toBe(48);
  expect(slips.map(({ where, sentence }) => `${addressOf(where)} ${sentence}`)).toEqual([
    'Program!B6 Value must be a number; it is the text "two days". The pane goes on with 48; cells that use it show an error until it is filled in.',
  ]);
});

test("a cell of Sites, Surfaces, Hole tests, Visits or Design leads to its yard; a heading and Rules lead to none", async () => {
  const workbook = await demo();
  workbook.answer(cellOf(designSheet, firstRow(designSheet) + 3, "siteId"), "Y-004");
  const program = await readProgram(workbook);
  const yard = program.yards[3];
  expect(yardAt(program, "Sites", firstRow(sitesSheet) + 3)).toBe(yard);
  expect(yardAt(program, "Design", firstRow(designSheet) + 3)).toBe(yard);
  expect(yardAt(program, "Surfaces", yard?.surfaces[1]?.row ?? -1)).toBe(yard);
  expect(yardAt(program, "Hole tests", yard?.holeTests[0]?.row ?? -1)).toBe(yard);
  expect(yardAt(program, "Visits", yard?.answers.get("foundation")?.row ?? -1)).toBe(yard);
  expect(yardAt(program, "Sites", 2)).toBeUndefined();
  expect(yardAt(program, "Rules", 4)).toBeUndefined();
});
