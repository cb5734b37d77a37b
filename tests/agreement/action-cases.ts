/**
 * What a coordinator asks of the workbook, one thing after the other on the demo program, on whichever spreadsheet is
 * there. Both must hold the same cells after each, and hand back the same answer.
 */
import { addWhatIf } from "../../addin/actions/what-if/add-what-if.ts";
import { repairFormulas, repairSentence } from "../../addin/actions/workbook/repair-formulas.ts";
import { WORKBOOK_ID_SETTING, workbookId } from "../../addin/actions/workbook/workbook-id.ts";
import { turnIntoValues } from "../../addin/actions/workbook/turn-into-values.ts";
import { logWrites } from "../../addin/actions/program/change-log.ts";
import { latestChanges } from "../../addin/actions/program/read-log.ts";
import { undoChange } from "../../addin/actions/program/undo-change.ts";
import { recordDownspout } from "../../addin/actions/yard/check-downspout.ts";
import { checkWorkbook, repairWorkbook } from "../../addin/actions/workbook/check-workbook.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { draftPlanting, zonesOfYard } from "../../addin/actions/planting/draft-planting.ts";
import { estimateOf } from "../../addin/actions/estimate/estimate.ts";
import { explainYard } from "../../addin/actions/yard/explain-yard.ts";
import { proposedFollowUps, writeFollowUps } from "../../addin/actions/care/plan-follow-ups.ts";
import { plantsFor, readPalette, suggestedFrom } from "../../addin/actions/planting/palette.ts";
import { addEstimateLines, proposeEstimate, takeDraftedQuantity } from "../../addin/actions/estimate/propose-estimate.ts";
import { readProgram, type Program, type Yard } from "../../addin/actions/program/read-program.ts";
import { NOTHING_CHOSEN, readRainFile } from "../../addin/actions/rain-record/read-rain-file.ts";
import { readRainTable } from "../../addin/actions/rain-record/rain-table.ts";
import { RAIN_RECORD_NAME, readRecordedRain } from "../../addin/actions/rain-record/recorded-rain.ts";
import { writeRainRecord } from "../../addin/actions/rain-record/write-rain-record.ts";
import { recordAnswer, recordOverride, withdrawOverride } from "../../addin/actions/visits/record-answer.ts";
import { recordAsBuilt } from "../../addin/actions/build/record-as-built.ts";
import { recordIncident, recordQuantity, signIn, signOut } from "../../addin/actions/build/record-dig-day.ts";
import { recordLook } from "../../addin/actions/care/record-look.ts";
import { seenClumps, writePlan } from "../../addin/actions/planting/record-planting.ts";
import { addHoleTest, addSurface, addYard, changeHoleTest, changeSurface, writeBasin } from "../../addin/actions/yard/record-yard.ts";
import { reportOf } from "../../addin/actions/report/report.ts";
import { hasDrawing, saveDrawing, type Drawing } from "../../addin/actions/basin/save-drawing.ts";
import { saveReportCharts } from "../../addin/actions/report/save-report-charts.ts";
import { selectYard } from "../../addin/actions/yard/select-yard.ts";
import { programState, setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { showWorking } from "../../addin/actions/working/show-working.ts";
import { whatIsNext } from "../../addin/actions/program/what-is-next.ts";
import { refusal } from "../../addin/checklist/refusal.ts";
import { screeningVisit } from "../../addin/checklist/screening-visit.ts";
import type { Stage } from "../../addin/checklist/stage.ts";
import { designSheet } from "../../addin/records/design.ts";
import { recordSheets } from "../../addin/records/program-sheets.ts";
import { reportYardsSheet } from "../../addin/records/report-yards.ts";
import type { Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import { cellOf, firstRow, placeAsSetUp } from "../../addin/records/place.ts";
import { appendRows } from "../../addin/actions/program/write-records.ts";
import type { CellRange, Workbook } from "../../addin/workbook/port.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { misspellChoices, misspellNames } from "./misspelt.ts";
import { picture } from "./picture-cases.ts";

export interface ActionCase {
  readonly title: string;
  /** The answer is compared as JSON. */
  run(workbook: Workbook): Promise<unknown>;
  /** Where formats and drop-downs are compared too. */
  readonly looksAt?: readonly CellRange[];
}

/** The yard that the cases add, and take all the way to its first look. */
const SITE_ID = "Y-017";
/** Day 46,000 is December 9, 2025. */
const DAY = 46_000;

const program = (workbook: Workbook): Promise<Program> => workbook.calculated().then(() => readProgram(workbook));

async function onYard<Answer>(workbook: Workbook, work: (yard: Yard, program: Program) => Promise<Answer>): Promise<Answer> {
  const read = await program(workbook);
  const yard = read.yards.find(({ siteId }) => siteId === SITE_ID);
  if (yard === undefined) throw new Error(`There is no yard ${SITE_ID}.`);
  return work(yard, read);
}

/** A case on the yard that the cases add. */
const yardCase = (title: string, run: (workbook: Workbook, yard: Yard, program: Program) => Promise<unknown>): ActionCase => ({
  title,
  run: (workbook) => onYard(workbook, (yard, read) => run(workbook, yard, read)),
});

function stepOf(stage: Stage, id: string) {
  const step = stage.steps.find((candidate) => candidate.id === id);
  if (step === undefined) throw new Error(`There is no step ${id}.`);
  return step;
}

function drawing(description: string): Drawing {
  const { pngBase64, widthPixels, heightPixels } = picture(SITE_ID);
  return { pngBase64, widthPixels, heightPixels, description };
}

const answered = { note: "", by: "Crew one", day: DAY };
const steep = refusal("screening-stops", "The screening visit says stop.", "slope");

/** The rows prepared of every sheet and of the columns it declares, and the row below them. */
function everyLook(rowsOf: (sheet: Sheet) => number): readonly CellRange[] {
  return recordSheets.map((sheet) => ({
    sheet: sheet.name,
    row: firstRow(sheet),
    column: 0,
    rows: rowsOf(sheet) + 1,
    columns: Object.keys(sheet.columns).length,
  }));
}

/** A sheet outgrows its rows once. */
const grownRows = (sheet: Sheet) =>
  ([sitesSheet, designSheet, reportYardsSheet, surfacesSheet] as readonly Sheet[]).includes(sheet) ? 2 * sheet.rows : sheet.rows;

export const actionCases: readonly ActionCase[] = [
  {
    title: "the workbook is set up",
    looksAt: everyLook(({ rows }) => rows),
    run: async (workbook) => [await programState(workbook), await setUpWorkbook(workbook), await programState(workbook)],
  },
  { title: "the demo program is filled in", run: (workbook) => fillDemoProgram(workbook, DAY) },
  {
    title: "a yard is added under the next Site ID, and its row comes to the front",
    run: async (workbook) => {
      const siteId = await addYard(workbook, { yard: "=Ferry steps, upper house", address: "3 Ferry Steps", units: "us", soilGroup: "B" });
      await onYard(workbook, (yard) => selectYard(workbook, yard));
      return [siteId, await workbook.selection()];
    },
  },
  yardCase("surfaces are added", async (workbook, yard) => {
    await addSurface(workbook, yard, { surface: "Front roof", cover: "roof", area: 900, share: 0.5 });
    await addSurface(workbook, yard, {
      surface: "1/2 of the drive",
      cover: "paving",
      area: 300,
      share: null,
      howMeasured: "rectangle: length 30 ft, width 10 ft",
    });
  }),
  yardCase("a surface is changed and its downspout noted", async (workbook, yard) => {
    const [roof] = yard.surfaces;
    const conflicts = await changeSurface(workbook, roof!, { surface: "Front roof", cover: "roof", area: 1000, share: 0.75 });
    return [conflicts, await recordDownspout(workbook, yard.surfaces[1]!, "Swale 2 ft wide, grassed.")];
  }),
  yardCase("a surface that somebody changed meanwhile is left alone, and both values are told", async (workbook, yard) => {
    const [roof] = yard.surfaces;
    await workbook.writeValues([{ range: roof!.at("area"), values: [[1100]] }]);
    return changeSurface(workbook, roof!, { surface: "Front roof", cover: "roof", area: 950, share: 0.75 });
  }),
  yardCase("a hole test is added", (workbook, yard) =>
    addHoleTest(workbook, yard, {
      hole: "A",
      date: DAY,
      tester: "Crew one",
      soaked: "yes",
      holeDepth: 18,
      holeDiameter: 8,
      readings: [
        [0, 12],
        [10, 10.5],
        [20, 9.25],
        [30, 8.125],
        [40, 7.0625],
      ].map(([minutes = 0, waterDepth = 0]) => ({ minutes, waterDepth })),
    }),
  ),
  yardCase("a hole test is changed", (workbook, yard) =>
    changeHoleTest(workbook, yard.holeTests[0]!, {
      hole: "A",
      date: DAY,
      tester: "Crew two",
      soaked: "yes",
      holeDepth: 18,
      holeDiameter: 8,
      readings: [
        [0, 12],
        [15, 10],
        [30, 8.25],
        [45, 6.75],
      ].map(([minutes = 0, waterDepth = 0]) => ({ minutes, waterDepth })),
    }),
  ),
  yardCase("a measured answer is held against the Rules sheet by a formula", (workbook, yard) =>
    recordAnswer(workbook, yard, screeningVisit, stepOf(screeningVisit, "foundation"), { kind: "measured", value: 8, ...answered }),
  ),
  yardCase("a slope goes into Sites and Visits", (workbook, yard) =>
    recordAnswer(workbook, yard, screeningVisit, stepOf(screeningVisit, "slope"), {
      kind: "slope",
      drop: 30,
      run: 200,
      ...answered,
      note: "=not a formula",
    }),
  ),
  yardCase("an answer that there is nothing to measure to passes", (workbook, yard) =>
    recordAnswer(workbook, yard, screeningVisit, stepOf(screeningVisit, "septic-uphill"), { kind: "none", ...answered, link: "photo 12" }),
  ),
  yardCase("a refusal is overridden with a name and a reason, and taken back", async (workbook, yard) => {
    await recordOverride(workbook, yard, screeningVisit, steep, { by: "Coordinator", reason: "Terraced by the owner." });
    await withdrawOverride(workbook, yard, screeningVisit, steep, { by: "Coordinator", reason: "Wall not built." });
  }),
  yardCase("the basin's inputs are written and Design answers", async (workbook, yard) => {
    const conflicts = await writeBasin(workbook, yard, {
      stormDepth: 1.2,
      pondingDepth: 6,
      mediaDepth: 18,
      sideSlope: 3,
      mixRecipe: yard.site.record.mixRecipe,
      shape: "rectangle",
      lengthToWidth: 2,
      roomLength: 30,
      roomWidth: 20,
    });
    return [conflicts, await onYard(workbook, async ({ design }) => design)];
  }),
  yardCase("the drawing is saved in the workbook, and once more in place of itself", async (workbook, yard) => {
    for (const description of ["Plan of the basin", "Plan and section of the basin"])
      await saveDrawing(workbook, yard, drawing(description));
    return [await hasDrawing(workbook, yard), await workbook.pictureNames("Drawings")];
  }),
  yardCase("a planting plan is written", async (workbook, yard, { plants, settings }) => {
    const zones = zonesOfYard(yard, settings);
    if ("sentence" in zones) throw new Error(zones.sentence);
    const palette = readPalette(plants, yard.units);
    const chosen = (zone: "A" | "B" | "C") =>
      suggestedFrom(plantsFor(palette, { zone, sun: "sun", region: null, atLeastAsWetAs: null, widestSpacing: null, bloomMonth: null }), 2);
    const plan = draftPlanting(SITE_ID, zones, { A: chosen("A"), B: chosen("B"), C: chosen("C") }).clumps;
    return [plan.length, await writePlan(workbook, yard, seenClumps(yard), plan)];
  }),
  yardCase("clumps are taken out of the plan", async (workbook, yard) => writePlan(workbook, yard, seenClumps(yard), [])),
  yardCase("the estimate is drafted from the design and priced", async (workbook, yard, read) => {
    const { missing, sentences } = proposeEstimate(read, yard);
    await addEstimateLines(workbook, yard, missing);
    return [sentences, await onYard(workbook, async (now, after) => estimateOf(after, now, DAY).lines.map(({ amount }) => amount))];
  }),
  yardCase("a line takes the drafted quantity", (workbook, yard) => {
    const [row] = yard.estimateLines;
    return takeDraftedQuantity(workbook, row!, {
      group: "Materials",
      item: row!.record.item ?? "",
      quantity: 3,
      unit: row!.record.unit ?? "",
      kind: "cash",
      note: "",
    });
  }),
  yardCase("people sign in, move earth, are hurt and sign out on a dig day", async (workbook, yard) => {
    const person = (who: string) => ({ who, arrived: 0.375, left: null, hours: null });
    await signIn(workbook, yard, DAY + 20, [person("Ada"), person("Brook")], false, "Coordinator");
    await recordQuantity(workbook, yard, DAY + 20, { item: "dug earth", quantity: 2.5, unit: "cu yd", note: "" }, "Coordinator");
    await recordIncident(workbook, yard, DAY + 20, { who: "Brook", note: "Blister", done: "Plaster, gloves" }, "Coordinator");
    return onYard(workbook, ({ digDays }) => signOut(workbook, digDays, 0.5));
  }),
  yardCase("nobody signs in twice on one day", (workbook, yard) =>
    signIn(workbook, yard, DAY + 20, [{ who: "ada", arrived: 0.5, left: null, hours: null }], false, "Coordinator").catch(
      (error: unknown) => String(error),
    ),
  ),
  yardCase("the garden is measured as built", (workbook, yard) =>
    recordAsBuilt(workbook, yard, {
      shape: "ellipse",
      floorLength: 12,
      floorWidth: 7,
      pondingDepth: 6,
      sideSlope: 3,
      mediaDepth: null,
      sillWidth: 2,
      lowestBerm: 2,
      drainHours: 20,
      date: DAY + 21,
      by: "Crew one",
      note: "",
    }),
  ),
  yardCase("the first looks are planned, and the first is done", async (workbook, yard) => {
    await writeFollowUps(workbook, yard, proposedFollowUps(yard.followUps, DAY + 21));
    return onYard(workbook, (now) =>
      recordLook(workbook, now, now.followUps[0]!, {
        done: DAY + 28,
        by: "Crew two",
        note: "Mulch washed.",
        answers: [],
        repairDays: new Map(),
      }),
    );
  }),
  {
    title: "a what-if table of one yard, and one of every yard, answer beside what stands on the sheet",
    run: async (workbook) => {
      const sized = catalogue.find(({ name }) => name === "DRAWDOWN")!;
      const common = { worksheetFunction: sized, result: 0, fixed: new Map() };
      const tables = [
        await addWhatIf(workbook, {
          ...common,
          scope: { kind: "yard", siteId: SITE_ID, units: "us" },
          down: { key: "ponding", values: [3, 6, 9] },
          across: { key: "designRate", values: [0.25, 0.5] },
        }),
        await addWhatIf(workbook, { ...common, scope: { kind: "all" }, down: null, across: { key: "ponding", values: [4, 8] } }),
      ];
      await workbook.calculated();
      return [tables.map(({ title, area }) => [title, area]), await workbook.read(tables.map(({ answers }) => answers))];
    },
  },
  {
    title: "the report adds up, its charts are placed on its sheet, and what is next is listed",
    run: async (workbook) => {
      const read = await program(workbook);
      await saveReportCharts(workbook, ["Money by funder", "Area by year"].map(drawing));
      const { lines, cashByFunder, areaByYear } = reportOf(read, { from: null, to: null, funder: null }, DAY + 30);
      return [
        lines.map(({ figure, built, designed }) => [figure.key, built.value, designed.value]),
        cashByFunder,
        areaByYear,
        await workbook.pictureNames("Report"),
        whatIsNext(read, DAY + 30),
      ];
    },
  },
  yardCase("every number of the yard is explained", async (_workbook, yard, read) => explainYard(read, yard)),
  {
    title: "the working of a spilled cell of Design is shown",
    run: async (workbook) => {
      await workbook.calculated();
      return showWorking(
        workbook,
        await onYard(workbook, async ({ siteId }, { yards }) => ({
          sheet: "Design",
          row: 3 + yards.findIndex((yard) => yard.siteId === siteId),
          column: placeAsSetUp(designSheet).columnIndex("floorArea"),
          rows: 1,
          columns: 1,
        })),
      );
    },
  },
  {
    title: "a change stands on the log with what was there before, and is undone",
    run: async (workbook) => {
      const logged = logWrites(workbook);
      await onYard(logged.workbook, (yard) =>
        writeBasin(logged.workbook, yard, {
          stormDepth: 2,
          pondingDepth: 9,
          mediaDepth: null,
          sideSlope: null,
          mixRecipe: null,
          shape: null,
          lengthToWidth: null,
          roomLength: null,
          roomWidth: null,
        }),
      );
      const change = await logged.putOnLog({ by: "Coordinator", what: "Basin" });
      const told = await latestChanges(workbook, 1);
      await undoChange(workbook, change!);
      return told.map(({ change: number, what, cells, siteIds }) => ({ number, what, cells, siteIds }));
    },
  },
  {
    title: "a gauge's file takes the place of the rain record as one change, and is undone",
    run: async (workbook) => {
      const table = readRainTable("Date;Rain (mm)\n2026-05-04;12,5\n2026-05-05;T\n2026-05-06;=1+1\n2026-05-08;3\n");
      if ("sentence" in table) throw new Error(table.sentence);
      const { series } = readRainFile(table, { ...NOTHING_CHOSEN, columns: table.guess, notMeasured: "dry", noReading: "blank" });
      const logged = logWrites(workbook);
      await writeRainRecord(logged.workbook, series!, "replace", "=Ferry steps", await readRecordedRain(workbook));
      const change = await logged.putOnLog({ by: "Coordinator", what: "Rain" });
      const { readings, faults, reference, total } = await readRecordedRain(workbook);
      const cells = await workbook.read([{ sheet: RAIN_RECORD_NAME, row: 3, column: 0, rows: 6, columns: 5 }]);
      await undoChange(workbook, change!);
      return [readings, faults, reference, total, cells, (await readRecordedRain(workbook)).readings];
    },
  },
  {
    title: "the check finds a formula that somebody typed over, and repairs it",
    run: async (workbook) => {
      const formula = cellOf(designSheet, firstRow(designSheet), "contributingArea");
      await workbook.writeValues([{ range: formula, values: [[1]] }]);
      await workbook.calculated();
      const found = await checkWorkbook(workbook);
      const left = await repairWorkbook(workbook, found);
      return [found, left].map((findings) => findings.map(({ sentence, repair }) => [sentence, repair?.says ?? null]));
    },
  },
  {
    title: "nothing shows #NAME?, and the formulas stay as they are",
    run: async (workbook) => repairSentence(await repairFormulas(workbook)),
  },
  {
    title: "Design is copied as values, twice under two names",
    run: async (workbook) => {
      const names = [];
      for (let copy = 0; copy < 2; copy += 1) {
        await workbook.select({ sheet: "Design", row: 3, column: 0, rows: 1, columns: 1 });
        names.push(await turnIntoValues(workbook));
      }
      const [copies, formulas] = [
        await workbook.readSheets(["Design", ...names]),
        await workbook.readFormulas({ sheet: names[0]!, row: 0, column: 0, rows: 30, columns: 60 }),
      ];
      return [names, copies[0]?.[3]?.[0] === copies[1]?.[3]?.[0], formulas.flat().filter((formula) => formula !== "")];
    },
  },
  {
    title: "a workbook is told from others by an id that opening alone does not write, and that stays once written",
    run: async (workbook) => {
      const before = [await workbook.readSetting(WORKBOOK_ID_SETTING), (await workbookId(workbook)).id.length];
      const { id, keep } = await workbookId(workbook);
      await keep();
      return [...before, (await workbookId(workbook)).id === id, (await workbook.readSetting(WORKBOOK_ID_SETTING)) === id];
    },
  },
  {
    title: "words typed with spaces around them and in other letters are the same words",
    run: async (workbook) => [await misspellChoices(workbook), await misspellNames(workbook)],
  },
  {
    title: "sheets outgrow their rows from the pane and by hand: formulas, formats and drop-downs reach every row in use",
    looksAt: everyLook(grownRows),
    run: async (workbook) => {
      const { yards } = await program(workbook);
      const more = Array.from({ length: 201 - yards.length }, (_, index) => ({
        siteId: `Z-${index}`,
        yard: `Further yard ${index}`,
        units: "us",
      }));
      await appendRows(workbook, sitesSheet, more);
      const typed = [["Z-0", "Roof", "roof", 640]];
      await workbook.writeValues([
        { range: { ...cellOf(surfacesSheet, firstRow(surfacesSheet) + surfacesSheet.rows + 9, "siteId"), columns: 4 }, values: typed },
      ]);
      const found = await checkWorkbook(workbook);
      const left = await repairWorkbook(workbook, found);
      const read = await program(workbook);
      const further = read.yards
        .filter(({ siteId }) => ["Z-0", more.at(-1)?.siteId].includes(siteId))
        .map(({ site, design }) => [site.row, design.yard, design.contributingArea]);
      return [found, left]
        .map((findings) => findings.map(({ sentence, repair }) => [sentence, repair?.says ?? null]))
        .concat([further as never]);
    },
  },
];
