import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addWhatIf } from "../../addin/actions/what-if/add-what-if.ts";
import { logWrites } from "../../addin/actions/program/change-log.ts";
import { undoChange } from "../../addin/actions/program/undo-change.ts";
import { recordDownspout } from "../../addin/actions/yard/check-downspout.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { openFollowUps } from "../../addin/actions/care/due-follow-ups.ts";
import { writeFollowUps } from "../../addin/actions/care/plan-follow-ups.ts";
import { clumpOf, NEW_CLUMP } from "../../addin/actions/planting/plan.ts";
import { addEstimateLines, takeDraftedQuantity } from "../../addin/actions/estimate/propose-estimate.ts";
import { readProgram, type Yard } from "../../addin/actions/program/read-program.ts";
import { recordAnswer, recordOverride } from "../../addin/actions/visits/record-answer.ts";
import { recordAsBuilt } from "../../addin/actions/build/record-as-built.ts";
import { recordIncident, recordQuantity, signIn } from "../../addin/actions/build/record-dig-day.ts";
import { recordLook } from "../../addin/actions/care/record-look.ts";
import { recordPlanted } from "../../addin/actions/planting/record-planted.ts";
import { seenClumps, writePlan } from "../../addin/actions/planting/record-planting.ts";
import { addHoleTest, addSurface, addYard, changeHoleTest, changeSurface, writeBasin } from "../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook, sheetNamesOfProgram } from "../../addin/actions/workbook/set-up-workbook.ts";
import { clearRow } from "../../addin/actions/program/write-records.ts";
import { refusal } from "../../addin/checklist/refusal.ts";
import { screeningVisit } from "../../addin/checklist/screening-visit.ts";
import { stageNamed } from "../../addin/checklist/stages.ts";
import { changeLogSheet } from "../../addin/records/change-log.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import type { Workbook } from "../../addin/workbook/port.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

const DAY = 46_351;

interface Write {
  readonly name: string;
  /** The sheet that is protected. */
  readonly sheet: string;
  readonly run: (workbook: Workbook, yardWith: (has: (yard: Yard) => boolean) => Yard) => Promise<unknown>;
}

const any = () => true;
const surface = { surface: "Shed roof", cover: "roof", area: 120, share: 1 };
const hole = {
  hole: "Z",
  date: DAY,
  tester: "Crew one",
  soaked: "yes",
  holeDepth: 18,
  holeDiameter: 8,
  readings: [{ minutes: 0, waterDepth: 8 }],
} as const;
const said = { note: "", by: "Crew one", day: DAY };
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
const stepOf = (kind: string) => screeningVisit.steps.find(({ answer }) => answer.kind === kind)!;
const basin = {
  stormDepth: 3.3,
  pondingDepth: 3,
  mediaDepth: 7,
  sideSlope: 5,
  mixRecipe: null,
  shape: null,
  lengthToWidth: null,
  roomLength: null,
  roomWidth: null,
};

