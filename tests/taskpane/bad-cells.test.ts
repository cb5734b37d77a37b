import { beforeAll, describe, expect, test } from "vitest";
import { checkWorkbook } from "../../addin/actions/workbook/check-workbook.ts";
import { combineHoles } from "../../addin/actions/hole-test/combine-holes.ts";
import { latestChanges } from "../../addin/actions/program/read-log.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { draftBasin, basinInputsOf } from "../../addin/actions/basin/draft-basin.ts";
import { draftMaterials } from "../../addin/actions/estimate/draft-materials.ts";
import { draftPlanting, zonesOfYard } from "../../addin/actions/planting/draft-planting.ts";
import { dueFollowUps, openFollowUps } from "../../addin/actions/care/due-follow-ups.ts";
import { estimateOf } from "../../addin/actions/estimate/estimate.ts";
import { explainYard } from "../../addin/actions/yard/explain-yard.ts";
import { EXPORTS, exportFile } from "../../addin/actions/export/export-files.ts";
import { followUpsCountFrom, proposedFollowUps } from "../../addin/actions/care/plan-follow-ups.ts";
import { readPalette } from "../../addin/actions/planting/palette.ts";
import { clumpOf, drawPlan } from "../../addin/actions/planting/plan.ts";
import { proposeEstimate } from "../../addin/actions/estimate/propose-estimate.ts";
import { readProgram, type Program, type Yard } from "../../addin/actions/program/read-program.ts";
import { compareAsBuilt, newestAsBuilt } from "../../addin/actions/build/record-as-built.ts";
import { digDayTotals, itemsToMove, quantitiesMoved } from "../../addin/actions/build/record-dig-day.ts";
import { planLook } from "../../addin/actions/care/record-look.ts";
import { plantedSoFar } from "../../addin/actions/planting/record-planted.ts";
import { reportOf } from "../../addin/actions/report/report.ts";
import { routeBasin } from "../../addin/actions/basin/route-basin.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { yardStanding } from "../../addin/actions/visits/stage-standing.ts";
import { earlyWarning, ticketDaysOf } from "../../addin/actions/visits/ticket-hints.ts";
import { whatIsNext } from "../../addin/actions/program/what-is-next.ts";
import { findPlace } from "../../addin/records/place.ts";
import { recordSheets } from "../../addin/records/program-sheets.ts";
import { readRecords } from "../../addin/records/read-records.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import type { CellRange, CellValue, ValueWrite, Workbook } from "../../addin/workbook/port.ts";
import { workOut } from "../../taskpane/views/basin/alternatives.ts";
import { groundsOf, typedFrom as basinAsTyped } from "../../taskpane/views/basin/basin-form.ts";
import { asBuiltLines } from "../../taskpane/views/build/as-built-words.ts";
import { dueWords, mulchSentence, wateringSentence } from "../../taskpane/views/care/care-words.ts";
import { holeAsTyped, newHole } from "../../taskpane/views/hole-test/hole-draft.ts";
import { chainOf, homeownerNote, spreadWords } from "../../taskpane/views/hole-test/soil-words.ts";
import { boardOf } from "../../taskpane/views/next/board.ts";
import { shoppingList } from "../../taskpane/views/planting/shopping-list.ts";
import { pastedReport } from "../../taskpane/views/report/report-words.ts";
import { saidAnswer } from "../../taskpane/views/visits/step-card.tsx";
import { ticketLine } from "../../taskpane/views/visits/ticket-line.ts";
import { defaultsOf, BLANK_DOWNSPOUT } from "../../taskpane/views/yard/downspout-draft.ts";
import { nextSteps } from "../../taskpane/views/yard/next-steps.ts";
import { differenceWords, typedFrom as surfaceAsTyped } from "../../taskpane/views/yard/surface-draft.ts";
import { InMemoryExcel } from "../contract/in-memory-excel.ts";

const DAY = 46_351;

/** What has been pasted into cells before. */
const PASTED: readonly CellValue[] = [
  "12 in",
  "5 %",
  "next week",
  "2026-05-04",
  "1,200",
  "#N/A",
  "#REF!",
  "#DIV/0!",
  1e308,
  -1e308,
  5e-324,
  -3,
  0,
  0.5,
  46_100.6,
  1e12,
  true,
  false,
  "__proto__",
  '=HYPERLINK("http://example.invalid","click")',
  "<img src=x onerror=alert(1)>",
  "\u202eright to left",
  "x".repeat(10_000),
  "   ",
];

/** What no person should read, and no number should be. */
const UNREADABLE = /NaN|Infinity|undefined|\[object|∞/;

let workbook: Workbook;
let good: readonly (readonly (readonly CellValue[])[])[];

beforeAll(async () => {
  const excel = new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  excel.book.calculationMode = "Manual";
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook, DAY);
  await workbook.calculated();
  good = await workbook.readSheets(recordSheets.map(({ name }) => name));
});

