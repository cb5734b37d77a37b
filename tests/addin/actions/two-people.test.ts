import { beforeEach, describe, expect, test } from "vitest";
import { addWhatIf } from "../../../addin/actions/what-if/add-what-if.ts";
import { recordDownspout } from "../../../addin/actions/yard/check-downspout.ts";
import { planFirstLooks, proposedFollowUps, writeFollowUps } from "../../../addin/actions/care/plan-follow-ups.ts";
import { NEW_CLUMP } from "../../../addin/actions/planting/plan.ts";
import { addEstimateLines, addProposedLines, takeDraftedQuantity } from "../../../addin/actions/estimate/propose-estimate.ts";
import type { Yard } from "../../../addin/actions/program/read-program.ts";
import { recordAnswer } from "../../../addin/actions/visits/record-answer.ts";
import { newestAsBuilt, recordAsBuilt } from "../../../addin/actions/build/record-as-built.ts";
import { signIn, signOut } from "../../../addin/actions/build/record-dig-day.ts";
import { recordLook } from "../../../addin/actions/care/record-look.ts";
import { recordPlanted } from "../../../addin/actions/planting/record-planted.ts";
import { writePlan } from "../../../addin/actions/planting/record-planting.ts";
import { addHoleTest, addSurface, changeHoleTest, writeBasin } from "../../../addin/actions/yard/record-yard.ts";
import { clearRow, sentenceOf, type Conflict } from "../../../addin/actions/program/write-records.ts";
import { screeningVisit } from "../../../addin/checklist/screening-visit.ts";
import { whatIfSheet } from "../../../addin/records/what-if.ts";
import type { CellRange, CellValue } from "../../../addin/workbook/port.ts";
import { catalogue } from "../../../functions/worksheet/catalogue.ts";
import { workbookOfOneYard, yardIn } from "../one-yard.ts";
import type { WorkbookInMemory } from "../workbook-in-memory.ts";

const DAY = 46_100;
const hole = {
  hole: "A",
  date: DAY,
  tester: "Crew one",
  soaked: "yes",
  holeDepth: 18,
  holeDiameter: 8,
  readings: [{ minutes: 0, waterDepth: 8 }],
} as const;
const measured = {
  shape: "ellipse",
  floorLength: 12,
  floorWidth: 7,
  pondingDepth: 6,
  sideSlope: 3,
  mediaDepth: null,
  sillWidth: null,
  lowestBerm: 2,
  drainHours: 20,
} as const;
const line = { group: "soil", item: "sand", quantity: 2, unit: "cu yd", kind: "cash", note: "" } as const;

let workbook: WorkbookInMemory;

const yardNow = () => yardIn(workbook);

/** Somebody else types into the cell after the form was opened. */
const typeMeanwhile = (where: CellRange, value: CellValue) => workbook.writeValues([{ range: where, values: [[value]] }]);
const cellNow = async (where: CellRange) => (await workbook.read([where]))[0]?.[0]?.[0] ?? null;

/** Everything that stands on any sheet, cell by cell. */
function filledCells(): readonly string[] {
  return [...workbook.sheets].flatMap(([name, { values }]) =>
    values.flatMap((row, rowIndex) =>
      [...row].flatMap((cell, column) => (cell === null || cell === undefined ? [] : [`${name} ${rowIndex} ${column}: ${String(cell)}`])),
    ),
  );
}

beforeEach(async () => {
  workbook = await workbookOfOneYard();
  const yard = await yardNow();
  await addSurface(workbook, yard, { surface: "Roof", cover: "roof", area: 600, share: 1 });
  await addHoleTest(workbook, yard, hole);
  await writePlan(workbook, yard, [], [{ ...NEW_CLUMP, id: "new-1", plant: "Juncus effusus", zone: "A", planned: 5 }]);
  await addEstimateLines(workbook, yard, [line]);
  await signIn(workbook, yard, DAY, [{ who: "Ash", arrived: 0.375, left: null, hours: null }], true, "Ash");
  await writeFollowUps(workbook, yard, [{ kind: "watering", due: DAY, action: "Look", note: null }]);
});

interface Form {
  readonly name: string;
  /** The cell that both write. */
  readonly at: (yard: Yard) => CellRange;
  readonly theirs: CellValue;
  readonly write: (shown: Yard) => Promise<readonly Conflict[]>;
}

const basin = {
  stormDepth: null,
  pondingDepth: 6,
  mediaDepth: null,
  sideSlope: null,
  mixRecipe: null,
  shape: null,
  lengthToWidth: null,
  roomLength: null,
  roomWidth: null,
};