const writes: readonly Write[] = [
  {
    name: "adding a yard",
    sheet: "Sites",
    run: (workbook) => addYard(workbook, { yard: "Lantern House", address: "3 Cooper's Rise", units: "us", soilGroup: null }),
  },
  { name: "adding a surface", sheet: "Surfaces", run: (workbook, yardWith) => addSurface(workbook, yardWith(any), surface) },
  {
    name: "changing a surface",
    sheet: "Surfaces",
    run: (workbook, yardWith) => changeSurface(workbook, yardWith(({ surfaces }) => surfaces.length > 0).surfaces[0]!, surface),
  },
  {
    name: "removing a surface",
    sheet: "Surfaces",
    run: (workbook, yardWith) => clearRow(workbook, yardWith(({ surfaces }) => surfaces.length > 0).surfaces[0]!),
  },
  {
    name: "noting a downspout",
    sheet: "Surfaces",
    run: (workbook, yardWith) => recordDownspout(workbook, yardWith(({ surfaces }) => surfaces.length > 0).surfaces[0]!, "Pipe 4 in."),
  },
  { name: "adding a hole test", sheet: "Hole tests", run: (workbook, yardWith) => addHoleTest(workbook, yardWith(any), hole) },
  {
    name: "changing a hole test",
    sheet: "Hole tests",
    run: (workbook, yardWith) => changeHoleTest(workbook, yardWith(({ holeTests }) => holeTests.length > 0).holeTests[0]!, hole),
  },
  { name: "writing a basin", sheet: "Sites", run: (workbook, yardWith) => writeBasin(workbook, yardWith(any), basin) },
  {
    name: "an answer",
    sheet: "Visits",
    run: (workbook, yardWith) =>
      recordAnswer(workbook, yardWith(any), screeningVisit, stepOf("measured"), { kind: "measured", value: 9, ...said }),
  },
  {
    name: "a slope, whose drop and run go to Sites first",
    sheet: "Sites",
    run: (workbook, yardWith) =>
      recordAnswer(workbook, yardWith(any), screeningVisit, stepOf("slope"), { kind: "slope", drop: 7, run: 111, ...said }),
  },
  {
    name: "an override",
    sheet: "Visits",
    run: (workbook, yardWith) =>
      recordOverride(workbook, yardWith(any), screeningVisit, refusal("x", "No.", "slope"), { by: "Ash", reason: "Terraced" }),
  },
  {
    name: "a planting plan",
    sheet: "Planting",
    run: (workbook, yardWith) => {
      const yard = yardWith(({ clumps }) => clumps.length > 1);
      const [first, ...others] = yard.clumps.map(clumpOf);
      return writePlan(workbook, yard, seenClumps(yard), [
        { ...first!, along: 2.25 },
        ...others,
        { ...NEW_CLUMP, id: "new-1", plant: "Juncus effusus", zone: "A", planned: 3 },
      ]);
    },
  },
  {
    name: "counting what was planted",
    sheet: "Planting",
    run: (workbook, yardWith) =>
      recordPlanted(
        workbook,
        DAY,
        yardWith(({ clumps }) => clumps.length > 0)
          .clumps.slice(0, 1)
          .map((row) => ({ row, planted: 77 })),
      ),
  },
  {
    name: "adding an estimate line",
    sheet: "Estimate lines",
    run: (workbook, yardWith) =>
      addEstimateLines(workbook, yardWith(any), [{ group: "", item: "sand", quantity: 1, unit: "cu yd", kind: "cash", note: "" }]),
  },
  {
    name: "taking a drafted quantity",
    sheet: "Estimate lines",
    run: (workbook, yardWith) =>
      takeDraftedQuantity(workbook, yardWith(({ estimateLines }) => estimateLines.length > 0).estimateLines[0]!, {
        group: "",
        item: "sand",
        quantity: 123,
        unit: "cu yd",
        kind: "cash",
        note: "",
      }),
  },
  {
    name: "signing in",
    sheet: "Dig days",
    run: (workbook, yardWith) =>
      signIn(workbook, yardWith(any), DAY, [{ who: "Ash", arrived: 0.375, left: null, hours: null }], true, "Ash"),
  },
  {
    name: "a quantity moved",
    sheet: "Dig days",
    run: (workbook, yardWith) =>
      recordQuantity(workbook, yardWith(any), DAY, { item: "mulch placed", quantity: 2, unit: "cu yd", note: "" }, "Ash"),
  },
  {
    name: "an incident",
    sheet: "Dig days",
    run: (workbook, yardWith) => recordIncident(workbook, yardWith(any), DAY, { who: "Ash", note: "Blister", done: "Plaster" }, "Ash"),
  },
  {
    name: "measuring as built",
    sheet: "As-built",
    run: (workbook, yardWith) => recordAsBuilt(workbook, yardWith(any), { ...measured, date: DAY, by: "Ash", note: "" }),
  },
  {
    name: "planning a follow-up",
    sheet: "Follow-ups",
    run: (workbook, yardWith) => writeFollowUps(workbook, yardWith(any), [{ kind: "repair", due: DAY, action: "Mend", note: null }]),
  },
  { name: "a look", sheet: "Follow-ups", run: (workbook, yardWith) => look(workbook, yardWith) },
  {
    name: "a what-if table",
    sheet: "What-if",
    run: (workbook) =>
      addWhatIf(workbook, {
        worksheetFunction: catalogue.find(({ name }) => name === "DRAWDOWN")!,
        result: 0,
        scope: { kind: "typed", units: "us" },
        fixed: new Map(),
        down: { key: "ponding", values: [3, 6] },
        across: { key: "designRate", values: [0.5] },
      }),
  },
];

function look(workbook: Workbook, yardWith: (has: (yard: Yard) => boolean) => Yard) {
  const yard = yardWith(({ followUps }) =>
    openFollowUps(followUps).some(
      ({ record }) => record.kind === "1 year" || record.kind === "yearly" || record.kind === "1 month" || record.kind === "1 week",
    ),
  );
  const row = openFollowUps(yard.followUps).find(
    ({ record }) => record.kind !== "watering" && record.kind !== "repair" && record.kind !== "re-test",
  )!;
  const [step] = stageNamed("week").steps;
  return recordLook(workbook, yard, row, {
    done: DAY,
    by: "Ash",
    note: "",
    answers: [{ step: step!, answer: "Seen", unit: null, verdict: null, note: "" }],
    repairDays: new Map(),
  });
}

