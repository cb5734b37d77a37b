import { beforeEach, describe, expect, test } from "vitest";
import { logWrites } from "../../../../addin/actions/program/change-log.ts";
import { readProgram } from "../../../../addin/actions/program/read-program.ts";
import { movedOn, readStanding, writeStanding } from "../../../../addin/actions/program/standing-sheet.ts";
import { yardStanding } from "../../../../addin/actions/visits/stage-standing.ts";
import { placeAsSetUp } from "../../../../addin/records/place.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { standingSheet } from "../../../../addin/records/standing.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { DAY, home, put, type } from "../field-copy/copies.ts";

const TODAY = DAY + 40;
const place = placeAsSetUp(standingSheet);

async function written(workbook: WorkbookInMemory) {
  const [cells = []] = await workbook.readSheets([standingSheet.name]);
  return cells.slice(place.firstRow);
}

async function old(workbook: WorkbookInMemory) {
  const standing = await readStanding(workbook);
  return standing === null ? null : movedOn(standing, await readProgram(workbook), TODAY);
}

describe("Where yards stand, on a sheet", () => {
  let workbook: WorkbookInMemory;

  beforeEach(async () => {
    workbook = await home();
    expect(await old(workbook)).toBeNull();
    await writeStanding(workbook, await readProgram(workbook), TODAY);
  });

  test("has a row a yard, with what the pane says of it and the newest day on record that is past", async () => {
    const program = await readProgram(workbook);
    const rows = await written(workbook);
    expect(rows.map(([siteId]) => siteId)).toEqual(["Y-001", "Y-002", "Y-003"]);
    for (const [at, yard] of program.yards.entries()) {
      const { current, next } = yardStanding(program, yard, TODAY);
      expect([rows[at]?.[2], rows[at]?.[4]]).toEqual([current.stage.name, next?.sentence]);
    }
    expect(rows.map((row) => row[5])).toEqual([DAY, DAY + 1, null]);
    expect((await workbook.readFormulas(place.cell(place.firstRow + 1, "daysWaiting")))[0]?.[0]).toBe('=IF(F5="","",TODAY()-F5)');
    expect(await old(workbook)).toEqual([]);
  });

  test("is told to be old when the records have moved on, and is written anew where each yard stands by then", async () => {
    const rows = await written(workbook);
    // Somebody has turned the rows around, with a column of their own beside them.
    const range = { sheet: standingSheet.name, row: place.firstRow, column: 0, rows: 3, columns: 10 };
    await workbook.writeValues([{ range, values: rows.toReversed().map((row, at) => [...row.slice(0, 9), `own ${at}`]) }]);
    await put(workbook, visitsSheet, [{ siteId: "Y-003", date: DAY + 30, stage: "screening", step: "pets", answer: "no", by: "Ash" }]);
    await put(workbook, sitesSheet, [{ siteId: "Y-004", yard: "Alder house" }]);
    expect(await old(workbook)).toEqual(["Y-003", "Y-004"]);
    await writeStanding(workbook, await readProgram(workbook), TODAY);
    const after = await written(workbook);
    expect(after.map((row) => [row[0], row[5], row[9] ?? null])).toEqual([
      ["Y-003", DAY + 30, "own 0"],
      ["Y-002", DAY + 1, "own 1"],
      ["Y-001", DAY, "own 2"],
      ["Y-004", null, null],
    ]);
    expect(await old(workbook)).toEqual([]);
  });

  test("says of a yard that has gone that it is no longer there", async () => {
    await type(workbook, sitesSheet, 2, { siteId: null, yard: null, address: null, units: null });
    await type(workbook, surfacesSheet, 3, { siteId: null, surface: null, cover: null, area: null });
    expect(await old(workbook)).toEqual(["Y-003"]);
    await writeStanding(workbook, await readProgram(workbook), TODAY);
    expect((await written(workbook))[2]?.slice(0, 5)).toEqual(["Y-003", "Mill yard", "no longer on Sites", null, null]);
    expect(await old(workbook)).toEqual([]);
  });

  test("writes one change, of the yards alone that moved on", async () => {
    await put(workbook, visitsSheet, [{ siteId: "Y-003", date: DAY + 30, stage: "screening", step: "pets", answer: "no", by: "Ash" }]);
    const logged = logWrites(workbook);
    await writeStanding(logged.workbook, await readProgram(workbook), TODAY);
    expect(await logged.putOnLog({ by: "", what: "written" })).toBe(1);
  });

  test("is refused in words when it has lost a heading", async () => {
    await workbook.writeValues([{ range: place.cell(place.headingRow, "stage"), values: [["Phase"]] }]);
    await expect(readStanding(workbook)).rejects.toThrow("has lost a heading");
  });
});
