import { beforeAll, expect, test } from "vitest";
import { fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { readProgram, type Program } from "../../../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { readWhatIf, startingForm, type TypedInputs, type TypedWhatIf } from "../../../../taskpane/views/what-if/what-if-form.ts";
import { WorkbookInMemory } from "../../../addin/workbook-in-memory.ts";

let program: Program;
let start: TypedWhatIf;

beforeAll(async () => {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  program = await readProgram(workbook);
  start = startingForm(program);
});

const form = (changed: Partial<TypedWhatIf>, inputs: Partial<TypedInputs> = {}): TypedWhatIf => ({
  ...start,
  ...changed,
  us: { ...start.us, ...inputs },
});
const down = (typed: Partial<TypedInputs["down"]>) => ({ down: { ...start.us.down, ...typed } });

test("the form starts with the question asked most: the floor area of the first yard by ponding depth", () => {
  const read = readWhatIf(start, program);
  expect(read.worksheetFunction.name).toBe("SITEDESIGN");
  expect(read.scope).toEqual({ kind: "yard", siteId: "Y-001", units: "us" });
  expect(read.request).toBeNull();
  expect(read.faults).toContain("Ponding depth has no values yet.");
});

test("from, to and step make the table's rows, and a blank input follows the workbook or its default", () => {
  const { request, inputs } = readWhatIf(form({}, down({ from: "3", to: "9", step: "1.5" })), program);
  expect(request?.down).toEqual({ key: "ponding", values: [3, 4.5, 6, 7.5, 9] });
  expect([...(request?.fixed ?? [])]).toEqual([]);
  const hints = new Map(inputs.map(({ parameter, hint }) => [parameter.key, hint]));
  expect(hints.get("drainHours")).toBe("Blank: follows Program, Ponding drains within, now 48 h.");
  expect(hints.get("sideSlope")).toBe("Blank: follows Sites, Side slope, now 3.");
  expect(hints.get("media")).toBe("Blank: 0 in.");
});

test("a half-typed range, a number with its unit and a list with commas are refused in words", () => {
  const faults = (typed: Partial<TypedInputs["down"]>) => readWhatIf(form({}, down(typed)), program).down.fault;
  expect(faults({ from: "3", to: "9" })).toBe("Ponding depth: Step is missing.");
  expect(faults({ from: "3 in", to: "9", step: "1" })).toBe('Ponding depth: From must be a number alone, in the unit shown; it is "3 in".');
  expect(faults({ from: "9", to: "3", step: "1" })).toMatch(/Write the smaller number first/);
  expect(faults({ how: "list", list: "3,5" })).toBe('Ponding depth must be a number without a comma, such as 1.5 or 1200; it is "3,5".');
  expect(faults({ how: "list", list: "3; 4.5, 6  8" })).toBeNull();
});

test("an input that is words is varied by a list of its own words", () => {
  const read = readWhatIf(
    form(
      { scope: "typed", functionName: "CURVENUMBER", result: "0" },
      { ...down({ key: "cover", list: "Roof; good lawn" }), fixed: [["soilGroup", "b"]] },
    ),
    program,
  );
  expect(read.request?.down?.values).toEqual(["roof", "good lawn"]);
  expect(read.request?.fixed.get("soilGroup")).toBe("B");
  expect(
    readWhatIf(form({ scope: "typed", functionName: "CURVENUMBER" }, down({ key: "cover", list: "tin roof" })), program).down.fault,
  ).toMatch(/^Cover "tin roof" is not in its list: roof or paving; /);
});

test("inches typed for one yard are never taken for millimetres of a metric yard", () => {
  const inches = form({}, { ...down({ from: "3", to: "9", step: "1.5" }), fixed: [["media", "12"]] });
  const metric = readWhatIf({ ...inches, siteId: "Y-009" }, program);
  expect(metric.units).toBe("metric");
  expect(metric.down.values).toEqual([]);
  expect(metric.inputs.find(({ parameter }) => parameter.key === "media")?.typed).toBe("");
  expect(metric.inputs.find(({ parameter }) => parameter.key === "storm")?.unit).toBe("mm");
});

test("a table of every yard varies one input across, in US units, and offers no series of one yard", () => {
  const read = readWhatIf(
    form({ scope: "all", functionName: "DRAWDOWN" }, { across: { ...start.us.across, key: "ponding", from: "4", to: "8", step: "2" } }),
    program,
  );
  expect(read.request?.across).toEqual({ key: "ponding", values: [4, 6, 8] });
  expect(read.request?.down).toBeNull();
  expect(read.offered.map(({ name }) => name)).not.toContain("YARDRUNOFF");
});
