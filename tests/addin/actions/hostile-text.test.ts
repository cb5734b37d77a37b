import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { addWhatIf } from "../../../addin/actions/what-if/add-what-if.ts";
import { logWrites } from "../../../addin/actions/program/change-log.ts";
import { historiesIn } from "../../../addin/actions/program/change-rows.ts";
import { undoChange } from "../../../addin/actions/program/undo-change.ts";
import { recordDownspout } from "../../../addin/actions/yard/check-downspout.ts";
import { checkWorkbook } from "../../../addin/actions/workbook/check-workbook.ts";
import { estimateOf } from "../../../addin/actions/estimate/estimate.ts";
import { explainYard } from "../../../addin/actions/yard/explain-yard.ts";
import { proposedFollowUps, writeFollowUps } from "../../../addin/actions/care/plan-follow-ups.ts";
import { clumpOf, NEW_CLUMP } from "../../../addin/actions/planting/plan.ts";
import { addEstimateLines, takeDraftedQuantity } from "../../../addin/actions/estimate/propose-estimate.ts";
import { readProgram, type Yard } from "../../../addin/actions/program/read-program.ts";
import { recordAnswer, recordOverride, withdrawOverride, type StepAnswer } from "../../../addin/actions/visits/record-answer.ts";
import { recordAsBuilt } from "../../../addin/actions/build/record-as-built.ts";
import { recordIncident, recordQuantity, signIn } from "../../../addin/actions/build/record-dig-day.ts";
import { recordLook } from "../../../addin/actions/care/record-look.ts";
import { recordPlanted } from "../../../addin/actions/planting/record-planted.ts";
import { seenClumps, writePlan } from "../../../addin/actions/planting/record-planting.ts";
import { addHoleTest, addSurface, addYard, changeHoleTest, changeSurface, writeBasin } from "../../../addin/actions/yard/record-yard.ts";
import { saveDrawing } from "../../../addin/actions/basin/save-drawing.ts";
import { turnIntoValues } from "../../../addin/actions/workbook/turn-into-values.ts";
import { whatIsNext } from "../../../addin/actions/program/what-is-next.ts";
import { answersInForce, stepsOf } from "../../../addin/checklist/answers.ts";
import { refusal } from "../../../addin/checklist/refusal.ts";
import { screeningVisit } from "../../../addin/checklist/screening-visit.ts";
import type { Stage, Step } from "../../../addin/checklist/stage.ts";
import { stageNamed, stages } from "../../../addin/checklist/stages.ts";
import { changeLogSheet } from "../../../addin/records/change-log.ts";
import { readRecords } from "../../../addin/records/read-records.ts";
import { isBlank } from "../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../addin/records/sites.ts";
import type { CellValue, Workbook } from "../../../addin/workbook/port.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import { workbookOfOneYard, yardIn } from "../one-yard.ts";
import type { WorkbookInMemory } from "../workbook-in-memory.ts";
import { HOSTILE, hostileText, LONG } from "./export/hostile-text.ts";

const DAY = 46_100;

/** An action that puts into cells what a person typed. */
interface Typing {
  readonly name: string;
  readonly write: (workbook: Workbook, yard: Yard, typed: string) => Promise<unknown>;
  /** Cells that hold the very text afterwards. */
  readonly cells: number;
}

const reading = (minutes: number, waterDepth: number) => ({ minutes, waterDepth });
const hole = (typed: string) =>
  ({
    hole: typed,
    date: DAY,
    tester: typed,
    soaked: "yes",
    holeDepth: 18,
    holeDiameter: 8,
    readings: [reading(0, 8), reading(30, 6)],
  }) as const;
const surface = (typed: string) => ({ surface: typed, cover: typed, area: 600, share: 1, howMeasured: typed });
const line = (typed: string) => ({ group: typed, item: typed, quantity: 2, unit: typed, kind: "cash", note: typed }) as const;
const measured = {
  shape: "ellipse",
  floorLength: 12,
  floorWidth: 7,
  pondingDepth: 6,
  sideSlope: 3,
  mediaDepth: 12,
  sillWidth: null,
  lowestBerm: 2,
  drainHours: 20,
} as const;
const barred = refusal("screening-stops", "The screening visit says stop.", "slope");
const drawdown = catalogue.find(({ name }) => name === "DRAWDOWN");