let excel: InMemoryExcel;
let workbook: Workbook;

beforeAll(async () => {
  excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  excel.book.calculationMode = "Manual";
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook, DAY);
  await workbook.calculated();
});

beforeEach(() => {
  for (const sheet of excel.book.sheets) sheet.isProtected = false;
});

const everyCell = () => workbook.readSheets(sheetNamesOfProgram);

async function yards(): Promise<(has: (yard: Yard) => boolean) => Yard> {
  const program = await readProgram(workbook);
  return (has) => {
    const found = program.yards.find(has);
    if (found === undefined) throw new Error("no such yard in the demo");
    return found;
  };
}

describe("On a protected sheet nothing is written, nothing stands on the Change log, and the sentence names the sheet", () => {
  test.each(writes)("$name", async ({ sheet, run }) => {
    const before = await everyCell();
    const yardWith = await yards();
    const { workbook: logged, anyWritten, putOnLog } = logWrites(workbook);
    excel.book.sheetNamed(sheet)!.isProtected = true;
    await expect(run(logged, yardWith)).rejects.toMatchObject({
      name: "WorkbookRefused",
      message: `The sheet "${sheet}" is protected. Unprotect on the Review tab, then try again.`,
    });
    expect(anyWritten()).toBe(false);
    expect(await putOnLog({ by: "Ash", what: "Refused" })).toBeNull();
    expect(await everyCell()).toEqual(before);
  });

  test.each(writes)("$name is written once the sheet is open again, is on the log, and undo brings back every cell", async ({ run }) => {
    const before = (await everyCell()).filter((_, index) => sheetNamesOfProgram[index] !== changeLogSheet.name);
    const { workbook: logged, putOnLog } = logWrites(workbook);
    await run(logged, await yards());
    const change = await putOnLog({ by: "Ash", what: "Written" });
    expect(change).not.toBeNull();
    await undoChange(workbook, change!);
    await workbook.calculated();
    const after = (await everyCell()).filter((_, index) => sheetNamesOfProgram[index] !== changeLogSheet.name);
    expect(trimmed(after)).toEqual(trimmed(before));
  });
});

/** Without the blank cells at the ends, which a sheet may reach to or not. */
function trimmed(sheets: readonly (readonly (readonly unknown[])[])[]): unknown {
  return sheets.map((rows) =>
    rows.map((row) => row.slice(0, row.findLastIndex((cell) => cell !== null) + 1)).filter((row) => row.length > 0),
  );
}

describe("Where only the second of two sheets is protected, what was written is on the log and can be taken back", () => {
  test.each([
    { name: "a slope on Sites whose answer Visits refuses", run: writes.find(({ name }) => name.startsWith("a slope"))!.run },
    { name: "a look on Follow-ups whose answers Visits refuses", run: look },
  ])("$name", async ({ run }) => {
    const before = (await everyCell()).filter((_, index) => sheetNamesOfProgram[index] !== changeLogSheet.name);
    const { workbook: logged, anyWritten, putOnLog } = logWrites(workbook);
    excel.book.sheetNamed("Visits")!.isProtected = true;
    await expect(run(logged, await yards())).rejects.toMatchObject({
      message: 'The sheet "Visits" is protected. Unprotect on the Review tab, then try again.',
    });
    expect(anyWritten()).toBe(true);
    const change = await putOnLog({ by: "Ash", what: "Not finished" });
    expect(change).not.toBeNull();
    await undoChange(workbook, change!);
    await workbook.calculated();
    expect(trimmed((await everyCell()).filter((_, index) => sheetNamesOfProgram[index] !== changeLogSheet.name))).toEqual(trimmed(before));
  });

  test("a protected Change log loses no entry in silence: the write stands, and the sentence names the log", async () => {
    const { workbook: logged, putOnLog } = logWrites(workbook);
    excel.book.sheetNamed(changeLogSheet.name)!.isProtected = true;
    await addSurface(logged, (await yards())(any), surface);
    await expect(putOnLog({ by: "Ash", what: "Shed" })).rejects.toMatchObject({
      name: "WorkbookRefused",
      message: 'The sheet "Change log" is protected. Unprotect on the Review tab, then try again.',
    });
  });
});
