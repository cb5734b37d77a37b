import { describe, expect, test } from "vitest";
import { bringInList, presentRecords } from "../../../../addin/actions/bring-in/bring-in-list.ts";
import { isKnownHeading, listTargets, type ListTarget } from "../../../../addin/actions/bring-in/known-columns.ts";
import { cellsOfText, listTable, type ListTable } from "../../../../addin/actions/bring-in/list-table.ts";
import { planList, type ListChoices, type ListPlan } from "../../../../addin/actions/bring-in/plan-list.ts";
import { proposedColumns, type Destination } from "../../../../addin/actions/bring-in/propose-columns.ts";
import { logWrites } from "../../../../addin/actions/program/change-log.ts";
import { undoChange } from "../../../../addin/actions/program/undo-change.ts";
import { setUpWorkbook } from "../../../../addin/actions/workbook/set-up-workbook.ts";
import { followUpsSheet } from "../../../../addin/records/follow-ups.ts";
import { holeTestsSheet } from "../../../../addin/records/hole-tests.ts";
import { plantsSheet } from "../../../../addin/records/plants.ts";
import { pricesSheet } from "../../../../addin/records/prices.ts";
import { readRecords } from "../../../../addin/records/read-records.ts";
import type { Sheet } from "../../../../addin/records/sheet.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../addin/records/surfaces.ts";
import type { CellValue, Workbook } from "../../../../addin/workbook/port.ts";
import { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { ALDERTON, BEECHWOOD, CEDAR_SURFACES } from "./lists.ts";

async function fresh(): Promise<WorkbookInMemory> {
  const workbook = new WorkbookInMemory();
  await setUpWorkbook(workbook);
  return workbook;
}

const targetOf = (sheet: Sheet): ListTarget => listTargets.find((target) => target.sheet === sheet)!;

function tableOf(target: ListTarget, text: string): ListTable {
  const cells = cellsOfText(text);
  if ("sentence" in cells) throw new Error(cells.sentence);
  const table = listTable(cells as readonly (readonly CellValue[])[], (heading) => isKnownHeading(target, heading));
  if ("sentence" in table) throw new Error(table.sentence);
  return table;
}

async function planOf(workbook: Workbook, sheet: Sheet, text: string, choices: Partial<ListChoices> = {}): Promise<ListPlan> {
  const target = targetOf(sheet);
  const table = tableOf(target, text);
  const columns = proposedColumns(target, table);
  return planList(target, table, { columns, units: "us", dateOrder: null, ...choices }, await presentRecords(workbook, target));
}

async function broughtIn(workbook: Workbook, sheet: Sheet, text: string, choices: Partial<ListChoices> = {}): Promise<ListPlan> {
  const plan = await planOf(workbook, sheet, text, choices);
  await bringInList(workbook, targetOf(sheet), plan);
  return plan;
}

async function recordsOf<S extends Sheet>(workbook: Workbook, sheet: S) {
  const [cells = []] = await workbook.readSheets([sheet.name]);
  return readRecords(sheet, cells).rows.map(({ record }) => record);
}

const ours = (columns: readonly Destination[]) => columns.map((each) => (each.kind === "ours" ? each.key : each.kind));

describe("A list of yards with semicolons and lines above its headings", () => {
  test("is understood by its headings: the heading row, the columns and the order of nothing", () => {
    const target = targetOf(sitesSheet);
    const table = tableOf(target, ALDERTON);
    expect(table.headings[1]).toBe("Household");
    expect(table.rows.map(({ line }) => line)).toEqual([4, 5, 6, 7]);
    expect(ours(proposedColumns(target, table))).toEqual(["siteId", "yard", "address", "soilGroup", "pondingDepth", "own"]);
  });

  // 15 cm is 150 / 25.4 in; half a foot is 6 in (NIST SP 811).
  test("comes in with its numbers in the yard's units, and says line by line what is not taken", async () => {
    const workbook = await fresh();
    const plan = await broughtIn(workbook, sitesSheet, ALDERTON);
    const yards = await recordsOf(workbook, sitesSheet);
    expect(yards.map(({ siteId, yard, address, units, soilGroup }) => [siteId, yard, address, units, soilGroup])).toEqual([
      ["RG-1", "Morrow", "14 Alder Row", "us", "B"],
      ["RG-2", "Sail loft", "3 Quay Lane", "us", "C"],
      ["RG-3", null, null, "us", null],
    ]);
    expect(yards[0]?.pondingDepth).toBe(6);
    expect(yards[1]?.pondingDepth).toBeCloseTo(150 / 25.4, 9);
    expect(yards[2]?.pondingDepth).toBeCloseTo(6, 9);
    expect(plan.notTaken).toEqual([
      { line: 6, heading: "HSG", sentence: 'Soil group "loam" is not in the list: A, B, C, D.' },
      { line: 7, heading: null, sentence: "It has no Site ID, name or address." },
    ]);
  });

  test("keeps its own column beside ours, and what reads like a formula stays a text", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    const [cells = []] = await workbook.readSheets([sitesSheet.name]);
    const place = readRecords(sitesSheet, cells).place!;
    const column = cells[place.headingRow]!.indexOf("Paint color of the door");
    expect(column).toBe(Object.keys(sitesSheet.columns).length);
    expect(cells.slice(place.firstRow).map((row) => row[column] ?? null)).toEqual(["green", "=1+1", null]);
    expect(workbook.sheets.get("Sites")?.formulas[place.firstRow + 1]?.[column] ?? "").toBe("");
  });

  test("adds nothing when it is brought in a second time", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    const before = structuredClone(workbook.sheets.get("Sites"));
    const again = await broughtIn(workbook, sitesSheet, ALDERTON);
    expect([again.rows.length, again.alreadyThere]).toEqual([0, 3]);
    expect(workbook.sheets.get("Sites")).toEqual(before);
  });

  test("is one change, and its undo takes back every cell and heading of it", async () => {
    const host = await fresh();
    const before = (await host.readSheets([sitesSheet.name]))[0];
    const logged = logWrites(host);
    await broughtIn(logged.workbook, sitesSheet, ALDERTON);
    const change = await logged.putOnLog({ by: "Ada", what: "A list of yards." });
    expect(await recordsOf(host, sitesSheet)).toHaveLength(3);
    await undoChange(host, change!, () => Promise.resolve());
    const typed = (cells: readonly (readonly CellValue[])[] = []) => cells.map((row) => row.filter((cell) => cell !== null && cell !== ""));
    expect(typed((await host.readSheets([sitesSheet.name]))[0]).filter((row) => row.length > 0)).toEqual(
      typed(before).filter((row) => row.length > 0),
    );
  });
});