const typings: readonly Typing[] = [
  {
    name: "a yard's name and address",
    cells: 2,
    write: (workbook, _yard, typed) => addYard(workbook, { yard: typed, address: typed, units: "us", soilGroup: null }),
  },
  { name: "a new surface", cells: 3, write: (workbook, yard, typed) => addSurface(workbook, yard, surface(typed)) },
  { name: "a changed surface", cells: 3, write: (workbook, yard, typed) => changeSurface(workbook, yard.surfaces[0]!, surface(typed)) },
  { name: "a downspout's words", cells: 1, write: (workbook, yard, typed) => recordDownspout(workbook, yard.surfaces[0]!, typed) },
  { name: "a new hole test", cells: 2, write: (workbook, yard, typed) => addHoleTest(workbook, yard, hole(typed)) },
  { name: "a changed hole test", cells: 2, write: (workbook, yard, typed) => changeHoleTest(workbook, yard.holeTests[0]!, hole(typed)) },
  {
    name: "words where the basin's numbers and choices belong",
    cells: 9,
    write: (workbook, yard, t) =>
      writeBasin(workbook, yard, {
        stormDepth: t,
        pondingDepth: t,
        mediaDepth: t,
        sideSlope: t,
        mixRecipe: t,
        shape: t,
        lengthToWidth: t,
        roomLength: t,
        roomWidth: t,
      }),
  },
  {
    name: "an override",
    cells: 2,
    write: (workbook, yard, by) => recordOverride(workbook, yard, screeningVisit, barred, { by, reason: by }),
  },
  {
    name: "an override taken back",
    cells: 2,
    write: (workbook, yard, by) => withdrawOverride(workbook, yard, screeningVisit, barred, { by, reason: by }),
  },
  { name: "a line of the estimate", cells: 4, write: (workbook, yard, typed) => addEstimateLines(workbook, yard, [line(typed)]) },
  {
    name: "a drafted unit",
    cells: 1,
    write: (workbook, yard, unit) => takeDraftedQuantity(workbook, yard.estimateLines[0]!, { ...line("sand"), quantity: 9, unit }),
  },
  {
    name: "a plant of the plan",
    cells: 2,
    write: (workbook, yard, plant) => {
      const [first, ...others] = yard.clumps.map(clumpOf);
      return writePlan(workbook, yard, seenClumps(yard), [
        { ...first!, plant },
        ...others,
        { ...NEW_CLUMP, id: "new-1", plant, zone: "A", planned: 3 },
      ]);
    },
  },
  {
    name: "names at the sign-in",
    cells: 4,
    write: (workbook, yard, who) =>
      signIn(
        workbook,
        yard,
        DAY,
        [1, 2].map(() => ({ who, arrived: 0.375, left: null, hours: null })),
        true,
        who,
      ),
  },
  {
    name: "a quantity moved",
    cells: 4,
    write: (workbook, yard, typed) => recordQuantity(workbook, yard, DAY, { item: typed, quantity: 2, unit: typed, note: typed }, typed),
  },
  {
    name: "an incident",
    cells: 4,
    write: (workbook, yard, typed) => recordIncident(workbook, yard, DAY, { who: typed, note: typed, done: typed }, typed),
  },
  {
    name: "the garden as built",
    cells: 2,
    write: (workbook, yard, typed) => recordAsBuilt(workbook, yard, { ...measured, date: DAY, by: typed, note: typed }),
  },
  {
    name: "a look, with a note at each thing seen",
    cells: 5,
    write: (workbook, yard, typed) => {
      const { steps } = stageNamed("week");
      const answers = steps.slice(0, 1).map((step) => ({ step, answer: typed, unit: null, verdict: "watch" as const, note: typed }));
      return recordLook(workbook, yard, yard.followUps.find(({ record }) => record.kind === "1 week")!, {
        done: DAY,
        by: typed,
        note: typed,
        answers,
        repairDays: new Map(),
      });
    },
  },
  {
    name: "a follow-up",
    cells: 2,
    write: (workbook, yard, typed) => writeFollowUps(workbook, yard, [{ kind: "repair", due: DAY, action: typed, note: typed }]),
  },
  {
    name: "a what-if table of typed values",
    cells: 3,
    write: (workbook, _yard, typed) =>
      addWhatIf(workbook, {
        worksheetFunction: drawdown!,
        result: 0,
        scope: { kind: "typed", units: "us" },
        fixed: new Map([["media", typed]]),
        down: { key: "ponding", values: [typed, 6] },
        across: { key: "designRate", values: [0.5, typed] },
      }),
  },
];