/** Answers of the pane for one yard, tab by tab. */
function askedOfYard(program: Program, yard: Yard): Readonly<Record<string, () => unknown>> {
  const { settings } = program;
  const { units } = yard;
  const basin = () => draftBasin(basinInputsOf(yard), settings);
  const palette = () => readPalette(program.plants, units);
  const zones = () => zonesOfYard(yard, settings);
  const soil = () => combineHoles(program, yard);
  const standing = () => yardStanding(program, yard, DAY);
  return {
    standing,
    "next steps": () => nextSteps(standing(), true),
    answers: () => standing().stages.flatMap(({ steps }) => steps.flatMap(({ answer }) => (answer === null ? [] : [saidAnswer(answer)]))),
    ticket: () => [ticketDaysOf(yard), ticketLine(yard), earlyWarning(program, yard, DAY)],
    explained: () => explainYard(program, yard),
    surfaces: () => yard.surfaces.map((row) => [differenceWords(row, units), surfaceAsTyped(row, units), defaultsOf(row, BLANK_DOWNSPOUT)]),
    holes: () => [
      soil(),
      chainOf(soil(), units),
      spreadWords(soil(), units),
      homeownerNote(soil(), units),
      newHole(yard, "up", DAY),
      ...yard.holeTests.map((row) => holeAsTyped(row, "down")),
    ],
    basin: () => [
      basin(),
      workOut(basinAsTyped(yard), program, yard, groundsOf(yard, { contributingArea: "", testedRate: "" })),
      routeBasin(basinInputsOf(yard), basin(), "II"),
    ],
    materials: () =>
      draftMaterials(basin(), settings, { soil: "loam", loadVolume: 3, loadWeight: 1, bagSize: 2 } as Parameters<typeof draftMaterials>[2]),
    planting: () => {
      const found = zones();
      if ("sentence" in found) return found;
      const plan = drawPlan(yard.clumps.map(clumpOf), found, palette(), settings);
      const some = palette().slice(0, 2);
      return [
        plan,
        shoppingList(yard.clumps.map(clumpOf), palette(), null, units),
        draftPlanting(yard.siteId, found, { A: some, B: [], C: some }).leftOut,
      ];
    },
    estimate: () => [estimateOf(program, yard, DAY), proposeEstimate(program, yard)],
    "dig days": () => [
      digDayTotals(yard.digDays),
      quantitiesMoved(yard.digDays, yard.design, units),
      itemsToMove(yard),
      plantedSoFar(yard),
    ],
    "as built": () =>
      asBuiltLines(
        compareAsBuilt(newestAsBuilt(yard.asBuilt)?.record ?? nothingMeasured, yard.design, settings.sideSlope, settings, units),
        null,
        units,
      ),
    care: () => [
      wateringSentence(yard),
      mulchSentence(yard, 1, settings),
      proposedFollowUps(yard.followUps, followUpsCountFrom(yard) ?? DAY),
      dueFollowUps({ yards: [yard] }, DAY).map(dueWords),
    ],
    looks: () =>
      openFollowUps(yard.followUps).map((row) => planLook(yard, row, { done: DAY, by: "", note: "", answers: [], repairDays: new Map() })),
  };
}

const nothingMeasured = {
  shape: null,
  floorLength: null,
  floorWidth: null,
  pondingDepth: null,
  sideSlope: null,
  mediaDepth: null,
  sillWidth: null,
  lowestBerm: null,
  drainHours: null,
};

/** Where an answer holds what nobody can read, as "basin.rimArea.value is NaN". */
function unreadable(name: string, answer: unknown): readonly string[] {
  if (typeof answer === "number") return Number.isFinite(answer) ? [] : [`${name} is ${answer}`];
  if (typeof answer === "string") return UNREADABLE.test(answer) ? [`${name} is "${answer.slice(0, 200)}"`] : [];
  if (typeof answer !== "object" || answer === null || name.split(".").length > 9) return [];
  const entries = answer instanceof Map ? [...answer] : answer instanceof Set ? [...answer].entries() : Object.entries(answer);
  return [...entries].flatMap(([key, value]) => (UNASKED.has(String(key)) ? [] : unreadable(`${name}.${String(key)}`, value)));
}

/** Parts of an answer that are the records themselves, which hold what was typed. */
const UNASKED: ReadonlySet<string> = new Set(["yard", "row", "sheet", "cells", "record", "stage", "step", "answer", "behind", "funder"]);

/** Everything that the pane shows of the program. */
async function faultsOfEveryView(): Promise<readonly string[]> {
  const program = await readProgram(workbook);
  const ofProgram: Readonly<Record<string, () => unknown>> = {
    "what is next": () => boardOf(whatIsNext(program, DAY), null, ""),
    report: () => pastedReport(reportOf(program, { from: null, to: null, funder: null }, DAY)),
    "report of a period": () => reportOf(program, { from: DAY - 365, to: DAY, funder: "water fund" }, DAY),
    slips: () => program.slips,
  };
  const asked = [
    ...Object.entries(ofProgram),
    ...program.yards.flatMap((yard) =>
      Object.entries(askedOfYard(program, yard)).map(([name, ask]) => [`${yard.siteId} ${name}`, ask] as const),
    ),
  ];
  return asked.flatMap(([name, ask]) => {
    try {
      return unreadable(name, ask());
    } catch (error) {
      return [`${name} fails: ${String(error)}`];
    }
  });
}

