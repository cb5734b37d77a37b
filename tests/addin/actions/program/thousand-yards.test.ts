/** A thousand finished yards, from the first call to the first year's look: kept, read, written to and undone. */
import { beforeAll, describe, expect, test } from "vitest";
import { today } from "../../../../addin/actions/dates.ts";
import { fillDemoProgram } from "../../../../addin/actions/demo/demo-program.ts";
import { logWrites } from "../../../../addin/actions/program/change-log.ts";
import { latestChanges } from "../../../../addin/actions/program/read-log.ts";
import { readProgram, type Yard } from "../../../../addin/actions/program/read-program.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import { whatIsNext } from "../../../../addin/actions/program/what-is-next.ts";
import { recordAnswer } from "../../../../addin/actions/visits/record-answer.ts";
import { checkWorkbook } from "../../../../addin/actions/workbook/check-workbook.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { screeningVisit } from "../../../../addin/checklist/screening-visit.ts";
import { changeLogSheet } from "../../../../addin/records/change-log.ts";
import { cellOf, firstRow, placeAsSetUp } from "../../../../addin/records/place.ts";
import { PREPARED_ROWS_SETTING, mostRowsOf, preparedRowsText } from "../../../../addin/records/prepared-rows.ts";
import { recordSheets } from "../../../../addin/records/program-sheets.ts";
import type { KeyOf, Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import type { CellRange, CellValue } from "../../../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

const YARDS = 1000;
const ANSWERS = 83;
/** An answer a row, and half as many for surfaces, holes, estimates and all else. */
const LOG_ROWS = 1.5 * YARDS * ANSWERS;
const LAST_YARD = `Y-${YARDS}`;

type Cells = Readonly<Record<string, CellValue>>;

async function writeRows(host: WorkbookInMemory, sheet: Sheet, rows: readonly Cells[]): Promise<void> {
  const place = placeAsSetUp(sheet);
  await host.writeValues(
    (Object.keys(sheet.columns) as KeyOf<Sheet>[]).map((key) => ({
      range: { ...place.cell(place.firstRow, key), rows: rows.length },
      values: rows.map((row) => [row[key] ?? null]),
    })),
  );
}

/** The demo's yard that has come furthest, a thousand times over. */
async function thousandYards(): Promise<WorkbookInMemory> {
  const demo = new WorkbookInMemory();
  await setUpWorkbook(demo);
  await fillDemoProgram(demo);
  const [finished] = (await readProgram(demo)).yards.toSorted((one, other) => other.visits.length - one.visits.length);
  if (finished === undefined) throw new Error("The demo has no yard.");
  const host = new WorkbookInMemory();
  await setUpWorkbook(host);
  const siteIds = Array.from({ length: YARDS }, (_, index) => `Y-${String(index + 1).padStart(3, "0")}`);
  const rowsOf = ({ site, surfaces, holeTests, clumps, estimateLines, digDays, asBuilt, followUps, visits }: Yard) =>
    [[site], surfaces, holeTests, clumps, estimateLines, digDays, asBuilt, followUps, visits.slice(0, ANSWERS)] as const;
  for (const rows of rowsOf(finished)) {
    const sheet = recordSheets.find(({ name }) => name === rows[0]?.sheet.name) ?? sitesSheet;
    await writeRows(
      host,
      sheet,
      siteIds.flatMap((siteId) => rows.map(({ cells }) => ({ ...cells, siteId }))),
    );
  }
  const logged = { by: "Crew one", what: "An answer", sheet: "Visits", beforeHolds: "cells", afterHolds: "cells", after: '{"A":"Y-001"}' };
  await writeRows(
    host,
    changeLogSheet,
    Array.from({ length: LOG_ROWS }, (_, index) => ({ ...logged, change: index + 1, when: 46_000, siteId: "Y-001", cell: "A4" })),
  );
  // As sheets outgrow their rows, which is another test's: here nothing reads their formulas.
  await host.writeSetting(PREPARED_ROWS_SETTING, preparedRowsText(new Map(recordSheets.map((sheet) => [sheet, mostRowsOf(sheet)]))));
  return host;
}

/** Cells that the spreadsheet is asked for while the work goes on. */
async function cellsRead(host: WorkbookInMemory, work: () => Promise<unknown>): Promise<number> {
  const read = host.read.bind(host);
  let cells = 0;
  host.read = (ranges: readonly CellRange[]) => {
    cells += ranges.reduce((sum, { rows, columns }) => sum + rows * columns, 0);
    return read(ranges);
  };
  host.readSheets = () => expect.fail("A whole sheet was read.");
  await work();
  host.read = read;
  host.readSheets = WorkbookInMemory.prototype.readSheets.bind(host);
  return cells;
}

describe("A thousand finished yards", () => {
  let host: WorkbookInMemory;
  const last = async (): Promise<Yard> => {
    const yard = (await readProgram(host)).yards.at(-1);
    if (yard?.siteId !== LAST_YARD) throw new Error("The last yard is not there.");
    return yard;
  };

  beforeAll(async () => {
    host = await thousandYards();
  });

  test("are read with every answer, none of them uncounted, and are all in what is next", async () => {
    const program = await readProgram(host);
    expect(program.yards).toHaveLength(YARDS);
    expect(new Set(program.yards.map(({ visits }) => visits.length))).toEqual(new Set([ANSWERS]));
    expect(program.yards.flatMap(({ slips }) => slips)).toEqual([]);
    expect(program.nearlyFull).toEqual([]);
    const notices = whatIsNext(program, today());
    expect(new Set(notices.flatMap(({ yard }) => yard?.siteId ?? [])).size).toBe(YARDS);
  });

  test("take an answer more for the last of them, which stands on the log in one row, is shown as the latest change and is undone", async () => {
    const yard = await last();
    const { workbook, forget, putOnLog } = logWrites(host);
    const step = screeningVisit.steps.find(({ id }) => id === "foundation");
    if (step === undefined) throw new Error("The visit lacks its step.");
    const before = host.sheets.get(visitsSheet.name)?.values.length ?? 0;
    let change: number | null = null;
    const read = await cellsRead(host, async () => {
      await recordAnswer(workbook, yard, screeningVisit, step, { kind: "measured", value: 17, note: "again", by: "Crew two" });
      change = await putOnLog({ by: "Crew two", what: "Distance to the foundation written." });
      expect(await latestChanges(host, 1)).toMatchObject([
        { change, by: "Crew two", siteIds: [LAST_YARD], what: "Distance to the foundation written." },
      ]);
    });
    expect(change).toBe(LOG_ROWS + 1);
    // The numbers of all changes, twice, and of everything else a few hundred rows.
    expect(read).toBeLessThan(2 * LOG_ROWS + 50_000);
    expect((await host.extents([changeLogSheet.name]))[0]?.rows).toBe(firstRow(changeLogSheet) + LOG_ROWS + 1);
    expect((await last()).answers.get("foundation")?.record).toMatchObject({ answer: 17, by: "Crew two" });
    expect((await last()).visits).toHaveLength(ANSWERS + 1);

    forget();
    await undoChange(workbook, LOG_ROWS + 1);
    await putOnLog({ by: "Crew two", what: "Undone" });
    expect((await last()).visits).toHaveLength(ANSWERS);
    expect(
      host.sheets
        .get(visitsSheet.name)
        ?.values.slice(before)
        .flat()
        .filter((cell) => cell !== null),
    ).toEqual([]);
    expect((await latestChanges(host, 2)).map(({ what }) => what)).toEqual(["Undone", "Distance to the foundation written."]);
  });
});

describe("A sheet that nears the most rows it may have", () => {
  test.each([visitsSheet, changeLogSheet])(
    "says so on Next and to Check, with room left, and blames nobody: $name",
    async (sheet: Sheet) => {
      const host = new WorkbookInMemory();
      await setUpWorkbook(host);
      const rowsFilled = async (rows: number): Promise<readonly string[]> => {
        await host.writeValues([{ range: cellOf(sheet, firstRow(sheet) + rows - 1, "siteId"), values: [["Y-001"]] }]);
        return (await readProgram(host)).nearlyFull;
      };
      const most = mostRowsOf(sheet);
      expect(most).toBeGreaterThanOrEqual(YARDS * ANSWERS);
      expect(await rowsFilled(0.8 * most - 1)).toEqual([]);
      const [sentence = ""] = await rowsFilled(0.8 * most);
      expect(sentence).toMatch(
        new RegExp(`^Sheet ${sheet.name} holds ${0.8 * most} rows, and ${most} are the most: .*second workbook\\.$`),
      );
      expect(whatIsNext(await readProgram(host), today()).filter(({ kind }) => kind === "room")).toMatchObject([
        { sentence, urgency: "soon" },
      ]);
      expect((await checkWorkbook(host)).map((finding) => finding.sentence)).toContain(sentence);

      await rowsFilled(most + 1);
      const beyond = (await checkWorkbook(host)).find(({ where }) => where?.sheet === sheet.name)?.sentence;
      expect(beyond).toContain(`${most} rows are the most. Keep further yards in a second workbook`);
      expect(beyond).not.toContain("Clear what was typed");
    },
  );
});
