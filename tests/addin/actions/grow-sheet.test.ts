import { beforeEach, describe, expect, test } from "vitest";
import { logWrites } from "../../../addin/actions/change-log.ts";
import { checkWorkbook } from "../../../addin/actions/check-workbook.ts";
import { addYard } from "../../../addin/actions/record-yard.ts";
import { setUpWorkbook } from "../../../addin/actions/set-up-workbook.ts";
import { appendRows } from "../../../addin/actions/write-records.ts";
import { designSheet } from "../../../addin/records/design.ts";
import { cellOf } from "../../../addin/records/place.ts";
import { sitesSheet } from "../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../addin/records/surfaces.ts";
import { WorkbookInMemory } from "../workbook-in-memory.ts";

let workbook: WorkbookInMemory;
beforeEach(async () => {
  workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
});

const sites = (count: number) => Array.from({ length: count }, (_, index) => ({ siteId: `Y-${String(index + 1).padStart(3, "0")}`, yard: `Yard ${index + 1}`, units: "us" }));
const formulaAt = async (row: number, key: keyof typeof designSheet.columns) => (await workbook.readFormulas(cellOf(designSheet, row, key)))[0]?.[0] ?? "";
const FIRST = 3;

describe("A program that outgrows the rows prepared", () => {
  test("takes a thousand yards: the formulas that read Sites cover them all, row for row too, and the check finds nothing to repair", async () => {
    await appendRows(workbook, sitesSheet, sites(1000));
    expect(await formulaAt(FIRST, "siteId")).toContain("Sites!$A$4:$A$1603");
    expect(await formulaAt(FIRST + 999, "testedRate")).toContain("$A1003");
    expect((await checkWorkbook(workbook)).filter(({ repair }) => repair !== undefined)).toEqual([]);
  });

  test("takes three thousand surfaces, and Design adds them all up", async () => {
    await appendRows(workbook, sitesSheet, sites(1000));
    await appendRows(workbook, surfacesSheet, sites(1000).flatMap(({ siteId }) => ["Roof", "Drive", "Shed"].map((surface) => ({ siteId, surface, cover: "roof", area: 500 }))));
    expect(await formulaAt(FIRST, "contributingArea")).toContain("Surfaces!$A$4:$A$4803");
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
    await workbook.writeFormulas([{ range: cellOf(designSheet, FIRST, "plants"), formulas: [["=12"]] }]);
    await appendRows(workbook, sitesSheet, sites(201));
    expect(await formulaAt(FIRST, "plants")).toBe("=12");
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
});