function inputColumns(sheet: Sheet): readonly string[] {
  return Object.keys(sheet.columns).filter((key) => sheet.columns[key]?.role === "input");
}

/** The value into another column of each row, so that every column of every sheet has it once and the rest of its row stands. */
function acrossTheRows(value: CellValue, turn: number): readonly ValueWrite[] {
  return recordSheets.flatMap((sheet, index) => {
    const cells = good[index] ?? [];
    const place = findPlace(sheet, cells);
    const { rows } = readRecords(sheet, cells);
    // The names of settings, rules and items are looked up by formulas: their loss is another test's.
    const keys = inputColumns(sheet).filter((key) => key !== "siteId" && key !== "setting");
    if (!("place" in place) || rows.length === 0) return [];
    return keys.map((key, column): ValueWrite => ({ range: rows[(column + turn) % rows.length]!.at(key), values: [[value]] }));
  });
}

async function writeAndRestore<Answer>(writes: readonly ValueWrite[], look: () => Promise<Answer>): Promise<Answer> {
  const before = await workbook.read(writes.map(({ range }) => range));
  await workbook.writeValues(writes);
  await workbook.calculated();
  const answer = await look();
  await workbook.writeValues(writes.map(({ range }, index) => ({ range, values: before[index] ?? [] })));
  return answer;
}

describe("With cells that hold what nobody meant, every view has answers or sentences", () => {
  test("and with none of them there is nothing to put right", async () => {
    const { slips, yards } = await readProgram(workbook);
    expect([...slips, ...yards.flatMap((yard) => yard.slips)].map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining("Hole diameter must be a number"),
    ]);
    expect(await faultsOfEveryView()).toEqual([]);
  });

  test.each(PASTED.map((value, turn) => ({ value, turn, says: JSON.stringify(value).slice(0, 40) })))(
    "$says in every column",
    async ({ value, turn }) => {
      const faults = await writeAndRestore(acrossTheRows(value, turn), faultsOfEveryView);
      expect(faults).toEqual([]);
    },
  );

  test("and where a whole row holds the same, and where every second cell of a sheet does", async () => {
    for (const value of ["12 in", 1e308, -3, "#N/A"]) {
      const writes = recordSheets.flatMap((sheet, index) => {
        const { rows } = readRecords(sheet, good[index] ?? []);
        return rows.slice(0, 8).flatMap((row, place) =>
          inputColumns(sheet)
            .filter((key, column) => key !== "siteId" && (place === 0 || (place + column) % 2 === 0))
            .map((key): ValueWrite => ({ range: row.at(key), values: [[value]] })),
        );
      });
      expect(await writeAndRestore(writes, faultsOfEveryView)).toEqual([]);
    }
  });

  test.each(["12 in", 1e308, "#N/A", "<img src=x onerror=alert(1)>"])(
    "files that leave the workbook hold words and numbers: %s",
    async (value) => {
      const files = await writeAndRestore(acrossTheRows(value, 0), async () => {
        const program = await readProgram(workbook);
        return Promise.all(EXPORTS.filter((name) => !name.endsWith(".xlsx")).map((name) => exportFile(name, program, program.yards, DAY)));
      });
      const unreadableParts = files.flatMap(({ fileName, content }) =>
        (/.{0,40}(NaN|Infinity|undefined|\[object).{0,40}/.exec(String(content)) ?? []).slice(0, 1).map((part) => `${fileName}: ${part}`),
      );
      expect(unreadableParts).toEqual([]);
      expect(files.filter(({ fileName, content }) => fileName.endsWith(".html") && String(content).includes("<img src=x"))).toEqual([]);
    },
  );

  test("a number that cannot be read is said by name where it stands", async () => {
    const bad = writesOf("surfaces", "area", "12 in");
    const slips = await writeAndRestore(bad, async () => (await readProgram(workbook)).yards.flatMap((yard) => yard.slips));
    expect(slips.filter(({ sentence }) => sentence === 'Area must be a number; it is the text "12 in".').map(({ where }) => where)).toEqual(
      bad.map(({ range }) => range),
    );
    await checkWorkbook(workbook);
    expect(await latestChanges(workbook, 3)).toEqual([]);
  });
});

function writesOf(
  sheetName: string,
  key: string,
  value: CellValue,
): readonly { readonly range: CellRange; readonly values: CellValue[][] }[] {
  const index = recordSheets.findIndex(({ name }) => name.toLowerCase() === sheetName);
  const { rows } = readRecords(recordSheets[index]!, good[index] ?? []);
  return rows.slice(0, 1).map((row) => ({ range: row.at(key), values: [[value]] }));
}
