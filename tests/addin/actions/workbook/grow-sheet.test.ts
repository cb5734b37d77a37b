import { beforeEach, describe, expect, test } from "vitest";
import { logWrites } from "../../../../addin/actions/program/change-log.ts";
import { checkWorkbook, repairWorkbook } from "../../../../addin/actions/workbook/check-workbook.ts";
import { addYard } from "../../../../addin/actions/yard/record-yard.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { appendRows } from "../../../../addin/actions/program/write-records.ts";
import { designSheet } from "../../../../addin/records/design.ts";
import { holeTestsSheet } from "../../../../addin/records/hole-tests.ts";
import { cellOf } from "../../../../addin/records/place.ts";
import { reportYardsSheet } from "../../../../addin/records/report-yards.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";

let workbook: WorkbookInMemory;
beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
});

const sites = (count: number) =>
  Array.from({ length: count }, (_, index) => ({
    siteId: `Y-${String(index + 1).padStart(3, "0")}`,
    yard: `Yard ${index + 1}`,
    units: "us",
  }));
const formulaAt = async (row: number, key: keyof typeof designSheet.columns) =>
  (await workbook.readFormulas(cellOf(designSheet, row, key)))[0]?.[0] ?? "";
const FIRST = 3;

describe("A program that outgrows the rows prepared", () => {
  test("takes a thousand yards: the formulas that read Sites cover them all, row for row too, and the check finds nothing to repair", async () => {
    await appendRows(workbook, sitesSheet, sites(1000));
    expect(await formulaAt(FIRST, "siteId")).toContain("Sites!$A$3:$A$1603");
    expect(await formulaAt(FIRST, "holes")).toContain("$A$4:$A$1603");
    expect((await checkWorkbook(workbook)).filter(({ repair }) => repair !== undefined)).toEqual([]);
  });

  test("takes three thousand surfaces, and Design adds them all up", async () => {
    await appendRows(workbook, sitesSheet, sites(1000));
    await appendRows(
      workbook,
      surfacesSheet,
      sites(1000).flatMap(({ siteId }) => ["Roof", "Drive", "Shed"].map((surface) => ({ siteId, surface, cover: "roof", area: 500 }))),
    );
    expect(await formulaAt(FIRST, "contributingArea")).toContain("Surfaces!$A$3:$A$4803");
  });

  test("writes its formulas anew only when the rows have doubled, so that one more yard costs what a yard costs", async () => {
    await appendRows(workbook, sitesSheet, sites(201));
    const before = workbook.calls;
    await addYard(workbook, { yard: "One more", address: "", units: "us", soilGroup: null });
    const grown = workbook.calls - before;
    const small = new WorkbookInMemory();
    await setUpWorkbook(small);
    const start = small.calls;
    await addYard(small, { yard: "The first", address: "", units: "us", soilGroup: null });
    expect(grown).toBe(small.calls - start);
  });

  test("keeps what somebody put in a formula's place", async () => {
    await workbook.writeFormulas([{ range: cellOf(designSheet, FIRST, "floorLength"), formulas: [["=12"]] }]);
    await appendRows(workbook, sitesSheet, sites(201));
    expect(await formulaAt(FIRST, "floorLength")).toBe("=12");
    expect(await formulaAt(FIRST, "siteId")).toContain("$403");
  });

  test("is not on the Change log: an undo of the yard leaves the formulas wide", async () => {
    const { workbook: logged, putOnLog } = logWrites(workbook);
    await appendRows(logged, sitesSheet, sites(201));
    await putOnLog({ by: "", what: "Many yards" });
    const [log = []] = await workbook.readSheets(["Change log"]);
    expect(log.some((row) => row.includes("Sites"))).toBe(true);
    expect(log.some((row) => row.includes("Design"))).toBe(false);
  });

  test("gives the rows added the formats and drop-downs of those above, and the sheets that hold a row for each yard too", async () => {
    await appendRows(workbook, sitesSheet, sites(201));
    const added = { row: FIRST + 200, column: 0, rows: 200 };
    expect(workbook.continued).toEqual([
      { ...added, sheet: "Sites", columns: Object.keys(sitesSheet.columns).length },
      { ...added, sheet: "Design", columns: Object.keys(designSheet.columns).length },
      { ...added, sheet: "Report yards", columns: Object.keys(reportYardsSheet.columns).length },
    ]);
    await appendRows(workbook, sitesSheet, sites(200));
    expect(workbook.continued).toHaveLength(6);
    expect(workbook.continued[3]).toMatchObject({ sheet: "Sites", row: FIRST + 400, rows: 400 });
  });

  test("reaches rows that a person typed below the prepared ones as soon as the pane adds one", async () => {
    await workbook.writeValues([{ range: cellOf(sitesSheet, FIRST + 230, "siteId"), values: [["Y-900"]] }]);
    const siteId = await addYard(workbook, { yard: "One more", address: "", units: "us", soilGroup: null });
    expect(siteId).toBe("Y-901");
    expect(await formulaAt(FIRST, "siteId")).toContain("Sites!$A$3:$A$403");
  });

  test("leaves a value that stands where a formula of a further row would go", async () => {
    const where = cellOf(holeTestsSheet, FIRST + 130, "infiltrationRate");
    await workbook.writeValues([{ range: where, values: [[0.7]] }]);
    await appendRows(
      workbook,
      holeTestsSheet,
      Array.from({ length: 121 }, () => ({ siteId: "Y-001", hole: "A" })),
    );
    expect(await workbook.read([where])).toEqual([[[0.7]]]);
    expect(await workbook.readFormulas({ ...where, row: where.row + 1 })).toEqual([[expect.stringContaining("SOAK.")]]);
  });

  test("finds its own formulas again after rows were inserted into them", async () => {
    const range = cellOf(designSheet, FIRST, "siteId");
    const stretched = (await formulaAt(FIRST, "siteId")).replaceAll("$203", "$210");
    await workbook.writeFormulas([{ range, formulas: [[stretched]] }]);
    await appendRows(workbook, sitesSheet, sites(201));
    expect(await formulaAt(FIRST, "siteId")).toContain("Sites!$A$3:$A$403");
  });
});