describe("A list of yards from the clipboard, metric and without IDs", () => {
  test("gets the next free Site IDs, and a yard that is in it twice comes in once", async () => {
    const workbook = await fresh();
    const plan = await broughtIn(workbook, sitesSheet, BEECHWOOD);
    const yards = await recordsOf(workbook, sitesSheet);
    expect(yards.map(({ siteId, units, pondingDepth, notes }) => [siteId, units, pondingDepth, notes])).toEqual([
      ["Y-001", "metric", 150, "call first"],
      ["Y-002", "metric", 200, null],
    ]);
    expect(plan.notTaken).toEqual([{ line: 4, heading: null, sentence: "It stands in the list a second time: the first row is taken." }]);
  });

  test("is known again by its addresses", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, BEECHWOOD);
    expect(await planOf(workbook, sitesSheet, BEECHWOOD)).toMatchObject({ rows: [], alreadyThere: 3 });
  });
});

describe("Surfaces by the address of their yard", () => {
  // 48.3 and 25 sq m over 0.09290304 (NIST SP 811); 1,180 sq ft as written.
  test("find their yards, lose their units and keep their size", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    const plan = await broughtIn(workbook, surfacesSheet, CEDAR_SURFACES);
    const surfaces = await recordsOf(workbook, surfacesSheet);
    expect(surfaces.map(({ siteId, surface, cover, share }) => [siteId, surface, cover, share])).toEqual([
      ["RG-1", "House", "roof", 1],
      ["RG-1", "Drive", "paving", 0.5],
      ["RG-2", "Shed", "roof", 1],
      ["RG-2", "Yard", null, 1],
    ]);
    expect(surfaces[0]?.area).toBeCloseTo(48.3 / 0.09290304, 7);
    expect(surfaces[1]?.area).toBeCloseTo(25 / 0.09290304, 7);
    expect(surfaces[2]?.area).toBe(1180);
    expect(plan.notTaken.map(({ line, sentence }) => [line, sentence.slice(0, 47).trim()])).toEqual([
      [5, "No yard on Sites has its address, and it has no"],
      [6, 'Cover "gravel garden" is not in the list: roof'],
    ]);
    expect(await planOf(workbook, surfacesSheet, CEDAR_SURFACES)).toMatchObject({ rows: [], alreadyThere: 4 });
  });

  test("with decimal commas leave out the number that may be thousands, and say so", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    const text = "Site ID;Cover;Area (m2)\nRG-1;roof;48,3\nRG-1;roof;1,180\nRG-1;roof;1.180,5\n";
    const plan = await broughtIn(workbook, surfacesSheet, text);
    expect((await recordsOf(workbook, surfacesSheet)).map(({ area }) => area)).toEqual([
      expect.closeTo(48.3 / 0.09290304, 7),
      null,
      expect.closeTo(1180.5 / 0.09290304, 6),
    ]);
    expect(plan.notTaken).toEqual([
      { line: 3, heading: "Area (m2)", sentence: 'Area (sq ft | m²) "1,180" may be 1180 or 1.180: write it without the comma.' },
    ]);
  });

  test("of the same size twice in one yard are two surfaces", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    const text = "Site ID,Cover,Area\nRG-1,roof,200\nRG-1,roof,200\n";
    expect((await broughtIn(workbook, surfacesSheet, text)).rows).toHaveLength(2);
    expect(await planOf(workbook, surfacesSheet, text)).toMatchObject({ rows: [], alreadyThere: 2 });
  });
});