/** Every kind of answer that the stages ask for. */
function answersTo(step: Step, typed: string): readonly StepAnswer[] {
  const said = { note: typed, by: typed, link: typed, day: DAY };
  switch (step.answer.kind) {
    case "measured":
      return [{ kind: "measured", value: 12, ...said }, ...(step.answer.orNone === undefined ? [] : [{ kind: "none", ...said } as const])];
    case "slope":
      return [{ kind: "slope", drop: 11, run: 180, ...said }];
    case "chosen":
      return [{ kind: "chosen", says: typed, ...said }];
    case "text":
      return [{ kind: "text", text: typed, ...said }];
    case "date":
      return [{ kind: "date", date: DAY, ...said }];
    case "number":
      return [{ kind: "number", value: 3, ...said }];
  }
}

/** Steps of the stage, those that a list of names makes included. */
const everyStep = (stage: Stage): readonly Step[] => [
  ...stage.steps,
  ...(stage.eachOf === undefined ? [] : [stage.eachOf.step("=1+1"), stage.eachOf.step("__proto__")]),
];

interface Cell {
  readonly value: CellValue;
  readonly formula: string;
}
type Cells = ReadonlyMap<string, Cell>;

const NOTHING: Cell = { value: null, formula: "" };

function cellsOf(workbook: WorkbookInMemory, except: readonly string[] = []): Cells {
  const cells = new Map<string, { value: CellValue; formula: string }>();
  for (const [name, { values, formulas }] of workbook.sheets) {
    if (except.includes(name)) continue;
    for (let row = 0; row < Math.max(values.length, formulas.length); row += 1) {
      for (let column = 0; column < Math.max(values[row]?.length ?? 0, formulas[row]?.length ?? 0); column += 1) {
        const [value, formula] = [values[row]?.[column] ?? null, formulas[row]?.[column] ?? ""];
        if (!isBlank(value) || formula !== "") cells.set(`${name} ${row} ${column}`, { value, formula });
      }
    }
  }
  return cells;
}

/** The cells that are not the same in both. Far quicker than to compare the two as wholes, cell for cell in words. */
function differences(before: Cells, after: Cells): readonly (readonly [string, Cell])[] {
  const isSame = (where: string, { value, formula }: Cell) => before.get(where)?.value === value && before.get(where)?.formula === formula;
  const gone = [...before.keys()].filter((where) => !after.has(where)).map((where) => [where, NOTHING] as const);
  return [...[...after].filter(([where, cell]) => !isSame(where, cell)), ...gone];
}

/** A yard with a row on every sheet that a person changes. */
async function startedProgram(): Promise<WorkbookInMemory> {
  const workbook = await workbookOfOneYard();
  const yard = await yardIn(workbook);
  await addSurface(workbook, yard, { ...surface("Roof"), cover: "roof" });
  await addHoleTest(workbook, yard, hole("A"));
  await addEstimateLines(workbook, yard, [line("sand")]);
  await writePlan(workbook, yard, [], [{ ...NEW_CLUMP, id: "new-1", plant: "Juncus effusus", zone: "A", planned: 5 }]);
  await writeFollowUps(workbook, yard, proposedFollowUps([], DAY - 7));
  return workbook;
}