const forms: readonly Form[] = [
  { name: "the basin", at: ({ site }) => site.at("pondingDepth"), theirs: 4, write: (yard) => writeBasin(workbook, yard, basin) },
  {
    name: "a slope of the screening visit",
    at: ({ site }) => site.at("slopeDrop"),
    theirs: 4,
    write: (yard) =>
      recordAnswer(workbook, yard, screeningVisit, screeningVisit.steps.find(({ answer }) => answer.kind === "slope")!, {
        kind: "slope",
        drop: 11,
        run: 180,
        note: "",
        by: "",
      }),
  },
  {
    name: "a hole test",
    at: ({ holeTests }) => holeTests[0]!.at("holeDepth"),
    theirs: 24,
    write: ({ holeTests }) => changeHoleTest(workbook, holeTests[0]!, { ...hole, holeDepth: 20 }),
  },
  {
    name: "a downspout",
    at: ({ surfaces }) => surfaces[0]!.at("downspout"),
    theirs: "Trench",
    write: ({ surfaces }) => recordDownspout(workbook, surfaces[0]!, "Pipe 4 in."),
  },
  {
    name: "removing a surface",
    at: ({ surfaces }) => surfaces[0]!.at("area"),
    theirs: 640,
    write: ({ surfaces }) => clearRow(workbook, surfaces[0]!),
  },
  {
    name: "counting what was planted",
    at: ({ clumps }) => clumps[0]!.at("planted"),
    theirs: 4,
    write: ({ clumps }) => recordPlanted(workbook, DAY, [{ row: clumps[0]!, planted: 5 }]),
  },
  {
    name: "a drafted quantity",
    at: ({ estimateLines }) => estimateLines[0]!.at("quantity"),
    theirs: 7,
    write: ({ estimateLines }) => takeDraftedQuantity(workbook, estimateLines[0]!, { ...line, quantity: 3 }),
  },
  {
    name: "signing everyone out",
    at: ({ digDays }) => digDays[0]!.at("hours"),
    theirs: 2,
    write: ({ digDays }) => signOut(workbook, digDays, 0.5),
  },
  {
    name: "a look",
    at: ({ followUps }) => followUps[0]!.at("by"),
    theirs: "Brook",
    write: (yard) => recordLook(workbook, yard, yard.followUps[0]!, { done: DAY, by: "Ash", note: "", answers: [], repairDays: new Map() }),
  },
];

describe("A cell that somebody else changed while the form was open is asked about and not written over", () => {
  test.each(forms)("$name", async ({ at, theirs, write }) => {
    const shown = await yardNow();
    const before = filledCells();
    await typeMeanwhile(at(shown), theirs);
    const conflicts = await write(shown);
    expect(conflicts.map(({ where }) => where)).toEqual([at(shown)]);
    expect(sentenceOf(conflicts[0]!)).toMatch(/ held .* when you opened it and holds .* now\. Nothing was written; you wanted .*\.$/);
    expect(await cellNow(at(shown))).toBe(theirs);
    await typeMeanwhile(at(shown), conflicts[0]!.shown);
    expect(filledCells()).toEqual(before);
  });
});

test("two measurements of one garden stand side by side, and the one of the later day counts", async () => {
  const yard = await yardNow();
  await recordAsBuilt(workbook, yard, { ...measured, date: DAY + 3, by: "Ash", note: "" });
  await recordAsBuilt(workbook, yard, { ...measured, pondingDepth: 5, date: DAY, by: "Brook", note: "" });
  const { asBuilt } = await yardNow();
  expect(asBuilt.map(({ record: { by } }) => by)).toEqual(["Ash", "Brook"]);
  expect(newestAsBuilt(asBuilt)?.record).toMatchObject({ by: "Ash", pondingDepth: 6 });
});

describe("What two people add at once stands once", () => {
  test("a line of the draft that somebody else added meanwhile is not added again, and neither are the lines with it", async () => {
    const shown = await yardNow();
    const compost = { ...line, item: "compost" };
    await addEstimateLines(workbook, shown, [compost]);
    const before = filledCells();
    await expect(addProposedLines(workbook, shown, [{ ...line, item: "mulch" }, compost])).rejects.toThrow(
      "compost was added to Estimate lines meanwhile. Nothing was added: look at the draft again.",
    );
    expect(filledCells()).toEqual(before);
    await addProposedLines(workbook, shown, [{ ...line, item: "mulch" }]);
    expect((await yardNow()).estimateLines.map(({ record }) => record.item)).toEqual(["sand", "compost", "mulch"]);
  });

  test("looks that somebody else planned meanwhile are not planned again", async () => {
    const shown = await yardNow();
    const looks = proposedFollowUps(shown.followUps, DAY);
    await planFirstLooks(workbook, shown, looks);
    const before = filledCells();
    await expect(planFirstLooks(workbook, shown, looks)).rejects.toThrow(
      "was planned on Follow-ups meanwhile. Nothing was written: look at what is planned again.",
    );
    expect(filledCells()).toEqual(before);
  });

  test("a yard that somebody else took off Sites meanwhile gets no line", async () => {
    const shown = await yardNow();
    await clearRow(workbook, shown.site);
    await expect(addProposedLines(workbook, shown, [line])).rejects.toThrow("Y-001 is no longer on Sites. Nothing was written.");
  });
});

test("a what-if table goes below what somebody else typed on the sheet meanwhile, and over none of it", async () => {
  const request = {
    worksheetFunction: catalogue.find(({ name }) => name === "DRAWDOWN")!,
    result: 0,
    scope: { kind: "typed", units: "us" },
    fixed: new Map(),
    down: { key: "ponding", values: [3, 6] },
    across: { key: "designRate", values: [0.5] },
  } as const;
  const first = await addWhatIf(workbook, request);
  const theirs = { sheet: whatIfSheet.name, row: first.area.row + first.area.rows + 4, column: 0, rows: 1, columns: 1 };
  await typeMeanwhile(theirs, "My own notes");
  const second = await addWhatIf(workbook, request);
  expect(second.area.row).toBeGreaterThan(theirs.row);
  expect(await cellNow(theirs)).toBe("My own notes");
});