describe("Other lists", () => {
  const holes = "Site,Hole,Test date,Tester,Depth (ft),Diameter\nRG-1,A,3/4/2026,Bea,1,8 in\nRG-1,B,2026-04-05,Bea,30 cm,20\n";

  test("of hole tests ask for the order of a date that may be two days, and take the others", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    const open = await planOf(workbook, holeTestsSheet, holes);
    expect(open.asksDateOrder).toBe(true);
    await broughtIn(workbook, holeTestsSheet, holes, { dateOrder: "day first" });
    const tests = await recordsOf(workbook, holeTestsSheet);
    // 3 April 2026 is day 46,115 as spreadsheets count: 31 days before 4 May, which is 46,146.
    expect(tests.map(({ hole, date, holeDepth, holeDiameter }) => [hole, date, holeDepth, holeDiameter])).toEqual([
      ["A", 46_115, 12, 8],
      ["B", 46_117, expect.closeTo(30 / 2.54, 8), 20],
    ]);
  });

  test("of prices, plants and follow-ups come in by the names that shops and offices use", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, ALDERTON);
    await broughtIn(workbook, pricesSheet, "Product,Unit cost,Per,Vendor,Quoted\ngravel,$42.50,ton,Quay Supply,2026-04-01\n");
    expect((await recordsOf(workbook, pricesSheet)).at(-1)).toMatchObject({
      item: "gravel",
      unitPrice: 42.5,
      unit: "ton",
      supplier: "Quay Supply",
    });
    await broughtIn(workbook, plantsSheet, "Latin name,Common,Spread (cm),Light\nIris nova,new iris,45,full sun\n");
    const plant = (await recordsOf(workbook, plantsSheet)).at(-1);
    expect(plant).toMatchObject({ scientificName: "Iris nova", commonName: "new iris", sun: "full sun" });
    expect(plant?.spacingFeet).toBeCloseTo(45 / 30.48, 9);
    const looks = "ID,Visit type,Due date,Outcome\nRG-2,1 year,5 May 2027,\nRG-9,1 year,5 May 2027,\n";
    const plan = await broughtIn(workbook, followUpsSheet, looks);
    expect((await recordsOf(workbook, followUpsSheet)).at(-1)).toMatchObject({ siteId: "RG-2", kind: "1 year", due: 46_512 });
    expect(plan.notTaken).toEqual([{ line: 3, heading: null, sentence: 'No yard on Sites has the Site ID "RG-9".' }]);
  });

  test("an item that is on Prices already is not brought in again", async () => {
    const workbook = await fresh();
    expect(await planOf(workbook, pricesSheet, "Item,Price\nSand,30\nnew stone,20\nNew Stone,21\n")).toMatchObject({
      alreadyThere: 1,
      rows: [{ values: { item: "new stone", unitPrice: 20 } }],
      notTaken: [{ line: 4, heading: null }],
    });
  });

  test.each([
    ["", /nothing in it/],
    ["Site ID,Address\n", /headings and no rows/],
    ['Site ID,Address\n1,"open', /never closed/],
  ])("that hold nothing to bring in say so: %j", (text, words) => {
    expect(() => tableOf(targetOf(sitesSheet), text)).toThrow(words);
  });

  test("with names that belong to every object bring them in as words", async () => {
    const workbook = await fresh();
    await broughtIn(workbook, sitesSheet, "Site ID,Address,__proto__,constructor\n__proto__,1 Alder Row,a,b\n");
    expect((await recordsOf(workbook, sitesSheet))[0]).toMatchObject({ siteId: "__proto__", address: "1 Alder Row" });
    expect(({} as Record<string, unknown>)["a"]).toBeUndefined();
  });
});

test("five hundred yards with four of their own columns come in as one change within ten seconds", async () => {
  const host = await fresh();
  const logged = logWrites(host);
  const lines = Array.from({ length: 500 }, (_, yard) => `P-${yard},Yard ${yard},${yard} Mill Street,B,6 in,a,b,c,d`);
  const start = performance.now();
  const plan = await broughtIn(logged.workbook, sitesSheet, ["ID,Name,Address,HSG,Ponding,One,Two,Three,Four", ...lines].join("\n"));
  await logged.putOnLog({ by: "", what: "A list." });
  expect(plan.rows).toHaveLength(500);
  expect(await recordsOf(host, sitesSheet)).toHaveLength(500);
  expect(performance.now() - start).toBeLessThan(10_000);
});