describe("Rows typed straight into a sheet below the prepared ones", () => {
  const typeYard = (row: number) => workbook.writeValues([{ range: cellOf(sitesSheet, row, "siteId"), values: [["Y-900"]] }]);

  test("are found by the check, which prepares the sheet down to them and then finds nothing", async () => {
    await typeYard(FIRST + 246);
    const found = (await checkWorkbook(workbook)).filter(({ repair }) => repair !== undefined);
    expect(found.map(({ sentence, repair }) => [sentence, repair?.says])).toEqual([
      [
        "Sheet Sites is filled in down to row 250, and is prepared down to row 203: formulas, formats and drop-downs do not reach the rows below.",
        "Prepare the sheet down to row 403. Nothing typed is changed.",
      ],
    ]);
    const left = await repairWorkbook(workbook, found);
    expect(left.filter(({ repair }) => repair !== undefined)).toEqual([]);
    expect(await formulaAt(FIRST, "siteId")).toContain("Sites!$A$3:$A$403");
    expect(await formulaAt(FIRST, "holes")).toContain("$A$4:$A$403");
    expect(workbook.continued.map(({ sheet }) => sheet)).toEqual(["Sites", "Design", "Report yards"]);
  });

  test("are nothing to repair within the prepared rows", async () => {
    await typeYard(FIRST + 199);
    expect((await checkWorkbook(workbook)).filter(({ repair }) => repair !== undefined)).toEqual([]);
  });

  test("far below any program are named, and tens of thousands of formulas are not offered", async () => {
    await typeYard(FIRST + 24_999);
    const [found] = await checkWorkbook(workbook);
    expect(found?.sentence).toContain("filled in down to row 25003");
    expect(found?.sentence).toContain("20000 rows are the most.");
    expect(found?.repair).toBeUndefined();
  });

  test("keep their rows when the setting that counts them was damaged", async () => {
    await appendRows(workbook, sitesSheet, sites(300));
    for (const text of ["Sites", "Sites\tmany", "Sites\t-7", "__proto__\t9"]) {
      await workbook.writeSetting("soakbook.rows", text);
      const found = await checkWorkbook(workbook);
      await repairWorkbook(workbook, found);
      expect(await workbook.readSetting("soakbook.rows")).toBe("Sites\t400\nDesign\t400\nReport yards\t400");
    }
  });
});