/** Everything that the pane would ask of the program now: answers or sentences, and never a fault. */
async function askEverything(workbook: Workbook): Promise<void> {
  const program = await readProgram(workbook);
  for (const { sentence } of [...program.slips, ...program.yards.flatMap((yard) => explainYard(program, yard))])
    expect(sentence).toMatch(/\.$/);
  whatIsNext(program, DAY);
  program.yards.forEach((yard) => estimateOf(program, yard, DAY));
}

/** Writes, looks at the cells, the formulas and the log, and takes it back. */
async function writeAndTakeBack(
  host: WorkbookInMemory,
  benign: ReadonlyMap<string, string>,
  { name, write, cells }: Typing,
  typed: string,
): Promise<void> {
  const before = cellsOf(host, [changeLogSheet.name]);
  const { workbook, putOnLog, forget } = logWrites(host);
  forget();
  await write(workbook, await yardIn(host), typed);
  const after = cellsOf(host, [changeLogSheet.name]);
  const changed = differences(before, after);
  const held = changed.filter(([, { value }]) => value === typed);
  if (!isBlank(typed)) expect(held, `${name} holds ${JSON.stringify(typed.slice(0, 80))}`).toHaveLength(cells);
  expect(held.map(([, { formula }]) => formula).filter((formula) => formula !== "")).toEqual([]);
  expect(formulasOf(changed), "no formula follows from the text").toEqual(benign);
  await askEverything(host);

  const change = await putOnLog({ by: typed, what: typed });
  if (change === null) return;
  const [log = []] = await host.readSheets([changeLogSheet.name]);
  const entries = readRecords(changeLogSheet, log).rows.filter(({ record }) => record.change === change);
  const logged = entries.flatMap(historiesIn).filter(({ after }) => after.content === typed && after.holds === "value");
  if (!isBlank(typed)) expect(logged).toHaveLength(cells);
  await undoChange(host, change);
  expect(differences(before, cellsOf(host, [changeLogSheet.name]))).toEqual([]);
  // A log of hundreds of changes is another test's; here it would only take time.
  host.sheets.get(changeLogSheet.name)?.values.splice(changeLogSheet.preface.length + 1);
}

function formulasOf(changed: readonly (readonly [string, { readonly formula: string }])[]): ReadonlyMap<string, string> {
  return new Map(changed.flatMap(([where, { formula }]) => (formula === "" ? [] : [[where, formula] as const])));
}

/** The formulas that the action writes for a harmless word, by cell. */
async function benignFormulas(host: WorkbookInMemory, { write }: Typing): Promise<ReadonlyMap<string, string>> {
  const before = cellsOf(host);
  const { workbook, putOnLog } = logWrites(host);
  await write(workbook, await yardIn(host), "Alder");
  const formulas = formulasOf([...cellsOf(host)].filter(([where, { formula }]) => before.get(where)?.formula !== formula));
  const change = await putOnLog({ by: "", what: "" });
  if (change !== null) await undoChange(host, change);
  return formulas;
}

describe("Whatever a person types stands in the cell as typed, is no formula, is on the Change log and can be taken back", () => {
  test.each(typings)("$name", async (typing) => {
    const host = await startedProgram();
    const benign = await benignFormulas(host, typing);
    for (const typed of [...HOSTILE, ...LONG]) {
      if (typing.name.startsWith("an override") && (isBlank(typed) || typed !== typed.trim())) continue;
      await writeAndTakeBack(host, benign, typing, typed);
    }
    expect((await checkWorkbook(host)).map(({ sentence }) => sentence)).toEqual([]);
  });

  test.each(typings)("$name, of any text at all", async (typing) => {
    const host = await startedProgram();
    const benign = await benignFormulas(host, typing);
    const text = typing.name.startsWith("an override")
      ? hostileText.map((typed) => typed.trim()).filter((typed) => typed !== "")
      : hostileText;
    await fc.assert(
      fc.asyncProperty(text, (typed) => writeAndTakeBack(host, benign, typing, typed)),
      { numRuns: 8 },
    );
  });
});

describe("The answers of every step keep note, name, link and words as typed", () => {
  test.each(stages.map((stage) => ({ name: stage.name, stage })))("$name", async ({ stage }) => {
    const host = await startedProgram();
    const texts = HOSTILE.filter((typed) => !isBlank(typed));
    for (const [place, step] of everyStep(stage).entries()) {
      for (const [kind, answer] of answersTo(step, "").entries()) {
        const typing: Typing = {
          name: `${step.id}, answer ${kind + 1}`,
          cells: answer.kind === "text" || answer.kind === "chosen" ? 4 : 3,
          write: (workbook, yard, text) => recordAnswer(workbook, yard, stage, step, answersTo(step, text)[kind]!),
        };
        await writeAndTakeBack(host, await benignFormulas(host, typing), typing, texts[(place * 7 + kind) % texts.length] ?? "");
      }
    }
  });

  test("names in a list become steps of their own, whatever they are", async () => {
    const host = await startedProgram();
    const stage = stageNamed("ticket");
    const list = stage.steps.find(({ id }) => id === stage.eachOf?.list);
    await recordAnswer(host, await yardIn(host), stage, list!, {
      kind: "text",
      text: "__proto__, =1+1; constructor\n<img src=x onerror=alert(1)>, \u202eright to left",
      note: "",
      by: "",
    });
    const yard = await yardIn(host);
    const steps = stepsOf(stage, answersInForce(stage, yard.visits));
    expect(steps).toHaveLength(stage.steps.length + 5);
    for (const step of steps.slice(-5)) await recordAnswer(host, yard, stage, step, answersTo(step, "Marked")[0]!);
    await askEverything(host);
  });
});

describe("Beyond the cells of a row", () => {
  let host: WorkbookInMemory;
  beforeAll(async () => {
    host = await startedProgram();
  });

  test("a drawing's words stay words", async () => {
    for (const typed of [...HOSTILE, ...LONG]) {
      await saveDrawing(host, await yardIn(host), { pngBase64: "iVBORw0KGgo=", widthPixels: 10, heightPixels: 10, description: typed });
      const [cells = []] = await host.readSheets(["Drawings"]);
      expect(cells.some((row) => row.includes(typed))).toBe(true);
      expect(host.pictures.at(-1)?.description).toBe(typed);
    }
  });

  test("a copy of a sheet as values holds each text, and no formula", async () => {
    const texts = [...HOSTILE, ...LONG].filter((typed) => !isBlank(typed));
    for (const typed of texts) await addYard(host, { yard: typed, address: typed, units: "us", soilGroup: null });
    await host.select({ sheet: sitesSheet.name, row: 3, column: 0, rows: 1, columns: 1 });
    const copy = host.sheets.get(await turnIntoValues(host));
    expect(texts.filter((typed) => copy?.values.some((row) => row.includes(typed)) !== true)).toEqual([]);
    expect(copy?.formulas.flat().filter((formula) => formula !== "")).toEqual([]);
  });

  test.each([
    "__proto__",
    "constructor",
    "toString",
    '=HYPERLINK("x")',
    '"&A1&"',
    "Y-001'!A1",
    "<img src=x onerror=alert(1)>",
    "\u202eY-001",
    "Y".repeat(2000),
  ])("a Site ID that somebody typed, %.40s, is a yard like any other", async (siteId) => {
    const workbook = await startedProgram();
    const first = await yardIn(workbook);
    await workbook.writeValues([{ range: { ...first.site.at("siteId"), row: first.site.row + 1 }, values: [[siteId]] }]);
    const yard = (await readProgram(workbook)).yards.find((one) => one.siteId === siteId);
    expect(yard).toBeDefined();
    await addSurface(workbook, yard!, { ...surface("Roof"), cover: "roof" });
    await recordAnswer(workbook, yard!, screeningVisit, screeningVisit.steps[0]!, answersTo(screeningVisit.steps[0]!, "Ash")[0]!);
    await recordPlanted(workbook, DAY, []);
    const formulas = [...workbook.sheets.values()].flatMap((sheet) => sheet.formulas.flat());
    expect(formulas.filter((formula) => formula?.includes(siteId))).toEqual([]);
    await askEverything(workbook);
  });
});
